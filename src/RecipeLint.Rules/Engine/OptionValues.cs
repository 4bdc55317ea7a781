namespace RecipeLint.Rules.Engine;

/// <summary>The options of a rule by name, with the typed record they make once it was asked for.</summary>
internal sealed class OptionValues(IEnumerable<KeyValuePair<string, string>> values)
    : Dictionary<string, string>(values, StringComparer.Ordinal)
{
    private object? _typed;

    /// <summary>The record; two threads that ask at once may make it twice and get the same.</summary>
    public T As<T>()
        where T : IRuleOptions<T>
    {
        if (Volatile.Read(ref _typed) is T known)
        {
            return known;
        }

        var made = T.From(this);
        Volatile.Write(ref _typed, made);
        return made;
    }
}

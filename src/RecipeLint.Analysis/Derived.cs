namespace RecipeLint.Analysis;

/// <summary>
/// What follows from immutable facts, each computed when first asked for and kept beside them: the rooms above the facts say what and how,
/// the facts themselves know none of them. Threads that ask at once may compute a value twice and get the same; a copy of the facts with
/// other contents computes its own. It takes no part in the equality of its owner.
/// </summary>
internal sealed class Derived
{
    private Entry[] _entries = [];

    /// <param name="owner">The facts the value follows from.</param>
    /// <param name="compute">Pure: the same facts always give the same value. One value of a type is kept.</param>
    public TValue Of<TOwner, TValue>(TOwner owner, Func<TOwner, TValue> compute)
        where TOwner : class
        where TValue : class
    {
        var known = Volatile.Read(ref _entries);
        foreach (var entry in known)
        {
            if (entry.Value is TValue value && ReferenceEquals(entry.Owner, owner))
            {
                return value;
            }
        }

        var computed = compute(owner);
        Volatile.Write(ref _entries, [.. Volatile.Read(ref _entries).Where(e => e.Value is not TValue), new Entry(owner, computed)]);
        return computed;
    }

    public override bool Equals(object? obj) => obj is Derived;

    public override int GetHashCode() => 0;

    private sealed record Entry(object Owner, object Value);
}

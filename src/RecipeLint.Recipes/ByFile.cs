namespace RecipeLint.Recipes;

/// <summary>
/// Finds the entries of a list that never changes by a key, in a table made when it is first asked. It belongs to the list it was made of,
/// so that a copy of its owner with another list gets another table, and it takes no part in the equality of its owner.
/// </summary>
/// <typeparam name="T">What the list holds.</typeparam>
/// <param name="keys">The keys of an entry; the same entry may stand under several.</param>
public sealed class ByFile<T>(Func<T, IEnumerable<string?>> keys)
    where T : class
{
    private Table? _table;

    /// <param name="key">The key of an entry that has one.</param>
    public ByFile(Func<T, string> key)
        : this(entry => [key(entry)])
    {
    }

    /// <summary>The first entry of the list with this key; null when there is none.</summary>
    public T? Find(IReadOnlyList<T> list, string key) => TableOf(list).Entries.TryGetValue(key, out var found) ? found[0] : null;

    /// <summary>Every entry of the list with this key, each once, in the order of the list.</summary>
    public IReadOnlyList<T> All(IReadOnlyList<T> list, string key) => TableOf(list).Entries.TryGetValue(key, out var found) ? found : [];

    public override bool Equals(object? obj) => obj is ByFile<T>;

    public override int GetHashCode() => 0;

    private Table TableOf(IReadOnlyList<T> list)
    {
        // Threads that ask at once may make the table twice and get the same.
        var known = Volatile.Read(ref _table);
        if (known is null || !ReferenceEquals(known.List, list))
        {
            known = Make(list);
            Volatile.Write(ref _table, known);
        }

        return known;
    }

    private Table Make(IReadOnlyList<T> list)
    {
        var entries = new Dictionary<string, List<T>>(list.Count, StringComparer.Ordinal);
        foreach (var entry in list)
        {
            foreach (var key in keys(entry))
            {
                if (key is null)
                {
                    continue;
                }

                if (!entries.TryGetValue(key, out var same))
                {
                    entries.Add(key, same = []);
                }

                if (same.Count == 0 || !ReferenceEquals(same[^1], entry))
                {
                    same.Add(entry);
                }
            }
        }

        return new Table(list, entries);
    }

    private sealed record Table(IReadOnlyList<T> List, Dictionary<string, List<T>> Entries);
}

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// A value that follows from an immutable owner, computed when first asked for. Threads that ask at once may compute it twice and get the
/// same; a copy of the owner with other contents computes its own. It takes no part in the equality of its owner.
/// </summary>
internal sealed class Computed<TOwner, TValue>
    where TOwner : class
    where TValue : class
{
    private Entry? _entry;

    public TValue Of(TOwner owner, Func<TOwner, TValue> compute)
    {
        if (Volatile.Read(ref _entry) is { } known && ReferenceEquals(known.Owner, owner))
        {
            return known.Value;
        }

        var value = compute(owner);
        Volatile.Write(ref _entry, new Entry(owner, value));
        return value;
    }

    public override bool Equals(object? obj) => obj is Computed<TOwner, TValue>;

    public override int GetHashCode() => 0;

    private sealed record Entry(TOwner Owner, TValue Value);
}

using System.Collections.Concurrent;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// The rules that had nothing to say of a stock or a recipe, by what it was read from (<see cref="FileBasis"/>): of one that was read from
/// the same they have nothing to say either, whatever it is called and wherever it lies. Only silence is kept, and only of rules that
/// looked at nothing but their subject (<see cref="RuleReach"/>), so no finding ever comes from here and none depends on which of two was
/// judged first.
/// For several threads at once.
/// </summary>
public sealed class SilentRules
{
    /// <summary>Stocks and recipes that are remembered at most, about 200 bytes each; those met later are judged in full.</summary>
    private const int Most = 32_768;

    private readonly ConcurrentDictionary<FileBasis, ulong[]> _known = new();
    private int _count, _met;

    /// <summary>How many were met that were known already, for whoever wants to see that it pays.</summary>
    public int Met => _met;

    internal ulong[]? Of(FileBasis basis)
    {
        if (!_known.TryGetValue(basis, out var rules))
        {
            return null;
        }

        Interlocked.Increment(ref _met);
        return rules;
    }

    /// <param name="rules">A bit for each rule of the run, in their order.</param>
    internal void Keep(FileBasis basis, ulong[] rules)
    {
        if (Volatile.Read(ref _count) < Most && _known.TryAdd(basis, rules))
        {
            Interlocked.Increment(ref _count);
        }
    }
}

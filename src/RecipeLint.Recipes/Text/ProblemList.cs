using System.Globalization;

namespace RecipeLint.Recipes.Text;

/// <summary>
/// Collects problems of one file and stops listing a kind after the first hundred, so that a file of nothing but mistakes stays
/// readable and cheap; the rest is counted in one closing problem.
/// </summary>
internal sealed class ProblemList
{
    public const int LimitPerKind = 100;

    private readonly List<Problem> _problems = [];
    private readonly Dictionary<ProblemKind, (int Count, Place? FirstLeftOut)> _counts = [];

    /// <summary>True once further problems of the kind are only counted; ask before preparing an expensive message.</summary>
    public bool IsFull(ProblemKind kind) => _counts.TryGetValue(kind, out var seen) && seen.Count >= LimitPerKind;

    public void Add(Problem problem)
    {
        if (IsFull(problem.Kind))
        {
            Skip(problem.Kind, () => problem.Place);
            return;
        }

        _counts[problem.Kind] = (_counts.GetValueOrDefault(problem.Kind).Count + 1, null);
        _problems.Add(problem);
    }

    /// <summary>Counts a problem of a full kind; its place is asked for once.</summary>
    public void Skip(ProblemKind kind, Func<Place> place)
    {
        var (count, first) = _counts[kind];
        _counts[kind] = (count + 1, first ?? place());
    }

    /// <summary>The problems in the order they were found, then one per kind that overflowed.</summary>
    public IReadOnlyList<Problem> Close()
    {
        foreach (var (kind, (count, place)) in _counts.OrderBy(c => c.Key))
        {
            if (place is not null)
            {
                var more = (count - LimitPerKind).ToString(CultureInfo.InvariantCulture);
                _problems.Add(new Problem(kind, place, $"From here on {more} more of the same kind are not listed."));
            }
        }

        _counts.Clear();
        return _problems;
    }
}

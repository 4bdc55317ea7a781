namespace RecipeLint.Advice.Splitting;

/// <summary>Contents of the parts, the one with the first unit first.</summary>
/// <param name="Parts">Disjoint, together everything.</param>
/// <param name="Dilution">N of 1:N of the main parts.</param>
internal sealed record Grouping(IReadOnlyList<PartContent> Parts, double Dilution);

/// <summary>
/// Exact search over set partitions of the units. Parts are filled one after the other: a part takes the lowest unit that is left and any
/// subset of the others, is judged whole, and only a fit part lets the search go on to the rest. So a grouping is given up as soon as one
/// finished part is unfit, and never because a smaller part was. Every part is judged once per strength: for n units at most 2^n - 1 parts
/// (the cost, each some milliseconds of equilibrium), while the partitions walked over, S(n, k) at most (Stirling numbers of the second
/// kind), cost nothing beside that. A recipe of 14 salts makes 6 to 8 units, so some hundred parts.
/// </summary>
internal sealed class SplitSearch(PartJudge judge, PartFactory factory)
{
    /// <summary>Shares tried for a divided salt, in tenths: even first.</summary>
    private static readonly int[] Shares = [5, 4, 6, 3, 7, 2, 8, 1, 9];

    /// <summary>Indexes and logarithms that differ by less are told apart by nothing (the model is good to 0.15 to 0.3).</summary>
    private const double NearTie = 0.5;

    /// <summary>All groupings of the units of a mask into so many parts that are fit at a strength, in a fixed order.</summary>
    public List<Grouping> Fit(int mask, int parts, double dilution)
    {
        var found = new List<Grouping>();
        Fill(mask, parts, dilution, [], found);
        return found;
    }

    /// <summary>
    /// Groupings in which one salt is divided over two parts. Tried on groupings that are fit without that salt; so a salt is not divided
    /// to rescue a part that is cloudy without it.
    /// </summary>
    public List<Grouping> FitDivided(int mask, int parts, double dilution)
    {
        var found = new List<Grouping>();
        if (parts < 2)
        {
            return found;
        }

        for (var unit = 0; unit < factory.Units.Count; unit++)
        {
            if ((mask >> unit & 1) == 0 || !factory.Units[unit].CanBeDivided)
            {
                continue;
            }

            foreach (var grouping in Fit(mask & ~(1 << unit), parts, dilution))
            {
                for (var first = 0; first < parts; first++)
                {
                    for (var second = first + 1; second < parts; second++)
                    {
                        if (Divide(grouping, unit, first, second) is { } divided)
                        {
                            found.Add(divided);
                        }
                    }
                }
            }
        }

        return found;
    }

    /// <summary>
    /// Those that keep best, judged one after the other by what a part does without its acid, by how well the chelate holds its iron, and
    /// by what forms over weeks. Near ties stay in: the last digits of an index decide nothing.
    /// </summary>
    public List<Grouping> BestKept(IReadOnlyList<Grouping> groupings)
    {
        var left = groupings.Select(g => (Grouping: g, Risk: PartRisk.Worst(g.Parts.Select(p => judge.Risk(p, g.Dilution))))).ToList();
        foreach (var measure in new Func<PartRisk, double>[] { r => r.WithoutAcid, r => r.FreeIron, r => r.Slow })
        {
            var best = left.Count > 0 ? left.Min(g => measure(g.Risk)) : 0;
            left.RemoveAll(g => measure(g.Risk) > best + NearTie);
        }

        return [.. left.Select(g => g.Grouping)];
    }

    /// <summary>The one whose parts stay farthest from any solid, the worst part first; null for none.</summary>
    public Grouping? Roomiest(IEnumerable<Grouping> groupings) =>
        groupings
            .Select(g => new Score(
                [.. g.Parts.Select(p => Math.Round(Math.Max(judge.Judge(p, g.Dilution).HighestIndex, -9), 2)).OrderDescending()], g))
            .Order(Comparer<Score>.Create(Compare))
            .FirstOrDefault()?.Grouping;

    private Grouping? Divide(Grouping grouping, int unit, int first, int second)
    {
        foreach (var tenths in Shares)
        {
            var parts = grouping.Parts.ToArray();
            parts[first] = new PartContent(parts[first].Whole, unit, tenths);
            parts[second] = new PartContent(parts[second].Whole, unit, PartContent.AllTenths - tenths);
            if (judge.Judge(parts[first], grouping.Dilution).IsFit && judge.Judge(parts[second], grouping.Dilution).IsFit)
            {
                return grouping with { Parts = parts };
            }
        }

        return null;
    }

    private void Fill(int left, int parts, double dilution, List<PartContent> filled, List<Grouping> found)
    {
        if (parts == 1)
        {
            if (left != 0 && !(filled.Count > 0 && IsTraceOnly(left)) && IsFit(left, dilution))
            {
                found.Add(new Grouping([.. filled, new PartContent(left)], dilution));
            }

            return;
        }

        var lowest = left & -left;
        var others = left & ~lowest;
        for (var some = others; lowest != 0; some = (some - 1) & others)
        {
            // The parts still to come need at least a unit each.
            if (System.Numerics.BitOperations.PopCount((uint)(others & ~some)) >= parts - 1
                && !IsTraceOnly(lowest | some)
                && IsFit(lowest | some, dilution))
            {
                Fill(others & ~some, parts - 1, dilution, [.. filled, new PartContent(lowest | some)], found);
            }

            if (some == 0)
            {
                break;
            }
        }
    }

    /// <summary>A part of traces alone is no main part: it has a strength of its own.</summary>
    private bool IsTraceOnly(int whole) => factory.IsTraceOnly(new PartContent(whole));

    private bool IsFit(int whole, double dilution) => judge.Judge(new PartContent(whole), dilution).IsFit;

    private static int Compare(Score left, Score right)
    {
        var order = 0;
        for (var i = 0; order == 0 && i < left.Indexes.Count && i < right.Indexes.Count; i++)
        {
            order = left.Indexes[i].CompareTo(right.Indexes[i]);
        }

        for (var i = 0; order == 0 && i < left.Grouping.Parts.Count; i++)
        {
            order = left.Grouping.Parts[i].Whole.CompareTo(right.Grouping.Parts[i].Whole);
        }

        return order;
    }

    private sealed record Score(IReadOnlyList<double> Indexes, Grouping Grouping);
}

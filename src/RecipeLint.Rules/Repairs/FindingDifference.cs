using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>What a change of the files does to the findings.</summary>
/// <param name="Removed">There before, gone after.</param>
/// <param name="Added">Not there before, or of a lower level then.</param>
/// <param name="Worsened">There before and after, further past its limit than a fiftieth; as it is after.</param>
internal sealed record FindingDifference(IReadOnlyList<Finding> Removed, IReadOnlyList<Finding> Added, IReadOnlyList<Finding> Worsened)
{
    private const double NoticeablyWorse = 0.02;

    /// <summary>Part of a figure that is lost or gained on top; far below its limit a fiftieth of the way is all there is.</summary>
    private const double NoticeablyLess = 0.1;

    /// <param name="target">The finding to be mended: nothing that comes instead counts as the same thing moved.</param>
    public static FindingDifference Between(LintResult before, LintResult after, Finding target)
    {
        var old = before.Findings.ToList();
        var now = after.Findings.ToList();
        var pairs = new List<(Finding Old, Finding New)>();
        Pair(old, now, pairs, (a, b) => IsSame(a, b));

        // A step that moved to another file, or whose id follows from what it adds, takes its other findings along.
        var own = old.Where(f => IsSame(f, target)).ToList();
        old.RemoveAll(own.Contains);
        Pair(old, now, pairs, (a, b) => a.Rule.Id == b.Rule.Id && a.Message == b.Message);
        Pair(old, now, pairs, (a, b) => a.Rule.Id == b.Rule.Id
            && a.Place.File == b.Place.File
            && WithoutIds(a) == WithoutIds(b)
            && a.Rule.Id != target.Rule.Id);
        Pair(old, now, pairs, (a, b) => a.Rule.Id == b.Rule.Id && a.IdPath == b.IdPath && a.Rule.Id != target.Rule.Id);
        old.InsertRange(0, own);
        return new FindingDifference(
            old,
            [.. now, .. pairs.Where(p => p.New.Level > p.Old.Level).Select(p => p.New)],
            [.. pairs.Where(p => p.New.Level <= p.Old.Level && IsWorse(p.Old, p.New)).Select(p => p.New)]);
    }

    /// <summary>The same finding in two runs.</summary>
    public static bool IsSame(Finding a, Finding b) => a.Rule.Id == b.Rule.Id && a.Place.File == b.Place.File && a.IdPath == b.IdPath;

    private static void Pair(
        List<Finding> old, List<Finding> now, List<(Finding Old, Finding New)> pairs, Func<Finding, Finding, bool> fits)
    {
        for (var i = old.Count - 1; i >= 0; i--)
        {
            var match = now.FindIndex(n => fits(old[i], n));
            if (match >= 0)
            {
                pairs.Add((old[i], now[match]));
                now.RemoveAt(match);
                old.RemoveAt(i);
            }
        }
    }

    private static bool IsWorse(Finding old, Finding now) =>
        old.Measured is { } was && now.Measured is { } measured && measured.IsWorseThan(was.Value)
        && Math.Abs(measured.Value - was.Value) is var moved
        && (moved > NoticeablyWorse * Math.Abs(was.Value - was.Limit) || moved > NoticeablyLess * Math.Abs(was.Value));

    private static string WithoutIds(Finding finding)
    {
        var parts = finding.IdPath.Split('/');
        return parts.Length > 1 ? string.Join('/', parts[..1].Concat(parts[2..])) : finding.IdPath;
    }
}

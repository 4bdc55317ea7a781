using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Comparison;

/// <summary>One of the two states that are compared.</summary>
/// <param name="Name">As the user wrote it.</param>
/// <param name="Key">From a file's path in the workspace to its path below what was asked for, which the two states have in common.</param>
public sealed record Side(string Name, Facts Facts, LintResult Result, Func<string, string> Key);

public enum FileChangeKind
{
    Same,
    Changed,
    Added,
    Removed,

    /// <summary>It lies elsewhere, or is called otherwise, and says about the same.</summary>
    Renamed,
}

/// <summary>A file in both states.</summary>
/// <param name="Old">Path in the old workspace; null for a file that is new.</param>
/// <param name="New">Path in the new workspace; null for a file that is gone.</param>
/// <param name="Shown">Path below what was asked for: of the new state, else of the old.</param>
public sealed record FileChange(string? Old, string? New, FileChangeKind Kind, string Shown);

/// <summary>An addition whose amount is not the same.</summary>
/// <param name="OldGrams">Null where it was not put in.</param>
/// <param name="NewGrams">Null where it is not put in any more.</param>
public sealed record AmountChange(string File, string Id, string What, double? OldGrams, double? NewGrams);

/// <summary>A computed figure that is not the same.</summary>
/// <param name="Kind">"recipe" or "stock".</param>
/// <param name="Figure">"K", "EC", "room when coldest" ...</param>
public sealed record FigureChange(string File, string Kind, string Figure, string Unit, double? Old, double? New)
{
    public bool IsPh => Figure == "pH";

    /// <summary>Share of the old value; null where there is none, and for a pH, of which no share means anything.</summary>
    public double? Share => !IsPh && Old is { } old && New is { } now && old != 0 ? (now - old) / Math.Abs(old) : null;
}

/// <summary>A finding that only one of the states has.</summary>
public sealed record FindingChange(string File, PlacedFinding Placed)
{
    public Finding Finding => Placed.Finding;
}

/// <summary>What changed between two states of some files, and what that does to plants and bottles. Pure.</summary>
/// <param name="Files">Without those that are the same.</param>
/// <param name="Brought">Findings that are new, the gravest first.</param>
/// <param name="Gone">Findings that are gone, the gravest first.</param>
/// <param name="Moved">Recipes whose own file is the same and whose solution is not.</param>
public sealed record Comparison(
    string Old,
    string New,
    IReadOnlyList<FileChange> Files,
    IReadOnlyList<FindingChange> Brought,
    IReadOnlyList<FindingChange> Gone,
    IReadOnlyList<AmountChange> Amounts,
    IReadOnlyList<FigureChange> Figures,
    IReadOnlyList<string> Moved)
{
    public static Comparison Of(Side old, Side now)
    {
        var pairs = FilePairs.Of(old, now);
        var amounts = new List<AmountChange>();
        var figures = new List<FigureChange>();
        var moved = new List<string>();
        foreach (var pair in pairs)
        {
            var before = pair.Old is null ? null : old.Facts.FindStock(pair.Old);
            var after = pair.New is null ? null : now.Facts.FindStock(pair.New);
            if (before is not null && after is not null)
            {
                amounts.AddRange(StockChanges.Amounts(pair.Shown, before, after));
                figures.AddRange(StockChanges.Figures(pair.Shown, before, after));
            }

            var fed = pair.Old is null ? null : old.Facts.Recipes.FirstOrDefault(r => r.Recipe.File == pair.Old);
            var feeds = pair.New is null ? null : now.Facts.Recipes.FirstOrDefault(r => r.Recipe.File == pair.New);
            if (fed is not null && feeds is not null)
            {
                var changed = RecipeChanges.Figures(pair.Shown, old.Facts, fed, now.Facts, feeds).ToList();
                figures.AddRange(changed);
                if (changed.Count > 0 && pair.Kind is FileChangeKind.Same or FileChangeKind.Renamed && IsSameText(old, now, pair))
                {
                    moved.Add(pair.Shown);
                }
            }
        }

        var (brought, gone) = Findings(old, now, pairs);
        return new Comparison(
            old.Name, now.Name, [.. pairs.Where(p => p.Kind != FileChangeKind.Same)], brought, gone, amounts, figures, moved);
    }

    /// <summary>True when nothing at all differs that was looked at.</summary>
    public bool IsEmpty => Files.Count + Brought.Count + Gone.Count + Amounts.Count + Figures.Count == 0;

    private static bool IsSameText(Side old, Side now, FileChange pair) =>
        old.Facts.Workspace.Sources[pair.Old!].Bytes.SequenceEqual(now.Facts.Workspace.Sources[pair.New!].Bytes);

    /// <summary>A finding is the same by rule, file and path of ids, also in a file that was renamed.</summary>
    private static (IReadOnlyList<FindingChange> Brought, IReadOnlyList<FindingChange> Gone) Findings(
        Side old, Side now, IReadOnlyList<FileChange> pairs)
    {
        var shownOld = pairs.Where(p => p.Old is not null).ToDictionary(p => p.Old!, p => p.Shown, StringComparer.Ordinal);
        var shownNew = pairs.Where(p => p.New is not null).ToDictionary(p => p.New!, p => p.Shown, StringComparer.Ordinal);
        var before = Keyed(old, shownOld).ToList();
        var after = Keyed(now, shownNew).ToList();
        return (Without(after, before), Without(before, after));

        static IEnumerable<(string Key, FindingChange Change)> Keyed(Side side, Dictionary<string, string> shown) =>
            PlacedFinding.InOrder(side.Result.Findings, side.Facts.Workspace.Sources)
                .Where(f => shown.ContainsKey(f.Spot.File))
                .Select(f => (Fingerprint.Of(
                    f.Finding.Rule.Id, shown[f.Spot.File], f.Finding.IdPath), new FindingChange(shown[f.Spot.File], f)));

        static List<FindingChange> Without(List<(string Key, FindingChange Change)> these, List<(string Key, FindingChange Change)> those)
        {
            // As often as it is there, so that a second one of the same fingerprint still counts.
            var open = those.GroupBy(t => t.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
            var left = new List<FindingChange>();
            foreach (var (key, change) in these)
            {
                if (open.GetValueOrDefault(key) is > 0 and var count)
                {
                    open[key] = count - 1;
                }
                else
                {
                    left.Add(change);
                }
            }

            return [.. left.OrderByDescending(f => f.Finding.Level)];
        }
    }
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>The order of formats that may have to leave something out: the gravest first, then as in the text.</summary>
internal static class Importance
{
    public static IReadOnlyList<PlacedFinding> WorstFirst(Report report) =>
        [.. PlacedFinding.InOrder(report.Result.Findings, report.Sources).OrderByDescending(f => f.Finding.Level)];

    public static int Count(Report report, Level level) => report.Result.Findings.Count(f => f.Level == level);
}

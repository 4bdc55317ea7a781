using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>How often each rule speaks, for whoever takes the rules up in a shop that has lived without them.</summary>
public static class Statistics
{
    /// <param name="safeRepairs">Findings by rule id that '--fix' would mend; empty where none.</param>
    public static IReadOnlyList<string> Lines(Report report, IReadOnlyDictionary<string, int> safeRepairs, int width)
    {
        var rows = report.Result.Findings.GroupBy(f => f.Rule)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key.Id, StringComparer.Ordinal)
            .Select(g => (IReadOnlyList<string>)
            [
                g.Key.Id, g.Key.Name, Say.Number(g.Count()), Words.Of(g.Max(f => f.Level)),
                Say.Number(g.Select(f => f.Place.File).Distinct(StringComparer.Ordinal).Count()),
                safeRepairs.GetValueOrDefault(g.Key.Id) is > 0 and var mended ? Say.Number(mended) : "",
            ])
            .ToList();
        var total = safeRepairs.Values.Sum();
        return
        [
            .. TableText.Lines(
                new Table([new("rule"), new("name"), new(
                    "findings", true), new("worst"), new("files", true), new("--fix mends", true)], rows), width),
            $"{Say.Number(report.Result.Findings.Count)} findings of {Say.Number(rows.Count)} rules in {Say.Number(report.FilesChecked)} "
                + "files; "
                + (total == 0 ? "'--fix' would mend none." : $"'--fix' would mend {Say.Number(total)}."),
        ];
    }
}

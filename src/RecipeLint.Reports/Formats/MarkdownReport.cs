using System.Globalization;
using System.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// The report as Markdown for a pull request or the summary of a build: verdict, findings with the line they stand on, the worst first.
/// What is past the size a comment may have is left out and counted.
/// </summary>
public static class MarkdownReport
{
    /// <summary>Characters; a comment on GitHub holds 65,536 (recalled), a step summary 1 MiB.</summary>
    public const int MostCharacters = 60_000;

    private const int ExcerptWidth = 100;

    public static void Write(TextWriter writer, Report report)
    {
        var findings = Importance.WorstFirst(report);
        writer.Write($"## RecipeLint: {MarkdownEscape.Text(TextReport.Summary(report, findings).TrimEnd('.'))}\n");
        foreach (var fault in report.Result.Faults)
        {
            writer.Write($"\n**Internal fault:** {MarkdownEscape.Text(fault.Message)}\n");
        }

        var used = 0;
        var shown = 0;
        foreach (var finding in findings)
        {
            var text = Block(finding);
            if (used + text.Length > MostCharacters)
            {
                break;
            }

            writer.Write(text);
            used += text.Length;
            shown++;
        }

        if (shown < findings.Count)
        {
            writer.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"\n{findings.Count - shown} more findings are left out here; 'recipelint check' shows them all.\n"));
        }

        if (report.Assumptions.Count > 0)
        {
            writer.Write($"\nAssumed: {MarkdownEscape.Text(string.Join(' ', report.Assumptions.Distinct(StringComparer.Ordinal)))}\n");
        }
    }

    private static string Block(PlacedFinding placed)
    {
        var finding = placed.Finding;
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"\n### {Words.Of(finding.Level)}: {MarkdownEscape.Text(finding.Rule.Id)} {MarkdownEscape.Text(finding.Rule.Name)}");
        text.Append(finding.Certainty == Certainty.Computed ? "\n\n" : $" ({Words.Of(finding.Certainty)})\n\n");
        text.Append(CultureInfo.InvariantCulture, $"{Where(placed.Spot)}\n\n{MarkdownEscape.Text(finding.Message)}\n");
        if (placed.Spot.Source is { } source)
        {
            var (start, end) = placed.Spot.Lines;
            var line = source.Line(start.Line);
            var excerpt = Excerpt.Of(line, start.Column - 1, end.Line > start.Line ? line.Length : end.Column - 1, ExcerptWidth);
            text.Append('\n')
                .AppendJoin('\n', MarkdownEscape.Block([excerpt.Text, new string(' ', excerpt.Offset) + new string('^', excerpt.Length)]))
                .Append('\n');
        }

        foreach (var (spot, label) in placed.Related)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n- {Where(spot)}: {MarkdownEscape.Text(label)}");
        }

        return text.Append(placed.Related.Count > 0 ? "\n" : "").ToString();
    }

    private static string Where(Spot spot) =>
        string.Create(CultureInfo.InvariantCulture, $"{MarkdownEscape.Code(spot.File)}, line {spot.Lines.Start.Line}");
}

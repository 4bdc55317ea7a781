using System.Globalization;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// Annotations on the lines of a pull request. GitHub shows ten of a kind for a step; the ten gravest of all are given and what was cut is
/// said in the log, so that nobody takes silence for consent.
/// </summary>
public static class GithubReport
{
    public const int MostAnnotations = 10;

    public static void Write(TextWriter writer, Report report)
    {
        var findings = Importance.WorstFirst(report);
        foreach (var placed in findings.Take(MostAnnotations))
        {
            writer.Write(Annotation(placed));
            writer.Write('\n');
        }

        foreach (var fault in report.Result.Faults)
        {
            writer.Write($"::error title=RecipeLint::{GithubEscape.Message("Internal fault: " + fault.Message)}\n");
        }

        if (findings.Count > MostAnnotations)
        {
            Line(string.Create(
                CultureInfo.InvariantCulture,
                $"{findings.Count - MostAnnotations} more findings were cut: only the {MostAnnotations} most important are annotated. "
                    + $"'recipelint check' shows them all."));
        }

        Line(TextReport.Summary(report, findings));

        void Line(string text) => writer.Write(Printable.GuardLine(Printable.Show(text)) + "\n");
    }

    private static string Annotation(PlacedFinding placed)
    {
        var finding = placed.Finding;
        var (start, end) = placed.Spot.Lines;
        var command = finding.Level switch { Level.Error => "error", Level.Warning => "warning", _ => "notice" };

        // Columns only count on one line.
        var columns = start.Line == end.Line
            ? string.Create(CultureInfo.InvariantCulture, $",col={start.Column},endColumn={Math.Max(end.Column, start.Column)}")
            : "";
        var place = string.Create(
            CultureInfo.InvariantCulture, $"file={GithubEscape.Property(placed.Spot.File)},line={start.Line},endLine={end.Line}{columns}");
        var title = GithubEscape.Property($"{finding.Rule.Id} {finding.Rule.Name}");
        return $"::{command} {place},title={title}::{GithubEscape.Message(finding.Message)}";
    }
}

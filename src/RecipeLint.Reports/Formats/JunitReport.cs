using System.Globalization;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// The report as JUnit XML, which every build server shows: a suite for each file, a failing case for each error and warning, a passing one
/// with its text for each note, and one passing case for a file without findings.
/// </summary>
public static class JunitReport
{
    public static void Write(TextWriter writer, Report report)
    {
        var byFile = PlacedFinding.InOrder(report.Result.Findings, report.Sources).ToLookup(f => f.Spot.File, StringComparer.Ordinal);
        var files = report.Asked.Concat(byFile.Select(g => g.Key)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        var cases = files.Sum(f => Math.Max(1, byFile[f].Count())) + report.Result.Faults.Count;
        var failures = report.Result.Findings.Count(f => f.Level > Level.Note);
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        writer.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"<testsuites name=\"RecipeLint\" tests=\"{cases}\" failures=\"{failures}\" errors=\"{report.Result.Faults.Count}\">\n"));
        foreach (var file in files)
        {
            Suite(writer, file, [.. byFile[file]]);
        }

        if (report.Result.Faults.Count > 0)
        {
            writer.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"  <testsuite name=\"RecipeLint itself\" tests=\"{report.Result.Faults.Count}\" failures=\"0\" "
                    + $"errors=\"{report.Result.Faults.Count}\">\n"));
            foreach (var fault in report.Result.Faults)
            {
                writer.Write($"    <testcase name=\"{XmlEscape.Text(fault.RuleName)}\" classname=\"RecipeLint\">\n");
                writer.Write($"      <error message=\"{XmlEscape.Text(fault.Message)}\"/>\n    </testcase>\n");
            }

            writer.Write("  </testsuite>\n");
        }

        writer.Write("</testsuites>\n");
    }

    private static void Suite(TextWriter writer, string file, List<PlacedFinding> findings)
    {
        var failures = findings.Count(f => f.Finding.Level > Level.Note);
        writer.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"  <testsuite name=\"{XmlEscape.Text(file)}\" tests=\"{Math.Max(1, findings.Count)}\" failures=\"{failures}\" "
                + $"errors=\"0\">\n"));
        if (findings.Count == 0)
        {
            writer.Write($"    <testcase name=\"no rule objects\" classname=\"{XmlEscape.Text(file)}\"/>\n");
        }

        foreach (var placed in findings)
        {
            Case(writer, file, placed);
        }

        writer.Write("  </testsuite>\n");
    }

    private static void Case(TextWriter writer, string file, PlacedFinding placed)
    {
        var finding = placed.Finding;
        var start = placed.Spot.Lines.Start;
        var name = string.Create(CultureInfo.InvariantCulture, $"{finding.Rule.Id} {finding.Rule.Name} at {start.Line}:{start.Column}");
        var place = string.Create(CultureInfo.InvariantCulture, $"{file}:{start.Line}:{start.Column}");
        var message = XmlEscape.Text(Sentences.First(finding.Message));
        var whole = XmlEscape.Text($"{place}: {Words.Of(finding.Level)}: {finding.Message}");
        writer.Write($"    <testcase name=\"{XmlEscape.Text(name)}\" classname=\"{XmlEscape.Text(file)}\">\n");
        writer.Write(finding.Level == Level.Note
            ? $"      <system-out>{whole}</system-out>\n"
            : $"      <failure type=\"{Words.Of(finding.Level)}\" message=\"{message}\">{whole}</failure>\n");
        writer.Write("    </testcase>\n");
    }
}

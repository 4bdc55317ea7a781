using System.Globalization;
using RecipeLint.Recipes.Json;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>How a text report looks.</summary>
/// <param name="Color">With terminal colours.</param>
/// <param name="Width">Columns; only a position line may be wider.</param>
/// <param name="Quiet">One line for each finding, with its first sentence, and nothing else.</param>
/// <param name="WithSuppressed">Accepted findings too, each in one line with its reason.</param>
public sealed record TextOptions(bool Color = false, int Width = 100, bool Quiet = false, bool WithSuppressed = false);

/// <summary>The report for people: what is wrong and by how much, the lines it stands on, what was assumed, and a summary.</summary>
public static class TextReport
{
    private const int SmallestWidth = 40;

    public static void Write(TextWriter writer, Report report, TextOptions options)
    {
        var width = Math.Max(options.Width, SmallestWidth);
        var lines = new StyledLines(writer, options.Color);
        var findings = PlacedFinding.InOrder(report.Result.Findings, report.Sources);
        var block = new FindingBlock(lines, width);
        foreach (var finding in findings)
        {
            if (options.Quiet)
            {
                block.WriteQuiet(finding);
            }
            else
            {
                block.Write(finding);
                if (report.Repairs is { } repairs)
                {
                    RepairBlock.Write(lines, repairs.GetValueOrDefault(finding.Finding) ?? [], width);
                }
            }
        }

        if (options.Quiet)
        {
            // Findings alone: what else there is to say stands on stderr or in the exit code.
            return;
        }

        if (options.WithSuppressed)
        {
            WriteSuppressed(lines, report, width);
        }

        if (report.Assumptions.Count > 0)
        {
            WriteWrapped(lines, "Assumed: " + string.Join(' ', report.Assumptions.Distinct(StringComparer.Ordinal)), width);
        }

        foreach (var fault in report.Result.Faults)
        {
            WriteWrapped(lines, "Internal fault: " + fault.Message, width);
        }

        WriteWrapped(lines, Summary(report, findings), width);
    }

    private static void WriteSuppressed(StyledLines lines, Report report, int width)
    {
        foreach (var suppressed in report.Result.Suppressed)
        {
            var spot = Spot.Of(suppressed.Finding.Place, report.Sources);
            var finding = suppressed.Finding;
            var until = suppressed.Suppression.Expires is { } last
                ? string.Create(CultureInfo.InvariantCulture, $", until {last:yyyy-MM-dd}")
                : "";
            var value = suppressed.Suppression.Accepted is { } accepted
                ? string.Create(CultureInfo.InvariantCulture, $", up to {accepted:G6}")
                : "";
            WriteWrapped(
                lines,
                string.Create(CultureInfo.InvariantCulture, $"{spot.File}:{spot.Lines.Start.Line}:{spot.Lines.Start.Column}: ")
                + $"accepted {finding.Rule.Id} {finding.Rule.Name}{value}{until}: {suppressed.Suppression.Reason}",
                width);
        }
    }

    /// <summary>"2 errors, 1 warning in 2 of 4 files; 1 suppressed."</summary>
    public static string Summary(Report report, IReadOnlyList<PlacedFinding> findings)
    {
        var checkedFiles = Count(report.FilesChecked, "file", "files");
        var suppressed = report.Result.Suppressed.Count == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"; {report.Result.Suppressed.Count} suppressed");
        if (findings.Count == 0)
        {
            return report.Result.Faults.Count == 0
                ? $"{checkedFiles} checked, and no rule objects{suppressed}."
                : $"{checkedFiles} read, but not everything could be judged{suppressed}.";
        }

        var levels = new List<string>();
        Add(Level.Error, "error", "errors");
        Add(Level.Warning, "warning", "warnings");
        Add(Level.Note, "note", "notes");
        var hit = findings.Select(f => f.Spot.File).Distinct(StringComparer.Ordinal).Count();
        var where = report.FilesChecked > hit
            ? string.Create(CultureInfo.InvariantCulture, $"{hit} of {checkedFiles}")
            : Count(hit, "file", "files");
        return $"{string.Join(", ", levels)} in {where}{suppressed}.";

        void Add(Level level, string one, string many)
        {
            var count = findings.Count(f => f.Finding.Level == level);
            if (count > 0)
            {
                levels.Add(Count(count, one, many));
            }
        }
    }

    private static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    private static void WriteWrapped(StyledLines lines, string text, int width)
    {
        var first = true;
        foreach (var line in TextWrap.Wrap(Printable.Show(text), width - 2))
        {
            lines.Line(((first ? "" : "  ") + line, Style.Plain));
            first = false;
        }
    }
}

/// <summary>One finding as text.</summary>
internal sealed class FindingBlock(StyledLines lines, int width)
{
    private SourceFile? _lineOwner;
    private int _lineNumber;
    private string _line = "";

    public void Write(PlacedFinding placed)
    {
        var finding = placed.Finding;
        var style = StyledLines.StyleOf(finding.Level);
        var certainty = Certainty(finding);
        lines.Line(
            (Position(placed.Spot), Style.Strong),
            (" ", Style.Plain),
            (Words.Of(finding.Level), style),
            ($" {Name(finding)}{certainty}:", Style.Plain));
        foreach (var line in TextWrap.Wrap(Printable.Show(finding.Message), width - 2).Where(l => l.Length > 0))
        {
            lines.Line(("  " + line, Style.Plain));
        }

        var here = placed.Related.Where(r => r.Spot.File == placed.Spot.File).Select(r => new Mark(r.Spot, r.Label, false));
        Mark[] marks = [.. here.Append(new Mark(placed.Spot, "", true)).OrderBy(m => m.Spot.Bytes.Start).ThenBy(m => !m.Primary)];
        if (placed.Spot.Source is not null)
        {
            lines.Blank();
            WriteMarks(marks, style);
        }

        foreach (var (spot, label) in placed.Related.Where(r => r.Spot.File != placed.Spot.File))
        {
            var text = Printable.Show(label);
            var start = $"  {Position(spot)} ";
            if (DisplayWidth.Of(start) + DisplayWidth.Of(text) <= width)
            {
                lines.Line((start, Style.Strong), (text, Style.Related));
            }
            else
            {
                lines.Line((start, Style.Strong));
                foreach (var line in TextWrap.Wrap(text, width - 4))
                {
                    lines.Line(("    " + line, Style.Related));
                }
            }

            if (spot.Source is not null)
            {
                WriteMarks([new Mark(spot, "", false)], style);
            }
        }

        lines.Blank();
    }

    /// <summary>One line, however wide: what looks for findings line by line finds them all.</summary>
    public void WriteQuiet(PlacedFinding placed)
    {
        var finding = placed.Finding;
        var sentence = Printable.Show(Sentences.First(finding.Message));
        lines.Line(
            ($"{Position(placed.Spot)} ", Style.Strong),
            (Words.Of(finding.Level), StyledLines.StyleOf(finding.Level)),
            ($" {Name(finding)}{Certainty(finding)}: {sentence}", Style.Plain));
    }

    private static string Certainty(Finding finding) =>
        finding.Certainty == Rules.Engine.Certainty.Computed ? "" : $" ({Words.Of(finding.Certainty)})";

    private static string Name(Finding finding) => Printable.Show($"{finding.Rule.Id} {finding.Rule.Name}");

    private static string Position(Spot spot)
    {
        var start = spot.Lines.Start;
        return string.Create(CultureInfo.InvariantCulture, $"{Printable.Show(spot.File)}:{start.Line}:{start.Column}:");
    }

    private void WriteMarks(IReadOnlyList<Mark> marks, Style style)
    {
        var digits = marks.Max(m => m.Spot.Lines.Start.Line).ToString(CultureInfo.InvariantCulture).Length;
        var indent = digits + 6;
        var lastLine = 0;
        foreach (var mark in marks)
        {
            var (start, end) = mark.Spot.Lines;
            var line = Line(mark.Spot.Source!, start.Line);
            var goesOn = end.Line > start.Line;
            var excerpt = Excerpt.Of(line, start.Column - 1, goesOn ? line.Length : end.Column - 1, width - indent);
            if (start.Line != lastLine || !excerpt.Whole)
            {
                var isPrimary = mark.Primary || marks.Any(m => m.Primary && m.Spot.Lines.Start.Line == start.Line && excerpt.Whole);
                var number = start.Line.ToString(CultureInfo.InvariantCulture).PadLeft(digits);
                lines.Line((isPrimary ? "  > " : "    ", style), (number, Style.Faint), ("  " + excerpt.Text, Style.Plain));
                lastLine = start.Line;
            }

            var label = Printable.Show(mark.Label);
            if (goesOn)
            {
                label = string.Create(CultureInfo.InvariantCulture, $"{label}{(label.Length == 0 ? "" : " ")}(to line {end.Line})");
            }

            WriteUnderline(excerpt, label, indent, mark.Primary ? '^' : '-', mark.Primary ? style : Style.Related);
        }
    }

    private void WriteUnderline(Excerpt excerpt, string label, int indent, char sign, Style style)
    {
        var before = new string(' ', indent + excerpt.Offset);
        var underline = new string(sign, excerpt.Length);
        if (label.Length == 0)
        {
            lines.Line((before, Style.Plain), (underline, style));
            return;
        }

        if (before.Length + underline.Length + 1 + DisplayWidth.Of(label) <= width)
        {
            lines.Line((before, Style.Plain), ($"{underline} {label}", style));
            return;
        }

        lines.Line((before, Style.Plain), (underline, style));
        var room = Math.Min(before.Length, width / 2);
        foreach (var line in TextWrap.Wrap(label, width - room))
        {
            lines.Line((new string(' ', room), Style.Plain), (line, style));
        }
    }

    private string Line(SourceFile source, int number)
    {
        if (_lineOwner != source || _lineNumber != number)
        {
            _lineOwner = source;
            _lineNumber = number;
            _line = source.Line(number);
        }

        return _line;
    }

    private sealed record Mark(Spot Spot, string Label, bool Primary);
}

using System.Globalization;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.BenchSheets;

/// <summary>The sheet as text.</summary>
public static class BenchSheetText
{
    public static void Write(TextWriter writer, BenchSheet sheet, TextOptions options)
    {
        var lines = new StyledLines(writer, options.Color);
        lines.Line((Printable.Show($"{sheet.Name}, {Say.Litres(sheet.Batch.Litres)} ({sheet.File})"), Style.Strong));
        Section(
            sheet.Refused.Count > 0 ? "Do not mix this" : "Before you start", [.. sheet.Refused, .. sheet.Protection, .. sheet.Cautions]);
        if (sheet.Refused.Count == 0)
        {
            lines.Blank();
            lines.Line(("Steps", Style.Strong));
            var table = new Table(
                [new("step", true), new("what to do"), new("show", true), new("with"), new("rounding", true), new("expect after it")],
                [
                    .. sheet.Lines.Select(l => (IReadOnlyList<string>)
                        [Say.Number(l.Number), string.Join(' ', l.Notes.Prepend(l.Does)), Shown(l), l.With ?? "", Rounding(l), l.Expect]),
                ]);
            foreach (var line in TableText.Lines(table, options.Width))
            {
                lines.Line((line, Style.Plain));
            }
        }

        Section("Stop when", sheet.Stops);
        Section("After mixing, at about 20 °C", sheet.Checks);
        Section("Clean up", sheet.CleanUp);
        Section("Look further", sheet.Further);

        void Section(string title, IReadOnlyList<string> items)
        {
            if (items.Count == 0)
            {
                return;
            }

            lines.Blank();
            lines.Line((title, Style.Strong));
            foreach (var item in items)
            {
                var first = true;
                foreach (var line in TextWrap.Wrap(Printable.Show(item), options.Width - 4))
                {
                    lines.Line(((first ? "  - " : "    ") + line, Style.Plain));
                    first = false;
                }
            }
        }
    }

    /// <summary>The amount with as many decimals as the display has.</summary>
    internal static string Shown(SheetLine line)
    {
        if (line.Shown is not { } shown || line.Step is not { } step)
        {
            return line.Exact is { } exact ? line.IsVolume ? Say.Litres(exact) : Say.Grams(exact) : "";
        }

        var (value, unit, grain) = line.IsVolume ? (shown * 1000, "mL", step * 1000) : (shown, "g", step);
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(grain) - 1e-9), 0, 6);
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + unit;
    }

    /// <summary>"+0.03 %", or nothing where nothing is rounded.</summary>
    internal static string Rounding(SheetLine line) => line.RoundingError is not { } error ? ""
        : Math.Abs(error) < 5e-6 ? "0 %" : (error > 0 ? "+" : "") + Say.Number(100 * error) + " %";
}

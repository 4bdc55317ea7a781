using System.Globalization;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Labels;

/// <summary>
/// A label drawn in millimetres. The letters shrink until everything fits, but not below what can be read; what does not fit then needs a
/// larger label.
/// </summary>
public static class LabelSvg
{
    /// <summary>
    /// Letters of mixed text are about this wide on average, as a part of their height (measured on common sans-serif faces; recalled).
    /// </summary>
    private const double LetterWidth = 0.56;

    /// <summary>Height of the letters, mm: the lower end has an x-height of 1.2 mm (CLP, Annex I, 1.2.1.4; recalled).</summary>
    private const double LargestLetter = 4.2, SmallestLetter = 2.3, LetterStep = 0.1;

    private const double Margin = 3, LineHeight = 1.18;

    /// <summary>The label as an SVG of its own; null where it does not fit.</summary>
    public static string? Of(BottleLabel label, LabelSize size)
    {
        for (var letter = LargestLetter; letter >= SmallestLetter; letter -= LetterStep)
        {
            if (Laid(label, size, letter) is { } inside)
            {
                return Html.Of(
                    $"""
                    <svg xmlns="http://www.w3.org/2000/svg" width="{size.Width}mm" height="{size.Height}mm" viewBox="0 0 {size.Width} {size.Height}" role="img" aria-label="Label of {label.Name}" font-family="Arial, 'Liberation Sans', Helvetica, sans-serif">
                    {inside}</svg>

                    """).ToString();
            }
        }

        return null;
    }

    /// <summary>The smallest common label on which it fits; null when none is large enough.</summary>
    public static LabelSize? SmallestFor(BottleLabel label) =>
        LabelSize.Common.Where(s => Of(label, s) is not null).Select(s => (LabelSize?)s).FirstOrDefault();

    private static Html? Laid(BottleLabel label, LabelSize size, double letter)
    {
        var (path, modules) = SquareCode.Of(label.Identity);

        // A module of 0.33 mm is read by any phone (common practice, no source).
        var code = Math.Max(modules * 0.33, Math.Min(size.Height * 0.34, 34));
        var picture = label.Pictograms.Count == 0 ? 0 : Math.Min(16, Math.Max(10, size.Height * 0.17));
        var side = Math.Max(code, picture > 0 ? (picture * 1.1) + 1 : 0);
        var text = size.Width - (2 * Margin) - side - 2;
        var band = label.Colour is null ? 0 : letter * 1.6;
        var lines = Lines(label, letter, text).ToList();
        var height = Margin + band + lines.Sum(l => l.Height) + Margin;
        var pictures = Math.Ceiling(label.Pictograms.Count / (side >= 2.2 * picture ? 2.0 : 1)) * (picture * 1.06);
        if (height > size.Height || Margin + band + code + pictures + Margin > size.Height || text < 20)
        {
            return null;
        }

        var y = Margin + band;
        var drawn =
            Html.Of($"<rect x=\"0.2\" y=\"0.2\" width=\"{N(size.Width - 0.4)}\" height=\"{N(size.Height - 0.4)}\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\"/>\n");
        if (label.Colour is { } colour)
        {
            drawn +=
                Html.Of($"<rect x=\"0.35\" y=\"0.35\" width=\"{N(size.Width - 0.7)}\" height=\"{N(band)}\" fill=\"{LabelColours.Of(colour)}\" stroke=\"#000\" stroke-width=\"0.2\"/>\n");
            drawn += Text(Margin, band * 0.75, letter, true, $"mark: {colour}", LabelColours.TextOn(colour));
        }

        foreach (var line in lines)
        {
            y += line.Height;
            drawn += Text(Margin, y - (0.28 * line.Letter), line.Letter, line.IsBold, line.Text, "#000");
        }

        var right = size.Width - Margin - side;
        drawn += Code(path, modules, right + side - code, Margin + band, code);
        return drawn + Pictures(label, right, Margin + band + code + (picture * 0.06), picture, side);
    }

    private static Html Pictures(BottleLabel label, double x, double y, double picture, double side)
    {
        var across = side >= 2.2 * picture ? 2 : 1;
        return Html.Join(label.Pictograms.Select((p, i) => PictogramDrawing.Of(
            p, x + (side / across * (i % across)) + ((side / across - picture) / 2), y + (picture * 1.06 * (i / across)), picture)));
    }

    private static Html Code(string path, int modules, double x, double y, double width)
    {
        var scale = width / modules;
        return Html.Of($"<path transform=\"translate({N(x)} {N(y)}) scale({N(scale)})\" d=\"{Html.Drawn(path)}\" fill=\"#000\"><title>File and digest</title></path>\n");
    }

    private static IEnumerable<Line> Lines(BottleLabel label, double letter, double width)
    {
        foreach (var line in Wrapped(label.Name, letter * 1.6, width, bold: true))
        {
            yield return line;
        }

        if (label.SignalWord is { } signal)
        {
            yield return new Line(signal.ToUpperInvariant(), letter * 1.35, true);
        }

        (string Head, string? Text)[] parts =
        [
            ("Holds", string.Join("; ", label.Contents)),
            ("Dose", label.Dilution),
            ("", string.Join(' ', label.Statements)),
            ("", label.KeepApart),
            ("", $"Made on {label.Made}   Use by {label.UseBy}"),
            ("", $"Batch {label.Batch}"),
            ("", label.Source),
        ];
        foreach (var (head, text) in parts.Where(p => !string.IsNullOrWhiteSpace(p.Text)))
        {
            foreach (var line in Wrapped(head.Length == 0 ? text! : $"{head}: {text}", letter, width, bold: head == "Dose"))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<Line> Wrapped(string text, double letter, double width, bool bold) =>
        TextWrap.Wrap(Printable.Show(text), (int)(width / (letter * (bold ? LetterWidth * 1.06 : LetterWidth))))
            .Select(t => new Line(t, letter, bold));

    private static Html Text(double x, double y, double letter, bool bold, string text, string fill) => Html.Of(
        $"<text x=\"{N(x)}\" y=\"{N(y)}\" font-size=\"{N(letter)}\" font-weight=\"{(bold ? "700" : "400")}\" fill=\"{fill}\" xml:space=\"preserve\">{text}</text>\n");

    private static string N(double value) => Math.Round(value, 3).ToString(CultureInfo.InvariantCulture);

    private sealed record Line(string Text, double Letter, bool IsBold)
    {
        public double Height => Letter * LineHeight;
    }
}

/// <summary>The shop's colour words as colours; a word nobody knows stays white and is read as the word.</summary>
internal static class LabelColours
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["red"] = "#c62828",
        ["green"] = "#2e7d32",
        ["blue"] = "#1565c0",
        ["yellow"] = "#fdd835",
        ["orange"] = "#ef6c00",
        ["white"] = "#ffffff",
        ["black"] = "#111111",
        ["grey"] = "#757575",
        ["gray"] = "#757575",
        ["brown"] = "#5d4037",
        ["violet"] = "#6a1b9a",
        ["purple"] = "#6a1b9a",
        ["pink"] = "#d81b60",
    };

    private static readonly HashSet<string> Pale = new(["yellow", "white"], StringComparer.OrdinalIgnoreCase);

    public static string Of(string word) => Known.GetValueOrDefault(word.Trim(), "#ffffff");

    public static string TextOn(string word) => Known.ContainsKey(word.Trim()) && !Pale.Contains(word.Trim()) ? "#ffffff" : "#000000";
}

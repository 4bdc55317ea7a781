using RecipeLint.Recipes.Json;
using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Handbook;

/// <summary>A file as a figure: numbered lines with the places of findings marked in them.</summary>
internal static class MarkedFile
{
    /// <param name="source">The whole file is shown; examples are short.</param>
    /// <param name="findings">Findings whose places are marked where they stand in this file.</param>
    /// <param name="added">Numbers of lines to show as new.</param>
    /// <param name="isNew">The whole file is new, which its caption says.</param>
    public static Html Figure(SourceFile source, IEnumerable<PlacedFinding> findings, IReadOnlySet<int> added, bool isNew = false)
    {
        var placed = findings.ToList();
        Mark[] marks =
        [
            .. placed.Where(f => f.Spot.File == source.Path).Select(f => new Mark(f.Spot, Primary: true)),
            .. placed.SelectMany(f => f.Related).Where(r => r.Spot.File == source.Path).Select(r => new Mark(r.Spot, Primary: false)),
        ];
        var lines = Html.Empty;
        for (var number = 1; number <= source.LineCount; number++)
        {
            var text = source.Line(number);
            if (number == source.LineCount && text.Length == 0 && number > 1)
            {
                break;
            }

            var line = Line(text, number, marks);
            lines += added.Contains(number)
                ? Html.Of($"<span class=\"l\"><ins>{line}</ins>\n</span>")
                : Html.Of($"<span class=\"l\">{line}\n</span>");
        }

        var caption = isNew ? Html.Of($"<ins>{source.Path}</ins> (new)") : Html.Text(source.Path);
        return Html.Of(
            $"""
            <figure class="file"><figcaption>{caption}</figcaption>
            {CodeBlock.Framed(lines)}</figure>

            """);
    }

    /// <summary>The line cut where marks begin and end; the place to change wins over related ones.</summary>
    private static Html Line(string text, int number, Mark[] marks)
    {
        var here = marks.Select(m => m.On(number, text)).OfType<(int Start, int End, bool Primary)>().ToList();
        var cuts = here.SelectMany(m => new[] { m.Start, m.End }).Append(0).Append(text.Length).Distinct().Order().ToList();
        var html = Html.Empty;
        for (var i = 0; i + 1 < cuts.Count; i++)
        {
            var (from, to) = (cuts[i], cuts[i + 1]);
            var piece = Html.Text(text[from..to].Replace("\t", "  ", StringComparison.Ordinal));
            var over = here.Where(m => m.Start <= from && m.End >= to).ToList();
            html += over.Exists(m => m.Primary) ? Html.Of($"<mark>{piece}</mark>")
                : over.Count > 0 ? Html.Of($"<span class=\"also\">{piece}</span>")
                : piece;
        }

        return html;
    }

    private sealed record Mark(Spot Spot, bool Primary)
    {
        /// <summary>The stretch of a line that is marked, as UTF-16 units; null where the mark does not touch it.</summary>
        public (int Start, int End, bool Primary)? On(int number, string text)
        {
            var (start, end) = Spot.Lines;
            if (number < start.Line || number > end.Line)
            {
                return null;
            }

            var from = number == start.Line ? start.Column - 1 : text.Length - text.TrimStart().Length;
            var to = number == end.Line ? end.Column - 1 : text.Length;
            (from, to) = (Math.Clamp(from, 0, text.Length), Math.Clamp(to, 0, text.Length));
            return from < to ? (from, to, Primary) : null;
        }
    }
}

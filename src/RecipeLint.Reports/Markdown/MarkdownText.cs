using System.Text;

namespace RecipeLint.Reports;

/// <summary>Renders the Markdown of the explanations as text for a terminal.</summary>
public static class MarkdownText
{
    private const int SmallestCell = 6;
    private const string Gap = "  ";

    /// <param name="markdown">The subset <see cref="MarkdownParser"/> states.</param>
    /// <param name="width">Columns; only code lines may be wider.</param>
    /// <param name="color">With terminal colours; without, emphasis marks are dropped and inline code keeps its backticks.</param>
    public static string Render(string markdown, int width = 100, bool color = false)
    {
        var writer = new StringWriter();
        var lines = new StyledLines(writer, color);
        MarkdownBlock? before = null;
        foreach (var block in MarkdownParser.Parse(markdown))
        {
            if (before is not null && !IsOneList(before, block))
            {
                lines.Blank();
            }

            Write(block, lines, width);
            before = block;
        }

        return writer.ToString();
    }

    private static bool IsOneList(MarkdownBlock before, MarkdownBlock block) =>
        before is MarkdownBlock.Item first && block is MarkdownBlock.Item next
        && (first.Depth != next.Depth || char.IsAsciiDigit(first.Marker[0]) == char.IsAsciiDigit(next.Marker[0]));

    private static void Write(MarkdownBlock block, StyledLines lines, int width)
    {
        switch (block)
        {
            case MarkdownBlock.Heading heading:
                var title = Inline(heading.Text);
                foreach (var line in TextWrap.Wrap(title, width))
                {
                    lines.Line((line, Style.Strong));
                }

                if (heading.Depth <= 2)
                {
                    var sign = heading.Depth == 1 ? '=' : '-';
                    lines.Line((new string(sign, Math.Min(width, DisplayWidth.Of(title))), Style.Faint));
                }

                break;
            case MarkdownBlock.Paragraph paragraph:
                Wrapped(lines, "", "", paragraph.Text, width, Style.Plain);
                break;
            case MarkdownBlock.Item item:
                var margin = new string(' ', 2 + (2 * Math.Min(item.Depth, 4)));
                var marker = char.IsAsciiDigit(item.Marker[0]) ? item.Marker : "-";
                Wrapped(lines, $"{margin}{marker} ", margin + new string(' ', marker.Length + 1), item.Text, width, Style.Plain);
                break;
            case MarkdownBlock.Quote quote:
                Wrapped(lines, "  ", "  ", quote.Text, width, Style.Faint);
                break;
            case MarkdownBlock.Code code:
                foreach (var line in code.Lines)
                {
                    lines.Line(("    " + Printable.Show(line.Replace("\t", "  ", StringComparison.Ordinal)), Style.Related));
                }

                break;
            case MarkdownBlock.Table table:
                WriteTable(table, lines, width);
                break;
            case MarkdownBlock.Rule:
                lines.Line((new string('-', Math.Min(width, 40)), Style.Faint));
                break;
        }
    }

    private static void Wrapped(StyledLines lines, string first, string rest, string text, int width, Style style)
    {
        var start = first;
        foreach (var line in TextWrap.Wrap(Inline(text), width - rest.Length))
        {
            lines.Line((start, Style.Plain), (line, style));
            start = rest;
        }
    }

    private static void WriteTable(MarkdownBlock.Table table, StyledLines lines, int width)
    {
        var columns = table.Rows[0].Count;
        var cells = table.Rows.Select(r => Enumerable.Range(0, columns).Select(c => c < r.Count ? Inline(r[c]) : "").ToArray()).ToArray();
        var widths = Fit([.. Enumerable.Range(0, columns).Select(c => Math.Max(1, cells.Max(r => DisplayWidth.Of(r[c]))))], width - 2);
        for (var row = 0; row < cells.Length; row++)
        {
            var wrapped = cells[row].Select((cell, c) => TextWrap.Wrap(cell, widths[c])).ToArray();
            for (var i = 0; i < wrapped.Max(w => w.Count); i++)
            {
                var line = new StringBuilder("  ");
                for (var c = 0; c < columns; c++)
                {
                    var text = i < wrapped[c].Count ? wrapped[c][i] : "";
                    line.Append(text).Append(' ', Math.Max(0, widths[c] - DisplayWidth.Of(text))).Append(c + 1 < columns ? Gap : "");
                }

                lines.Line((line.ToString().TrimEnd(), row == 0 ? Style.Strong : Style.Plain));
            }

            if (row == 0)
            {
                lines.Line(("  " + string.Join(Gap, widths.Select(w => new string('-', w))), Style.Faint));
            }
        }
    }

    /// <summary>Takes columns from the widest cell column until the table fits.</summary>
    private static int[] Fit(int[] widths, int width)
    {
        var room = width - (Gap.Length * (widths.Length - 1));
        while (widths.Sum() > room && widths.Max() > SmallestCell)
        {
            widths[Array.IndexOf(widths, widths.Max())]--;
        }

        return widths;
    }

    /// <summary>
    /// Inline marks turned to plain text: emphasis dropped, [text](target) as "text (target)", backslash escapes undone, code kept in
    /// backticks.
    /// </summary>
    internal static string Inline(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var span in MarkdownInline.Parse(text))
        {
            _ = span switch
            {
                MarkdownSpan.Text words => plain.Append(words.Value),
                MarkdownSpan.Code code => plain.Append('`').Append(code.Value).Append('`'),
                MarkdownSpan.Link link => plain.Append(Inline(link.Label)).Append(link.Target.StartsWith('#') ? "" : $" ({link.Target})"),
                _ => plain,
            };
        }

        return Printable.Show(plain.ToString());
    }
}

namespace RecipeLint.Reports;

/// <summary>A block of the Markdown subset that the explanations are written in.</summary>
internal abstract record MarkdownBlock
{
    public sealed record Heading(int Depth, string Text) : MarkdownBlock;

    public sealed record Paragraph(string Text) : MarkdownBlock;

    /// <param name="Depth">0 for a list that is not inside another item.</param>
    /// <param name="Marker">"-" or "1.".</param>
    public sealed record Item(int Depth, string Marker, string Text) : MarkdownBlock;

    public sealed record Quote(string Text) : MarkdownBlock;

    public sealed record Code(IReadOnlyList<string> Lines) : MarkdownBlock;

    public sealed record Table(IReadOnlyList<IReadOnlyList<string>> Rows) : MarkdownBlock;

    public sealed record Rule : MarkdownBlock;
}

/// <summary>
/// Splits Markdown into blocks. The subset, after CommonMark and GitHub tables: ATX headings, paragraphs, bullet and numbered lists nested
/// by two or more blanks, block quotes of one level, fenced code, pipe tables, thematic breaks. Anything else stays a paragraph.
/// </summary>
internal static class MarkdownParser
{
    public static IReadOnlyList<MarkdownBlock> Parse(string markdown)
    {
        var lines = markdown.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        var blocks = new List<MarkdownBlock>();
        var index = 0;
        while (index < lines.Length)
        {
            var line = lines[index];
            var text = line.Trim();
            if (text.Length == 0)
            {
                index++;
            }
            else if (Fence(text) is { } fence)
            {
                blocks.Add(TakeCode(lines, ref index, fence));
            }
            else if (HeadingDepth(text) is var depth && depth > 0)
            {
                blocks.Add(new MarkdownBlock.Heading(depth, text[depth..].Trim().TrimEnd('#').TrimEnd()));
                index++;
            }
            else if (IsBreak(text))
            {
                blocks.Add(new MarkdownBlock.Rule());
                index++;
            }
            else if (text.StartsWith('|') && index + 1 < lines.Length && IsTableRuler(lines[index + 1]))
            {
                blocks.Add(TakeTable(lines, ref index));
            }
            else if (ItemMarker(text) is { } marker)
            {
                var indent = line.Length - line.TrimStart().Length;
                var first = text[marker.Length..].TrimStart();
                index++;
                blocks.Add(new MarkdownBlock.Item(indent / 2, marker, TakeText(lines, ref index, first)));
            }
            else if (text.StartsWith('>'))
            {
                var quoted = new List<string>();
                while (index < lines.Length && lines[index].TrimStart().StartsWith('>'))
                {
                    quoted.Add(lines[index].TrimStart()[1..].Trim());
                    index++;
                }

                blocks.Add(new MarkdownBlock.Quote(string.Join(' ', quoted)));
            }
            else
            {
                index++;
                blocks.Add(new MarkdownBlock.Paragraph(TakeText(lines, ref index, text)));
            }
        }

        return blocks;
    }

    /// <summary>The lines that continue a paragraph or item: up to a blank line or the start of another block.</summary>
    private static string TakeText(string[] lines, ref int index, string first)
    {
        var parts = new List<string> { first };
        while (index < lines.Length)
        {
            var text = lines[index].Trim();
            if (text.Length == 0 || Fence(text) is not null || HeadingDepth(text) > 0 || IsBreak(text) || ItemMarker(text) is not null
                || text.StartsWith('>') || text.StartsWith('|'))
            {
                break;
            }

            parts.Add(text);
            index++;
        }

        return string.Join(' ', parts);
    }

    private static MarkdownBlock.Code TakeCode(string[] lines, ref int index, string fence)
    {
        var indent = lines[index].Length - lines[index].TrimStart().Length;
        var code = new List<string>();
        index++;
        while (index < lines.Length && !lines[index].Trim().StartsWith(fence, StringComparison.Ordinal))
        {
            var line = lines[index];
            var blanks = line.Length - line.TrimStart(' ').Length;
            code.Add(line[Math.Min(indent, blanks)..]);
            index++;
        }

        index++;
        return new MarkdownBlock.Code(code);
    }

    private static MarkdownBlock.Table TakeTable(string[] lines, ref int index)
    {
        var rows = new List<IReadOnlyList<string>> { Cells(lines[index]) };
        index += 2;
        while (index < lines.Length && lines[index].TrimStart().StartsWith('|'))
        {
            rows.Add(Cells(lines[index]));
            index++;
        }

        return new MarkdownBlock.Table(rows);
    }

    private static List<string> Cells(string row)
    {
        var text = row.Trim().TrimStart('|');
        var cells = new List<string>();
        var cell = new System.Text.StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\\' && i + 1 < text.Length && text[i + 1] == '|')
            {
                cell.Append('|');
                i++;
            }
            else if (text[i] == '|')
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
            else
            {
                cell.Append(text[i]);
            }
        }

        if (cell.ToString().Trim().Length > 0)
        {
            cells.Add(cell.ToString().Trim());
        }

        return cells;
    }

    private static string? Fence(string text) =>
        text.StartsWith("```", StringComparison.Ordinal) ? "```" : text.StartsWith("~~~", StringComparison.Ordinal) ? "~~~" : null;

    private static int HeadingDepth(string text)
    {
        var depth = text.TakeWhile(c => c == '#').Count();
        return depth is > 0 and <= 6 && text.Length > depth && text[depth] == ' ' ? depth : 0;
    }

    private static bool IsBreak(string text) =>
        text.Length >= 3
            && text[0] is '-' or '*' or '_'
            && text.Where(c => c != ' ').All(c => c == text[0])
            && text.Count(c => c == text[0]) >= 3;

    private static bool IsTableRuler(string line)
    {
        var text = line.Trim();
        return text.StartsWith('|') && text.Contains('-', StringComparison.Ordinal) && text.All(c => c is '|' or '-' or ':' or ' ');
    }

    private static string? ItemMarker(string text)
    {
        if (text.Length > 1 && text[0] is '-' or '*' or '+' && text.Length > 1 && text[1] == ' ')
        {
            return text[..1];
        }

        var digits = text.TakeWhile(char.IsAsciiDigit).Count();
        return digits is > 0 and < 4 && text.Length > digits + 1 && text[digits] is '.' or ')' && text[digits + 1] == ' '
            ? text[..(digits + 1)]
            : null;
    }
}

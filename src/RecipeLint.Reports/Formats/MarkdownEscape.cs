using System.Text;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// Text from files on its way into Markdown of a pull request or a build summary: no markup, no tag, no link, nobody mentioned, no issue
/// referred to. One line stays one line.
/// </summary>
public static class MarkdownEscape
{
    /// <summary>The text so that it shows as itself.</summary>
    public static string Text(string text)
    {
        var shown = new StringBuilder(text.Length + 16);
        foreach (var unit in Printable.Show(text))
        {
            _ = unit switch
            {
                '&' => shown.Append("&amp;"),
                '<' => shown.Append("&lt;"),
                '>' => shown.Append("&gt;"),

                // As entities these start no mention, no reference to an issue and no link.
                '@' => shown.Append("&#64;"),
                '#' => shown.Append("&#35;"),
                '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '(' or ')' or '!' or '|' or '~' or '$' =>
                    shown.Append('\\').Append(unit),
                _ => shown.Append(unit),
            };
        }

        // A bare address is a link to some readers.
        return shown.ToString()
            .Replace("://", "&#58;//", StringComparison.Ordinal)
            .Replace("www.", "www&#46;", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>
    /// The text as code inside a line: no backtick of it ends the code. A bar would end a cell of a table, so it is written as an escape.
    /// </summary>
    public static string Code(string text)
    {
        var shown = Printable.Show(text).Replace("|", "\\u007C", StringComparison.Ordinal);
        var fence = new string('`', LongestRun(shown) + 1);
        return shown.Length == 0 ? "" : shown[0] == '`' || shown[^1] == '`' ? $"{fence} {shown} {fence}" : fence + shown + fence;
    }

    /// <summary>Lines as a block of code that none of them can leave.</summary>
    public static IEnumerable<string> Block(IReadOnlyList<string> lines)
    {
        var shown = lines.Select(Printable.Show).ToList();
        var fence = new string('`', Math.Max(3, shown.Select(LongestRun).DefaultIfEmpty(0).Max() + 1));
        return [fence + "text", .. shown, fence];
    }

    private static int LongestRun(string text)
    {
        int longest = 0, run = 0;
        foreach (var unit in text)
        {
            run = unit == '`' ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}

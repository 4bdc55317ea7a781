using System.Text;

namespace RecipeLint.Reports;

/// <summary>A stretch of a Markdown line.</summary>
internal abstract record MarkdownSpan
{
    /// <summary>Characters as they stand, escapes undone.</summary>
    public sealed record Text(string Value) : MarkdownSpan;

    public sealed record Code(string Value) : MarkdownSpan;

    /// <param name="Label">Markdown of its own.</param>
    public sealed record Link(string Label, string Target) : MarkdownSpan;

    /// <summary>Opens or closes emphasis.</summary>
    /// <param name="Length">1 slanted, 2 strong, 3 both.</param>
    public sealed record Emphasis(int Length) : MarkdownSpan;
}

/// <summary>Splits a line of Markdown into spans: emphasis, inline code, links, addresses in angle brackets, backslash escapes.</summary>
internal static class MarkdownInline
{
    public static IReadOnlyList<MarkdownSpan> Parse(string text)
    {
        var spans = new List<MarkdownSpan>();
        var plain = new StringBuilder(text.Length);
        var i = 0;
        while (i < text.Length)
        {
            var c = text[i];
            if (c == '\\' && i + 1 < text.Length && char.IsAscii(text[i + 1])
                && (char.IsPunctuation(text[i + 1]) || char.IsSymbol(text[i + 1])))
            {
                plain.Append(text[i + 1]);
                i += 2;
            }
            else if (c == '`' && text.IndexOf('`', i + 1) is var close && close > i)
            {
                Add(new MarkdownSpan.Code(text[(i + 1)..close]));
                i = close + 1;
            }
            else if (c == '[' && Link(text, i) is { } link)
            {
                Add(new MarkdownSpan.Link(link.Label, link.Target));
                i = link.End;
            }
            else if (c == '<' && text.IndexOf('>', i) is var end && end > i && text[(i + 1)..end].Contains("://", StringComparison.Ordinal))
            {
                plain.Append(text, i + 1, end - i - 1);
                i = end + 1;
            }
            else if (c is '*' or '_' && EmphasisLength(text, i) is var length && length > 0)
            {
                Add(new MarkdownSpan.Emphasis(length));
                i += length;
            }
            else
            {
                plain.Append(c);
                i++;
            }
        }

        if (plain.Length > 0)
        {
            spans.Add(new MarkdownSpan.Text(plain.ToString()));
        }

        return spans;

        void Add(MarkdownSpan span)
        {
            if (plain.Length > 0)
            {
                spans.Add(new MarkdownSpan.Text(plain.ToString()));
                plain.Clear();
            }

            spans.Add(span);
        }
    }

    /// <summary>
    /// The length of a run of stars or underscores next to a word on one side only; 0 for 2 * 3, 5 *6 in a formula and snake_case.
    /// </summary>
    private static int EmphasisLength(string text, int at)
    {
        var sign = text[at];
        var first = at;
        while (first > 0 && text[first - 1] == sign)
        {
            first--;
        }

        var last = at;
        while (last + 1 < text.Length && text[last + 1] == sign)
        {
            last++;
        }

        var before = first == 0 ? ' ' : text[first - 1];
        var after = last + 1 == text.Length ? ' ' : text[last + 1];
        var run = new string(sign, last - first + 1);
        var opens = !char.IsWhiteSpace(after) && !char.IsLetterOrDigit(before) && Closes(text, last + 1, run);
        var closes = !char.IsWhiteSpace(before) && !char.IsLetterOrDigit(after) && Opens(text, first, run);
        return opens || closes ? last - at + 1 : 0;
    }

    private static bool Closes(string text, int from, string run)
    {
        for (var i = text.IndexOf(run, from, StringComparison.Ordinal); i > from; i = text.IndexOf(run, i + 1, StringComparison.Ordinal))
        {
            var after = i + run.Length == text.Length ? ' ' : text[i + run.Length];
            if (!char.IsWhiteSpace(text[i - 1]) && !char.IsLetterOrDigit(after))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Opens(string text, int before, string run)
    {
        for (var i = before - run.Length - 1; i >= 0; i--)
        {
            if (string.CompareOrdinal(text, i, run, 0, run.Length) == 0
                && (i == 0 || !char.IsLetterOrDigit(text[i - 1])) && !char.IsWhiteSpace(text[i + run.Length]))
            {
                return true;
            }
        }

        return false;
    }

    private static (string Label, string Target, int End)? Link(string text, int open)
    {
        var middle = text.IndexOf("](", open, StringComparison.Ordinal);
        if (middle < 0 || text.IndexOf('[', open + 1, middle - open - 1) >= 0)
        {
            return null;
        }

        var close = text.IndexOf(')', middle);
        return close < 0 ? null : (text[(open + 1)..middle], text[(middle + 2)..close], close + 1);
    }
}

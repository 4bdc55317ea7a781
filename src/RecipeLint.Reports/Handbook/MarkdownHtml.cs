using RecipeLint.Reports.Markup;

namespace RecipeLint.Reports.Handbook;

/// <summary>
/// Renders the Markdown of explanations and lessons as HTML. No address becomes a link: a page opens nothing outside its folder.
/// </summary>
/// <param name="linkOf">Where a rule's name in backticks leads; null for text that names no rule.</param>
internal sealed class MarkdownHtml(Func<string, string?> linkOf)
{
    /// <param name="markdown">The subset <see cref="MarkdownParser"/> states.</param>
    /// <param name="topHeading">The level that a first-level heading becomes, 1 to 5.</param>
    public Html Render(string markdown, int topHeading = 3)
    {
        var html = Html.Empty;
        var blocks = MarkdownParser.Parse(markdown);
        var at = 0;
        while (at < blocks.Count)
        {
            html += blocks[at] is MarkdownBlock.Item item ? List(blocks, ref at, item.Depth) : Block(blocks[at++], topHeading);
        }

        return html;
    }

    /// <summary>One line: emphasis, code, formulas.</summary>
    public Html Inline(string text)
    {
        var html = Html.Empty;
        var open = new Stack<int>();
        foreach (var span in MarkdownInline.Parse(text))
        {
            html += span switch
            {
                MarkdownSpan.Text words => ChemicalText.Of(words.Value),
                MarkdownSpan.Code code => Code(code.Value),
                MarkdownSpan.Link link => Inline(link.Label) + (link.Target.StartsWith('#') ? Html.Empty : Html.Of($" ({link.Target})")),
                MarkdownSpan.Emphasis mark => Toggle(mark.Length, open),
                _ => Html.Empty,
            };
        }

        while (open.TryPop(out var length))
        {
            html += Close(length);
        }

        return html;
    }

    private Html Code(string text) =>
        linkOf(text) is { } target ? Html.Of($"<a href=\"{target}\"><code>{text}</code></a>") : Html.Of($"<code>{text}</code>");

    private static Html Toggle(int length, Stack<int> open)
    {
        if (open.TryPeek(out var last) && last == length)
        {
            open.Pop();
            return Close(length);
        }

        open.Push(length);
        return length switch
        {
            1 => Html.Of($"<em>"),
            2 => Html.Of($"<strong>"),
            _ => Html.Of($"<strong><em>"),
        };
    }

    private static Html Close(int length) => length switch
    {
        1 => Html.Of($"</em>"),
        2 => Html.Of($"</strong>"),
        _ => Html.Of($"</em></strong>"),
    };

    private Html Block(MarkdownBlock block, int topHeading) => block switch
    {
        MarkdownBlock.Heading heading => Heading(Math.Min(6, topHeading + heading.Depth - 1), heading.Text),
        MarkdownBlock.Paragraph paragraph => Html.Of($"<p>{Inline(paragraph.Text)}</p>\n"),
        MarkdownBlock.Quote quote => Html.Of($"<blockquote><p>{Inline(quote.Text)}</p></blockquote>\n"),
        MarkdownBlock.Code code => CodeBlock.Of(code.Lines),
        MarkdownBlock.Table table => Table(table),
        _ => Html.Of($"<hr/>\n"),
    };

    private Html Heading(int level, string text) => Html.Of($"<h{level}>{Inline(text)}</h{level}>\n");

    private Html Table(MarkdownBlock.Table table)
    {
        var columns = table.Rows[0].Count;
        var head = Html.Join(table.Rows[0].Select(c => Html.Of($"<th scope=\"col\">{Inline(c)}</th>")));
        var body = Html.Join(table.Rows.Skip(1).Select(r =>
            Html.Of(
                $"<tr>{Html.Join(Enumerable.Range(0, columns).Select(c => Html.Of($"<td>{Inline(c < r.Count ? r[c] : "")}</td>")))}</tr>\n")));
        return Html.Of(
            $"<div class=\"wide\" tabindex=\"0\"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}</tbody>\n</table></div>\n");
    }

    /// <summary>Items from here on that are as deep as the first or deeper.</summary>
    private Html List(IReadOnlyList<MarkdownBlock> blocks, ref int at, int depth)
    {
        var numbered = char.IsAsciiDigit(((MarkdownBlock.Item)blocks[at]).Marker[0]);
        var items = Html.Empty;
        while (at < blocks.Count && blocks[at] is MarkdownBlock.Item item && item.Depth >= depth
            && (item.Depth > depth || char.IsAsciiDigit(item.Marker[0]) == numbered))
        {
            var text = Inline(item.Text);
            at++;
            while (at < blocks.Count && blocks[at] is MarkdownBlock.Item inner && inner.Depth > depth)
            {
                text += Html.Of($"\n{List(blocks, ref at, inner.Depth)}");
            }

            items += Html.Of($"<li>{text}</li>\n");
        }

        return numbered ? Html.Of($"<ol>\n{items}</ol>\n") : Html.Of($"<ul>\n{items}</ul>\n");
    }
}

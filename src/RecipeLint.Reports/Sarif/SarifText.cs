using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>The words and addresses of a SARIF log, without the library.</summary>
internal static class SarifText
{
    /// <summary>SARIF and code scanning both allow a description this many characters.</summary>
    public const int MaxDescription = 1024;

    /// <summary>"calcium-with-sulfate" as "CalciumWithSulfate".</summary>
    public static string PascalCase(string name) =>
        string.Concat(name.Split('-', StringSplitOptions.RemoveEmptyEntries).Select(w => char.ToUpperInvariant(w[0]) + w[1..]));

    /// <summary>
    /// A relative URI with forward slashes, percent-encoded (RFC 3986); an absolute path becomes a file URI. Relative is what every path of
    /// a workspace is.
    /// </summary>
    public static (Uri Uri, bool IsRelative) UriOf(string path)
    {
        var segments = Printable.WellFormed(path).Split('/').Select(Uri.EscapeDataString);
        var encoded = string.Join('/', segments);
        return path.StartsWith('/') ? (new Uri("file://" + encoded, UriKind.Absolute), false) : (new Uri(encoded, UriKind.Relative), true);
    }

    /// <inheritdoc cref="RuleLink.Of"/>
    public static Uri HelpUri(RuleDescriptor rule) => RuleLink.Of(rule);

    /// <summary>
    /// The message with braces doubled (SARIF 2.1.0 section 3.11.5) and nothing that reads as a link (3.11.6) but our own links to related
    /// places.
    /// </summary>
    public static string Message(string message, IReadOnlyList<string> labels)
    {
        var text = Literal(Sentences.Ended(message));
        if (labels.Count == 0)
        {
            return text;
        }

        var links = labels.Select((label, i) => $"[{LinkText(label)}]({i + 1})");
        return $"{text} See: {string.Join("; ", links)}.";
    }

    public static string Literal(string text)
    {
        text = Printable.WellFormed(text).Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);
        return text.Contains("](", StringComparison.Ordinal)
            ? text.Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal)
            : text;
    }

    /// <summary>The title as a sentence with the place of the finding, for <c>messageStrings</c>.</summary>
    public static string Template(RuleDescriptor rule)
    {
        var title = Literal(Sentences.Ended(rule.Title));
        return $"{title} Place: '{{0}}'.";
    }

    /// <summary>The first paragraph of the explanation in whole sentences, else the title.</summary>
    public static string FullDescription(RuleDescriptor rule)
    {
        var first = FirstParagraph(rule.Explanation.Value);
        var text = first is null ? rule.Title : MarkdownText.Inline(first.Text);
        return Shorten(Sentences.Ended(text));
    }

    /// <summary>
    /// Read up to an empty line, and further only where no paragraph has ended by then: a log describes every rule, and this is its start.
    /// </summary>
    private static MarkdownBlock.Paragraph? FirstParagraph(string markdown)
    {
        const string empty = "\n\n";
        for (var end = markdown.IndexOf(empty, StringComparison.Ordinal); end >= 0;
            end = markdown.IndexOf(empty, end + empty.Length, StringComparison.Ordinal))
        {
            if (First(markdown[..end]) is { } found)
            {
                return found;
            }
        }

        return First(markdown);

        static MarkdownBlock.Paragraph? First(string text) => MarkdownParser.Parse(text).OfType<MarkdownBlock.Paragraph>().FirstOrDefault();
    }

    public static string Shorten(string text)
    {
        text = Printable.WellFormed(text);
        if (text.Length <= MaxDescription)
        {
            return text;
        }

        var end = text.LastIndexOf(". ", MaxDescription - 2, StringComparison.Ordinal);
        return end > 0 ? text[..(end + 1)] : Printable.WellFormed(text[..(MaxDescription - 2)]) + "….";
    }

    private static string LinkText(string label)
    {
        var text = Printable.WellFormed(label.TrimEnd('.', ' '));
        text = text.Length == 0 ? "here" : text;
        return text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal)
            .Replace("\\", "\\\\", StringComparison.Ordinal)
                .Replace("[", "\\[", StringComparison.Ordinal)
                .Replace("]", "\\]", StringComparison.Ordinal);
    }
}

using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace RecipeLint.Reports.Markup;

/// <summary>
/// Markup that is safe to write. The literal parts of <c>Html.Of($"...")</c> are ours; every value put into them is escaped unless it is
/// markup itself, so that text from a file cannot become a tag or leave an attribute.
/// </summary>
internal readonly struct Html
{
    private readonly string? _markup;

    private Html(string markup) => _markup = markup;

    public static Html Empty => default;

    public bool IsEmpty => string.IsNullOrEmpty(_markup);

    public static Html Of(HtmlLiteral literal) => new(literal.Finish());

    /// <summary>Text on one line; controls and invisible characters shown as escapes.</summary>
    public static Html Text(string text) => Of($"{text}");

    /// <summary>Markup that a drawing of ours was exported to; its texts were escaped there.</summary>
    internal static Html Drawn(string markup) => new(markup);

    public static Html Join(IEnumerable<Html> parts) => new(string.Concat(parts.Select(p => p._markup)));

    public static Html Join(Html between, IEnumerable<Html> parts) => new(string.Join(between._markup, parts.Select(p => p._markup)));

    public static Html operator +(Html left, Html right) => new(left._markup + right._markup);

    public override string ToString() => _markup ?? "";
}

/// <summary>Collects an interpolated literal and escapes what is put into it.</summary>
[InterpolatedStringHandler]
internal readonly ref struct HtmlLiteral
{
    private readonly StringBuilder _markup;

    public HtmlLiteral(int literalLength, int formattedCount) => _markup = new StringBuilder(literalLength + (formattedCount * 16));

    public void AppendLiteral(string literal) => _markup.Append(literal);

    public void AppendFormatted(Html html) => _markup.Append(html.ToString());

    public void AppendFormatted(int number) => _markup.Append(number.ToString(CultureInfo.InvariantCulture));

    public void AppendFormatted(string? text)
    {
        foreach (var unit in Printable.Show(text ?? ""))
        {
            _ = unit switch
            {
                '&' => _markup.Append("&amp;"),
                '<' => _markup.Append("&lt;"),
                '>' => _markup.Append("&gt;"),
                '"' => _markup.Append("&quot;"),
                '\'' => _markup.Append("&#39;"),
                _ => _markup.Append(unit),
            };
        }
    }

    internal string Finish() => _markup.ToString();
}

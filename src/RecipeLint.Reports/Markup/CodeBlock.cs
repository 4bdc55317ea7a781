namespace RecipeLint.Reports.Markup;

/// <summary>Text in fixed pitch that scrolls inside its own frame, by touch or keyboard.</summary>
internal static class CodeBlock
{
    public static Html Of(string text) => Of(text.TrimEnd('\n').Split('\n'));

    public static Html Of(IEnumerable<string> lines) =>
        Framed(Html.Join(lines.Select(l => Html.Of($"{l.Replace("\t", "  ", StringComparison.Ordinal)}\n"))));

    public static Html Framed(Html lines) => Html.Of($"<div class=\"code\" tabindex=\"0\"><pre><code>{lines}</code></pre></div>\n");
}

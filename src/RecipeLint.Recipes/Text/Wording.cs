namespace RecipeLint.Recipes.Text;

/// <summary>Small helpers for sentences that quote what a file says.</summary>
internal static class Wording
{
    private const int QuotedLength = 60;

    /// <summary>At most 60 UTF-16 code units of a text, never half a pair, with an ellipsis when cut.</summary>
    public static string Shorten(string text)
    {
        if (text.Length <= QuotedLength)
        {
            return text;
        }

        var end = char.IsHighSurrogate(text[QuotedLength - 1]) ? QuotedLength - 1 : QuotedLength;
        return text[..end] + "…";
    }

    /// <summary>"a", "a or b", "a, b or c".</summary>
    public static string Join(IReadOnlyList<string> parts, string lastWord) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => string.Join(", ", parts.Take(parts.Count - 1)) + " " + lastWord + " " + parts[^1],
    };
}

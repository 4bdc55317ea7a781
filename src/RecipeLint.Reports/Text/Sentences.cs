namespace RecipeLint.Reports;

internal static class Sentences
{
    /// <summary>
    /// The first sentence: up to a full stop, exclamation or question mark followed by a blank and a capital, or the whole.
    /// </summary>
    public static string First(string text)
    {
        for (var i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] is '.' or '!' or '?' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                return text[..(i + 1)];
            }
        }

        return text;
    }

    /// <summary>The text with a full stop at its end.</summary>
    public static string Ended(string text)
    {
        text = text.TrimEnd();
        return text.Length > 0 && text[^1] is '.' or '!' or '?' ? text : text + ".";
    }
}

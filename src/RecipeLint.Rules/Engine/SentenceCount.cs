namespace RecipeLint.Rules.Engine;

/// <summary>What counts as a sentence in a message.</summary>
public static class SentenceCount
{
    /// <summary>
    /// Sentences end with a full stop or question mark at the end of the text or before a space and a capital, digit or quote.
    /// </summary>
    public static int Of(string text)
    {
        var count = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is '.' or '?'
                && (i == text.Length - 1 || (i + 2 < text.Length && text[i + 1] == ' ' && OpensASentence(text[i + 2]))))
            {
                count++;
            }
        }

        return count;
    }

    private static bool OpensASentence(char c) => char.IsUpper(c) || char.IsDigit(c) || c is '\'' or '"' or '(';
}

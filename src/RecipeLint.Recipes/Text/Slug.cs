using System.Text;

namespace RecipeLint.Recipes.Text;

/// <summary>A name as part of an id, of a file name or of a repair's name.</summary>
public static class Slug
{
    /// <summary>Small letters, digits and single hyphens between them; empty when nothing of the text is left.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="keep">Further characters to keep, such as a decimal point.</param>
    public static string Of(string text, string keep = "")
    {
        var slug = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (char.IsAsciiLetterOrDigit(c) || keep.Contains(c, StringComparison.Ordinal))
            {
                slug.Append(char.ToLowerInvariant(c));
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}

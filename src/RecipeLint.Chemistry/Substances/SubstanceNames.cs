using System.Text;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Makes names comparable: "Iron (II) sulphate heptahydrate" and "iron(II) sulfate-heptahydrate" have one key.</summary>
internal static class SubstanceNames
{
    /// <summary>
    /// Lower case, "sulph" as "sulf", "aluminum" and "color" in the British spelling, subscripts plain; spaces, hyphens, brackets and other
    /// marks dropped, except a hyphen, point or plus between or after digits, which tells 12-61-0 from 126-10 and 0.5 from 05.
    /// </summary>
    public static string Key(string text)
    {
        var key = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i] is >= '₀' and <= '₉' ? (char)('0' + (text[i] - '₀')) : char.ToLowerInvariant(text[i]);
            if (char.IsLetterOrDigit(c))
            {
                key.Append(c);
            }
            else if (c is '-' or '.' && i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]))
            {
                key.Append(c);
            }
        }

        return key.Replace("sulph", "sulf").Replace("aluminum", "aluminium").Replace("color", "colour").ToString();
    }

    /// <summary>Letters and digits only, in lower case: how a formula looks when case and marks are lost.</summary>
    public static string Fold(string text) =>
        string.Concat(text.Where(char.IsAsciiLetterOrDigit).Select(char.ToLowerInvariant));
}

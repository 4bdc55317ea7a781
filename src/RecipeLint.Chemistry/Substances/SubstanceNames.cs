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

    /// <summary>
    /// Edits between two keys, a swap of neighbours counted once (optimal string alignment, after F. J. Damerau,
    /// Commun. ACM 7 (1964) 171). Gives <paramref name="cap"/> + 1 when the distance is larger than the cap.
    /// </summary>
    public static int Distance(string a, string b, int cap)
    {
        if (Math.Abs(a.Length - b.Length) > cap)
        {
            return cap + 1;
        }

        int[] before = new int[b.Length + 1], last = new int[b.Length + 1], row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1] + 1, last[j] + 1), last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }

            (before, last, row) = (last, row, before);
        }

        return Math.Min(last[b.Length], cap + 1);
    }
}

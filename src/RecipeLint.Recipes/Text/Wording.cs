using System.Globalization;

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

    /// <summary>" Did you mean 'a' or 'b'?", with the space before it; nothing where there is nothing to offer.</summary>
    public static string DidYouMean(IReadOnlyList<string> near) =>
        near.Count == 0 ? "" : $" Did you mean {Join([.. near.Select(n => $"'{Shorten(n)}'")], "or")}?";

    /// <summary>
    /// A number to so many significant digits as people write it: no exponent unless it has more than fifteen digits before or after the
    /// point.
    /// </summary>
    public static string Number(double value, int digits)
    {
        var rounded = ToDigits(value, digits);
        return Math.Abs(rounded) is 0 or (>= 1e-9 and < 1e15)
            ? rounded.ToString("0.###############", CultureInfo.InvariantCulture)
            : rounded.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>Rounded to so many significant digits.</summary>
    public static double ToDigits(double number, int digits)
    {
        if (number == 0 || !double.IsFinite(number))
        {
            return number;
        }

        var scale = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(number)));
        var rounded = scale is >= 0 and <= 15
            ? Math.Round(number, scale)
            : Math.Round(number / Math.Pow(10, -scale)) * Math.Pow(10, -scale);

        // The largest and the smallest numbers round to none.
        return double.IsFinite(rounded) ? rounded : number;
    }
}

using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Quantities;

/// <summary>Writes another number into a quantity as somebody wrote it: unit, tolerance and basis stay.</summary>
public static class AmountText
{
    private const int Digits = 6;

    /// <summary>
    /// The number a text begins with; of a ratio ("1:100") the part of stock in the whole. Null when it does not begin with one.
    /// </summary>
    public static double? NumberOf(string text) => Split(text) is not var (number, rest) ? null
        : RatioOf(rest) is { } parts ? number / parts
        : number;

    /// <summary>
    /// The text with another number in front, to at most six digits; null when it does not begin with one or the number is not above zero.
    /// </summary>
    public static string? With(string text, double number)
    {
        if (!(number > 0) || !double.IsFinite(number) || Split(text) is not var (first, rest))
        {
            return null;
        }

        return RatioOf(rest) is not null ? $"{Write(first)}:{Write(first / number)}" : Write(number) + rest;
    }

    /// <summary>The text with its number times a factor, to four digits.</summary>
    public static string? Times(string text, double factor) =>
        NumberOf(text) is { } number ? With(text, ToDigits(number * factor, 4)) : null;

    /// <summary>One text with the sum of several that differ in their number alone; null where they differ otherwise.</summary>
    public static string? Sum(IReadOnlyList<string?> texts)
    {
        var parts = texts.Select(t => t is null ? null : Split(t)).ToList();
        return parts.Count > 0
            && parts.TrueForAll(p => p is not null && p.Value.After == parts[0]!.Value.After && RatioOf(p.Value.After) is null)
            ? Write(parts.Sum(p => p!.Value.Number)) + parts[0]!.Value.After
            : null;
    }

    /// <summary>A number as it is written into files: six digits at most, a decimal point, no exponent.</summary>
    public static string Write(double number) => ToDigits(number, Digits).ToString("0.##########", CultureInfo.InvariantCulture);

    /// <summary>Rounded to so many significant digits.</summary>
    public static double ToDigits(double number, int digits) => Wording.ToDigits(number, digits);

    private static (double Number, string After)? Split(string text)
    {
        var start = text.Length - text.TrimStart().Length;
        return NumberScanner.Scan(text, start) is { State: NumberState.Read } number && number.Value > 0
            ? (number.Value, text[number.End..])
            : null;
    }

    /// <summary>What stands behind the colon of a ratio; null for anything else.</summary>
    private static double? RatioOf(string rest)
    {
        var text = rest.TrimStart();
        return text.StartsWith(':')
            && NumberScanner.Scan(text, text.Length - text[1..].TrimStart().Length) is { State: NumberState.Read } parts
            && parts.Value > 0 ? parts.Value : null;
    }
}

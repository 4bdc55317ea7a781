using System.Globalization;
using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Rules.Engine;

/// <summary>How numbers and lists read in a message; the only place that decides digits.</summary>
public static class Say
{
    /// <summary>Three significant digits, invariant, no exponent between 0.0001 and a million.</summary>
    public static string Number(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value == 0 ? "0" : value.ToString(CultureInfo.InvariantCulture);
        }

        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (magnitude is < -4 or >= 6)
        {
            return value.ToString("0.##E+0", CultureInfo.InvariantCulture);
        }

        var decimals = Math.Max(0, 2 - magnitude);
        var rounded = magnitude > 2
            ? Math.Round(value / Math.Pow(10, magnitude - 2)) * Math.Pow(10, magnitude - 2)
            : Math.Round(value, Math.Min(decimals, 15));
        return rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    /// <summary>A pH, or on which side of the scale it lies: beyond it a computed figure says no more.</summary>
    public static string Ph(double value) => PhDoubt.OffTheScale(value) ?? Number(value);

    /// <summary>A pH with one digit behind the point, as a meter shows it, or on which side of the scale it lies.</summary>
    public static string PhShown(double value) =>
        PhDoubt.OffTheScale(value) ?? value.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>The text with a capital at its beginning; nothing stays nothing.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>
    /// A name in the middle of a sentence: what stands behind its first comma in brackets, "potassium hydroxide (solid)". A name that has
    /// brackets of its own stays.
    /// </summary>
    public static string Called(string name) => name.IndexOf(", ", StringComparison.Ordinal) is > 0 and var at && !name.Contains('(')
        ? $"{name[..at]} ({name[(at + 2)..]})"
        : name;

    /// <summary>A mass in the unit a scale shows.</summary>
    public static string Grams(double grams) => Math.Abs(grams) switch
    {
        0 => "0 g",
        < 0.0000995 => Number(grams * 1e6) + " µg",
        < 0.0995 => Number(grams * 1000) + " mg",
        < 10000 => Number(grams) + " g",
        _ => Number(grams / 1000) + " kg",
    };

    /// <summary>A volume in the unit a measure shows.</summary>
    public static string Litres(double litres) => Math.Abs(litres) < 1 ? Number(litres * 1000) + " mL" : Number(litres) + " L";

    public static string Percent(double fraction) => Number(fraction * 100) + " %";

    /// <summary>Days up to a fortnight, weeks up to two months, months up to two years, else years, rounded.</summary>
    public static string Days(double days) => days switch
    {
        <= 14 => Number(Math.Round(days, 1)) + (days == 1 ? " day" : " days"),
        <= 61 => Number(Math.Round(days / 7)) + " weeks",
        < 730.5 => Number(Math.Round(days / 30.4375)) + " months",
        _ => Number(Math.Round(days / 365.25, 1)) + " years",
    };

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IEnumerable<string> words)
    {
        var list = words.ToList();
        return list.Count switch
        {
            0 => "",
            1 => list[0],
            _ => string.Join(", ", list.Take(list.Count - 1)) + " and " + list[^1],
        };
    }
}

using System.Globalization;

namespace RecipeLint.Reports.Tests.Support;

/// <summary>
/// Cultures with the traits that break output: the build is globalization-invariant, where a culture by name has invariant data, so the traits
/// are set by hand (decimal comma, other signs and separators).
/// </summary>
internal static class TestCultures
{
    public static CultureInfo Of(string name)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        var numbers = culture.NumberFormat;
        (numbers.NumberDecimalSeparator, numbers.NumberGroupSeparator, numbers.NegativeSign) = name switch
        {
            "tr-TR" => (",", ".", "-"),
            "de-DE" => (",", ".", "−"),
            "ar-SA" => ("٫", "٬", "\u061C-"),
            _ => throw new ArgumentOutOfRangeException(nameof(name)),
        };
        culture.DateTimeFormat.DateSeparator = ".";
        culture.TextInfo.ListSeparator = ";";
        return culture;
    }
}

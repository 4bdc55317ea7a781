using System.Globalization;
using RecipeLint.Analysis.Readings;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>How readings, values and windows read on paper.</summary>
internal static class ReadingWords
{
    /// <summary>"the pH of 1:100 in distilled water".</summary>
    public static string Name(Reading reading) => reading.Kind switch
    {
        ReadingKind.Density => "the weight",
        ReadingKind.Conductivity => "the EC" + Of(reading),
        _ => "the pH" + Of(reading),
    };

    public static string Value(Reading reading, double value, double halfWidth) => reading.Kind switch
    {
        ReadingKind.Density => $"{Rounded(value, halfWidth)} kg/L",
        ReadingKind.Conductivity => $"{Rounded(value, halfWidth)} mS/cm",
        _ => $"pH {Rounded(value, halfWidth)}",
    };

    public static string Window(Reading reading, ReadingWindow window) => reading.Kind switch
    {
        ReadingKind.Density => $"{Rounded(window.Value, window.HalfWidth)} ± {Width(window.HalfWidth)} kg/L",
        ReadingKind.Conductivity => $"{Rounded(window.Value, window.HalfWidth)} ± {Width(window.HalfWidth)} mS/cm",
        _ => $"pH {Rounded(window.Value, window.HalfWidth)} ± {Width(window.HalfWidth)}",
    };

    /// <summary>The value to the first digit of its half-width, with at least as many digits as that needs.</summary>
    public static string Rounded(double value, double halfWidth)
    {
        var decimals = Decimals(halfWidth);
        return value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>A half-width, rounded up to two digits at most.</summary>
    public static string Width(double halfWidth)
    {
        var decimals = Decimals(halfWidth);
        var step = Math.Pow(10, -decimals);
        return (Math.Ceiling((halfWidth / step) - 1e-9) * step).ToString(
            "F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>A change with its sign, to the digit of the half-width.</summary>
    public static string Change(double change, double halfWidth)
    {
        var text = Rounded(change, halfWidth);
        return change > 0 && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0
            ? "+" + text
            : text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "0" : text;
    }

    private static string Of(Reading reading) =>
        reading.Dilution == 1 ? " of the stock itself" : $" of 1:{Say.Number(reading.Dilution)} in distilled water";

    private static int Decimals(double halfWidth) => halfWidth > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(halfWidth * 2)), 0, 4) : 2;
}

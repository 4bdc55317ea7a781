using System.Globalization;

namespace RecipeLint.Analysis;

/// <summary>How computed numbers are rounded before anything is judged by them.</summary>
public static class Rounding
{
    /// <summary>
    /// The value to six significant digits, so that the last bit of a sum never changes a verdict. Zero, NaN and infinities come back unchanged.
    /// </summary>
    public static double SixDigits(double value) =>
        value == 0 || !double.IsFinite(value)
            ? value
            : double.Parse(value.ToString("E5", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
}

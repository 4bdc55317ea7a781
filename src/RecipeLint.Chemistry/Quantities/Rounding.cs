using System.Globalization;

namespace RecipeLint.Chemistry.Quantities;

/// <summary>How computed numbers are rounded before anything is judged by them.</summary>
public static class Rounding
{
    /// <summary>
    /// The value to six significant digits, so that the last bit of a sum never changes a verdict. Zero, NaN and infinities come back
    /// unchanged.
    /// </summary>
    public static double SixDigits(double value) =>
        value == 0 || !double.IsFinite(value)
            ? value
            : double.Parse(value.ToString("E5", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>
    /// Up to two digits, so that nobody measures 643 mL and what is short is not short again. What is not above zero and finite comes back
    /// unchanged.
    /// </summary>
    public static double TwoDigitsUp(double value) => InSteps(value, Math.Ceiling);

    /// <summary>Down to two digits, so that what has to fit still fits. What is not above zero and finite comes back unchanged.</summary>
    public static double TwoDigitsDown(double value) => InSteps(value, Math.Floor);

    /// <summary>A hair past a step, out of the last bits of a sum, is the step.</summary>
    private static double InSteps(double value, Func<double, double> whole)
    {
        if (!(value > 0) || !double.IsFinite(value))
        {
            return value;
        }

        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return SixDigits(whole(SixDigits(value / step)) * step);
    }
}

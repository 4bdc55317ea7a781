using System.Globalization;

namespace RecipeLint.Chemistry.Quantities;

/// <summary>How computed numbers are rounded before anything is judged by them.</summary>
public static class Rounding
{
    private const double SixDigitsBegin = 1e5, SixDigitsEnd = 1e6;

    /// <summary>The powers of ten that a double holds exactly.</summary>
    private static readonly double[] _tens =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>
    /// The value to six significant digits, so that the last bit of a sum never changes a verdict. Zero, NaN and infinities come back
    /// unchanged.
    /// </summary>
    public static double SixDigits(double value) =>
        value == 0 || !double.IsFinite(value) ? value : Whole(value) ?? Written(value);

    /// <summary>
    /// By arithmetic: six digits are a whole number times or over a power of ten, both exact, so the last step rounds as reading the text
    /// does. Null far from what is weighed, or so near to the middle of two roundings that the product cannot tell them apart.
    /// </summary>
    private static double? Whole(double value)
    {
        var size = Math.Abs(value);
        if (!(size is > 1e-15 and < 1e20)) return null;
        var power = 5 - (int)Math.Floor(Math.Log10(size));
        if (Digits(size, power) >= SixDigitsEnd) power--;
        if (Digits(size, power) < SixDigitsBegin) power++;
        var digits = Digits(size, power);
        if (!(digits is >= SixDigitsBegin and < SixDigitsEnd)) return null;
        var whole = Math.Floor(digits + 0.5);
        if (Math.Abs(digits + 0.5 - Math.Round(digits + 0.5)) < 1e-6) return null;
        return Math.CopySign(power < 0 ? whole * _tens[-power] : whole / _tens[power], value);
    }

    private static double Digits(double size, int power) => power < 0 ? size / _tens[-power] : size * _tens[power];

    private static double Written(double value) =>
        double.Parse(value.ToString("E5", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

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

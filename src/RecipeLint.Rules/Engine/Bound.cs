namespace RecipeLint.Rules.Engine;

/// <summary>
/// When a value is past a bound of a profile. Bounds are given to two or three digits, so a value that reads the same as the bound when it
/// is rounded to three does not pass it.
/// </summary>
internal static class Bound
{
    private const double HalfOfTheThirdDigit = 0.005;

    /// <summary>Times an upper bound, times a lower bound: from there on it is passed.</summary>
    internal const double Upper = 1 + HalfOfTheThirdDigit, Lower = 1 - HalfOfTheThirdDigit;

    public static bool IsOver(double found, double? bound) => found > bound * Upper;

    public static bool IsUnder(double found, double? bound) => found < bound * Lower;

    /// <summary>Writes from where on a bound is passed.</summary>
    public static Term Edge(WorkingBuilder work, Term bound, string word, bool isUpper, string unit = "")
    {
        Term margin = isUpper ? Upper : Lower;
        return work.Result("with half of its third digit", $"{word} × {margin.Text}", bound * margin, unit);
    }
}

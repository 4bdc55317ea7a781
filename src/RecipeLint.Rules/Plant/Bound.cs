namespace RecipeLint.Rules.Plant;

/// <summary>
/// When a value is past a bound of a profile. Bounds are given to two or three digits, so a value that reads the same as the bound when it
/// is rounded to three does not pass it.
/// </summary>
internal static class Bound
{
    internal const double HalfOfTheThirdDigit = 0.005;

    public static bool IsOver(double found, double? bound) => found > bound * (1 + HalfOfTheThirdDigit);

    public static bool IsUnder(double found, double? bound) => found < bound * (1 - HalfOfTheThirdDigit);
}

namespace RecipeLint.Recipes.Quantities;

/// <summary>How large and small an amount may be, in base units: far beyond any shed, yet no product of a few of them overflows.</summary>
internal static class NumberBounds
{
    private const double Largest = 1e15;
    private const double Smallest = 1e-30;

    public static bool Hold(double value) => value == 0 || Math.Abs(value) is >= Smallest and <= Largest;
}

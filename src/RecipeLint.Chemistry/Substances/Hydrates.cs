using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Substances;

/// <summary>What happens when one form of a salt is weighed for another.</summary>
public static class Hydrates
{
    /// <summary>
    /// Grams of <paramref name="a"/> that hold as much of the main salt as one gram of <paramref name="b"/>: 2.05 for
    /// magnesium sulfate heptahydrate against the anhydrous salt, 1.58 for nitric acid 38 % against 60 %.
    /// </summary>
    /// <returns>Null when they are not the same salt apart from water and strength, or a formula is missing.</returns>
    public static double? Factor(Substance a, Substance b)
    {
        if (a.Formula is not { } fa || b.Formula is not { } fb || !IsSameSalt(fa, fb) || a.Strength.Value <= 0 || b.Strength.Value <= 0)
        {
            return null;
        }

        return fa.MolarMass.GramsPerMole / a.Strength.Value / (fb.MolarMass.GramsPerMole / b.Strength.Value);
    }

    /// <summary>True when both formulas are one compound apart from the water written after the hydrate dot.</summary>
    public static bool IsSameSalt(Formula a, Formula b) => string.Equals(a.AnhydrousHill, b.AnhydrousHill, StringComparison.Ordinal);
}

using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>The two measures of a soluble salt as one figure.</summary>
public static class SaltIndexes
{
    /// <summary>Mean of the two measures, or the one there is: 0 is saturated, positive above.</summary>
    public static double MeanIndex(this SaltVerdict salt)
    {
        var first = salt.CalibratedIndex ?? salt.ProductIndex ?? 0;
        return (first + (salt.ProductIndex ?? first)) / 2;
    }
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Rules.Plant;

/// <summary>The alkalinity that neither the salts nor the pH reagent of a feed use up.</summary>
internal static class FeedAlkalinity
{
    /// <summary>One meq of alkalinity, or of hardness, counts as so many mg of CaCO3: half its molar mass.</summary>
    internal const double CaCO3MilligramsPerMilliequivalent = 50.04;

    /// <summary>meq/L that stay, to six digits; null where it cannot be computed.</summary>
    internal static double? Left(RecipeFacts recipe)
    {
        if (!recipe.IsComplete || !recipe.Chemistry.IsComplete || !recipe.Chemistry.Final.IsSolved || !recipe.Chemistry.Tank.IsSolved)
        {
            return null;
        }

        // Calcium carbonate that falls out in the open tank takes alkalinity with it, but only as a crust: without acid the closed tank
        // counts.
        var state = recipe.Chemistry.TankAdjusted ?? recipe.Chemistry.Tank;
        return Rounding.SixDigits(state.CarbonateAlkalinity.MilliequivalentsPerLitre);
    }
}

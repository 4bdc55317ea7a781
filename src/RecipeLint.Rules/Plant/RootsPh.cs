using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Rules.Plant;

/// <summary>The pH at which no roots live.</summary>
internal static class RootsPh
{
    /// <summary>
    /// Of tomato, lettuce and Bermuda grass none grew at pH 3 (Arnon and Johnson, Plant Physiol. 17 (1942) 525, recalled); 10 is common
    /// practice, no source. A computed pH is known to 0.3 (judgement, no source).
    /// </summary>
    private const double DieTo = 3, DieFrom = 10, Doubt = 0.3;

    /// <summary>pH from which it is sure.</summary>
    public const double KillsFrom = DieFrom + Doubt;

    public static bool Kills(double ph) => ph <= DieTo - Doubt || ph >= KillsFrom;

    /// <summary>
    /// pH of what is poured together and not adjusted, to six digits; null where that is not known. A lye stays at it until the air has
    /// given it carbon dioxide.
    /// </summary>
    public static double? AsMixed(RecipeFacts recipe) =>
        recipe is { IsComplete: true, Adjustment: null } && recipe.Chemistry is { IsComplete: true, Tank: { TellsPh: true, Ph: var ph } }
            ? Rounding.SixDigits(ph)
            : null;
}

using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Preservation;

/// <summary>Why nothing grows in a stock although no preservative is in it.</summary>
public enum SelfKeeping
{
    /// <summary>Something may grow.</summary>
    None,

    /// <summary>Bleach leaves nothing alive.</summary>
    Bleach,

    /// <summary>Strong peroxide does as long as it lasts, and what splits it is another family's matter.</summary>
    Peroxide,

    /// <summary>It is too acid.</summary>
    Acid,

    /// <summary>It is too salty.</summary>
    Salt,

    /// <summary>So much free copper poisons moulds.</summary>
    Copper,

    /// <summary>It is a pickle.</summary>
    Vinegar,
}

/// <summary>Finds out whether a stock keeps itself.</summary>
internal static class SelfKeepers
{
    /// <summary>Water activity below which moulds stop (food microbiology textbooks, recalled).</summary>
    public const double DryEnough = 0.8;

    /// <summary>
    /// Undissociated acetic acid that preserves by itself, g/L: pickles hold 0.5 to 2 % (food preservation handbooks, recalled).
    /// </summary>
    public const double PicklingAcid = 10;

    /// <summary>Hypochlorite that disinfects, mol/L: about 0.1 g/L of chlorine (common practice, no source).</summary>
    public const double Bleach = 1.4e-3;

    /// <summary>Hydrogen peroxide in which nothing grows, g/L (common practice, no source: the 3 % that disinfects).</summary>
    public const double Peroxide = 30;

    /// <summary>g/mol of acetic acid.</summary>
    private const double AceticAcid = 60.05;

    /// <summary>g/mol of copper.</summary>
    private const double Copper = 63.546;

    /// <summary>What keeps it; none also where the stock cannot be computed.</summary>
    public static SelfKeeping Of(StockFacts stock, PreservativeNeeds needs)
    {
        var state = stock.Chemistry.Mixing;
        if (!stock.IsComplete || !state.IsSolved || state.Solution is not { } solution)
        {
            return SelfKeeping.None;
        }

        var peroxide = stock.Concentration(HydrogenPeroxide.Component).MolesPerLitre * HydrogenPeroxide.GramsPerMole;

        // That bleach must not be there is another family's matter.
        return stock.Concentration("inert:ClO-1").MolesPerLitre >= Bleach ? SelfKeeping.Bleach
            : peroxide >= Peroxide ? SelfKeeping.Peroxide
            : (state.TellsPh ? state.Ph : PhDoubt.AtMost(state)) <= needs.SafeBelowPh ? SelfKeeping.Acid
            : state.WaterActivity is > 0 and < DryEnough && state.Validity.Trust == Trust.InRange ? SelfKeeping.Salt
            : FreeCopper(state) >= needs.SafeCopper ? SelfKeeping.Copper
            : solution.Molality("HAcetate") * state.KilogramsWaterPerLitre * AceticAcid >= PicklingAcid ? SelfKeeping.Vinegar
            : SelfKeeping.None;
    }

    /// <summary>g/L of copper that no chelate holds.</summary>
    private static double FreeCopper(SolutionState state) =>
        state.Metals.Where(m => m.Metal == Component.Copper).Sum(m => m.Unchelated.MolesPerLitre) * Copper;
}

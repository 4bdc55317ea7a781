using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// Deposits that turn on a chelating agent of which the constants tell at 25 °C alone how firmly it holds metals: no warmest or coldest
/// moment, and no warmth or cold as a way out, may be named of them.
/// </summary>
public static class UntoldHold
{
    /// <summary>Share of a dissolved metal from which on its agent decides what is left for a deposit.</summary>
    private const double Decides = 0.5;

    /// <summary>
    /// The agent ("DTPA") that holds most of a metal of a solid and is known at one temperature only; null where none does.
    /// </summary>
    public static string? Of(SolutionState state, Solid solid)
    {
        foreach (var share in state.Chelates)
        {
            if (share.OfMetal >= Decides
                && solid.Composition.Any(c => c.Key == share.Metal)
                && !ConstantSet.Product.ChangesWithTemperature(share.Agent))
            {
                return Components.Word(share.Agent);
            }
        }

        return null;
    }

    /// <summary>
    /// As <see cref="Of(SolutionState, Solid)"/>, of a mix at a temperature; it is only solved where such an agent is in it.
    /// </summary>
    internal static string? Of(SolutionMix mix, double celsius, Solid solid) =>
        Components.Chelators.Any(c => mix.Totals[c] > 0 && !ConstantSet.Product.ChangesWithTemperature(c))
        && StateSolver.At(mix, celsius) is { IsSolved: true } state
            ? Of(state, solid)
            : null;
}

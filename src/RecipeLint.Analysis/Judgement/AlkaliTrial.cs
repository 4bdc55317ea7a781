using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Judgement;

/// <summary>What alkali does to a vessel, tried before it is advised. Pure; never throws.</summary>
public static class AlkaliTrial
{
    /// <summary>The iron chelate that lets its iron go on the way to a pH; null for none.</summary>
    public static ChelateWindow? To(StockFacts stock, double ph) => To(stock.Chemistry.Mixing, ph);

    /// <summary>The same of the tank of a recipe.</summary>
    public static ChelateWindow? To(RecipeFacts recipe, double ph) => To(recipe.Chemistry.Tank, ph);

    /// <summary>
    /// What alkali up to a pH does to a solution at a moment: what suffers by it, else what goes and what comes. Null where that cannot be
    /// computed.
    /// </summary>
    /// <param name="ph">Above that of the state.</param>
    /// <param name="wanted">What has to go; empty where the deposit is none that the engine computes.</param>
    public static StateTrial? Of(SolutionState state, double ph, IReadOnlyList<Solid> wanted, DepositLimits limits) =>
        To(state, ph) is { } lost ? StateTrial.Fails with { LetsGo = lost, Ph = ph } : StateTrial.WithAlkali(state, ph, wanted, limits);

    private static ChelateWindow? To(SolutionState state, double ph) => ChelateWindow.In(state.Mix.MolesPerLitre)
        .FirstOrDefault(w => ph > w.Highest && !(state.IsSolved && state.PhBeforeDeposit > w.Highest));
}

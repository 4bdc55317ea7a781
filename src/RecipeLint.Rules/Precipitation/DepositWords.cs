using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>From sureness to level and certainty.</summary>
internal static class DepositWords
{
    /// <summary>
    /// How sure it is that it falls out: certain where it is computed, or so far past its limit that no error of the model explains it
    /// away. More of the same is never less sure, so what holds of a weaker solution inside the range of the model holds here.
    /// </summary>
    public static Odds OddsOf(JudgedDeposit deposit, Certainty certainty, bool reagentsKnown) => deposit.Sureness switch
    {
        _ when deposit.IsFarPast => Odds.Certain,
        Sureness.Clear when certainty == Certainty.Computed => Odds.Certain,
        Sureness.Clear when deposit.InWeaker is { } weaker
            && CertaintyOf(weaker.State, weaker.Sureness, reagentsKnown) == Certainty.Computed => Odds.Certain,
        Sureness.MayStayClear => Odds.Possible,
        _ => Odds.NearTheLimit,
    };

    /// <summary>Computed only inside the range of the model, over the limit by more than its error, and with every reagent known.</summary>
    public static Certainty CertaintyOf(StockFacts stock, SolutionState state, Sureness sureness) =>
        CertaintyOf(state, sureness, ReagentsKnown(stock));

    /// <summary>True where nobody left open how much acid or alkali goes in.</summary>
    public static bool ReagentsKnown(StockFacts stock) => stock.Adjustments.All(a => a.Amount is not null);

    /// <inheritdoc cref="CertaintyOf(StockFacts, SolutionState, Sureness)"/>
    public static Certainty CertaintyOf(SolutionState state, Sureness sureness, bool reagentsKnown) =>
        state.Validity.Trust == Trust.InRange && sureness == Sureness.Clear && reagentsKnown ? Certainty.Computed : Certainty.Estimate;
}

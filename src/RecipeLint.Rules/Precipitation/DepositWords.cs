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
    /// Times its doubt by which a deposit is past its start, and ten times its product, before it is an error; common practice, no source.
    /// </summary>
    private const double FarPast = 3;

    /// <summary>
    /// True for a deposit that no error of the model explains away: then it is an error even where the state is an estimate.
    /// </summary>
    private static bool IsFarPast(JudgedDeposit deposit) =>
        deposit.Index >= Math.Max(1, deposit.Solid.StartsInStorage + (FarPast * deposit.Doubt));

    /// <summary>
    /// How sure it is that it falls out: certain where it is computed, or so far past its limit that no error of the model explains it
    /// away.
    /// </summary>
    public static Odds OddsOf(JudgedDeposit deposit, Certainty certainty) => deposit.Sureness switch
    {
        _ when IsFarPast(deposit) => Odds.Certain,
        Sureness.Clear when certainty == Certainty.Computed => Odds.Certain,
        Sureness.MayStayClear => Odds.Possible,
        _ => Odds.NearTheLimit,
    };

    /// <summary>Computed only inside the range of the model, over the limit by more than its error, and with every reagent known.</summary>
    public static Certainty CertaintyOf(StockFacts stock, SolutionState state, Sureness sureness) =>
        CertaintyOf(state, sureness, stock.Adjustments.All(a => a.Amount is not null));

    /// <inheritdoc cref="CertaintyOf(StockFacts, SolutionState, Sureness)"/>
    public static Certainty CertaintyOf(SolutionState state, Sureness sureness, bool reagentsKnown) =>
        state.Validity.Trust == Trust.InRange && sureness == Sureness.Clear && reagentsKnown ? Certainty.Computed : Certainty.Estimate;
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Preservation;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>What water does to a bottle, and what follows for its dose, its vessel and what keeps it.</summary>
/// <param name="Vessel">The vessel of the shop that the stock names; null where it names none or nobody says what it holds.</param>
/// <param name="Holds">What that vessel holds.</param>
/// <param name="Weakened">True where it was kept by what is too weak in the thinner stock.</param>
/// <param name="Preservative">What of its preservative the thinner stock needs in all, g/L; null where no usual dose keeps it.</param>
public sealed record WaterAdvice(
    WaterTrial Trial, Volume Before, string? Vessel, Volume? Holds, bool Weakened, (string Name, double GramsPerLitre)? Preservative)
{
    /// <summary>Volume with the water in it; that of before where water is of no use.</summary>
    public Volume After => Trial.Diluted?.Volume ?? Before;

    /// <summary>For what was found out about a stock.</summary>
    public static WaterAdvice Of(StockFacts stock, WaterTrial trial)
    {
        var vessel = stock.Stock.Vessel is { } named ? stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) : null;
        if (trial.Diluted is not { } diluted)
        {
            return new WaterAdvice(trial, stock.Volume, vessel?.Name, vessel?.Capacity, false, null);
        }

        var needs = PreservationNeeds.Of(stock.Settings);
        var (was, now) = (PreservativeJudgement.Of(stock, needs), PreservativeJudgement.Of(diluted, needs));
        var weakened = IsKept(was) && !IsKept(now);
        var main = weakened && now.Dosed.Count > 0 ? now.Dosed[0].Substance : null;
        return new WaterAdvice(
            trial, stock.Volume, vessel?.Name, vessel?.Capacity, weakened,
            main is not null && now.DoseOf(main) is { } grams ? (main.Name, grams) : null);
    }

    private static bool IsKept(PreservativeJudgement judged) =>
        judged.Standing is PreservativeStanding.Enough or PreservativeStanding.NotNeeded or PreservativeStanding.NoFood;
}

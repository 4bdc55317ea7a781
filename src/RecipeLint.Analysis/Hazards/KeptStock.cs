using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Preservation;

namespace RecipeLint.Analysis.Hazards;

/// <summary>How a stock is kept, as far as what ferments in it goes; the judgement of its preservative is worked out when asked.</summary>
internal sealed class KeptStock(StockFacts stock)
{
    /// <summary>Part of the preservative that it needs below which a stock counts as unguarded (common practice, no source).</summary>
    private const double Half = 0.5;

    private readonly Lazy<PreservativeJudgement> _judged = new(() => PreservativeJudgement.Of(stock, new PreservativeNeeds()));

    /// <summary>True when nothing grows in it: bleach, acid, salt, copper, vinegar, a pH that no yeast stands, or no water.</summary>
    public bool NothingGrows(HazardLimits limits) =>
        stock.Mixing.Steps.All(s => s.After.FreeWaterGrams <= 0)
        || _judged.Value.KeptBy != SelfKeeping.None
        || (stock.IsComplete && stock.Chemistry.Mixing is { IsSolved: true, Ph: var ph }
            && stock.Chemistry.Mixing.TellsPh && (ph < limits.Ferment.LowestPh || ph > limits.Ferment.HighestPh));

    /// <summary>True when the file keeps it warm for weeks and nothing holds yeast back.</summary>
    public bool FermentsInTime(HazardLimits limits) =>
        IsKeptWarm(limits)
        && _judged.Value is { Standing: PreservativeStanding.Missing or PreservativeStanding.Weak } judged
        && judged.Strength < Half;

    /// <summary>True when it is kept so with a preservative of which nobody knows whether it works at the pH of this stock.</summary>
    public bool MayFermentInTime(HazardLimits limits) =>
        IsKeptWarm(limits) && _judged.Value is { Standing: PreservativeStanding.NotKnown, HangsOnAnUnknownPh: true };

    private bool IsKeptWarm(HazardLimits limits) =>
        stock.Stock.Keep?.For?.Value.Days >= limits.Ferment.Days
        && stock.StorageTemperature.High.Celsius >= limits.Ferment.Celsius;
}

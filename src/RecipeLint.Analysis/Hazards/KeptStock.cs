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
        && judged.Strength < Half && !MayBeTooSour(limits);

    /// <summary>
    /// True when it is kept so and nobody knows its pH, on which it hangs whether a preservative works, or whether what is put in of acid
    /// or lye is enough.
    /// </summary>
    public bool MayFermentInTime(HazardLimits limits) => IsKeptWarm(limits)
        && (_judged.Value is { Standing: PreservativeStanding.NotKnown, HangsOnAnUnknownPh: true } || MayBeTooSour(limits));

    /// <summary>What is read of it alone would be too sour or too alkaline for yeast; the rest may take that up.</summary>
    private bool MayBeTooSour(HazardLimits limits) => _judged.Value.HangsOnAnUnknownPh
        && (stock.Chemistry.Mixing.Ph < limits.Ferment.LowestPh || stock.Chemistry.Mixing.Ph > limits.Ferment.HighestPh);

    private bool IsKeptWarm(HazardLimits limits) =>
        stock.Stock.Keep?.For?.Value.Days >= limits.Ferment.Days
        && stock.StorageTemperature.High.Celsius >= limits.Ferment.Celsius;
}

using RecipeLint.Advice.Slips;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Readings;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Diagnosis;

/// <summary>What is said of a pH that nothing in the recipe explains and that burns eyes and skin. Pure.</summary>
public static class CorrosiveReading
{
    /// <summary>The warning; null for a reading that fits its recipe or harms nobody by its pH.</summary>
    public static string? Of(Measurement measurement, bool fits)
    {
        var (limits, ph) = (HazardLimits.Default, measurement.Value);
        if (fits || measurement.Reading is not { Kind: ReadingKind.Ph, Dilution: 1 }
            || (ph > limits.Corrosive.PhTo && ph < limits.Corrosive.PhFrom))
        {
            return null;
        }

        return $"If the meter is right, this is strong {(ph < 7 ? "acid" : "lye")}, which burns eyes and skin (from pH "
            + $"{Say.Number(limits.Corrosive.PhTo)} down and from {Say.Number(limits.Corrosive.PhFrom)} up), and not what the recipe says. "
            + "Goggles, gloves and apron on; put nothing into it, do not try to neutralise it, give it to no plants, and find out from "
            + "bags and bottles what went in. Rinse splashes with running water for 15 minutes and see a doctor when an eye was hit; "
            + "safety data sheets and your local codes decide.";
    }
}

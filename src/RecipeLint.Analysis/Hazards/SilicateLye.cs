using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>A stock of silicate, which stands in lye: it irritates skin and eyes, and eats aluminium, zinc and brass.</summary>
internal static class SilicateLye
{
    /// <summary>Null without silicate, where the pH is not known, and where something has taken it down.</summary>
    public static Hazard? Of(StockFacts stock, HazardLimits limits)
    {
        var silicate = stock.Additions.Where(a => a.Substance.Kind == SubstanceKind.Silicate).MaxBy(a => a.Mass.Grams);
        return silicate is not null && stock.Chemistry.Mixing is { TellsPh: true, Ph: var ph }
            && Rounding.SixDigits(ph) >= limits.Corrosive.SilicatePhFrom
            ? new Hazard(
                HazardKind.SilicateLye, HazardGrade.Possible, Held.Of(silicate), null, "pH", Math.Round(ph, 1),
                limits.Corrosive.SilicatePhFrom, "")
            : null;
    }
}

using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Analysis.Stocks;

/// <summary>An amount of a file in a batch of another size.</summary>
internal static class RecordedPortion
{
    /// <summary>What is stated for each litre grows with the volume by itself.</summary>
    public static Portion Times(Portion portion, double factor) => portion switch
    {
        Portion.ByMass p => new Portion.ByMass(p.Mass * factor),
        Portion.ByVolume p => new Portion.ByVolume(p.Volume * factor),
        Portion.ByDrops p => new Portion.ByDrops(p.Count * factor),
        Portion.ByAmount p => new Portion.ByAmount(new Amount(p.Amount.Moles * factor)),
        _ => portion,
    };
}

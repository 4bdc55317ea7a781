using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Slips;

/// <summary>Portions made larger or smaller.</summary>
internal static class PortionSize
{
    /// <summary>The portion times a factor, in its own dimension.</summary>
    public static Portion Times(this Portion portion, double factor) => portion switch
    {
        Portion.ByMass p => new Portion.ByMass(p.Mass * factor),
        Portion.ByVolume p => new Portion.ByVolume(p.Volume * factor),
        Portion.ByDrops p => new Portion.ByDrops(p.Count * factor),
        Portion.ByAmount p => new Portion.ByAmount(p.Amount * factor),
        Portion.PerLitreMass p => new Portion.PerLitreMass(p.Concentration * factor),
        Portion.PerLitreAmount p => new Portion.PerLitreAmount(p.Concentration * factor),
        Portion.PerLitreVolume p => new Portion.PerLitreVolume(new Dose(p.Dose.LitresPerLitre * factor)),
        _ => throw new ArgumentOutOfRangeException(nameof(portion), portion, "There is no such portion."),
    };

    /// <summary>The same amount whatever volume the stock is filled up to.</summary>
    public static Portion Fixed(this Portion portion, AdditionFacts addition) =>
        portion is Portion.PerLitreMass or Portion.PerLitreAmount or Portion.PerLitreVolume ? new Portion.ByMass(addition.Mass) : portion;
}

using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Analysis;

/// <summary>A portion of a substance as it is weighed or poured.</summary>
/// <param name="Mass">Mass of the substance as bought.</param>
/// <param name="Volume">Poured volume of a liquid; null for a solid.</param>
/// <param name="DensityAssumed">True when a liquid without a stated density was counted as water.</param>
internal readonly record struct PortionMass(Mass Mass, Volume? Volume, bool DensityAssumed)
{
    /// <summary>A drop from an ordinary dropper, give or take 20 % (common practice, no source).</summary>
    public static readonly Volume Drop = new(5e-5);

    private static readonly Density Water = new(1);

    /// <summary>What a portion weighs; null where it cannot be known (a solid by volume, moles of something without a formula).</summary>
    /// <param name="makes">The volume "per litre" refers to.</param>
    public static PortionMass? Of(Portion portion, Substance substance, Volume makes) => portion switch
    {
        Portion.ByMass p => OfMass(p.Mass, substance),
        Portion.ByVolume p => OfVolume(p.Volume, substance),
        Portion.ByDrops p => OfVolume(Drop * p.Count, substance),
        Portion.ByAmount p => OfAmount(p.Amount, substance),
        Portion.PerLitreMass p => OfMass(p.Concentration * makes, substance),
        Portion.PerLitreAmount p => OfAmount(p.Concentration * makes, substance),
        Portion.PerLitreVolume p => OfVolume(p.Dose * makes, substance),
        _ => null,
    };

    /// <summary>The volume of stock an aliquot takes; null when it is stated in another dimension.</summary>
    public static Volume? VolumeOf(Portion portion, Volume makes) => portion switch
    {
        Portion.ByVolume p => p.Volume,
        Portion.ByDrops p => Drop * p.Count,
        Portion.PerLitreVolume p => p.Dose * makes,
        _ => null,
    };

    private static PortionMass OfMass(Mass mass, Substance substance)
    {
        if (substance.Form == PhysicalForm.Solid)
        {
            return new PortionMass(mass, null, false);
        }

        var density = substance.Density?.Value ?? Water;
        return new PortionMass(mass, mass / density, substance.Density is null);
    }

    private static PortionMass? OfVolume(Volume volume, Substance substance) =>
        substance.Form == PhysicalForm.Solid
            ? null
            : new PortionMass(volume * (substance.Density?.Value ?? Water), volume, substance.Density is null);

    private static PortionMass? OfAmount(Amount amount, Substance substance) =>
        substance.Formula is { } formula && substance.Strength.Value > 0
            ? OfMass(amount * formula.MolarMass / substance.Strength.Value, substance)
            : null;
}

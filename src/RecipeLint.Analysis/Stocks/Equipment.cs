using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Stocks;

/// <summary>What an addition was taken with.</summary>
/// <param name="Stated">True when the file names it.</param>
internal readonly record struct Equipment(Scale? Scale, Measure? Measure, bool Stated)
{
    /// <summary>Display steps from which rounding is no matter, a quarter of a per cent (common practice, no source).</summary>
    private const int GoodSteps = 200;

    /// <summary>Nobody measures a cup in a bucket while there is a mug to fill twice (common practice, no source).</summary>
    private const int FarTooLarge = 5, FewFillings = 4;

    private static readonly MeasureKind[] Pouring =
    [
        MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug,
    ];

    /// <summary>
    /// The scale or measure named in the file; else, for what is weighed, the finest scale that carries the mass and, where another does,
    /// its vessel, and for what is poured, the smallest measure that holds the volume. A scale or measure without a stated capacity
    /// holds anything. Nothing where the shop has none.
    /// </summary>
    public static Equipment Choose(ShopSettings shop, string? with, Portion portion, Mass mass, Volume? volume)
    {
        if (with is not null && shop.FindScale(with) is { } namedScale)
        {
            return new Equipment(namedScale, null, true);
        }

        if (with is not null && shop.FindMeasure(with) is { } namedMeasure)
        {
            return new Equipment(null, namedMeasure, true);
        }

        return portion switch
        {
            Portion.ByDrops => new Equipment(null, shop.Measures.FirstOrDefault(m => m.Kind == MeasureKind.Dropper), false),
            Portion.ByVolume or Portion.PerLitreVolume when volume is { } poured => new Equipment(null, SmallestFor(shop, poured), false),
            _ => new Equipment(FinestFor(shop, mass), null, false),
        };
    }

    /// <summary>
    /// The finest that carries the mass; a coarser one that shows it in as many steps where the vessel would not fit on the finest.
    /// </summary>
    private static Scale? FinestFor(ShopSettings shop, Mass mass)
    {
        var carrying = shop.Scales
            .Where(s => s.Capacity is not { } capacity || capacity >= mass)
            .OrderBy(s => s.Readability)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .ToList();
        var lightest = shop.Vessels.Where(v => v.Tare is not null).Select(v => v.Tare!.Value).DefaultIfEmpty(new Mass(0)).Min();
        return carrying.FirstOrDefault(s => s.Capacity is not { } capacity || capacity >= mass + lightest) is { } roomy
            && mass.Grams >= GoodSteps * roomy.Readability.Grams
                ? roomy
                : carrying.FirstOrDefault();
    }

    /// <summary>The smallest that holds the volume; where that is far too large, the largest that holds it in a few fillings.</summary>
    private static Measure? SmallestFor(ShopSettings shop, Volume volume)
    {
        var pouring = shop.Measures.Where(m => Pouring.Contains(m.Kind))
            .OrderBy(m => m.Capacity?.Litres ?? double.MaxValue)
            .ThenBy(m => m.Name, StringComparer.Ordinal)
            .ToList();
        var holding = pouring.FirstOrDefault(m => m.Capacity is not { } capacity || capacity >= volume);
        return holding is not { Capacity: { } size } || size <= volume * FarTooLarge ? holding
            : pouring.LastOrDefault(m => m.Capacity is { } capacity && capacity < volume && capacity * FewFillings >= volume) ?? holding;
    }
}

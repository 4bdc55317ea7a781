using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Stocks;

/// <summary>What an addition was taken with.</summary>
/// <param name="Stated">True when the file names it.</param>
internal readonly record struct Equipment(Scale? Scale, Measure? Measure, bool Stated)
{
    private static readonly MeasureKind[] Pouring =
    [
        MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug,
    ];

    /// <summary>
    /// The scale or measure named in the file; else, for what is weighed, the finest scale that carries the mass, and for what is poured,
    /// the smallest measure that holds the volume. A scale or measure without a stated capacity holds anything. Nothing where the shop has
    /// none.
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

    private static Scale? FinestFor(ShopSettings shop, Mass mass) =>
        shop.Scales
            .Where(s => s.Capacity is not { } capacity || capacity >= mass)
            .OrderBy(s => s.Readability)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .FirstOrDefault();

    private static Measure? SmallestFor(ShopSettings shop, Volume volume) =>
        shop.Measures
            .Where(m => Pouring.Contains(m.Kind) && (m.Capacity is not { } capacity || capacity >= volume))
            .OrderBy(m => m.Capacity?.Litres ?? double.MaxValue)
            .ThenBy(m => m.Name, StringComparer.Ordinal)
            .FirstOrDefault();
}

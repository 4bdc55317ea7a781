using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>How well a volume could be measured: with what the shop has, or with what can be bought.</summary>
internal static class MeasureAdvice
{
    private static readonly MeasureKind[] _careful = [MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe];

    private static readonly double[] _syringeMillilitres = [1, 2, 5, 10, 20, 50];

    private static readonly double[] _cylinderMillilitres = [100, 250, 500, 1000, 2000];

    /// <summary>
    /// The measure of the shop that takes this volume in one filling with the least error, and its expanded uncertainty (k = 2).
    /// </summary>
    internal static (Measure Measure, double Relative)? BestOf(ShopSettings shop, Volume volume) =>
        shop.Measures
            .Where(m => _careful.Contains(m.Kind) && Takes(m, volume))
            .Select(m => (Measure: m, Relative: Pouring.Of(m, volume).RelativeExpanded ?? double.MaxValue))
            .OrderBy(m => m.Relative)
            .ThenBy(m => m.Measure.Name, StringComparer.Ordinal)
            .Select(m => ((Measure, double)?)m)
            .FirstOrDefault();

    /// <summary>Relative standard uncertainty of a volume taken with the shop's best measure, or with one nobody named.</summary>
    internal static double StandardOf(ShopSettings shop, Volume volume) =>
        BestOf(shop, volume) is var (_, relative) ? relative / 2 : StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value);

    /// <summary>
    /// The smallest common syringe or cylinder that takes the volume in one filling; null above 2 L or where it would be no better.
    /// </summary>
    internal static string? ToBuy(Volume volume, double limit)
    {
        var kind = volume.Millilitres <= _syringeMillilitres[^1] ? MeasureKind.Syringe : MeasureKind.Cylinder;
        var sizes = kind == MeasureKind.Syringe ? _syringeMillilitres : _cylinderMillilitres;
        foreach (var size in sizes.Where(s => s >= volume.Millilitres * (1 - 1e-9)))
        {
            var half = EquipmentLimits.VolumeError(kind, Volume.FromMillilitres(size), volume) / volume;
            var relative = 2 * StandardUncertainty.Rectangular(half);
            return relative <= limit
                ? $"a {Say.Litres(size / 1000)} {(kind == MeasureKind.Syringe ? "syringe" : "cylinder")} (±{Say.Percent(relative)})"
                : null;
        }

        return null;
    }

    private static bool Takes(Measure measure, Volume volume) => measure.Capacity is not { Litres: > 0 } capacity || (measure.Kind switch
    {
        // A flask has one mark, a one-mark pipette too.
        MeasureKind.Flask => Math.Abs((capacity / volume) - 1) < 1e-6,
        MeasureKind.Pipette when measure.Readability is null => Math.Abs((capacity / volume) - 1) < 1e-6,
        _ => capacity.Litres >= volume.Litres * (1 - 1e-9),
    });
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Advice.Slips;

/// <summary>A volume of the stock put on a scale.</summary>
/// <param name="Volume">What is weighed.</param>
/// <param name="With">Measure it is filled to; null for the whole batch as it was made up.</param>
/// <param name="Scale">What it is weighed on.</param>
public sealed record BottleWeighing(Volume Volume, Measure? With, Scale Scale)
{
    /// <summary>
    /// The weighing that tells most with this shop's equipment: the whole batch, or a full measure of it, whichever has the smaller
    /// relative uncertainty. Null where no scale carries any.
    /// </summary>
    public static BottleWeighing? Best(StockFacts stock, Instruments instruments, double density)
    {
        var candidates = new List<(BottleWeighing Weighing, double Relative)>();
        if (instruments.ScaleFor(Mass(stock.Volume, density), stock) is { } scale)
        {
            var filling = FinishedVolume.Of(stock) is { } finished
                ? finished.Pouring.Standard / stock.Volume
                : StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value);
            candidates.Add((new BottleWeighing(stock.Volume, null, scale), filling));
        }

        foreach (var measure in stock.Settings.Measures.Where(
            m => m.Kind is MeasureKind.Cylinder or MeasureKind.Flask or MeasureKind.Pipette or MeasureKind.Syringe))
        {
            if (measure.Capacity is { Litres: > 0 } full
                && full <= stock.Volume
                && instruments.ScaleFor(Mass(full, density), stock) is { } fits)
            {
                candidates.Add((new BottleWeighing(full, measure, fits), Pouring.Of(measure, full).Standard / full));
            }
        }

        return candidates
            .Select(c => (c.Weighing, Error: Math.Sqrt((c.Relative * c.Relative) + Math.Pow(
                new Weighing(c.Weighing.Scale, Mass(c.Weighing.Volume, density)).Standard / Mass(c.Weighing.Volume, density), 2))))
            .OrderBy(c => Rounding.SixDigits(c.Error))
            .ThenByDescending(c => c.Weighing.Volume.Litres)
            .Select(c => c.Weighing)
            .FirstOrDefault();
    }

    /// <summary>g that should be on the scale, with its window.</summary>
    public ReadingWindow Of(ReadingWindow density, StockFacts stock)
    {
        var mass = Mass(Volume, density.Value);
        var filling = With is { } measure ? Pouring.Of(measure, Volume).Standard / Volume
            : FinishedVolume.Of(stock) is { } finished ? finished.Pouring.Standard / stock.Volume
            : StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value);
        var own = Math.Sqrt(Math.Pow(filling * mass.Grams, 2) + Math.Pow(new Weighing(Scale, mass).Standard.Grams, 2));
        return new ReadingWindow(mass.Grams, Math.Sqrt(Math.Pow(2 * own, 2) + Math.Pow(density.HalfWidth * Volume.Millilitres, 2)));
    }

    private static Mass Mass(Volume volume, double density) => new(volume.Millilitres * density);
}

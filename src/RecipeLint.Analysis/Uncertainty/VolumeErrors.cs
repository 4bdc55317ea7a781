using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>The errors of volumes that belong to a whole file: what a stock is brought to, an aliquot, a dose, the tank.</summary>
internal sealed class VolumeErrors(MeasurementErrors errors, UncertaintyNotes notes)
{
    /// <summary>
    /// Where the named vessel is one of the shop's measures, its errors. A step that tops up names nothing else, so the best of the vessel's own
    /// mark and the shop's measures that hold the volume in one filling is assumed, with an error that no aliquot or dose shares.
    /// </summary>
    public IReadOnlyList<RelativeError> OfStock(StockFacts stock)
    {
        var (document, shop) = (stock.Stock, stock.Settings);
        var what = $"the finished volume of '{document.Name}'";
        if (document.Vessel is { } named && shop.FindMeasure(named.Value) is { } stated)
        {
            return errors.OfVolume(Pouring.Of(stated, stock.Volume), document.File, what, document.Place);
        }

        var candidates = shop.Measures.Where(m => CanHold(m, stock.Volume)).Select(m => Pouring.Of(m, stock.Volume)).ToList();
        if (document.Vessel is { } vessel)
        {
            candidates.Add(Pouring.Of(Marked(vessel, shop), stock.Volume));
        }

        var best = candidates.OrderBy(p => p.Standard).ThenBy(p => p.Measure.Name, StringComparer.Ordinal).FirstOrDefault();
        if (best is null)
        {
            return errors.OfUnknownMeasure(document.File, what, document.Place);
        }

        notes.Add(
            "uncertainty-stock-volume",
            $"No step says with what the finished volume of {{0}} is measured: the best the shop has for it is taken, '{best.Measure.Name}'.",
            $"'{document.Name}'",
            document.Place);
        return errors.OfVolume(best, document.File, what, document.Place, assumedUse: true);
    }

    public IReadOnlyList<RelativeError> OfAliquot(AliquotFacts aliquot, string sourceName, StockFacts stock)
    {
        var with = stock.Stock.Steps.OfType<AliquotStep>().FirstOrDefault(s => s.Id == aliquot.Id)?.With?.Value;
        return OfPart(with, aliquot.Measure, aliquot.Volume, null, stock.Settings, $"{stock.Stock.File}#{aliquot.Id}", $"the part of '{sourceName}'", aliquot.Place);
    }

    public IReadOnlyList<RelativeError> OfDose(DoseFacts dose, StockFacts stock, RecipeFacts recipe)
    {
        var strokes = (dose.Entry as StockDose)?.Strokes?.Value;
        return OfPart(
            dose.Entry.With?.Value, dose.Measure, dose.Volume, strokes, recipe.Settings, $"{recipe.Recipe.File}#{dose.Id}", $"the dose of '{stock.Stock.Name}'", dose.Entry.Place);
    }

    public IReadOnlyList<RelativeError> OfTank(RecipeFacts recipe)
    {
        var place = recipe.Recipe.Final?.Place ?? recipe.Recipe.Place;
        notes.Add("uncertainty-final-volume", "How the final volume of {0} is measured is not stated: it is taken as right to ± 2 %, as by a water meter of accuracy class 2 (OIML R 49-1).", $"'{recipe.Recipe.Name}'", place);
        var source = new ErrorSource($"tank:{recipe.Recipe.File}", "the final volume of the tank", place);
        return [new RelativeError(source, StandardUncertainty.Rectangular(EquipmentLimits.TankVolume.Value), ErrorShape.Rectangular)];
    }

    private IReadOnlyList<RelativeError> OfPart(
        string? with, Measure? measure, Volume volume, int? strokes, ShopSettings shop, string id, string what, Place place)
    {
        if (measure is not null)
        {
            return errors.OfVolume(Pouring.Of(measure, volume, strokes), id, what, place);
        }

        // Weighed instead of measured: the density cancels in the relative error.
        return with is not null && shop.FindScale(with) is { } scale
            ? errors.OfWeight(new Weighing(scale, new Mass(volume.Millilitres)), id, what, place)
            : errors.OfUnknownMeasure(id, what, place);
    }

    /// <summary>A flask holds one volume only; a cylinder or jug any up to its capacity.</summary>
    private static bool CanHold(Measure measure, Volume volume) => measure switch
    {
        { Kind: MeasureKind.Flask, Capacity: { } capacity } => Math.Abs((capacity / volume) - 1) < 1e-6,
        { Kind: MeasureKind.Cylinder or MeasureKind.Jug, Capacity: { } capacity } => capacity.Litres >= volume.Litres * (1 - 1e-9),
        _ => false,
    };

    /// <summary>The marks of a vessel are those of a jug.</summary>
    private static Measure Marked(Located<string> named, ShopSettings shop)
    {
        var vessel = shop.Vessels.FirstOrDefault(v => v.Name == named.Value);
        return new Measure(named.Value, vessel?.Place ?? named.Place, MeasureKind.Jug, vessel?.Capacity, null, null);
    }
}

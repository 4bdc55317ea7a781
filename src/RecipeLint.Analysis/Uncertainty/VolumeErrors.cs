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
    /// mark (some vessel's, where none is named) and the shop's measures that hold the volume in one filling is assumed, with an error that no aliquot or dose shares.
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
        if (document.Vessel is null && shop.Measures.Count == 0)
        {
            return errors.OfUnknownMeasure(document.File, what, document.Place);
        }

        candidates.Add(Pouring.Of(Marked(stock), stock.Volume));
        var best = candidates.OrderBy(p => p.Standard).ThenBy(p => p.Measure.Name, StringComparer.Ordinal).First();
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
        var id = $"{stock.Stock.File}#{aliquot.Id}";
        return OfPart(with, aliquot.Measure, aliquot.Volume, null, stock.Settings, id, $"the part of '{sourceName}'", aliquot.Place);
    }

    public IReadOnlyList<RelativeError> OfDose(DoseFacts dose, StockFacts stock, RecipeFacts recipe)
    {
        var strokes = (dose.Entry as StockDose)?.Strokes?.Value;
        var (id, what) = ($"{recipe.Recipe.File}#{dose.Id}", $"the dose of '{stock.Stock.Name}'");
        return OfPart(dose.Entry.With?.Value, dose.Measure, dose.Volume, strokes, recipe.Settings, id, what, dose.Entry.Place);
    }

    public IReadOnlyList<RelativeError> OfTank(RecipeFacts recipe)
    {
        var place = recipe.Recipe.Final?.Place ?? recipe.Recipe.Place;
        notes.Add(
            "uncertainty-final-volume",
            "How the final volume of {0} is measured is not stated: it is taken as right to ± 2 %, as by a water meter of accuracy class 2 (OIML R 49-1).",
            $"'{recipe.Recipe.Name}'",
            place);
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

    /// <summary>The marks of a vessel are those of a jug; a vessel nobody names has one at just the finished volume.</summary>
    private static Measure Marked(StockFacts stock)
    {
        var named = stock.Stock.Vessel;
        var vessel = named is null ? null : stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value);
        var place = vessel?.Place ?? named?.Place ?? stock.Stock.Place;
        return new Measure(named?.Value ?? "vessel mark", place, MeasureKind.Jug, named is null ? stock.Volume : vessel?.Capacity, null, null);
    }
}

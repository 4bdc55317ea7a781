using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>The errors of volumes that belong to a whole file: what a stock is brought to, an aliquot, a dose, the tank.</summary>
internal sealed class VolumeErrors(MeasurementErrors errors, UncertaintyNotes notes)
{
    /// <summary>
    /// Where the named vessel is one of the shop's measures, its errors. Otherwise the measure is assumed (<see cref="FinishedVolume"/>),
    /// with an error that no aliquot or dose shares.
    /// </summary>
    public IReadOnlyList<RelativeError> OfStock(StockFacts stock)
    {
        var document = stock.Stock;
        var what = $"the finished volume of '{document.Name}'";
        if (FinishedVolume.Of(stock) is not { } finished)
        {
            return errors.OfUnknownMeasure(document.File, what, document.Place);
        }

        if (finished.IsStated)
        {
            return errors.OfVolume(finished.Pouring, document.File, what, document.Place);
        }

        notes.Add(
            "uncertainty-stock-volume",
            "No step says with what the finished volume of {0} is measured: the best the shop has for it is taken, "
                + $"'{finished.Pouring.Measure.Name}'.",
            $"'{document.Name}'",
            document.Place);
        return errors.OfVolume(finished.Pouring, document.File, what, document.Place, assumedUse: true);
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
            "How the final volume of {0} is measured is not stated: it is taken as right to ± 2 %, as by a water meter of accuracy class "
                + "2 (OIML R 49-1).",
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
}

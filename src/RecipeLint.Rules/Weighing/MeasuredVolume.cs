using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Weighing;

/// <summary>A volume that brings nutrients, taken with a measure of the shop: a dose, an aliquot or a poured liquid.</summary>
/// <param name="File">The stock or recipe.</param>
/// <param name="Entry">The dose or step.</param>
/// <param name="Place">What has to change: the measure as named, else the amount.</param>
/// <param name="What">How to call it in a sentence: "of 'Trace'".</param>
/// <param name="IsStated">True when the file names the measure.</param>
internal sealed record MeasuredVolume(string File, Place Entry, Place Place, string What, Pouring Pouring, bool IsStated, ShopSettings Shop)
{
    /// <summary>The stock it is taken of; null for a liquid as it is bought.</summary>
    internal StockFacts? Drawn { get; init; }

    /// <summary>Water that a thinner one may take the place of.</summary>
    internal Volume Room { get; init; }

    internal double Relative => Rounding.SixDigits(Pouring.RelativeExpanded ?? 0);

    internal static IEnumerable<MeasuredVolume> In(Facts facts, StockFacts stock)
    {
        foreach (var aliquot in stock.Aliquots.Where(a => a.Measure is not null))
        {
            var name = facts.Workspace.FindStock(aliquot.StockFile)?.Name ?? aliquot.StockFile;
            yield return Of(
                stock.Stock.File,
                aliquot.Place,
                aliquot.EquipmentStated,
                $"of '{name}'",
                Pouring.Of(aliquot.Measure!, aliquot.Volume),
                stock.Settings) with
            {
                Drawn = facts.FindStock(aliquot.StockFile),
                Room = new Volume(stock.Waters.Sum(w => w.Volume.Litres)),
            };
        }

        foreach (var addition in stock.Additions.Where(a => !a.ThroughAliquot))
        {
            var step = stock.Stock.Steps.OfType<AddStep>().FirstOrDefault(s => s.Id == addition.Id);
            if (step is { Tolerance: null } && OfLiquid(addition, stock.Stock.File, stock.Settings) is { } poured)
            {
                yield return poured;
            }
        }
    }

    internal static IEnumerable<MeasuredVolume> In(RecipeFacts recipe)
    {
        foreach (var dose in recipe.Doses)
        {
            if (dose is { Stock: { } stock, Measure: { } measure, Entry: StockDose entry } && dose.Volume.Litres > 0)
            {
                var pouring = Pouring.Of(measure, dose.Volume, entry.Strokes?.Value);
                yield return Of(recipe.Recipe.File, entry.Place, true, $"of '{stock.Stock.Name}'", pouring, recipe.Settings) with
                {
                    Drawn = stock,
                    Room = recipe.FinalVolume - new Volume(recipe.Doses.Sum(d => d.Volume.Litres)),
                };
            }
            else if (dose is { Direct: { } direct, Entry: DirectDose { Tolerance: null } }
                && OfLiquid(direct, recipe.Recipe.File, recipe.Settings) is { } poured)
            {
                yield return poured;
            }
        }
    }

    private static MeasuredVolume? OfLiquid(AdditionFacts addition, string file, ShopSettings shop)
    {
        var feeds = addition.Substance.Kind != SubstanceKind.Dye && PlantNutrients.In(addition.Elements).Any();
        if (!feeds || addition is not { Volume: { Litres: > 0 } volume, Measure: { } chosen })
        {
            return null;
        }

        // Where the file names no measure, the person takes the best there is, not the smallest.
        var measure = addition.EquipmentStated ? chosen : MeasureAdvice.BestOf(shop, volume)?.Measure ?? chosen;
        return Of(file, addition.Place, addition.EquipmentStated, $"of {addition.Substance.Name}", Pouring.Of(measure, volume), shop);
    }

    private static MeasuredVolume Of(string file, Place entry, bool stated, string what, Pouring pouring, ShopSettings shop) =>
        new(file, entry, stated ? entry.Child("with") : entry.Child("amount"), what, pouring, stated, shop);
}

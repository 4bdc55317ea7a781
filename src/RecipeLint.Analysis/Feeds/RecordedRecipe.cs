using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Feeds;

/// <summary>The record of a tank as a recipe: what was to be mixed, and what really went in. Pure; nothing on the disk changes.</summary>
public static class RecordedRecipe
{
    /// <summary>What the recipe file asks for, in the size of the tank.</summary>
    public static RecipeDocument Planned(RecipeDocument recipe, BatchDocument batch)
    {
        if (batch.Size is not { } size || recipe.Final is not { } final || final.Value <= Volume.Zero)
        {
            return recipe;
        }

        var factor = size.Value / final.Value;
        return recipe with
        {
            Final = final with { Value = size.Value },
            Doses = [.. recipe.Doses.Select(d => Times(d, factor))],
        };
    }

    /// <summary>
    /// What really went in: recorded amounts and substances in place of the planned ones, what was put in besides, without what was left
    /// out. A dose that is not recorded went as planned. A recorded amount of what sets the pH takes the place of the pH aimed at.
    /// </summary>
    public static RecipeDocument Actual(RecipeDocument recipe, BatchDocument batch)
    {
        var planned = Planned(recipe, batch);
        var recorded = batch.Recorded();
        var doses = planned.Doses.Select(d => recorded.TryGetValue(d.Id, out var entry) ? Done(d, entry) : d).OfType<DoseEntry>();
        var adjusted = planned.Adjust is { } adjust && recorded.TryGetValue(BatchDocument.AdjustId, out var told)
            && (told.LeftOut || told.Amount is not null)
                ? (Adjust: adjust, Entry: told)
                : default;
        return planned with
        {
            Doses = [.. doses, .. Reagent(adjusted.Adjust, adjusted.Entry), .. Besides(batch, planned)],
            Adjust = adjusted.Adjust is null ? planned.Adjust : null,
            IsComplete = planned.IsComplete && batch.IsComplete,
        };
    }

    private static IEnumerable<DoseEntry> Reagent(PhAdjustment? adjust, BatchStep? entry)
    {
        if (adjust is not null && entry is { LeftOut: false } && (entry.What ?? adjust.Using) is { } what)
        {
            yield return new DirectDose(BatchDocument.AdjustId, adjust.Place)
            {
                What = what,
                Substance = entry.What is null ? adjust.Reagent : entry.Substance,
                Amount = entry.AmountAt(adjust.Place),
                With = entry.With,
            };
        }
    }

    private static IEnumerable<DoseEntry> Besides(BatchDocument batch, RecipeDocument planned) =>
        batch.Besides().Select(besides => new DirectDose(besides.Id, planned.Place)
        {
            What = besides.Entry.What!,
            Substance = besides.Entry.Substance,
            Amount = besides.Entry.AmountAt(planned.Place),
            With = besides.Entry.With,
        });

    /// <summary>The dose as it was given; null where it was left out. Places stay those of the recipe file.</summary>
    private static DoseEntry? Done(DoseEntry dose, BatchStep entry) => entry.LeftOut ? null : dose switch
    {
        StockDose stock when entry.Amount?.Value is Portion.ByVolume poured => stock with
        {
            Dose = null,
            Strokes = null,
            Amount = new Located<Volume>(poured.Volume, (stock.Amount?.Place ?? stock.Dose?.Place) ?? stock.Place),
            With = entry.With ?? stock.With,
        },
        DirectDose direct when entry.What is { } other => direct with
        {
            What = other,
            Substance = entry.Substance,
            Amount = entry.AmountAt(direct.Amount?.Place ?? direct.Place) ?? direct.Amount,
            Assay = null,
            With = entry.With ?? direct.With,
        },
        DirectDose direct => direct with
        {
            Amount = entry.AmountAt(direct.Amount?.Place ?? direct.Place) ?? direct.Amount,
            With = entry.With ?? direct.With,
        },
        _ => dose,
    };

    /// <summary>What is stated for each litre grows with the tank by itself; strokes are whole.</summary>
    private static DoseEntry Times(DoseEntry dose, double factor) => dose switch
    {
        StockDose { Amount: { } amount } stock => stock with { Amount = amount with { Value = amount.Value * factor } },
        StockDose { Strokes: { } strokes } stock => stock with
        {
            Strokes = strokes with { Value = Math.Max(1, (int)Math.Min(Math.Round(strokes.Value * factor), int.MaxValue)) },
        },
        DirectDose { Amount: { } amount } direct => direct with
        {
            Amount = amount with { Value = RecordedPortion.Times(amount.Value, factor) },
        },
        _ => dose,
    };
}

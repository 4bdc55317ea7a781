using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Stocks;

/// <summary>A batch record as a stock: what was to be made, and what was really made. Pure; nothing on the disk changes.</summary>
public static class RecordedStock
{
    /// <summary>What the stock file asks for, in the size of the batch.</summary>
    public static StockDocument Planned(StockDocument stock, BatchDocument batch)
    {
        if (batch.Size is not { } size || stock.Makes is not { } makes || makes.Value <= Volume.Zero)
        {
            return stock;
        }

        var factor = size.Value / makes.Value;
        return stock with
        {
            Makes = makes with { Value = size.Value },
            Steps = [.. stock.Steps.Select(s => Times(s, factor))],
        };
    }

    /// <summary>
    /// What really went in: recorded amounts and substances in place of the planned ones, what was put in besides, without what was left
    /// out. A step that is not recorded went as planned. A recorded mark of the last topping up is the volume that was made.
    /// </summary>
    public static StockDocument Actual(StockDocument stock, BatchDocument batch)
    {
        var planned = Planned(stock, batch);
        var recorded = batch.Recorded();
        var steps = planned.Steps.Select(s => recorded.TryGetValue(s.Id, out var entry) ? Done(s, entry) : s).OfType<Step>().ToList();
        var last = steps.FindLastIndex(s => s is TopUpStep);
        steps.InsertRange(last < 0 ? steps.Count : last, Besides(batch, planned));
        var mark = steps.OfType<TopUpStep>().LastOrDefault(s => recorded.TryGetValue(s.Id, out var entry) && entry.Amount is not null);
        return planned with
        {
            Steps = steps,
            Makes = mark?.To is { } reached && planned.Makes is { } makes ? makes with { Value = reached.Value } : planned.Makes,
            IsComplete = planned.IsComplete && batch.IsComplete,
        };
    }

    private static IEnumerable<AddStep> Besides(BatchDocument batch, StockDocument planned) =>
        batch.Besides().Select(besides => new AddStep(besides.Id, planned.Place)
        {
            What = besides.Entry.What!,
            Substance = besides.Entry.Substance,
            Amount = besides.Entry.AmountAt(planned.Place),
            With = besides.Entry.With,
        });

    /// <summary>The step as it was done; null where it was left out. Places stay those of the stock file.</summary>
    private static Step? Done(Step step, BatchStep entry)
    {
        if (entry.LeftOut)
        {
            return null;
        }

        var volume = entry.Amount?.Value is Portion.ByVolume poured ? poured.Volume : (Volume?)null;
        return step switch
        {
            AddStep add when entry.What is { } other => add with
            {
                What = other,
                Substance = entry.Substance,
                Amount = entry.AmountAt(add.Amount?.Place ?? add.Place) ?? add.Amount,
                Assay = null,
                With = entry.With ?? add.With,
            },
            AddStep add => add with
            {
                Amount = entry.AmountAt(add.Amount?.Place ?? add.Place) ?? add.Amount,
                With = entry.With ?? add.With,
            },
            AliquotStep aliquot => aliquot with
            {
                Amount = entry.AmountAt(aliquot.Amount?.Place ?? aliquot.Place) ?? aliquot.Amount,
                With = entry.With ?? aliquot.With,
            },
            AdjustStep { Using: { } reagent } adjust when entry.Amount is not null => new AddStep(adjust.Id, adjust.Place)
            {
                What = entry.What ?? reagent,
                Substance = entry.What is null ? adjust.Reagent : entry.Substance,
                Amount = entry.AmountAt(adjust.Place),
                With = entry.With,
            },
            PourStep pour when volume is { } litres => pour with { Volume = new Located<Volume>(litres, pour.Volume?.Place ?? pour.Place) },
            TopUpStep topUp when volume is { } litres => topUp with { To = new Located<Volume>(litres, topUp.To?.Place ?? topUp.Place) },
            _ => step,
        };
    }

    private static Step Times(Step step, double factor) => step switch
    {
        AddStep { Amount: { } amount } add => add with { Amount = amount with { Value = RecordedPortion.Times(amount.Value, factor) } },
        AliquotStep { Amount: { } amount } aliquot => aliquot with
        {
            Amount = amount with { Value = RecordedPortion.Times(amount.Value, factor) },
        },
        PourStep { Volume: { } volume } pour => pour with { Volume = volume with { Value = volume.Value * factor } },
        TopUpStep { To: { } mark } topUp => topUp with { To = mark with { Value = mark.Value * factor } },
        _ => step,
    };
}

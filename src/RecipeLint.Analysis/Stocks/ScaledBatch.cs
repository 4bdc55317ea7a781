using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Stocks;

/// <summary>The same stock made in another amount: everything put in grows or shrinks alike, concentrations stay.</summary>
public static class ScaledBatch
{
    /// <param name="factor">Above zero.</param>
    public static StockFacts Of(StockFacts stock, double factor) => factor == 1 ? stock : stock with
    {
        Stock = stock.Stock with
        {
            Makes = stock.Stock.Makes is { } makes ? Times(makes, factor) : null,
            Steps = [.. stock.Stock.Steps.Select(s => Times(s, factor))],
        },
        Volume = stock.Volume * factor,
        Additions = [.. stock.Additions.Select(a => a with
        {
            Mass = a.Mass * factor,
            Volume = a.Volume * factor,
            Elements = a.Elements.Times(factor),
            ComponentMoles = a.ComponentMoles.Times(factor),
            Impurities = a.Impurities.Times(factor),
        })],
        Waters = [.. stock.Waters.Select(w => w with
        {
            Volume = w.Volume * factor,
            Elements = w.Elements.Times(factor),
            ComponentMoles = w.ComponentMoles.Times(factor),
        })],
        Aliquots = [.. stock.Aliquots.Select(a => a with { Volume = a.Volume * factor })],
        Adjustments = [.. stock.Adjustments.Select(a => a with
        {
            Amount = a.Amount * factor,
            Volume = a.Volume * factor,
            Elements = a.Elements.Times(factor),
            ComponentMoles = a.ComponentMoles.Times(factor),
        })],
        Impurities = stock.Impurities.Times(factor),
        Totals = stock.Totals.Times(factor),
        ComponentMoles = stock.ComponentMoles.Times(factor),
    };

    private static Located<Volume> Times(Located<Volume> volume, double factor) => volume with { Value = volume.Value * factor };

    /// <summary>Volumes of water that a step names; amounts of substances stand in the facts.</summary>
    private static Step Times(Step step, double factor) => step switch
    {
        PourStep { Volume: { } volume } pour => pour with { Volume = Times(volume, factor) },
        TopUpStep { To: { } mark } topUp => topUp with { To = Times(mark, factor) },
        _ => step,
    };
}

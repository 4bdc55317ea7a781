using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>More or less of the same stock: volume and amounts change together, strength and doses stay.</summary>
internal static class BatchSize
{
    private static readonly double[] _larger = [1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

    private static readonly double[] _smaller = [0.8, 0.75, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.15, 0.1, 0.05];

    /// <summary>The smallest larger batch that holds.</summary>
    public static RepairProposal Larger(RepairContext context, StockFacts stock) => Ladder(context, stock, _larger, "larger-batch");

    /// <summary>The largest smaller batch that holds.</summary>
    public static RepairProposal Smaller(RepairContext context, StockFacts stock) => Ladder(context, stock, _smaller, "smaller-batch");

    private static RepairProposal.Ladder Ladder(RepairContext context, StockFacts stock, double[] factors, string key) =>
        new(factors.Select(f => Times(context, stock, f, key)).OfType<Repair>());

    private static Repair? Times(RepairContext context, StockFacts stock, double factor, string key)
    {
        if (stock.Stock.Makes is not { } makes)
        {
            return null;
        }

        var edits = new List<JsonEdit?> { Amounts.Times(context, makes.Place, factor)?.Edit };
        foreach (var step in stock.Stock.Steps)
        {
            edits.AddRange(step switch
            {
                PourStep { Volume: { } poured } => [Amounts.Times(context, poured.Place, factor)?.Edit],
                TopUpStep { To: { } mark } => [Amounts.Times(context, mark.Place, factor)?.Edit],
                AliquotStep { Amount: { Value: not (Portion.PerLitreMass or Portion.PerLitreAmount or Portion.PerLitreVolume) } amount } =>
                    [Amounts.Times(context, amount.Place, factor)?.Edit],
                AddStep { Amount: { Value: not (Portion.PerLitreMass or Portion.PerLitreAmount or Portion.PerLitreVolume) } amount } =>
                    [Amounts.Times(context, amount.Place, factor)?.Edit],
                _ => Array.Empty<JsonEdit?>(),
            });
        }

        return edits.Contains(null)
            ? null
            : Repair.Chemistry(
                key,
                $"Make {Say.Litres(stock.Volume.Litres * factor)} of '{stock.Stock.Name}' at a time instead of "
                    + $"{Say.Litres(stock.Volume.Litres)}: all amounts times {Say.Number(factor)}.",
                [.. edits.OfType<JsonEdit>()]);
    }
}

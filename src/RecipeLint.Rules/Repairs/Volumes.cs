using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Repairs;

/// <summary>What is poured into the vessel of a stock.</summary>
internal static class Volumes
{
    /// <summary>Water, liquids and parts of other stocks as measured, without what a top-up adds.</summary>
    public static Volume Poured(StockFacts stock) => new(
        stock.Stock.Steps.OfType<PourStep>().Sum(p => p.Volume?.Value.Litres ?? 0)
        + stock.Additions.Where(a => !a.ThroughAliquot).Sum(a => a.Volume?.Litres ?? 0)
        + stock.Aliquots.Sum(a => a.Volume.Litres));
}

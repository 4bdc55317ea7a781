using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Mixing;

/// <summary>What each step of a stock brings, found by its place instead of looked for among all.</summary>
internal sealed record StepContents(
    ILookup<Place, AdditionFacts> Additions, ILookup<Place, WaterFacts> Waters, ILookup<Place, PhAdjustmentFacts> Adjustments)
{
    public static StepContents Of(StockFacts stock) =>
        new(stock.Additions.ToLookup(a => a.Place), stock.Waters.ToLookup(w => w.Place), stock.Adjustments.ToLookup(a => a.Place));
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Splitting;

/// <summary>What is to be split, from a recipe or from one stock.</summary>
/// <param name="Recipe">With its doses as they are; the new parts take their place.</param>
/// <param name="Stocks">The present stocks.</param>
/// <param name="Before">mg/L of the final solution by element.</param>
internal sealed record SplitSource(
    string Name,
    string File,
    IReadOnlyList<SplitIngredient> Ingredients,
    RecipeDocument Recipe,
    IReadOnlyList<StockFacts> Stocks,
    ShopSettings Shop,
    bool IsComplete,
    IReadOnlyDictionary<string, double> Before)
{
    /// <summary>An unheated shed, as for stocks that do not say.</summary>
    private static readonly Interval<Temperature> Shed = new(new Temperature(5), new Temperature(30));

    /// <summary>
    /// The water most of the present stocks are made with, so that the final solution keeps what it brings; without stocks the recipe's,
    /// else distilled.
    /// </summary>
    public WaterReference StockWater()
    {
        var poured = Stocks
            .SelectMany(s => s.Stock.Steps)
            .Select(s => s is PourStep pour ? pour.Of?.Value : s is TopUpStep top ? top.Of?.Value : null)
            .OfType<WaterReference>()
            .GroupBy(w => (w.Name, w.File))
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        return poured?.First() ?? (Stocks.Count == 0 ? Recipe.Water?.Value : null) ?? new WaterReference("distilled", null);
    }

    /// <summary>From the coldest to the warmest any present stock is kept; as long as the one kept shortest; dark where one is.</summary>
    public Keeping Keep(Interval<Temperature>? asked)
    {
        var place = Place.Whole(File);
        var span = asked ?? (Stocks.Count > 0
            ? new Interval<Temperature>(Stocks.Min(s => s.StorageTemperature.Low), Stocks.Max(s => s.StorageTemperature.High))
            : Shop.Sites.Count > 0 ? new Interval<Temperature>(Shop.Sites.Min(s => s.At.Low), Shop.Sites.Max(s => s.At.High)) : Shed);
        var shelf = Stocks.Select(s => s.Stock.Keep?.For).OfType<Located<Duration>>().OrderBy(f => f.Value.Days).FirstOrDefault();
        return new Keeping(new Located<Interval<Temperature>>(span, place), shelf, new Located<LightExposure>(LightExposure.Dark, place));
    }
}

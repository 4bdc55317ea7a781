using RecipeLint.Recipes;

namespace RecipeLint.Analysis;

/// <summary>Everything computed in one run; what rules see.</summary>
public sealed record Facts
{
    private readonly ByFile<StockFacts> _stocks = new(s => s.Stock.File);
    private readonly ByFile<RecipeFacts> _recipes = new(r => r.Recipe.File);
    private readonly ByFile<RecipeFacts> _dosing = new(r => r.Doses.Select(d => d.Stock?.Stock.File));
    private readonly ByFile<StockFacts> _drawing = new(s => s.Aliquots.Select(a => a.StockFile));

    public required Workspace Workspace { get; init; }

    /// <summary>In the order of file paths; only stocks whose volume could be read.</summary>
    public required IReadOnlyList<StockFacts> Stocks { get; init; }

    /// <summary>In the order of file paths; only recipes whose final volume could be read.</summary>
    public required IReadOnlyList<RecipeFacts> Recipes { get; init; }

    public StockFacts? FindStock(string file) => _stocks.Find(Stocks, file);

    public RecipeFacts? FindRecipe(string file) => _recipes.Find(Recipes, file);

    /// <summary>The recipes that dose a stock, in the order of their files.</summary>
    public IReadOnlyList<RecipeFacts> RecipesWith(string stockFile) => _dosing.All(Recipes, stockFile);

    /// <summary>The stocks that an aliquot of a stock goes into, in the order of their files.</summary>
    public IReadOnlyList<StockFacts> StocksWith(string stockFile) => _drawing.All(Stocks, stockFile);
}

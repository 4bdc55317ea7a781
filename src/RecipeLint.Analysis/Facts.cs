using RecipeLint.Recipes;

namespace RecipeLint.Analysis;

/// <summary>Everything computed in one run; what rules see.</summary>
public sealed record Facts
{
    public required Workspace Workspace { get; init; }

    /// <summary>In the order of file paths; only stocks whose volume could be read.</summary>
    public required IReadOnlyList<StockFacts> Stocks { get; init; }

    /// <summary>In the order of file paths; only recipes whose final volume could be read.</summary>
    public required IReadOnlyList<RecipeFacts> Recipes { get; init; }

    public StockFacts? FindStock(string file) => Stocks.FirstOrDefault(s => s.Stock.File == file);
}

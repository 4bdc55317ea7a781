using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Stocks;

/// <summary>Facts of every stock of one workspace, each computed once, pre-stocks before the stocks that take from them.</summary>
/// <param name="keep">Gives the facts that an earlier run has computed where they still hold, else computes them; null computes
/// all.</param>
internal sealed class StockAnalysis(Workspace workspace, Func<Workspace, string, Func<StockFacts?>, StockFacts?>? keep = null)
{
    private readonly Dictionary<string, StockFacts?> _done = new(StringComparer.Ordinal);
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);

    /// <summary>
    /// Null for a file that is no stock, a stock without a readable volume, and one that takes from itself (already reported).
    /// </summary>
    public StockFacts? Of(string? file)
    {
        if (file is null)
        {
            return null;
        }

        if (_done.TryGetValue(file, out var known))
        {
            return known;
        }

        if (!_open.Add(file))
        {
            return null;
        }

        var facts = workspace.FindStock(file) is not { } stock ? null
            : keep is null ? Analyse(stock)
            : keep(workspace, file, () => Analyse(stock));
        _open.Remove(file);
        _done[file] = facts;
        return facts;
    }

    private StockFacts? Analyse(StockDocument stock)
    {
        if (stock.Makes is not { Value.Litres: > 0 and < double.PositiveInfinity } makes)
        {
            return null;
        }

        var batch = new StockBatch(stock, makes.Value, workspace, Of);
        foreach (var step in stock.Steps)
        {
            batch.Do(step);
        }

        return batch.Finish();
    }
}

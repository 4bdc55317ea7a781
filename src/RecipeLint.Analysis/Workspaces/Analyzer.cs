using RecipeLint.Analysis.Feeds;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Workspaces;

/// <summary>From typed documents to facts. Pure: the same workspace always gives the same facts.</summary>
public static class Analyzer
{
    /// <summary>
    /// Computes what every stock and every final solution of the workspace holds. Never throws on what a file can contain: what could not
    /// be read makes the facts incomplete.
    /// </summary>
    /// <param name="memory">Facts of earlier runs, taken over where nothing they follow from has changed; null computes all.</param>
    public static Facts Analyse(Workspace workspace, FactsMemory? memory = null)
    {
        var stocks = new StockAnalysis(workspace, memory is null ? null : memory.Stock);
        return new Facts
        {
            Workspace = workspace,
            Stocks =
            [
                .. workspace.Stocks.OrderBy(s => s.File, StringComparer.Ordinal).Select(s => stocks.Of(s.File)).OfType<StockFacts>(),
            ],
            Recipes =
            [
                .. workspace.Recipes.OrderBy(r => r.File, StringComparer.Ordinal).Select(Recipe).OfType<RecipeFacts>(),
            ],
        };

        RecipeFacts? Recipe(RecipeDocument recipe) => memory is null
            ? SolutionAnalysis.Of(recipe, workspace, stocks)
            : memory.Recipe(workspace, recipe.File, () => SolutionAnalysis.Of(recipe, workspace, stocks));
    }

    /// <summary>
    /// Facts of one stock alone; null for a file that is no stock or has no readable volume. For stocks changed in thought.
    /// </summary>
    public static StockFacts? AnalyseStock(Workspace workspace, string file) => new StockAnalysis(workspace).Of(file);

    /// <summary>Facts of one recipe alone; null for a file that is no recipe or has no readable final volume.</summary>
    public static RecipeFacts? AnalyseRecipe(Workspace workspace, string file) =>
        workspace.FindRecipe(file) is { } recipe ? SolutionAnalysis.Of(recipe, workspace, new StockAnalysis(workspace)) : null;
}

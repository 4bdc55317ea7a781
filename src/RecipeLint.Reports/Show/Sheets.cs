using RecipeLint.Analysis;

namespace RecipeLint.Reports.Show;

/// <summary>The sheet of a file, whatever it is.</summary>
public static class Sheets
{
    /// <summary>Null for a file of another kind, and for one whose volume could not be read.</summary>
    /// <param name="file">Relative to the workspace root.</param>
    /// <param name="mixings">So many times a stock is mixed in thought; 0 for not at all.</param>
    public static Sheet? Of(Facts facts, string file, int mixings = 0) =>
        facts.FindStock(file) is { } stock ? StockSheet.Of(facts, stock, mixings)
        : facts.Recipes.FirstOrDefault(r => r.Recipe.File == file) is { } recipe ? RecipeSheet.Of(facts, recipe, mixings)
        : facts.Workspace.FindWater(file) is { } water && facts.Workspace.Sources.TryGetValue(file, out var source)
            ? WaterSheet.Of(water, source)
        : facts.Workspace.Profiles.FirstOrDefault(p => p.File == file) is { } profile ? ProfileSheet.Of(profile)
        : facts.Workspace.SubstanceFiles.FirstOrDefault(s => s.File == file) is { } products ? ProductSheet.Of(products)
        : null;
}

using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>The invented shop of these goldens, in which every bottle sits on a bound that some advice draws.</summary>
internal static class ToldShop
{
    public const string Folder = "tests/RecipeLint.Advice.Tests/Told/sallowfen";

    private static readonly Lazy<Facts> _facts = new(() => Bottle.FactsOf(Folder));

    public static Facts Facts => _facts.Value;

    public static Workspace Workspace => Facts.Workspace;

    public static StockFacts Stock(string name) => Facts.Stocks.Single(s => s.Stock.File == $"{name}.stock.json");

    public static RecipeFacts Recipe(string name) => Facts.Recipes.Single(r => r.Recipe.File == $"{name}.recipe.json");

    /// <summary>What is judged with a stock: the recipes that dose it, and what these and it are made from. The whole shop would take longer.</summary>
    public static Workspace Around(string file)
    {
        List<RecipeDocument> recipes = [.. Workspace.Recipes.Where(r => Doses(r, file))];
        var dosed = recipes.SelectMany(r => r.Doses).OfType<StockDose>().Select(d => d.StockFile).Append(file).Append("mo.stock.json").ToHashSet();
        return Workspace with { Recipes = recipes, Stocks = [.. Workspace.Stocks.Where(s => dosed.Contains(s.File))], Batches = [] };
    }

    private static bool Doses(RecipeDocument recipe, string file) => recipe.Doses.OfType<StockDose>().Any(d => d.StockFile == file);

    /// <summary>All stocks that go through, by name.</summary>
    public static TheoryData<string> Stocks(params string[] but) =>
        [.. Facts.Stocks.Select(s => s.Stock.File.Split('.')[0]).Except(but).Order(StringComparer.Ordinal)];
}

using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis;
using RecipeLint.Recipes;

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

    /// <summary>All stocks that go through, by name.</summary>
    public static TheoryData<string> Stocks(params string[] but) =>
        [.. Facts.Stocks.Select(s => s.Stock.File.Split('.')[0]).Except(but).Order(StringComparer.Ordinal)];
}

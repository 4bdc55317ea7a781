using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A stock that no recipe and no other stock of the same shop uses.</summary>
internal sealed class UnusedStock : WorkspaceRule
{
    public override string Name => "unused-stock";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        var workspace = facts.Workspace;
        var used = workspace.Recipes.SelectMany(r => r.Doses).OfType<StockDose>().Select(d => d.StockFile)
            .Concat(workspace.Stocks.SelectMany(s => s.Steps).OfType<AliquotStep>().Select(a => a.StockFile ?? a.NotFollowed))
            .OfType<string>()
            .ToHashSet();
        var recipesByShop = workspace.Recipes
            .Where(r => workspace.Asked.Contains(r.File))
            .GroupBy(r => workspace.SettingsFor(r.File).File ?? "")
            .ToDictionary(g => g.Key, g => g.Count());

        foreach (var stock in workspace.Stocks.Where(s => workspace.Asked.Contains(s.File) && !used.Contains(s.File)))
        {
            // Stocks checked without recipes say nothing about use.
            if (recipesByShop.TryGetValue(workspace.SettingsFor(stock.File).File ?? "", out var recipes))
            {
                var looked = recipes == 1 ? "The one recipe checked does not use" : $"None of the {recipes} recipes checked uses";
                yield return context.Find(
                    stock.Place,
                    $"{looked} the stock '{stock.Name}', and no other stock draws on it. "
                    + "An old stock beside the current one invites taking the wrong bottle. Delete the file, or add the dose that is missing.",
                    Harm.Habit,
                    Odds.Certain);
            }
        }
    }
}

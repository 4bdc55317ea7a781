using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A stock that no recipe and no other stock of the same shop uses.</summary>
internal sealed class UnusedStock : WorkspaceRule, IJudgesInBrief
{
    public override string Name => "unused-stock";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) => Find(RunInBrief.Of(facts.Workspace), context);

    IEnumerable<Finding> IJudgesInBrief.Judge(RunInBrief run, RuleContext context) => Find(run, context);

    private static IEnumerable<Finding> Find(RunInBrief run, RuleContext context)
    {
        foreach (var stock in run.Unused)
        {
            // Stocks checked without recipes say nothing about use.
            if (run.RecipesByShop.TryGetValue(stock.Shop, out var recipes))
            {
                var looked = recipes == 1 ? "The one recipe checked does not use" : $"None of the {recipes} recipes checked uses";
                yield return context.Find(
                    stock.Place,
                    $"{looked} the stock '{stock.Name}', and no other stock draws on it. "
                    + "An old stock beside the current one invites taking the wrong bottle. Delete the file, or add the dose that is "
                        + "missing.",
                    Harm.Habit,
                    Odds.Certain);
            }
        }
    }
}

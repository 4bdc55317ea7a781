using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Stocks of one shop whose bottles nothing that is written on them tells apart.</summary>
internal sealed class TwoStocksOfOneName : WorkspaceRule, IJudgesInBrief
{
    public override string Name => "two-stocks-of-one-name";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) => Find(RunInBrief.Of(facts.Workspace), context);

    IEnumerable<Finding> IJudgesInBrief.Judge(RunInBrief run, RuleContext context) => Find(run, context);

    private static IEnumerable<Finding> Find(RunInBrief run, RuleContext context)
    {
        var alike = run.Stocks.GroupBy(s => (RunInBrief.GroupOf(s.Shop, s.Place.File), RunInBrief.NameKey(s.Name)));
        foreach (var stocks in alike.Select(g => g.ToList()).Where(g => g.Count > 1))
        {
            foreach (var other in stocks.Skip(1))
            {
                yield return context.Find(
                    other.Place.Child("name"),
                    "name",
                    $"'{other.Name}' is also the name of the stock in '{stocks[0].Place.File}'. Label, bench sheet and findings "
                        + "call both bottles the same, so the wrong one is taken sooner or later. "
                        + "Give each a name that no other has, such as with the crop or the strength in it.",
                    Harm.Loss,
                    Odds.Possible) with
                {
                    Related = [new RelatedPlace(stocks[0].Place.Child("name"), "the same name here")],
                };
            }
        }
    }
}

using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Procedure;

namespace RecipeLint.Rules.Workings;

/// <summary>What a rule said of a stock, and what it would have said of the pH that was read.</summary>
/// <param name="Rule">Name of the rule.</param>
public sealed record PhVerdict(string Rule, bool Foretold, bool Measured);

/// <summary>Verdicts of rules that a record of a batch can prove right or wrong. Pure.</summary>
public static class Gradable
{
    private static readonly IReadOnlyList<Rule> StockRules = [.. RuleList.All.Where(r => r is IJudgesStocks)];

    /// <summary>
    /// Verdicts that turn on the pH of the stock and on nothing that speaks against them besides; a rule that the shop has switched off
    /// says nothing.
    /// </summary>
    /// <param name="made">The stock as it was really made.</param>
    /// <param name="ph">Read in the stock itself.</param>
    public static IEnumerable<PhVerdict> ByPh(Facts facts, StockFacts made, double ph)
    {
        var tuning = RuleTuning.Read(made.Settings);
        foreach (var rule in StockRules.Where(r => !tuning.IsOff(RuleBook.Of(r))))
        {
            var context = RuleOnFile.ContextFor(facts, RuleBook.Of(rule), made.Stock.File);
            foreach (var verdict in ((IJudgesStocks)rule).Judge(made, context)
                .Where(v => v.Checks.Any(c => c.IsStockPh) && v.Checks.All(c => c.IsStockPh || c.Holds)))
            {
                yield return new PhVerdict(
                    rule.Name, verdict.Fires, verdict.Checks.All(c => (c.IsStockPh ? c with { Value = ph } : c).Holds));
            }
        }
    }

    /// <summary>Of the amounts that records state: whether each is as near to the stock file as the rule on weighing allows.</summary>
    public static IEnumerable<bool> Weighed(Facts facts)
    {
        var rule = RuleList.All.First(r => r.Name == BatchWeighedOff.RuleName);
        return ((IJudgesWorkspaces)rule).Judge(facts, RuleOnFile.ContextFor(facts, RuleBook.Of(rule))).Select(v => !v.Fires);
    }
}

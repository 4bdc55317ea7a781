using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>A strength that is offered is one of which no rule says anything that it does not say of the stock as it is.</summary>
public sealed class StretchedStockTests
{
    private static readonly DateOnly Today = new(2026, 3, 1);

    [Fact]
    public void NoRuleSpeaksOfAStrengthThatIsOffered()
    {
        var offered = 0;
        foreach (var bottle in Bottle.In("examples/quillmere").Concat(Bottle.In("examples/quillmere-first-draft")).Concat(Enumerable.Range(1, 10).Select(RandomStock.Of)))
        {
            var stretch = StockStretch.Of(bottle.Workspace, bottle.Stock, Today);
            foreach (var factor in new[] { stretch.Strongest, stretch.Weakest }.OfType<double>().Where(f => f != 1))
            {
                // Of a stock that is too strong as it is the strongest lies below 1, and its own findings are gone there.
                var there = Judge(bottle, factor).Except(Judge(bottle, 1)).ToList();
                Assert.True(there.Count == 0, $"{bottle.Name} at {factor} times: {string.Join(", ", there)}");
                offered++;
            }
        }

        Assert.True(offered >= 12, $"{offered} strengths");
    }

    /// <summary>
    /// 0.3 % by mass of boric acid counts as toxic for reproduction. That rule was not among those asked, and six times the strength was
    /// offered without a word.
    /// </summary>
    [Fact]
    public void RulesOnMoreThanWeightsAreAskedToo()
    {
        var bottle = Bottle.Of("trace", 1000, "15..25 °C", ("boric-acid", 1.5), ("sodium-molybdate-2h2o", 0.1));
        var stretch = StockStretch.Of(bottle.Workspace, bottle.Stock, Today);
        Assert.Equal(RuleNames.ReprotoxicNotice, stretch.Stronger[0].Finding.Rule.Name);
        Assert.InRange(stretch.Strongest!.Value, 1.9, 2.1);
    }

    private static HashSet<(string Rule, string Step)> Judge(Bottle bottle, double factor)
    {
        var workspace = factor == 1 ? bottle.Workspace : bottle.Workspace.With(StretchedStock.Of(bottle.Stock.Stock, factor));
        var facts = new Facts { Workspace = workspace, Stocks = [Analyzer.AnalyseStock(workspace, bottle.Stock.Stock.File)!], Recipes = [] };
        return [.. LintEngine.Judge(facts, new EngineOptions { Today = Today, Rules = RuleList.All }).Findings
            .Where(f => f.Place.File == bottle.Stock.Stock.File)
            .Select(f => (f.Rule.Name, Step: f.Place.Pointer.Value.Split('/') is { Length: > 2 } parts ? parts[2] : ""))];
    }
}

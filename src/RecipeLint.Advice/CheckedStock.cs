using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice;

/// <summary>What a check says of a stock that is proposed, so that no command praises what another calls an error.</summary>
public static class CheckedStock
{
    /// <summary>Errors at the file of the stock, in the order of the report; none is about another file. Pure.</summary>
    /// <param name="today">The day suppressions are held against; null leaves their last day unchecked.</param>
    public static IReadOnlyList<Finding> Errors(Workspace workspace, StockDocument stock, DateOnly? today)
    {
        var changed = workspace.With(stock);
        return Analyzer.AnalyseStock(changed, stock.File) is { } facts
            ?
            [
                .. LintEngine.Judge(
                    new Facts { Workspace = changed, Stocks = [facts], Recipes = [] },
                    new EngineOptions { Today = today, Rules = RuleList.All })
                    .Findings.Where(f => f.Level == Level.Error && f.Place.File == stock.File),
            ]
            : [];
    }
}

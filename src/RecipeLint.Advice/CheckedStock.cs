using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Advice;

/// <summary>What a check says of a stock that is proposed, so that no command praises what another calls an error.</summary>
public static class CheckedStock
{
    /// <summary>Errors at the file of the stock, in the order of the report; none is about another file. Pure.</summary>
    /// <param name="today">The day suppressions are held against; null leaves their last day unchecked.</param>
    public static IReadOnlyList<Finding> Errors(Workspace workspace, StockDocument stock, DateOnly? today) =>
        Findings(workspace, stock, today, f => f.Level == Level.Error);

    /// <summary>
    /// What is a reason to keep the contents of a part apart: errors, and flocs of an extract, which the check foretells and no engine
    /// computes.
    /// </summary>
    /// <param name="today">The day suppressions are held against; null leaves their last day unchecked.</param>
    public static IReadOnlyList<Finding> ReasonsToDivide(Workspace workspace, StockDocument stock, DateOnly? today) =>
        Findings(workspace, stock, today, f => f.Level == Level.Error || (f.Level == Level.Warning && Flocs.AreToldBy(f)));

    private static IReadOnlyList<Finding> Findings(Workspace workspace, StockDocument stock, DateOnly? today, Func<Finding, bool> counts)
    {
        var changed = workspace.With(stock);
        return Analyzer.AnalyseStock(changed, stock.File) is { } facts
            ?
            [
                .. LintEngine.Judge(
                    new Facts { Workspace = changed, Stocks = [facts], Recipes = [] },
                    new EngineOptions { Today = today, Rules = RuleList.All })
                    .Findings.Where(f => f.Place.File == stock.File && counts(f)),
            ]
            : [];
    }
}

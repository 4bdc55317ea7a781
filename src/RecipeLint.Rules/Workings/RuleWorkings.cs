using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>How the verdicts of one rule are worked out by hand; one entry for each rule that has a number.</summary>
/// <param name="Rule">Its name.</param>
internal sealed record RuleWorkings(string Rule, Func<WorkingSubject, RuleContext, IEnumerable<Working>> Of)
{
    public static RuleWorkings OnStocks(string rule, Func<StockFacts, RuleContext, IEnumerable<Working>> of) =>
        new(rule, (subject, context) => subject.Stocks.SelectMany(s => of(s, context.For(s.Stock.File))));

    public static RuleWorkings OnRecipes(string rule, Func<RecipeFacts, RuleContext, IEnumerable<Working>> of) =>
        new(rule, (subject, context) => subject.Recipes.SelectMany(r => of(r, context.For(r.Recipe.File))));

    public static RuleWorkings OnWaters(string rule, Func<WaterDocument, RuleContext, IEnumerable<Working>> of) =>
        new(rule, (subject, context) => subject.Waters.Where(w => w.File.Length > 0).SelectMany(w => of(w, context.For(w.File))));
}

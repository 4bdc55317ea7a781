using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Procedure;

namespace RecipeLint.Rules.Workings;

/// <summary>What a rule said of a stock or tank, and what it would have said of what a meter showed.</summary>
/// <param name="Rule">Name of the rule.</param>
public sealed record MeteredVerdict(string Rule, bool Foretold, bool Measured);

/// <summary>Verdicts of rules that a record of a batch can prove right or wrong. Pure.</summary>
public static class Gradable
{
    /// <summary>Rules that foretell that iron is let go, which then falls out of a tank.</summary>
    private static readonly IReadOnlyList<string> LettingGo = [RuleNames.ChelateOutsideItsPh, RuleNames.ChelateRobbed];

    private static readonly IReadOnlyList<Rule> StockRules = [.. RuleList.All.Where(r => r is IJudgesStocks)];

    private static readonly IReadOnlyList<Rule> RecipeRules = [.. RuleList.All.Where(r => r is IJudgesRecipes)];

    /// <summary>Rules that look at all files one by one: of something that was made they are given nothing else.</summary>
    private static readonly IReadOnlyList<Rule> OneByOneRules =
        [.. RuleList.All.Where(r => r is IJudgesWorkspaces && LettingGo.Contains(r.Name))];

    /// <summary>
    /// Verdicts that turn on the pH of the stock and on nothing that speaks against them besides; a rule that the shop has switched off
    /// says nothing.
    /// </summary>
    /// <param name="made">The stock as it was really made.</param>
    /// <param name="ph">Read in the stock itself.</param>
    public static IEnumerable<MeteredVerdict> ByPh(Facts facts, StockFacts made, double ph)
    {
        var tuning = RuleTuning.Read(made.Settings);
        return StockRules
            .Select(r => (Rule: r, Verdicts: ((IJudgesStocks)r).Judge(made, RuleOnFile.ContextFor(facts, RuleBook.Of(r), made.Stock.File))))
            .Concat(OneByOne(new Facts { Workspace = facts.Workspace, Stocks = [made], Recipes = [] }, made.Stock.File))
            .Where(r => !tuning.IsOff(RuleBook.Of(r.Rule)))
            .SelectMany(r => Held(r.Rule, r.Verdicts, Meter.StockPh, ph));
    }

    /// <summary>The same for what a meter showed in a tank.</summary>
    /// <param name="made">The recipe as it was really mixed.</param>
    /// <param name="meter">pH or conductivity of the tank.</param>
    public static IEnumerable<MeteredVerdict> ByMeter(Facts facts, RecipeFacts made, Meter meter, double read) =>
        Spoken(facts, made).SelectMany(r => Held(r.Rule, r.Verdicts, meter, read));

    /// <summary>Rules on chelates that foretell of a tank that its iron is let go.</summary>
    public static IEnumerable<string> IronLetGo(Facts facts, RecipeFacts made) =>
        Spoken(facts, made).Where(r => LettingGo.Contains(r.Rule.Name) && r.Verdicts.Any(v => v.Fires)).Select(r => r.Rule.Name);

    /// <summary>Of the amounts that records state: whether each is as near to the stock or recipe as the rule on weighing allows.</summary>
    public static IEnumerable<bool> Weighed(Facts facts)
    {
        var rule = RuleList.All.First(r => r.Name == BatchWeighedOff.RuleName);
        return ((IJudgesWorkspaces)rule).Judge(facts, RuleOnFile.ContextFor(facts, RuleBook.Of(rule))).Select(v => !v.Fires);
    }

    private static IEnumerable<(Rule Rule, IEnumerable<Verdict> Verdicts)> Spoken(Facts facts, RecipeFacts made)
    {
        var tuning = RuleTuning.Read(made.Settings);
        return RecipeRules
            .Select(r => (
                Rule: r, Verdicts: ((IJudgesRecipes)r).Judge(made, RuleOnFile.ContextFor(facts, RuleBook.Of(r), made.Recipe.File))))
            .Concat(OneByOne(new Facts { Workspace = facts.Workspace, Stocks = [], Recipes = [made] }, made.Recipe.File))
            .Where(r => !tuning.IsOff(RuleBook.Of(r.Rule)));
    }

    private static IEnumerable<(Rule Rule, IEnumerable<Verdict> Verdicts)> OneByOne(Facts made, string file) =>
        OneByOneRules.Select(r => (r, ((IJudgesWorkspaces)r).Judge(made, RuleOnFile.ContextFor(made, RuleBook.Of(r), file))));

    private static IEnumerable<MeteredVerdict> Held(Rule rule, IEnumerable<Verdict> verdicts, Meter meter, double read) =>
        verdicts
            .Where(v => v.Checks.Any(c => c.Meter == meter) && v.Checks.All(c => c.Meter == meter || c.Holds))
            .Select(v => new MeteredVerdict(
                rule.Name, v.Fires, v.Checks.All(c => (c.Meter == meter ? c.Read(read) : c).Holds)));
}

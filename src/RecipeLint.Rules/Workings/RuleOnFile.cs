using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>What one rule says of one file, and how its verdict is worked out there.</summary>
/// <param name="Findings">Of this rule in this file and what belongs to it, in the order of a report.</param>
/// <param name="Accepted">Findings the shop has accepted with a suppression.</param>
/// <param name="Workings">All that the rule looked at; those that fire first, then the nearest to firing.</param>
/// <param name="HasNumbers">False for a rule that turns on the text of a file and not on a number.</param>
/// <param name="Elsewhere">Why the rule has nothing to look at here, a full sentence; null when it has.</param>
public sealed record RuleOnFile(
    RuleDescriptor Rule,
    string File,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<Finding> Accepted,
    IReadOnlyList<Working> Workings,
    bool HasNumbers,
    string? Elsewhere)
{
    /// <summary>
    /// True where the settings of the shop have switched the rule off for this file: it gives no findings, whatever its workings come to.
    /// </summary>
    public bool IsOff { get; init; }

    /// <summary>Runs one rule over the facts and keeps what it says of one file.</summary>
    /// <param name="file">As it stands in the workspace.</param>
    /// <param name="today">The day suppressions are held against.</param>
    public static RuleOnFile Of(Facts facts, Rule rule, string file, DateOnly? today = null)
    {
        var descriptor = RuleBook.Of(rule);
        var subject = WorkingSubject.Of(facts, file);
        var context = ContextFor(facts, descriptor);
        // What became of suppressions is only known once every rule has spoken.
        var rules = rule is SuppressionRule ? RuleList.All : [rule];
        var result = LintEngine.Judge(facts, new EngineOptions { Today = today, Rules = rules });
        var own = OwnFindings(rule, subject, context);
        bool Is(Finding finding) => finding.Rule.Id == descriptor.Id && own(finding);
        var workings = WorkingList.Of(rule, subject, context).OrderBy(w => w.Distance).ToList();
        return new RuleOnFile(
            descriptor,
            file,
            [.. result.Findings.Where(Is)],
            [.. result.Suppressed.Select(s => s.Finding).Where(Is)],
            workings,
            WorkingList.Has(rule),
            workings.Count == 0 && WorkingList.Has(rule) ? Nothing(rule, subject) : null)
        {
            IsOff = RuleTuning.Read(facts.Workspace.SettingsFor(file)).IsOff(descriptor),
        };
    }

    /// <summary>The context of a rule outside a run, with the options of each file's shop.</summary>
    internal static RuleContext ContextFor(Facts facts, RuleDescriptor rule, string? file = null)
    {
        var settings = file is null ? new Recipes.Shop.ShopSettings() : facts.Workspace.SettingsFor(file);
        return new RuleContext(facts, rule, RuleTuning.Read(settings).OptionsOf(rule), other => ContextFor(facts, rule, other));
    }

    /// <summary>
    /// A stock's or recipe's findings are those the rule gives for it, wherever they stand; other rules' are those that stand in its files.
    /// </summary>
    private static Func<Finding, bool> OwnFindings(Rule rule, WorkingSubject subject, RuleContext context)
    {
        IEnumerable<Finding>? judged = rule switch
        {
            StockRule stocks => subject.Stocks.SelectMany(s => stocks.Judge(s, context.For(s.Stock.File))),
            RecipeRule recipes => subject.Recipes.SelectMany(r => recipes.Judge(r, context.For(r.Recipe.File))),
            JudgingRule judging =>
                judging.Look(subject, context).Where(v => v.Verdict.Fires).Select(v => judging.ToFinding(v.Verdict, v.Context)),
            _ => null,
        };
        if (judged is null)
        {
            return finding => subject.Files.Contains(finding.Place.File);
        }

        var keys = judged.Select(f => (f.Place.File, f.IdPath, f.Message)).ToHashSet();
        return finding => keys.Contains((finding.Place.File, finding.IdPath, finding.Message));
    }

    private static string Nothing(Rule rule, WorkingSubject subject) => rule.Scope switch
    {
        RuleScope.Recipe when subject.Stocks.Count > 0 && subject.Recipes.Count == 0 =>
            "This rule judges final solutions, and no recipe that doses this stock was read. Ask for a recipe that does.",
        RuleScope.Recipe when subject.Recipes.Count == 0 => "This rule judges final solutions. Ask for a recipe.",
        RuleScope.Stock when subject.Stocks.Count == 0 => "This rule judges stocks, and this file neither is one nor doses one.",
        _ => "Nothing in this file is of the kind that this rule looks at.",
    };
}

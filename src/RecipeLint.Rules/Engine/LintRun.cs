using RecipeLint.Analysis;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>The state of one run: what was found so far, and the shop's tuning by settings file.</summary>
internal sealed class LintRun(Facts facts, EngineOptions options)
{
    private static readonly RuleTuning _defaults = RuleTuning.Read(new ShopSettings());

    private readonly Dictionary<string, RuleTuning> _tunings = [];
    private readonly List<Finding> _findings = [];
    private readonly List<SuppressedFinding> _suppressed = [];
    private readonly List<RuleFault> _faults = [];
    private readonly SuppressionDesk _desk = new(options.Today);

    internal LintResult Judge()
    {
        foreach (var rule in options.Rules)
        {
            Run(rule);
        }

        // A finding that two rules' subjects share (the same step reached through two recipes) is said once.
        var distinct = _findings.DistinctBy(f => (f.Rule.Id, f.Place.File, f.IdPath, f.Message)).ToList();
        _findings.Clear();
        foreach (var finding in distinct)
        {
            Sort(finding);
        }

        RunSuppressionRules();
        _findings.Sort(FindingOrder.Instance);
        _suppressed.Sort((a, b) => FindingOrder.Instance.Compare(a.Finding, b.Finding));
        return new LintResult { Findings = _findings, Suppressed = _suppressed, Faults = _faults };
    }

    private void Run(Rule rule)
    {
        var descriptor = RuleBook.Of(rule);
        switch (rule)
        {
            case StockRule stockRule:
                foreach (var stock in facts.Stocks)
                {
                    Collect(descriptor, stock.Stock.File, c => stockRule.Judge(stock, c));
                }

                break;
            case RecipeRule recipeRule:
                foreach (var recipe in facts.Recipes)
                {
                    Collect(descriptor, recipe.Recipe.File, c => recipeRule.Judge(recipe, c));
                }

                break;
            case WorkspaceRule workspaceRule:
                Collect(descriptor, null, c => workspaceRule.Judge(facts, c));
                break;
            case JudgingRule judging:
                Run(descriptor, judging);
                break;
        }
    }

    private void Run(RuleDescriptor descriptor, JudgingRule rule)
    {
        switch (rule)
        {
            case IJudgesStocks stocks:
                foreach (var stock in facts.Stocks)
                {
                    Collect(descriptor, stock.Stock.File, c => Findings(rule, stocks.Judge(stock, c), c));
                }

                break;
            case IJudgesRecipes recipes:
                foreach (var recipe in facts.Recipes)
                {
                    Collect(descriptor, recipe.Recipe.File, c => Findings(rule, recipes.Judge(recipe, c), c));
                }

                break;
            case IJudgesWorkspaces workspaces:
                Collect(descriptor, null, c => Findings(rule, workspaces.Judge(facts, c), c));
                break;
        }
    }

    private static IEnumerable<Finding> Findings(JudgingRule rule, IEnumerable<Verdict> verdicts, RuleContext context) =>
        verdicts.Where(v => v.Fires).Select(v => rule.ToFinding(v, context));

    /// <summary>Files each finding with the reported or the suppressed ones.</summary>
    private void Sort(Finding finding)
    {
        var settings = SettingsFor(finding.Place.File);
        if (_desk.FindFor(finding, settings) is { } suppression)
        {
            _suppressed.Add(new SuppressedFinding(finding, suppression));
            return;
        }

        _findings.Add(SuppressionDesk.Reminder(finding, settings) is { } reminder ? finding with { Related = [.. finding.Related, reminder] } : finding);
    }

    private void RunSuppressionRules()
    {
        var uses = _desk.Uses(facts.Workspace, LintEngine.ShopsOf(facts.Workspace));
        foreach (var rule in options.Rules.OfType<SuppressionRule>())
        {
            Collect(RuleBook.Of(rule), null, c => rule.Judge(uses, c));
        }
    }

    private void Collect(RuleDescriptor rule, string? file, Func<RuleContext, IEnumerable<Finding>> judge)
    {
        if (file is not null && TuningFor(file).IsOff(rule))
        {
            return;
        }

        List<Finding> found;
        try
        {
            found = [.. judge(ContextFor(rule, file)).Select(Checked)];
        }
#pragma warning disable CA1031 // One broken rule must not hide what the others found; the fault is reported and fails the run.
        catch (Exception e)
#pragma warning restore CA1031
        {
            _faults.Add(new RuleFault(rule.Id, rule.Name, file, e));
            return;
        }

        foreach (var finding in found)
        {
            var tuning = TuningFor(finding.Place.File);
            if (!tuning.IsOff(finding.Rule))
            {
                _findings.Add(tuning.LevelOf(finding.Rule) is { } level ? finding with { Level = level } : finding);
            }
        }
    }

    /// <summary>A number that is none must not reach a report; it is the rule's fault.</summary>
    private static Finding Checked(Finding finding)
    {
        var numbers = finding.Values.Select(v => v.Value);
        if (finding.Measured is { } measured)
        {
            numbers = numbers.Append(measured.Value).Append(measured.Limit);
        }

        return numbers.All(double.IsFinite)
            ? finding
            : throw new InvalidOperationException($"a value of the finding at '{finding.IdPath}' in '{finding.Place.File}' is not a finite number");
    }

    private RuleContext ContextFor(RuleDescriptor rule, string? file)
    {
        var tuning = file is null ? _defaults : TuningFor(file);
        return new RuleContext(facts, rule, tuning.OptionsOf(rule), other => ContextFor(rule, other));
    }

    private ShopSettings SettingsFor(string file) => facts.Workspace.SettingsFor(file);

    private RuleTuning TuningFor(string file)
    {
        var settings = SettingsFor(file);
        var key = settings.File ?? "";
        if (!_tunings.TryGetValue(key, out var tuning))
        {
            _tunings[key] = tuning = RuleTuning.Read(settings);
        }

        return tuning;
    }
}

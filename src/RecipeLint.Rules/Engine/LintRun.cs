using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>One part of the files being judged: what was found so far, and the shop's tuning by settings file.</summary>
internal sealed class LintRun
{
    private static readonly RuleTuning _defaults = RuleTuning.Read(new ShopSettings());

    private readonly Dictionary<string, RuleTuning> _tunings = [], _tuningOf = new(StringComparer.Ordinal);
    private readonly List<Finding> _findings = [];
    private readonly List<SharedVerdict> _shared = [];
    private readonly List<RuleFault> _faults = [];
    private readonly List<Finding> _found = [];
    private readonly Dictionary<(string Rule, RuleTuning Tuning), RuleContext> _contexts = [];
    private readonly RuleReach _reach = new();
    private readonly SilentSubjects _stocks, _recipes;
    private readonly Facts _facts;
    private readonly EngineOptions _options;
    private Func<string, RuleTuning>? _tuningFor;
    private int _rule;

    internal LintRun(Facts facts, EngineOptions options)
    {
        (_facts, _options) = (facts, options);
        var digests = new Dictionary<SourceFile, byte[]>(ReferenceEqualityComparer.Instance);
        _stocks = new SilentSubjects([.. facts.Stocks.Select(s => s.Stock.File)], facts.Workspace, options, digests);
        _recipes = new SilentSubjects([.. facts.Recipes.Select(r => r.Recipe.File)], facts.Workspace, options, digests);
    }

    /// <summary>Everything that the rules find, with what is needed to conclude once the files are let go.</summary>
    internal LintPiece Look()
    {
        _tuningFor = TuningFor;
        for (_rule = 0; _rule < _options.Rules.Count; _rule++)
        {
            if (_options.Rules[_rule] is not IJudgesInBrief and var rule)
            {
                Run(rule);
            }
        }

        _stocks.Keep();
        _recipes.Keep();
        RunHouseRules();
        var workspace = _facts.Workspace;
        var shops = LintEngine.ShopsOf(workspace);
        var brief = RunInBrief.Of(workspace);
        var tuned = _findings.Select(f => f.Place.File)
            .Concat(_shared.Select(s => s.Place.File))
            .Concat(FilesOf(brief))
            .Concat(shops.Select(s => s.File).OfType<string>());
        return new LintPiece
        {
            Findings = _findings,
            Shared = _shared,
            Faults = _faults,
            Shops = shops,
            SettingsOf = tuned.Distinct(StringComparer.Ordinal).ToDictionary(f => f, _facts.Workspace.SettingsFor, StringComparer.Ordinal),
            // Its file was read, or its settings file was asked about and the file it names is gone.
            InReach =
            [
                .. shops.SelectMany(shop => shop.Suppressions.Where(s => HouseRules.Find(shop, s.Rule) is not null))
                    .Where(s => workspace.Sources.ContainsKey(s.File) || workspace.Asked.Contains(s.Place.File)),
            ],
            Brief = brief,
            Sources = SourcesOf(workspace, brief, shops),
        };
    }

    /// <summary>The files that findings can point into.</summary>
    private Dictionary<string, SourceFile> SourcesOf(Workspace workspace, RunInBrief brief, IReadOnlyList<ShopSettings> shops)
    {
        var suppressed = shops.Where(s => s.Suppressions.Count > 0).Select(s => s.File).OfType<string>();
        return _findings.SelectMany(f => f.Related.Select(r => r.Place.File).Append(f.Place.File))
            .Concat(suppressed)
            .Concat(_shared.SelectMany(s => s.Verdict.Files.Append(s.Place.File)))
            .Concat(FilesOf(brief))
            .Distinct(StringComparer.Ordinal)
            .Where(workspace.Sources.ContainsKey)
            .ToDictionary(f => f, f => workspace.Sources[f], StringComparer.Ordinal);
    }

    /// <summary>The files that rules on the whole run may speak of.</summary>
    private static IEnumerable<string> FilesOf(RunInBrief brief) =>
        brief.Stocks.Concat(brief.Unused).Select(s => s.Place.File).Concat(brief.Names.Select(n => n.Place.File));

    private void Run(Rule rule)
    {
        var descriptor = RuleBook.Of(rule);
        switch (rule)
        {
            case StockRule stockRule:
                EachStock(descriptor, stockRule.Judge);
                break;
            case RecipeRule recipeRule:
                EachRecipe(descriptor, recipeRule.Judge);
                break;
            case WorkspaceRule workspaceRule:
                Collect(descriptor, null, _facts, workspaceRule.Judge);
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
                EachStock(descriptor, (stock, c) => Findings(rule, stocks.Judge(stock, c), c));
                break;
            case IJudgesRecipes recipes:
                EachRecipe(descriptor, (recipe, c) => Findings(rule, recipes.Judge(recipe, c), c));
                break;
            case IJudgesWorkspaces workspaces:
                Collect(descriptor, null, _facts, (f, c) => Findings(rule, workspaces.Judge(f, c), c));
                break;
        }
    }

    private void EachStock(RuleDescriptor descriptor, Func<StockFacts, RuleContext, IEnumerable<Finding>> judge)
    {
        for (var i = 0; i < _facts.Stocks.Count; i++)
        {
            CollectUnlessSilent(descriptor, _stocks, i, _facts.Stocks[i].Stock.File, _facts.Stocks[i], judge);
        }
    }

    private void EachRecipe(RuleDescriptor descriptor, Func<RecipeFacts, RuleContext, IEnumerable<Finding>> judge)
    {
        for (var i = 0; i < _facts.Recipes.Count; i++)
        {
            CollectUnlessSilent(descriptor, _recipes, i, _facts.Recipes[i].Recipe.File, _facts.Recipes[i], judge);
        }
    }

    private void CollectUnlessSilent<TSubject>(
        RuleDescriptor rule,
        SilentSubjects known,
        int number,
        string file,
        TSubject subject,
        Func<TSubject, RuleContext, IEnumerable<Finding>> judge)
    {
        if (known.IsSilent(number, _rule))
        {
            return;
        }

        var said = _shared.Count + _faults.Count;
        _reach.Begin(file);
        Collect(rule, file, subject, judge);
        if (_found.Count == 0 && _shared.Count + _faults.Count == said && !_reach.IsFurther)
        {
            known.Learn(number, _rule);
        }
    }

    /// <summary>What the shops' own rules say; the engine sees no difference between them and the others.</summary>
    private void RunHouseRules()
    {
        if (_options.FactsDocument is not { } document)
        {
            return;
        }

        var desk = new HouseRuleDesk(_facts, document);
        foreach (var finding in _facts.Stocks.SelectMany(s => desk.Judge(s.Stock.File, HouseRuleScope.Stock))
            .Concat(_facts.Recipes.SelectMany(r => desk.Judge(r.Recipe.File, HouseRuleScope.Recipe))))
        {
            Take(finding);
        }
    }

    private IEnumerable<Finding> Findings(JudgingRule rule, IEnumerable<Verdict> verdicts, RuleContext context)
    {
        foreach (var verdict in verdicts)
        {
            if (!verdict.Fires)
            {
                continue;
            }

            var finding = rule.ToFinding(verdict, context);
            if (rule is IGathersByPlace
                && DocumentKinds.FromFileName(finding.Place.File) is not (DocumentKind.Stock or DocumentKind.Recipe))
            {
                _shared.Add(new SharedVerdict(rule, verdict, context, finding.Place));
            }
            else
            {
                yield return finding;
            }
        }
    }

    private void Collect<TSubject>(
        RuleDescriptor rule, string? file, TSubject subject, Func<TSubject, RuleContext, IEnumerable<Finding>> judge)
    {
        _found.Clear();
        var tuning = file is null ? _defaults : TuningFor(file);
        if (file is not null && tuning.IsOff(rule))
        {
            return;
        }

        try
        {
            if (_options.Measure is { } measure)
            {
                measure(rule, () => Judge(rule, tuning, subject, judge));
            }
            else
            {
                Judge(rule, tuning, subject, judge);
            }
        }
#pragma warning disable CA1031 // One broken rule must not hide what the others found; the fault is reported and fails the run.
        catch (Exception e)
#pragma warning restore CA1031
        {
            _faults.Add(new RuleFault(rule.Id, rule.Name, file, e));
            return;
        }

        _found.ForEach(Take);
    }

    private void Judge<TSubject>(
        RuleDescriptor rule, RuleTuning tuning, TSubject subject, Func<TSubject, RuleContext, IEnumerable<Finding>> judge)
    {
        foreach (var finding in judge(subject, ContextOf(rule, tuning)))
        {
            if (!_options.TellsWhenRead)
            {
                _ = finding.Message;
            }

            _found.Add(Checked(finding));
        }
    }

    /// <summary>A finding as the shop has tuned its rule; nothing where it has switched it off.</summary>
    private void Take(Finding finding)
    {
        if (TuningFor(finding.Place.File).Apply(finding) is { } tuned)
        {
            _findings.Add(tuned);
        }
    }

    /// <summary>A number that is none must not reach a report; it is the rule's fault.</summary>
    internal static Finding Checked(Finding finding)
    {
        var numbers = finding.Values.Select(v => v.Value);
        if (finding.Measured is { } measured)
        {
            numbers = numbers.Append(measured.Value).Append(measured.Limit);
        }

        return numbers.All(double.IsFinite)
            ? finding
            : throw new InvalidOperationException(
                $"a value of the finding at '{finding.IdPath}' in '{finding.Place.File}' is not a finite number");
    }

    /// <summary>Nothing in a context depends on the subject, so files of one shop share it.</summary>
    private RuleContext ContextOf(RuleDescriptor rule, RuleTuning tuning)
    {
        if (!_contexts.TryGetValue((rule.Id, tuning), out var known))
        {
            _contexts[(rule.Id, tuning)] = known = new RuleContext(
                _facts, rule, tuning.OptionsOf(rule), other => ContextOf(rule, TuningFor(other)))
            {
                Today = _options.Today,
                OnlyWhatFires = true,
                TuningFor = _tuningFor,
                Reach = _reach,
                Known = (_stocks, _recipes, _rule),
            };
        }

        return known;
    }

    /// <summary>Asked for each rule and file, so each file is looked up once.</summary>
    private RuleTuning TuningFor(string file)
    {
        if (_tuningOf.TryGetValue(file, out var known))
        {
            return known;
        }

        var settings = _facts.Workspace.SettingsFor(file);
        var key = settings.File + "\n" + settings.Variant;
        if (!_tunings.TryGetValue(key, out var tuning))
        {
            _tunings[key] = tuning = RuleTuning.Read(settings);
        }

        _tuningOf[file] = tuning;
        return tuning;
    }
}

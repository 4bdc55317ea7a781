using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Rules.Engine;

/// <summary>Makes one result of all pieces: what only the whole run can tell, each finding once, suppressions, order.</summary>
internal sealed class LintConclusion
{
    private static readonly RuleTuning _defaults = RuleTuning.Read(new ShopSettings());

    private readonly IReadOnlyList<LintPiece> _pieces;
    private readonly EngineOptions _options;
    private readonly SuppressionDesk _desk;
    private readonly Dictionary<string, ShopSettings> _shops = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ShopSettings> _settingsOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, RuleTuning> _tunings = new(StringComparer.Ordinal);
    private readonly List<RuleFault> _faults = [];

    internal LintConclusion(IReadOnlyList<LintPiece> pieces, EngineOptions options)
    {
        _pieces = pieces;
        _options = options;
        _desk = new SuppressionDesk(options.Today);
        foreach (var piece in pieces)
        {
            foreach (var shop in piece.Shops)
            {
                _shops.TryAdd(KeyOf(shop), shop);
            }

            // Settings that several pieces were read with are one shop.
            foreach (var (file, settings) in piece.SettingsOf)
            {
                _settingsOf.TryAdd(file, _shops.GetValueOrDefault(KeyOf(settings), settings));
            }
        }
    }

    internal LintResult Conclude()
    {
        _faults.AddRange(_pieces.SelectMany(p => p.Faults));
        var ranks = _options.Rules
            .Select((rule, rank) => (RuleBook.Of(rule).Id, rank))
            .DistinctBy(r => r.Id, StringComparer.Ordinal)
            .ToDictionary(r => r.Id, r => r.rank, StringComparer.Ordinal);
        var found = _pieces.SelectMany(p => p.Findings)
            .Concat(OfSharedPlaces())
            .Concat(InBrief())
            .OrderBy(f => ranks.GetValueOrDefault(f.Rule.Id, int.MaxValue));
        var findings = new List<Finding>();
        var suppressed = new List<SuppressedFinding>();

        // A finding that two rules' subjects share (the same step reached through two recipes) is said once.
        foreach (var finding in found.Distinct(SaidAlike.Instance))
        {
            var settings = SettingsFor(finding.Place.File);
            if (_desk.FindFor(finding, settings) is { } suppression)
            {
                suppressed.Add(new SuppressedFinding(finding, suppression));
            }
            else
            {
                findings.Add(SuppressionDesk.Reminder(finding, settings) is { } reminder
                    ? finding with { Related = [.. finding.Related, reminder] }
                    : finding);
            }
        }

        findings.AddRange(OfSuppressions());
        findings.Sort(FindingOrder.Instance);
        suppressed.Sort((a, b) => FindingOrder.Instance.Compare(a.Finding, b.Finding));
        return new LintResult { Findings = findings, Suppressed = suppressed, Faults = _faults };
    }

    /// <summary>What recipes of several pieces have in common at one place.</summary>
    private List<Finding> OfSharedPlaces()
    {
        var findings = new List<Finding>();
        foreach (var group in _pieces.SelectMany(p => p.Shared).GroupBy(s => (s.Rule, s.Place)))
        {
            var all = group.ToList();
            var verdict = all.Count == 1 ? all[0].Verdict : ((IGathersByPlace)group.Key.Rule).Gather([.. all.Select(s => s.Verdict)]);
            findings.AddRange(Guarded(RuleBook.Of(group.Key.Rule), () => [group.Key.Rule.ToFinding(verdict, all[0].Context)]));
        }

        return findings;
    }

    private List<Finding> InBrief()
    {
        var run = _options.Around ?? RunInBrief.Together(_pieces.Select(p => p.Brief));
        return [.. _options.Rules
            .OfType<IJudgesInBrief>()
            .SelectMany(r => Guarded(RuleBook.Of((Rule)r), () => Settled(r.Judge(run, ContextFor(RuleBook.Of((Rule)r))))))];
    }

    /// <summary>A finding in a file that was not judged itself goes by the settings of the one of the same shop that it names.</summary>
    private IEnumerable<Finding> Settled(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            var named = finding.Related.Select(r => _settingsOf.GetValueOrDefault(r.Place.File));
            if (!_settingsOf.ContainsKey(finding.Place.File) && named.FirstOrDefault(s => s is not null) is { } settings)
            {
                _settingsOf.Add(finding.Place.File, settings);
            }

            yield return finding;
        }
    }

    private List<Finding> OfSuppressions()
    {
        var inReach = _pieces.SelectMany(p => p.InReach).ToHashSet();
        var shops = _shops.Values.OrderBy(s => s.File, StringComparer.Ordinal);
        var uses = _desk.Uses(shops.SelectMany(s => s.Suppressions).Distinct().Where(inReach.Contains));
        return [.. _options.Rules
            .OfType<SuppressionRule>()
            .SelectMany(r => Guarded(RuleBook.Of(r), () => r.Judge(uses, ContextFor(RuleBook.Of(r)))))];
    }

    private List<Finding> Guarded(RuleDescriptor rule, Func<IEnumerable<Finding>> judge)
    {
        try
        {
            return [.. judge().Select(LintRun.Checked).Select(f => TuningFor(f.Place.File).Apply(f)).OfType<Finding>()];
        }
#pragma warning disable CA1031 // One broken rule must not hide what the others found; the fault is reported and fails the run.
        catch (Exception e)
#pragma warning restore CA1031
        {
            _faults.Add(new RuleFault(rule.Id, rule.Name, null, e));
            return [];
        }
    }

    /// <summary>The files are let go: what rules say here stands at places they name themselves.</summary>
    private RuleContext ContextFor(RuleDescriptor rule)
    {
        var none = new Workspace { Catalogue = SubstanceCatalogue.BuiltIn, SettingsFor = _ => new ShopSettings() };
        return new RuleContext(
            new Facts { Workspace = none, Stocks = [], Recipes = [] }, rule, _defaults.OptionsOf(rule))
        { Today = _options.Today };
    }

    private ShopSettings SettingsFor(string file) => _settingsOf.GetValueOrDefault(file) ?? new ShopSettings();

    /// <summary>Settings of one file that hold differently for some paths are told apart.</summary>
    private static string KeyOf(ShopSettings settings) => settings.File + "\n" + settings.Variant;

    private RuleTuning TuningFor(string file)
    {
        var settings = SettingsFor(file);
        var key = KeyOf(settings);
        if (!_tunings.TryGetValue(key, out var tuning))
        {
            _tunings[key] = tuning = RuleTuning.Read(settings);
        }

        return tuning;
    }
}

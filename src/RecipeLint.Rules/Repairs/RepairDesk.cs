using System.Security.Cryptography;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// Tries out what rules propose: each repair is applied to the files in memory, which then go the whole way through again with every recipe
/// that uses what it changes. Only repairs that remove their finding and bring nothing as grave come out. Nothing is written here.
/// </summary>
public sealed class RepairDesk
{
    private const int Halvings = 7;

    /// <summary>Changes whose facts are kept, some 100 kB each: the next finding of a stock mostly has the same proposed.</summary>
    private const int MostKept = 64;

    private readonly IFileTree _files;
    private readonly LoadOptions _load;
    private readonly EngineOptions _engine;
    private readonly Judged _shown;
    private readonly Lazy<RepairScope> _scope;
    private readonly Dictionary<string, Judged> _before = new(StringComparer.Ordinal);

    /// <summary>Facts after the last changes that were tried, with the order they were tried in.</summary>
    private readonly Dictionary<string, Facts> _tried = new(StringComparer.Ordinal);
    private readonly Queue<string> _order = new();

    /// <summary>Facts of the files as they stand. A trial computes only what it touches.</summary>
    private readonly FactsMemory _memory;

    /// <param name="files">The files as they stand.</param>
    /// <param name="load">How they are read.</param>
    /// <param name="engine">The rules that judge.</param>
    /// <param name="shown">What these files came to.</param>
    /// <param name="memory">Facts of them that are known already; kept up.</param>
    public RepairDesk(IFileTree files, LoadOptions load, EngineOptions engine, Judged shown, FactsMemory? memory = null)
    {
        _files = files;
        _load = load with { Root = shown.Workspace.Root, Parsed = load.Parsed ?? new ParsedFiles() };
        _memory = memory ?? new FactsMemory();
        _engine = engine with { Silent = engine.Silent ?? new SilentRules(), TellsWhenRead = true };
        _shown = shown;
        _scope = new(() => RepairScope.Of(files, _load, shown.Workspace, _memory));
    }

    /// <summary>How many changes were tried out.</summary>
    public int Trials { get; private set; }

    /// <summary>How many facts were computed for them, for whoever wants to see that little is.</summary>
    public int Computed { get; private set; }

    /// <summary>The repairs of a finding that hold, the rule's best first.</summary>
    /// <param name="wanted">Which of those proposed are tried at all; null for all.</param>
    public IReadOnlyList<VerifiedRepair> For(Finding finding, Func<Repair, bool>? wanted = null)
    {
        if (_engine.Rules.FirstOrDefault(r => r.Name == finding.Rule.Name) is not IProposesRepairs rule)
        {
            return [];
        }

        var facts = _scope.Value.Facts;
        var tuning = RuleTuning.Read(facts.Workspace.SettingsFor(finding.Place.File));
        var context = new RepairContext(facts, new RuleContext(facts, finding.Rule, tuning.OptionsOf(finding.Rule)));
        var found = new List<VerifiedRepair>();
        foreach (var proposal in rule.Repairs(finding, context))
        {
            if (Try(finding, proposal, wanted ?? (_ => true)) is { } repair && found.TrueForAll(f => !ChangesTheSame(f, repair)))
            {
                found.Add(found.Exists(f => f.Repair.Key == repair.Repair.Key) ? Renumbered(repair, found) : repair);
            }
        }

        // What costs something elsewhere comes behind what does not, and what changes the recipe last.
        return [.. found.OrderBy(f => f.Shifts.Count > 0).ThenBy(f => f.Worsens.Count > 0 || f.Brings.Any(b => b.Level > Level.Note))];
    }

    /// <summary>The files a repair changes and all that draw on them, directly or through another.</summary>
    public IReadOnlySet<string> AffectedBy(VerifiedRepair repair)
    {
        var affected = _scope.Value.UsersOf(repair.Patches.Keys);

        // A recipe joins all its stocks: a change of one can take the ground from under a repair of another.
        var recipes = _scope.Value.Facts.Recipes.Where(r => affected.Contains(r.Recipe.File));
        affected.UnionWith([.. recipes.SelectMany(r => r.Doses).Select(d => d.Stock?.Stock.File).OfType<string>()]);
        return affected;
    }

    /// <summary>Several repairs in one patch of each file; null where they overlap.</summary>
    public IReadOnlyDictionary<string, PatchResult>? Together(IEnumerable<VerifiedRepair> repairs) =>
        Patch(new Repair("", "", RepairKind.Safe, [.. repairs.SelectMany(r => r.Repair.Edits)]));

    private static bool ChangesTheSame(VerifiedRepair a, VerifiedRepair b) =>
        a.Patches.Count == b.Patches.Count
        && a.Patches.All(p => b.Patches.TryGetValue(p.Key, out var other) && p.Value.Bytes.AsSpan().SequenceEqual(other.Bytes));

    private static VerifiedRepair Renumbered(VerifiedRepair repair, List<VerifiedRepair> found)
    {
        var count = 2 + found.Count(f => f.Repair.Key.StartsWith(repair.Repair.Key + "-", StringComparison.Ordinal));
        return repair with { Repair = repair.Repair with { Key = FormattableString.Invariant($"{repair.Repair.Key}-{count}") } };
    }

    private VerifiedRepair? Try(Finding finding, RepairProposal proposal, Func<Repair, bool> wanted) => proposal switch
    {
        RepairProposal.Ladder ladder =>
            ladder.Rungs.Where(wanted).Where(r => Mends(finding, r)).Select(r => Verify(finding, r)).FirstOrDefault(v => v is not null),
        RepairProposal.Tuned tuned => Tune(finding, tuned, wanted) is { } repair ? Verify(finding, repair) : null,
        _ => null,
    };

    /// <summary>The repair with the number nearest to the present one that mends the finding, judged by its own rule alone.</summary>
    private Repair? Tune(Finding finding, RepairProposal.Tuned tuned, Func<Repair, bool> wanted)
    {
        if (!(tuned.From > 0 && tuned.To > 0) || tuned.With(tuned.To) is not { } farthest || !wanted(farthest) || !Mends(finding, farthest))
        {
            return null;
        }

        var (stands, mends, best) = (Math.Log(tuned.From), Math.Log(tuned.To), farthest);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (stands + mends) / 2;
            if (tuned.With(Math.Exp(middle)) is { } repair && Mends(finding, repair))
            {
                (mends, best) = (middle, repair);
            }
            else
            {
                stands = middle;
            }
        }

        return best;
    }

    /// <summary>Judged by its own rule alone, which costs a fraction of the whole.</summary>
    private bool Mends(Finding finding, Repair repair)
    {
        if (Patch(repair) is not { } patches)
        {
            return false;
        }

        // What is known of silent rules goes by their number among all.
        var alone = _engine with { Rules = [.. _engine.Rules.Where(r => r.Name == finding.Rule.Name)], Silent = null };
        var asked = Asked(finding, patches.Keys, whole: false);
        var after = After(patches, asked, alone);
        return after.Result.Faults.Count == 0
            && repair.Provided?.Invoke(after.Facts) != false
            && (after.Result.Findings.Count(IsSame) is var left && (left == 0 || left < Before(asked).Result.Findings.Count(IsSame)));

        bool IsSame(Finding other) => FindingDifference.IsSame(other, finding);
    }

    private VerifiedRepair? Verify(Finding finding, Repair repair)
    {
        if (Patch(repair) is not { } patches)
        {
            return null;
        }

        // A finding that needs the whole run to arise (a stock nobody uses) is judged in the whole run.
        var asked = Asked(finding, patches.Keys, whole: false);
        var before = Before(asked);
        if (!before.Result.Findings.Any(f => FindingDifference.IsSame(f, finding)))
        {
            asked = Asked(finding, patches.Keys, whole: true);
            before = Before(asked);
        }

        var after = After(patches, asked, _engine);
        if (after.Result.Faults.Count > 0 || repair.Provided?.Invoke(after.Facts) == false
            || after.Workspace.Unusable.Count > before.Workspace.Unusable.Count)
        {
            return null;
        }

        var difference = FindingDifference.Between(before.Result, after.Result, finding);
        if (!difference.Removed.Any(f => FindingDifference.IsSame(f, finding)))
        {
            return null;
        }

        var revealed = difference.Added.Where(f => IsRevealed(f, finding, before)).ToList();
        var brings = difference.Added.Except(revealed).ToList();
        if (brings.Exists(f => f.Level >= finding.Level)
            || difference.Worsened.Any(f => f.Level == Level.Error && f.Level >= finding.Level))
        {
            return null;
        }

        var shifts = ElementShift.Between(before.Facts, after.Facts, finding);
        if (RepairPolicy.Forbids(finding, repair, before.Facts, after.Facts, shifts))
        {
            return null;
        }

        return new VerifiedRepair
        {
            Finding = finding,
            Repair = repair.Kind == RepairKind.Safe && SameFigures.Differ(before.Facts, after.Facts)
                ? repair with { Kind = RepairKind.Chemistry }
                : repair,
            Patches = patches,
            AlsoRemoved = [.. difference.Removed.Where(f => !FindingDifference.IsSame(f, finding))],
            Brings = brings,
            Reveals = revealed,
            Worsens = difference.Worsened,
            Shifts = shifts,
            Changes = SolutionChange.Between(before.Facts, after.Facts),
        };
    }

    /// <summary>
    /// Something that was wrong before but could not be seen: what it stands in could not be read whole. What stands at the mended place
    /// itself came with the repair.
    /// </summary>
    private static bool IsRevealed(Finding added, Finding target, Judged before) =>
        !before.IsComplete(added.Place.File)
        && target.Rule.ProblemKinds.Count > 0
        && !(added.Place.File == target.Place.File && added.Place.Pointer == target.Place.Pointer);

    /// <summary>The files a repair changes, patched; null when it cannot be applied or changes nothing.</summary>
    private SortedDictionary<string, PatchResult>? Patch(Repair repair)
    {
        var patches = new SortedDictionary<string, PatchResult>(StringComparer.Ordinal);
        foreach (var edits in repair.Edits.GroupBy(e => e.At.File))
        {
            if (edits.ToList() is [JsonEdit.NewFile file])
            {
                if (!_scope.Value.MayChange(edits.Key) || _files.Kind(_scope.Value.FullPathOf(edits.Key)) != EntryKind.Missing)
                {
                    return null;
                }

                patches.Add(edits.Key, JsonPatcher.Create(file));
                continue;
            }

            if (!_scope.Value.Facts.Workspace.Sources.TryGetValue(edits.Key, out var source) || !_scope.Value.MayChange(edits.Key)
                || JsonPatcher.Apply(source, [.. edits]) is not { Bytes: { } bytes } patch)
            {
                return null;
            }

            if (!bytes.AsSpan().SequenceEqual(RepairScope.OnDisk(source)))
            {
                patches.Add(edits.Key, patch);
            }
        }

        return patches.Count == 0 ? null : patches;
    }

    /// <summary>The way through for the patched files; a new one is judged by itself too.</summary>
    private Judged After(SortedDictionary<string, PatchResult> patches, List<string> asked, EngineOptions engine)
    {
        var key = KeyOf(patches, asked);
        if (!_tried.TryGetValue(key, out var facts))
        {
            _tried[key] = facts = Try(patches, asked);
            _order.Enqueue(key);
            if (_order.Count > MostKept)
            {
                _tried.Remove(_order.Dequeue());
            }
        }

        return new Judged(facts.Workspace, facts, LintEngine.Judge(facts, engine));
    }

    private Facts Try(SortedDictionary<string, PatchResult> patches, List<string> asked)
    {
        var tree =
            patches.Aggregate(_files, (under, patch) => new OverlayFileTree(under, _scope.Value.FullPathOf(patch.Key), patch.Value.Bytes!));
        List<string> all = [.. asked, .. patches.Where(p => p.Value.IsNew).Select(p => _scope.Value.FullPathOf(p.Key))];
        var memory = new FactsMemory(_memory);
        var load = _load with { Parsed = new ParsedFiles(_load.Parsed) };
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(tree, all, load), memory);
        Trials++;
        Computed += memory.Computed;
        return facts;
    }

    /// <summary>
    /// Names a change and what is asked of it: the same edits are proposed for several findings, and tried before they are verified.
    /// </summary>
    private static string KeyOf(SortedDictionary<string, PatchResult> patches, List<string> asked) => string.Join(
        '\n', asked.Append("").Concat(patches.Select(p => p.Key + "\n" + Convert.ToHexString(SHA256.HashData(p.Value.Bytes!)))));

    private List<string> Asked(Finding finding, IEnumerable<string> changed, bool whole)
    {
        // What is not there yet is read through whatever refers to it.
        var files = _scope.Value.UsersOf([finding.Place.File, .. changed.Where(f => _scope.Value.Facts.Workspace.Sources.ContainsKey(f))]);
        if (whole)
        {
            files.UnionWith(_shown.Workspace.Asked);
        }

        return [.. files.Select(_scope.Value.FullPathOf)];
    }

    private Judged Before(List<string> asked)
    {
        var key = string.Join('\n', asked);
        if (!_before.TryGetValue(key, out var judged))
        {
            _before[key] = judged = Judged.Of(_files, asked, _load, _engine, _memory);
        }

        return judged;
    }
}

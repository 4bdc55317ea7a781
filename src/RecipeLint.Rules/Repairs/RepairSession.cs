using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// Applies repairs in memory, one after the other until none is left, each on what the ones before it have left. What comes out is written
/// once at the end, by whoever owns the disk.
/// </summary>
public sealed class RepairSession
{
    private const int MostRounds = 100;

    private readonly IFileTree _disk;
    private readonly IReadOnlyList<string> _asked;
    private readonly LoadOptions _load;
    private readonly EngineOptions _engine;
    private readonly SortedDictionary<string, byte[]> _changed = new(StringComparer.Ordinal);
    private readonly List<VerifiedRepair> _applied = [];
    private readonly SortedDictionary<string, int> _leftInOthers = new(StringComparer.Ordinal);
    private readonly FactsMemory _memory = new();
    private Judged _now;

    /// <param name="disk">The files as they stand.</param>
    /// <param name="asked">As the user wrote them.</param>
    /// <param name="load">How they are read.</param>
    /// <param name="engine">The rules that judge.</param>
    /// <param name="now">What these files came to.</param>
    public RepairSession(IFileTree disk, IReadOnlyList<string> asked, LoadOptions load, EngineOptions engine, Judged now)
    {
        _disk = disk;
        _asked = asked;
        _load = load with { Root = now.Workspace.Root, Parsed = load.Parsed ?? new ParsedFiles() };
        _engine = engine;
        _now = now;
    }

    /// <summary>The state after what was applied.</summary>
    public Judged Now => _now;

    /// <summary>The files with what was applied.</summary>
    public IFileTree Files => _changed.Aggregate(_disk, (tree, file) => new OverlayFileTree(tree, FullPathOf(file.Key), file.Value));

    /// <summary>Changed files by path relative to the root, whole.</summary>
    public IReadOnlyDictionary<string, byte[]> Changed => _changed;

    /// <summary>In the order they were applied.</summary>
    public IReadOnlyList<VerifiedRepair> Applied => _applied;

    /// <summary>Safe repairs that were left because they change a file that was not asked for, by that file.</summary>
    public IReadOnlyDictionary<string, int> LeftInOthers => _leftInOthers;

    /// <summary>Applies every safe repair of the files asked for, those of one round in one patch.</summary>
    public void FixSafe()
    {
        for (var round = 0; round < MostRounds; round++)
        {
            var desk = new RepairDesk(Files, _load, _engine, _now, _memory);
            var batch = new List<VerifiedRepair>();
            IReadOnlyDictionary<string, PatchResult>? patches = null;
            _leftInOthers.Clear();
            foreach (var finding in _now.Result.Findings)
            {
                var safe = desk.For(finding, r => r.Kind == RepairKind.Safe);
                if (safe.FirstOrDefault(r => r.Repair.Kind == RepairKind.Safe) is not { } repair)
                {
                    continue;
                }

                if (repair.Patches.Keys.FirstOrDefault(f => !_now.Workspace.Asked.Contains(f)) is { } other)
                {
                    _leftInOthers[other] = _leftInOthers.GetValueOrDefault(other) + 1;
                }
                else if (desk.Together(batch.Append(repair)) is { } together)
                {
                    batch.Add(repair);
                    patches = together;
                }
            }

            if (patches is null)
            {
                return;
            }

            Take(batch, patches);
            _now = Judged.Of(Files, _asked, _load, _engine, _memory);
        }
    }

    /// <summary>Applies the best repair, or the one of a key, of each finding of a rule, until no finding of it has one.</summary>
    /// <param name="ruleId">"RL0101".</param>
    /// <param name="key">Null for the first there is.</param>
    public void Apply(string ruleId, string? key)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            var desk = new RepairDesk(Files, _load, _engine, _now, _memory);
            var touched = new HashSet<string>(StringComparer.Ordinal);
            foreach (var finding in _now.Result.Findings.Where(f => f.Rule.Id == ruleId).ToList())
            {
                // What shares a recipe with a change of this round waits for the next one: it was tried out without it.
                if (touched.Contains(finding.Place.File) || Find(desk, finding, key) is not { } repair
                    || desk.AffectedBy(repair) is not { } affected || affected.Any(touched.Contains))
                {
                    continue;
                }

                Take([repair], repair.Patches);
                touched.UnionWith(affected);
            }

            if (touched.Count == 0)
            {
                return;
            }

            _now = Judged.Of(Files, _asked, _load, _engine, _memory);
        }
    }

    /// <summary>The first repair that leaves the recipe what it is, or the one of a key; a second one of the same way is known by its
    /// number ("use-zn-edta-2").</summary>
    private static VerifiedRepair? Find(RepairDesk desk, Finding finding, string? key) => key is null
        ? desk.For(finding) is [{ Shifts.Count: 0 } best, ..] ? best : null
        : desk.For(finding, r => r.Key == key || key.StartsWith(r.Key + "-", StringComparison.Ordinal))
            .FirstOrDefault(r => r.Repair.Key == key);

    private void Take(IEnumerable<VerifiedRepair> repairs, IReadOnlyDictionary<string, PatchResult> patches)
    {
        foreach (var (file, patch) in patches)
        {
            _changed[file] = patch.Bytes!;
        }

        _applied.AddRange(repairs);
    }

    /// <summary>A whole file as it stands on the disk; empty when it cannot be read.</summary>
    public byte[] BytesOnDisk(string file) => _disk.Read(FullPathOf(file), int.MaxValue).Bytes ?? [];

    /// <summary>True for a file that is not on the disk yet.</summary>
    public bool IsNew(string file) => _disk.Kind(FullPathOf(file)) == EntryKind.Missing;

    /// <summary>Full path with forward slashes of a file relative to the root.</summary>
    public string FullPathOf(string file) => $"{_load.Root!.TrimEnd('/')}/{file}";
}

using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Shell;

/// <summary>
/// Many files judged again and again while they change. They are cut into small pieces; of a piece that nothing touched the findings are
/// kept, of the others the parsed files and the facts that the change does not reach.
/// </summary>
internal sealed class WatchRun(Input input, EngineOptions engine, int threads)
{
    /// <summary>Files of a piece: few, so that little is judged again; more where they refer to each other.</summary>
    private const int FilesOfPiece = 8;

    private readonly CachedTree _tree = new(input.Files);
    private readonly LoadOptions _load = input.Load with { Parsed = new ParsedFiles() };
    private Dictionary<string, Piece> _pieces = new(StringComparer.Ordinal);

    /// <summary>Of paths that were touched those that can change a finding: files of ours, lists of what to ignore; null for all.</summary>
    public IReadOnlyCollection<string>? Relevant(IReadOnlyCollection<string>? touched) =>
        touched is null || touched.Any(p => !IsFile(p) && _tree.IsOrWasFolder(p)) ? null : [.. touched.Where(IsFile)];

    /// <summary>Judges everything, as far as it is not known that nothing has changed.</summary>
    /// <param name="touched">Full paths that may have changed; null for anything.</param>
    /// <exception cref="UsageException">A path cannot be used any more.</exception>
    public WatchResult Judge(IReadOnlyCollection<string>? touched)
    {
        var everything = touched is null;
        if (everything)
        {
            _tree.Clear();
        }

        foreach (var path in touched ?? [])
        {
            // What comes or goes may be what another file refers to, and settings say which files there are; whatever else a file rests on
            // it has been read with.
            everything |= _tree.Forget(path) || DocumentKinds.FromFileName(path) is null or DocumentKind.Settings;
        }

        if (WorkspacePieces.Find(_tree, input.Asked, _load, least: 0, FilesOfPiece) is not { Count: > 0 } cut)
        {
            Session.Open(input with { Files = _tree });
            throw new UsageException("no file of ours is there any more.");
        }

        var pieces = new Piece[cut.Count];
        Parallel.For(0, cut.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
        {
            var known = _pieces.GetValueOrDefault(KeyOf(cut, i));
            pieces[i] = known is not null && !everything && !known.Read.Overlaps(touched!)
                ? known
                : Look(cut, i, known?.Memory ?? new FactsMemory());
        });
        var before = _pieces.Values.ToHashSet<object>(ReferenceEqualityComparer.Instance);
        var anew = pieces.Where(p => !before.Contains(p));
        var reached = touched is null ? null : DependencyIndex.WithUsersIn(anew.Select(p => p.Index), touched);
        _pieces = pieces.Select((p, i) => (p, i)).ToDictionary(p => KeyOf(cut, p.i), p => p.p, StringComparer.Ordinal);
        var sources = new SortedDictionary<string, SourceFile>(StringComparer.Ordinal);
        foreach (var (file, source) in pieces.SelectMany(p => p.Found.Sources))
        {
            sources.TryAdd(file, source);
        }

        return new WatchResult(
            LintEngine.Conclude([.. pieces.Select(p => p.Found)], engine), sources, cut.Root, cut.FileCount,
            [.. pieces.SelectMany(p => p.Baselines).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)], reached);
    }

    private static bool IsFile(string path) =>
        DocumentKinds.FromFileName(path) is not null || path.EndsWith("/.gitignore", StringComparison.Ordinal);

    private Piece Look(WorkspacePieces cut, int piece, FactsMemory memory)
    {
        var workspace = cut.Load(piece);
        Session.RefuseUnusable(workspace);
        var index = DependencyIndex.Of([workspace]);
        return new Piece(
            LintEngine.Look(Analyzer.Analyse(workspace, memory), engine), memory, index,
            index.Known.ToHashSet(StringComparer.Ordinal), PieceRun.BaselinesNamedIn(workspace));
    }

    private static string KeyOf(WorkspacePieces cut, int piece) => string.Join('\n', cut.PathsOf(piece));

    /// <param name="Read">Full paths of every file that its findings rest on.</param>
    private sealed record Piece(
        LintPiece Found, FactsMemory Memory, DependencyIndex Index, HashSet<string> Read, IReadOnlyList<string> Baselines);
}

/// <summary>What a look at watched files has found.</summary>
/// <param name="Root">Full path.</param>
/// <param name="Reached">Full paths of what changed and all that draws on it; null when everything was looked at.</param>
internal sealed record WatchResult(
    LintResult Result, IReadOnlyDictionary<string, SourceFile> Sources, string Root, int FilesChecked, IReadOnlyList<string> Baselines,
    IReadOnlySet<string>? Reached);

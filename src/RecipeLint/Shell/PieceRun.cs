using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Shell;

/// <summary>
/// Checks many files piece by piece: each is read, analysed, judged and let go, several at once. What comes out is the same as if all had
/// been read together, whatever the number of threads.
/// </summary>
internal static class PieceRun
{
    /// <summary>Fewer files are read together: there is nothing to gain.</summary>
    private const int LeastFiles = 64;

    /// <summary>
    /// Files of a piece: enough that settings and waters are not read again for every recipe, few enough to hold in memory.
    /// </summary>
    private const int FilesOfPiece = 48;

    /// <summary>Null where the files are few or a path cannot be used.</summary>
    public static PieceResult? Check(
        Input input, EngineOptions engine, int threads, Progress progress, int least = LeastFiles, int size = FilesOfPiece,
        Shard? shard = null, Timings? timings = null)
    {
        least = shard is null ? least : 1;
        if (Timings.Phase(timings, "find", () => WorkspacePieces.Find(input.Files, input.Asked, input.Load, least, size, shard, threads))
            is not { } pieces)
        {
            return null;
        }

        // What one piece shows of a stock holds for its copies in all others.
        engine = engine with { Silent = engine.Silent ?? new SilentRules() };
        var done = new (LintPiece Piece, Assumed Assumed, Read Read)[pieces.Count];
        progress.Begin(pieces.FileCount);
        try
        {
            Parallel.For(0, pieces.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, piece =>
            {
                done[piece] = Judge(pieces, piece, engine, timings);
                progress.Add(pieces.FilesOf(piece), pieces.LastOf(piece));
            });
        }
        catch (AggregateException several)
        {
            // The first by the order of the files, so that the answer never depends on who was faster.
            throw several.Flatten().InnerExceptions.OfType<UsageException>().FirstOrDefault() ?? several.Flatten().InnerExceptions[0];
        }
        finally
        {
            progress.End();
        }

        var sources = new SortedDictionary<string, SourceFile>(StringComparer.Ordinal);
        foreach (var (file, source) in done.SelectMany(d => d.Piece.Sources))
        {
            sources.TryAdd(file, source);
        }

        return new PieceResult(
            Timings.Phase(timings, "conclude", () => LintEngine.Conclude([.. done.Select(d => d.Piece)], engine)),
            sources,
            pieces.FileCount,
            Assumed.Together(done.Select(d => d.Assumed)).Lines())
        {
            Root = pieces.Root,
            NotOurs = pieces.NotOurs,
            Read = pieces.Names.Concat(sources.Keys),
            Baselines = [.. done.SelectMany(d => d.Read.Baselines).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            PinnedData = [.. done.SelectMany(d => d.Read.PinnedData).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        };
    }

    /// <summary>The baselines that the settings of a run name, relative to its root.</summary>
    public static IReadOnlyList<string> BaselinesNamedIn(Workspace workspace) =>
        BaselinesNamedIn(LintEngine.ShopsOf(workspace));

    private static IReadOnlyList<string> BaselinesNamedIn(IReadOnlyList<ShopSettings> shops) =>
        [.. shops.Select(s => s.Baseline).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>The names of the data that the settings of a run were written for.</summary>
    public static IReadOnlyList<string> DataPinnedIn(Workspace workspace) =>
        DataPinnedIn(LintEngine.ShopsOf(workspace));

    private static IReadOnlyList<string> DataPinnedIn(IReadOnlyList<ShopSettings> shops) =>
        [.. shops.Select(s => s.PinnedData?.Value).OfType<string>().Distinct(StringComparer.Ordinal)];

    private static (LintPiece Piece, Assumed Assumed, Read Read) Judge(
        WorkspacePieces pieces, int number, EngineOptions engine, Timings? timings)
    {
        var workspace = Timings.Phase(timings, "read", () => pieces.LoadKnowingItsPlace(number));
        Session.RefuseUnusable(workspace);
        var facts = Timings.Phase(timings, "facts", () => Analyzer.Analyse(workspace));
        var shops = LintEngine.ShopsOf(workspace);
        var read = new Read(BaselinesNamedIn(shops), DataPinnedIn(shops));
        return (Timings.Phase(timings, "judge", () => LintEngine.Look(facts, engine)), Assumed.Of(facts), read);
    }

    /// <summary>What a run has to know of the settings that a piece was read with.</summary>
    private sealed record Read(IReadOnlyList<string> Baselines, IReadOnlyList<string> PinnedData);
}

/// <summary>What a run in pieces has found.</summary>
internal sealed record PieceResult(
    LintResult Result, IReadOnlyDictionary<string, SourceFile> Sources, int FilesChecked, IReadOnlyList<string> Assumptions)
{
    /// <summary>Full path of the root.</summary>
    public required string Root { get; init; }

    /// <summary>The baselines that settings of the run name, relative to the root.</summary>
    public required IReadOnlyList<string> Baselines { get; init; }

    /// <summary>The files whose findings the run tells, relative to the root, some of them twice.</summary>
    public required IEnumerable<string> Read { get; init; }

    /// <summary>Full paths of JSON files whose names are none of ours.</summary>
    public IReadOnlyList<string> NotOurs { get; init; } = [];

    /// <summary>The data that settings of the run were written for.</summary>
    public IReadOnlyList<string> PinnedData { get; init; } = [];
}

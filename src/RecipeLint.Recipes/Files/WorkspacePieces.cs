using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// What was asked for, cut into pieces that are read and judged one by one: stocks, recipes and batches that refer to each other stay
/// together, and what is known of one piece never depends on another. Waters, settings, profiles and products are read with every piece
/// that they serve.
/// </summary>
public sealed class WorkspacePieces
{
    private readonly RememberingTree _files;
    private readonly AskedFiles _asked;
    private readonly LoadOptions _options;
    private readonly ServingFiles _served;
    private readonly RepeatedContents _repeated = new();
    private readonly List<List<string>> _pieces;
    private readonly Lazy<Dictionary<string, int>> _pieceOfFolder;

    private WorkspacePieces(RememberingTree files, string root, AskedFiles asked, LoadOptions options, List<List<string>> pieces)
    {
        _files = files;
        _asked = asked;
        _options = options;
        _served = new ServingFiles(files, root);
        _pieces = pieces;
        _pieceOfFolder = new(PiecesByFolder);
        Root = root;
    }

    /// <summary>Full path of the folder that all paths are relative to.</summary>
    public string Root { get; }

    public int Count => _pieces.Count;

    /// <summary>How many files were asked for.</summary>
    public int FileCount => _asked.Files.Count;

    /// <summary>
    /// Finds and cuts; null where there are fewer files than <paramref name="least"/>, or where a path cannot be used: such a run is read
    /// whole.
    /// </summary>
    /// <param name="asked">Files, folders or patterns as the user wrote them.</param>
    /// <param name="size">Files of a piece; more where they refer to each other.</param>
    /// <param name="shard">Of these only one part; null for all.</param>
    /// <param name="threads">Files that may be looked into at once; what is found does not hang on it.</param>
    public static WorkspacePieces? Find(
        IFileTree files, IReadOnlyList<string> asked, LoadOptions options, int least, int size, Shard? shard = null, int threads = 1)
    {
        var tree = new RememberingTree(files);
        files = tree;
        var found = AskedFiles.Find(files, asked, options.Only, threads);
        if (found.Files.Count < least || found.Unusable.Count + found.Unrecognised.Count > 0)
        {
            return null;
        }

        var root = options.Root ?? RepositoryRoot.Common(found.Roots, files.CurrentFolder);
        if (shard is not null)
        {
            found = found with { Files = ShardCut.Of(files, root, found.Files, options, shard) };
        }

        return new WorkspacePieces(tree, root, found, options, Cut(files, root, found.Files, size, threads));
    }

    /// <summary>The files asked for as findings name them: relative to the root, or full where they lie elsewhere.</summary>
    public IEnumerable<string> Names => _asked.Files.Select(f => FilePaths.IsWithin(f, Root) ? FilePaths.Below(f, Root) : f);

    /// <summary>Full paths of the first JSON files met in folders whose names are none of ours.</summary>
    public IReadOnlyList<string> NotOurs => _asked.NotOurs;

    /// <summary>How many of the files asked for a piece holds.</summary>
    public int FilesOf(int piece) => _pieces[piece].Count;

    /// <summary>Full paths of the files asked for that a piece holds, in order.</summary>
    public IReadOnlyList<string> PathsOf(int piece) => _pieces[piece];

    /// <summary>The last of them, relative to the root.</summary>
    public string LastOf(int piece) => FilePaths.Below(_pieces[piece][^1], Root);

    /// <summary>Reads one piece, which then knows whose files it holds whole. Several may be read at once.</summary>
    public Workspace LoadKnowingItsPlace(int piece) => _options.ConfigFile is not null
        ? Load(piece)
        : Load(piece) with { HoldsAllBelow = folder => _pieceOfFolder.Value.TryGetValue(folder, out var only) && only == piece };

    /// <summary>Reads one piece. Several may be read at once.</summary>
    public Workspace Load(int piece)
    {
        var paths = _pieces[piece];
        var named = _asked.Named.Count == 0
            ? _asked.Named
            : paths.Where(_asked.Named.ContainsKey).ToDictionary(p => p, p => _asked.Named[p], StringComparer.Ordinal);
        var read = WorkspaceLoader.Load(_files, Root, _asked with { Files = paths, Named = named }, _options, _served, _repeated);
        _files.Forget(paths);
        return read;
    }

    /// <summary>The piece that holds all stocks and recipes in a folder and below; -1 where several do.</summary>
    private Dictionary<string, int> PiecesByFolder()
    {
        var found = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var piece = 0; piece < _pieces.Count; piece++)
        {
            foreach (var path in _pieces[piece].Where(NamesStocks)
                .Select(p => OwnPath(_files, Root, p)).Where(p => FilePaths.IsWithin(p, Root)))
            {
                foreach (var folder in FilePaths.Upwards(FilePaths.FolderOf(path), Root))
                {
                    var name = FilePaths.Below(folder, Root);
                    found[name] = found.TryGetValue(name, out var other) && other != piece ? -1 : piece;
                    if (folder == Root)
                    {
                        break;
                    }
                }
            }
        }

        return found;
    }

    private static List<List<string>> Cut(IFileTree files, string root, IReadOnlyList<string> paths, int size, int threads)
    {
        var groups = new FileGroups();
        List<string> naming = [.. paths.Where(NamesStocks)];
        foreach (var (path, named) in naming.Zip(SeveralAtOnce.Of(naming, threads, path => NamedBy(files, root, path))))
        {
            named.ForEach(n => groups.Join(path, n));
        }

        var pieces = new List<List<string>>();
        foreach (var group in groups.Among(paths))
        {
            if (pieces.Count == 0 || pieces[^1].Count + group.Count > size)
            {
                pieces.Add([]);
            }

            pieces[^1].AddRange(group);
        }

        pieces.ForEach(p => p.Sort(StringComparer.Ordinal));
        return pieces;
    }

    /// <summary>Full paths of the stocks and recipes that a file refers to.</summary>
    private static List<string> NamedBy(IFileTree files, string root, string path)
    {
        var bytes = files.Read(path, JsonReading.DefaultSizeLimit).Bytes ?? [];
        return
        [
            .. NamedFiles.In(bytes, k => k is DocumentKind.Stock or DocumentKind.Recipe)
                .Select(reference => FilePaths.Resolve(FilePaths.FolderOf(path), reference))
                .OfType<string>()
                .Select(full => OwnPath(files, root, full)),
        ];
    }

    private static bool NamesStocks(string path) =>
        DocumentKinds.FromFileName(path) is DocumentKind.Stock or DocumentKind.Recipe or DocumentKind.Batch;

    private static string OwnPath(IFileTree files, string root, string full) =>
        FolderWalk.Target(files, FilePaths.FolderOf(full), root) is { } folder ? FilePaths.Join(folder, FilePaths.NameOf(full)) : full;
}

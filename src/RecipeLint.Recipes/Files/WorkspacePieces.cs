using System.Text;
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
    private readonly IFileTree _files;
    private readonly AskedFiles _asked;
    private readonly LoadOptions _options;
    private readonly ServingFiles _served;
    private readonly List<List<string>> _pieces;

    private WorkspacePieces(IFileTree files, string root, AskedFiles asked, LoadOptions options, List<List<string>> pieces)
    {
        _files = files;
        _asked = asked;
        _options = options;
        _served = new ServingFiles(files, root);
        _pieces = pieces;
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
    public static WorkspacePieces? Find(IFileTree files, IReadOnlyList<string> asked, LoadOptions options, int least, int size)
    {
        files = new RememberingTree(files);
        var found = AskedFiles.Find(files, asked, options.Only);
        if (found.Files.Count < least || found.Unusable.Count + found.Unrecognised.Count > 0)
        {
            return null;
        }

        var root = options.Root ?? RepositoryRoot.Common(found.Roots, files.CurrentFolder);
        return new WorkspacePieces(files, root, found, options, Cut(files, root, found.Files, size));
    }

    /// <summary>How many of the files asked for a piece holds.</summary>
    public int FilesOf(int piece) => _pieces[piece].Count;

    /// <summary>Full paths of the files asked for that a piece holds, in order.</summary>
    public IReadOnlyList<string> PathsOf(int piece) => _pieces[piece];

    /// <summary>Reads one piece. Several may be read at once.</summary>
    public Workspace Load(int piece)
    {
        var paths = _pieces[piece];
        var named = _asked.Named.Count == 0
            ? _asked.Named
            : paths.Where(_asked.Named.ContainsKey).ToDictionary(p => p, p => _asked.Named[p], StringComparer.Ordinal);
        return WorkspaceLoader.Load(_files, Root, _asked with { Files = paths, Named = named }, _options, _served);
    }

    private static List<List<string>> Cut(IFileTree files, string root, IReadOnlyList<string> paths, int size)
    {
        var groups = new Groups();
        foreach (var path in paths.Where(NamesStocks))
        {
            foreach (var reference in StocksNamedIn(files.Read(path, JsonReading.DefaultSizeLimit).Bytes ?? []))
            {
                if (FilePaths.Resolve(FilePaths.FolderOf(path), reference) is { } full)
                {
                    groups.Join(path, OwnPath(files, root, full));
                }
            }
        }

        // In the order of the paths, so that the same files always give the same pieces.
        var members = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var order = new List<List<string>>();
        foreach (var path in paths)
        {
            var group = groups.Of(path);
            if (!members.TryGetValue(group, out var same))
            {
                members.Add(group, same = []);
                order.Add(same);
            }

            same.Add(path);
        }

        var pieces = new List<List<string>>();
        foreach (var group in order)
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

    private static bool NamesStocks(string path) =>
        DocumentKinds.FromFileName(path) is DocumentKind.Stock or DocumentKind.Recipe or DocumentKind.Batch;

    private static string OwnPath(IFileTree files, string root, string full) =>
        FolderWalk.Target(files, FilePaths.FolderOf(full), root) is { } folder ? FilePaths.Join(folder, FilePaths.NameOf(full)) : full;

    /// <summary>Every text of a file that may name a stock file: more than it refers to does no harm, less would.</summary>
    private static IEnumerable<string> StocksNamedIn(byte[] bytes)
    {
        // An escape can spell a name in many ways; only then the file is parsed for it.
        if (bytes.AsSpan().Contains((byte)'\\'))
        {
            return JsonReading.Read("", bytes, JsonReading.DefaultSizeLimit).Source.Tree is { } tree ? Texts(tree.Root).Where(IsStock) : [];
        }

        var found = new List<string>();
        for (var at = 0; bytes.AsSpan(at).IndexOf((byte)'"') is var quote && quote >= 0;)
        {
            var start = at + quote + 1;
            var length = bytes.AsSpan(start).IndexOf((byte)'"');
            if (length < 0)
            {
                break;
            }

            if (length > 0 && bytes[start + length - 1] is (byte)'n' or (byte)'N')
            {
                var text = Encoding.UTF8.GetString(bytes, start, length);
                if (IsStock(text))
                {
                    found.Add(text);
                }
            }

            // A closing quote may be an opening one where a quote stands in a comment.
            at = start;
        }

        return found;
    }

    private static bool IsStock(string text) => DocumentKinds.FromFileName(text) == DocumentKind.Stock;

    private static IEnumerable<string> Texts(JsonItem root)
    {
        var open = new Stack<JsonItem>([root]);
        while (open.TryPop(out var item))
        {
            if (item.Kind == JsonKind.Text)
            {
                yield return item.Text;
            }

            foreach (var below in item.Items.Concat(item.Members.Select(m => m.Value)))
            {
                open.Push(below);
            }
        }
    }

    /// <summary>Paths that belong together, by the path that stands for all of them.</summary>
    private sealed class Groups
    {
        private readonly Dictionary<string, string> _above = new(StringComparer.Ordinal);

        public string Of(string path)
        {
            var top = path;
            while (_above.TryGetValue(top, out var above))
            {
                top = above;
            }

            while (path != top && _above.TryGetValue(path, out var next))
            {
                _above[path] = top;
                path = next;
            }

            return top;
        }

        public void Join(string one, string other)
        {
            var (a, b) = (Of(one), Of(other));
            if (a != b)
            {
                _above[b] = a;
            }
        }
    }
}

using System.Collections.Concurrent;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Which of the files asked about draws on which, so that a change can be followed to everything it reaches. Full paths. It is made piece
/// by piece and keeps nothing of the files but their names.
/// </summary>
public sealed class DependencyIndex
{
    private const int FilesOfPiece = 48;

    private readonly Dictionary<string, IReadOnlySet<string>> _drawsOn;
    private readonly HashSet<string> _known;

    private DependencyIndex(IReadOnlySet<string> asked, Dictionary<string, IReadOnlySet<string>> drawsOn)
    {
        Asked = asked;
        _drawsOn = drawsOn;
        _known = [.. asked, .. drawsOn.Keys, .. drawsOn.Values.SelectMany(d => d)];
    }

    /// <summary>The files that the paths stand for.</summary>
    public IReadOnlySet<string> Asked { get; }

    /// <summary>Every file that was read, whether asked about or drawn on.</summary>
    public IReadOnlyCollection<string> Known => _known;

    /// <param name="asked">Files, folders or patterns as the user wrote them; what cannot be used is left out.</param>
    /// <param name="threads">How many pieces are read at once.</param>
    /// <param name="look">Sees each piece before it is let go, several at once.</param>
    public static DependencyIndex Of(
        IFileTree files, IReadOnlyList<string> asked, LoadOptions options, int threads, Action<Workspace>? look = null)
    {
        DependencyIndex Read(Workspace piece)
        {
            look?.Invoke(piece);
            return Of([piece]);
        }

        if (WorkspacePieces.Find(files, asked, options, least: 0, FilesOfPiece) is not { } pieces)
        {
            return Read(WorkspaceLoader.Load(files, asked, options));
        }

        var read = new ConcurrentBag<DependencyIndex>();
        Parallel.For(
            0, pieces.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, piece => read.Add(Read(pieces.Load(piece))));
        var drawsOn = new Dictionary<string, IReadOnlySet<string>>(StringComparer.Ordinal);
        foreach (var (file, drawn) in read.SelectMany(r => r._drawsOn))
        {
            // A file that several pieces read draws on the same in all of them.
            drawsOn.TryAdd(file, drawn);
        }

        return new DependencyIndex(read.SelectMany(r => r.Asked).ToHashSet(StringComparer.Ordinal), drawsOn);
    }

    /// <summary>The index of what was read already.</summary>
    public static DependencyIndex Of(IEnumerable<Workspace> read)
    {
        var asked = new HashSet<string>(StringComparer.Ordinal);
        var drawsOn = new Dictionary<string, IReadOnlySet<string>>(StringComparer.Ordinal);
        foreach (var workspace in read)
        {
            string Full(string file) => FullPath(workspace.Root, file);
            asked.UnionWith(workspace.Asked.Select(Full));
            foreach (var (file, drawn) in workspace.DrawsOn)
            {
                drawsOn.TryAdd(Full(file), drawn.Select(Full).ToHashSet(StringComparer.Ordinal));
            }
        }

        return new DependencyIndex(asked, drawsOn);
    }

    /// <summary>The files with all that draw on them in any of several indexes.</summary>
    public static IReadOnlySet<string> WithUsersIn(IEnumerable<DependencyIndex> indexes, IReadOnlyCollection<string> files) =>
        indexes.SelectMany(i => i.WithUsersOf(files)).Concat(files).ToHashSet(StringComparer.Ordinal);

    /// <summary>What a file draws on, directly or through others; the file itself is not among it.</summary>
    public IReadOnlySet<string> DrawnOnBy(string file)
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        var open = new Queue<string>([file]);
        while (open.TryDequeue(out var at))
        {
            foreach (var next in _drawsOn.GetValueOrDefault(at) ?? (IReadOnlySet<string>)new HashSet<string>())
            {
                if (found.Add(next))
                {
                    open.Enqueue(next);
                }
            }
        }

        found.Remove(file);
        return found;
    }

    /// <summary>The files with all that draw on them, directly or through others.</summary>
    public SortedSet<string> WithUsersOf(IEnumerable<string> files)
    {
        var users = _drawsOn.SelectMany(d => d.Value.Select(drawn => (drawn, d.Key)))
            .ToLookup(p => p.drawn, p => p.Key, StringComparer.Ordinal);
        var found = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Queue<string>(files);
        while (open.TryDequeue(out var at))
        {
            if (found.Add(at))
            {
                foreach (var user in users[at])
                {
                    open.Enqueue(user);
                }
            }
        }

        return found;
    }

    private static string FullPath(string root, string file) =>
        file.StartsWith('/') || (file.Length > 1 && file[1] == ':') ? file : FilePaths.Join(root, file);
}

using System.Collections.Concurrent;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Which lists of substances, profiles and house rules serve a folder, looked up once for each folder of a run, and what they came to, read
/// once. For several threads at once.
/// </summary>
/// <param name="root">Full path of the repository root.</param>
internal sealed class ServingFiles(IFileTree files, string root)
{
    private readonly ConcurrentDictionary<(string Folder, DocumentKind Kind), string[]> _serving = [];
    private readonly ConcurrentDictionary<string, IReadOnlyList<(DocumentKind Kind, string Path)>> _from = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(string Path, DocumentKind Kind), Lazy<object>> _read = [];
    private readonly Ignored _ignored = new(files, root);
    private readonly Lazy<string> _realRoot = new(() => files.ResolveLinks(root));

    /// <summary>Files of a kind that serve a folder, full, in the order of their paths.</summary>
    public string[] Of(string folder, DocumentKind kind)
    {
        if (_serving.TryGetValue((folder, kind), out var known))
        {
            return known;
        }

        var serving = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var at in FilePaths.Upwards(folder, root))
        {
            serving.UnionWith(_from.GetOrAdd(at, From).Where(s => s.Kind == kind).Select(s => s.Path));
        }

        return _serving[(folder, kind)] = [.. serving];
    }

    /// <summary>What a file that serves came to; read by whoever asks first.</summary>
    /// <param name="path">As problems name it.</param>
    public FileRead<T> Once<T>(string path, DocumentKind kind, Func<FileRead<T>> read) =>
        (FileRead<T>)_read.GetOrAdd((path, kind), static (_, r) => new Lazy<object>(r), read).Value;

    /// <summary>Those of a folder, or of the whole shop where it is one, that serve what lies in it.</summary>
    private IReadOnlyList<(DocumentKind Kind, string Path)> From(string folder)
    {
        var paths = IsShop(folder)
            ? FolderWalk.Files(files, folder, IsServing, below => !IsShop(below), ignored: _ignored)
            : files.Entries(folder)
                .Where(e => IsServing(e.Name))
                .Select(e => FilePaths.Join(folder, e.Name))
                .Where(p => files.Kind(p) == EntryKind.File);
        return [.. paths.Where(StaysInside).Select(p => (DocumentKinds.FromFileName(p)!.Value, p))];
    }

    private static bool IsServing(string name) =>
        DocumentKinds.FromFileName(name) is DocumentKind.Substances or DocumentKind.Profile or DocumentKind.HouseRule;

    private bool IsShop(string folder) => files.Kind(FilePaths.Join(folder, DocumentKinds.SettingsFileName)) == EntryKind.File;

    private bool StaysInside(string path) => FilePaths.IsWithin(files.ResolveLinks(path), _realRoot.Value);
}

using System.Collections.Concurrent;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>Another tree that is asked for each thing once until it is told that a path has changed. For several threads at once.</summary>
internal sealed class CachedTree(IFileTree under) : IFileTree
{
    private readonly ConcurrentDictionary<string, EntryKind> _kinds = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, string> _links = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, IReadOnlyList<FolderEntry>> _entries = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, FileBytes> _bytes = new(StringComparer.Ordinal);

    public string CurrentFolder => under.CurrentFolder;

    public string FullPath(string path) => under.FullPath(path);

    public EntryKind Kind(string path) => _kinds.GetOrAdd(path, static (p, tree) => tree.Kind(p), under);

    public string ResolveLinks(string path) => _links.GetOrAdd(path, static (p, tree) => tree.ResolveLinks(p), under);

    public bool IsLink(string path) => under.IsLink(path);

    public IReadOnlyList<string> Names(string folder) => [.. Entries(folder).Select(e => e.Name)];

    public IReadOnlyList<FolderEntry> Entries(string folder) => _entries.GetOrAdd(folder, static (f, tree) => tree.Entries(f), under);

    public FileBytes Read(string path, int sizeLimit) =>
        _bytes.GetOrAdd(path, static (p, given) => given.under.Read(p, given.sizeLimit), (under, sizeLimit));

    /// <summary>True when what stands at a path is of another kind than it was: it came, went, or became something else.</summary>
    public bool Forget(string path)
    {
        var before = Kind(path);
        _kinds.TryRemove(path, out _);
        _links.TryRemove(path, out _);
        _bytes.TryRemove(path, out _);
        _entries.TryRemove(path, out _);
        _entries.TryRemove(path[..Math.Max(path.LastIndexOf('/'), 1)], out _);
        return Kind(path) != before;
    }

    /// <summary>True for a folder that stands there or stood there when it was asked about last: with it files come and go.</summary>
    public bool IsOrWasFolder(string path) =>
        (_kinds.TryGetValue(path, out var known) && (known is EntryKind.Folder or EntryKind.LinkedFolder))
        || under.Kind(path) is EntryKind.Folder or EntryKind.LinkedFolder;

    /// <summary>Everything is asked for anew.</summary>
    public void Clear()
    {
        _kinds.Clear();
        _links.Clear();
        _entries.Clear();
        _bytes.Clear();
    }
}

using System.Collections.Concurrent;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Another tree, asked for each thing once: what a path is, where its links lead, what a folder holds. It lives as long as one run, so that
/// a file is judged by one state of the disk. For several threads at once.
/// </summary>
internal sealed class RememberingTree(IFileTree under) : IFileTree
{
    private readonly ConcurrentDictionary<string, EntryKind> _kinds = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, string> _folders = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, IReadOnlyList<FolderEntry>> _entries = new(StringComparer.Ordinal);

    public string CurrentFolder => under.CurrentFolder;

    public string FullPath(string path) => under.FullPath(path);

    public EntryKind Kind(string path) => _kinds.GetOrAdd(path, static (p, tree) => tree.Kind(p), under);

    public bool IsLink(string path) => under.IsLink(path);

    public string ResolveLinks(string path)
    {
        if (_folders.TryGetValue(path, out var known))
        {
            return known;
        }

        var folder = FilePaths.FolderOf(path);
        return folder != path && FolderOf(folder) == folder && !under.IsLink(path) ? path : under.ResolveLinks(path);
    }

    public IReadOnlyList<string> Names(string folder) => [.. Entries(folder).Select(e => e.Name)];

    public IReadOnlyList<FolderEntry> Entries(string folder) => _entries.GetOrAdd(folder, static (f, tree) => tree.Entries(f), under);

    public FileBytes Read(string path, int sizeLimit) => under.Read(path, sizeLimit);

    /// <summary>Where a folder ends after every link on the way.</summary>
    private string FolderOf(string folder)
    {
        if (!_folders.TryGetValue(folder, out var resolved))
        {
            var above = FilePaths.FolderOf(folder);
            resolved = above != folder && FolderOf(above) == above && !under.IsLink(folder) ? folder : under.ResolveLinks(folder);
            _folders[folder] = resolved;
        }

        return resolved;
    }
}

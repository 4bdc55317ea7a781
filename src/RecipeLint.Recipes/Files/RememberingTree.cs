using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Another tree, asked for each thing once: what a path is, where its links lead, what a folder holds. It lives as long as one reading, so that
/// a file is judged by one state of the disk.
/// </summary>
internal sealed class RememberingTree(IFileTree under) : IFileTree
{
    private readonly Dictionary<string, EntryKind> _kinds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _folders = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlyList<FolderEntry>> _entries = new(StringComparer.Ordinal);

    public string CurrentFolder => under.CurrentFolder;

    public string FullPath(string path) => under.FullPath(path);

    public EntryKind Kind(string path)
    {
        if (!_kinds.TryGetValue(path, out var kind))
        {
            _kinds.Add(path, kind = under.Kind(path));
        }

        return kind;
    }

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

    public IReadOnlyList<FolderEntry> Entries(string folder)
    {
        if (!_entries.TryGetValue(folder, out var entries))
        {
            _entries.Add(folder, entries = under.Entries(folder));
        }

        return entries;
    }

    public FileBytes Read(string path, int sizeLimit) => under.Read(path, sizeLimit);

    /// <summary>Where a folder ends after every link on the way.</summary>
    private string FolderOf(string folder)
    {
        if (!_folders.TryGetValue(folder, out var resolved))
        {
            var above = FilePaths.FolderOf(folder);
            resolved = above != folder && FolderOf(above) == above && !under.IsLink(folder) ? folder : under.ResolveLinks(folder);
            _folders.Add(folder, resolved);
        }

        return resolved;
    }
}

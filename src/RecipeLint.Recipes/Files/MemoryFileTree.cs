using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Files that exist only in memory: for tests, for editors and for text that comes from elsewhere.</summary>
/// <param name="currentFolder">Full path.</param>
public sealed class MemoryFileTree(string currentFolder) : IFileTree
{
    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.Ordinal);
    private readonly HashSet<string> _folders = new(StringComparer.Ordinal) { "/", currentFolder };
    private readonly Dictionary<string, string> _links = new(StringComparer.Ordinal);

    public string CurrentFolder { get; } = currentFolder;

    public MemoryFileTree Add(string path, string text) => Add(path, Encoding.UTF8.GetBytes(text));

    public MemoryFileTree Add(string path, byte[] bytes)
    {
        var full = FullPath(path);
        _files[full] = bytes;
        return AddFolder(FilePaths.FolderOf(full));
    }

    public MemoryFileTree AddFolder(string path)
    {
        foreach (var folder in FilePaths.Upwards(FullPath(path), "/"))
        {
            _folders.Add(folder);
        }

        return this;
    }

    /// <summary>A symbolic link to a file.</summary>
    public MemoryFileTree AddLink(string path, string target)
    {
        _links[FullPath(path)] = FullPath(target);
        return AddFolder(FilePaths.FolderOf(FullPath(path)));
    }

    public string FullPath(string path) =>
        FilePaths.Resolve(path.StartsWith('/') ? "/" : CurrentFolder, path) ?? "/";

    public EntryKind Kind(string path)
    {
        if (_links.TryGetValue(path, out var target))
        {
            return _files.ContainsKey(target) ? EntryKind.File : EntryKind.Other;
        }

        return _files.ContainsKey(path) ? EntryKind.File : _folders.Contains(path) ? EntryKind.Folder : EntryKind.Missing;
    }

    public string ResolveLinks(string path) => _links.GetValueOrDefault(path, path);

    public IReadOnlyList<string> Names(string folder) =>
    [
        .. _files.Keys.Concat(_links.Keys).Concat(_folders)
            .Where(p => p != folder && FilePaths.FolderOf(p) == folder)
            .Select(FilePaths.NameOf).Order(StringComparer.Ordinal),
    ];

    public FileBytes Read(string path, int sizeLimit)
    {
        if (!_files.TryGetValue(ResolveLinks(path), out var bytes))
        {
            return new FileBytes(null, null, "there is no such file");
        }

        return bytes.Length > sizeLimit ? new FileBytes(null, bytes.Length, null) : FileBytes.Of(bytes);
    }
}

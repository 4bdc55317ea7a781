using System.Text;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Files that exist only in memory: for tests, for editors and for text that comes from elsewhere.</summary>
public sealed class MemoryFileTree : IFileTree
{
    private const int MaxLinks = 40;

    private readonly Dictionary<string, byte[]> _files = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SortedSet<string>> _folders = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _links = new(StringComparer.Ordinal);

    /// <param name="currentFolder">Full path.</param>
    public MemoryFileTree(string currentFolder)
    {
        CurrentFolder = currentFolder;
        AddFolder(currentFolder);
    }

    public string CurrentFolder { get; }

    public MemoryFileTree Add(string path, string text) => Add(path, Encoding.UTF8.GetBytes(text));

    public MemoryFileTree Add(string path, byte[] bytes)
    {
        var full = FullPath(path);
        _files[full] = bytes;
        return Enter(full);
    }

    public MemoryFileTree AddFolder(string path)
    {
        Open(FullPath(path));
        return this;
    }

    /// <summary>A symbolic link to a file or folder.</summary>
    public MemoryFileTree AddLink(string path, string target)
    {
        var full = FullPath(path);
        _links[full] = target.StartsWith('/') ? FullPath(target) : FilePaths.Resolve(FilePaths.FolderOf(full), target) ?? "/";
        return Enter(full);
    }

    public string FullPath(string path)
    {
        var root = path.StartsWith('/') ? "/" : path.Length > 2 && path[1] == ':' && path[2] == '/' ? path[..3] : CurrentFolder;
        return FilePaths.Resolve(root, path.StartsWith(root, StringComparison.Ordinal) ? path[root.Length..] : path) ?? root;
    }

    public EntryKind Kind(string path)
    {
        var at = ResolveLinks(path);
        return _links.ContainsKey(at) || (_links.ContainsKey(path) && !_files.ContainsKey(at) && !IsFolder(at)) ? EntryKind.Other
            : _files.ContainsKey(at) ? EntryKind.File
            : !IsFolder(at) ? EntryKind.Missing
            : _links.ContainsKey(path) ? EntryKind.LinkedFolder
            : EntryKind.Folder;
    }

    public string ResolveLinks(string path)
    {
        var at = path;
        for (var followed = 0; _links.Count > 0 && followed < MaxLinks; followed++)
        {
            if (FilePaths.Upwards(at, "/").FirstOrDefault(_links.ContainsKey) is not { } link)
            {
                return at;
            }

            at = FilePaths.Join(_links[link], FilePaths.Below(at, link));
        }

        return at;
    }

    public bool IsLink(string path) => _links.ContainsKey(path);

    public IReadOnlyList<string> Names(string folder) => _folders.TryGetValue(ResolveLinks(folder), out var names) ? [.. names] : [];

    public FileBytes Read(string path, int sizeLimit)
    {
        if (!_files.TryGetValue(ResolveLinks(path), out var bytes))
        {
            return new FileBytes(null, null, "there is no such file");
        }

        return bytes.Length > sizeLimit ? new FileBytes(null, bytes.Length, null) : FileBytes.Of(bytes);
    }

    private bool IsFolder(string path) => _folders.ContainsKey(path);

    private MemoryFileTree Enter(string full)
    {
        Open(FilePaths.FolderOf(full)).Add(FilePaths.NameOf(full));
        return this;
    }

    /// <summary>The names in a folder, which stands there from now on with all that it stands in.</summary>
    private SortedSet<string> Open(string folder)
    {
        if (!_folders.TryGetValue(folder, out var names))
        {
            _folders.Add(folder, names = new SortedSet<string>(StringComparer.Ordinal));
            if (FilePaths.FolderOf(folder) is var above && above != folder)
            {
                Open(above).Add(FilePaths.NameOf(folder));
            }
        }

        return names;
    }
}

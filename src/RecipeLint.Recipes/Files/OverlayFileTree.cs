using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Another tree in which some files have other bytes: text from standard input or an editor in place of what is on disk.</summary>
public sealed class OverlayFileTree : IFileTree
{
    private readonly IFileTree _under;
    private readonly SortedDictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    /// <param name="under">The tree that answers for everything else.</param>
    /// <param name="path">As the user wrote it.</param>
    /// <param name="bytes">The whole file.</param>
    public OverlayFileTree(IFileTree under, string path, byte[] bytes)
        : this(under, [KeyValuePair.Create(path, bytes)])
    {
    }

    /// <param name="under">The tree that answers for everything else.</param>
    /// <param name="files">Whole files by path.</param>
    public OverlayFileTree(IFileTree under, IEnumerable<KeyValuePair<string, byte[]>> files)
    {
        _under = under;
        foreach (var (path, bytes) in files)
        {
            _files[under.FullPath(path)] = bytes;
        }
    }

    public string CurrentFolder => _under.CurrentFolder;

    public string FullPath(string path) => _under.FullPath(path);

    public EntryKind Kind(string path) => _files.ContainsKey(path) ? EntryKind.File : _under.Kind(path);

    public string ResolveLinks(string path) => _files.ContainsKey(path) ? path : _under.ResolveLinks(path);

    public IReadOnlyList<string> Names(string folder)
    {
        var names = _under.Names(folder);
        var own = _files.Keys.Where(f => FilePaths.FolderOf(f) == folder).Select(FilePaths.NameOf);
        var more = own.Except(names, StringComparer.Ordinal).ToList();
        return more.Count == 0 ? names : [.. names.Concat(more).Order(StringComparer.Ordinal)];
    }

    public bool IsLink(string path) => !_files.ContainsKey(path) && _under.IsLink(path);

    public IReadOnlyList<FolderEntry> Entries(string folder)
    {
        var entries = _under.Entries(folder);
        var own = _files.Keys.Where(f => FilePaths.FolderOf(f) == folder).Select(FilePaths.NameOf);
        var more = own.Except(entries.Select(e => e.Name), StringComparer.Ordinal)
            .Select(n => new FolderEntry(n, MayBeFolder: false))
            .ToList();
        return more.Count == 0 ? entries : [.. entries.Concat(more).OrderBy(e => e.Name, StringComparer.Ordinal)];
    }

    public FileBytes Read(string path, int sizeLimit) =>
        !_files.TryGetValue(path, out var bytes) ? _under.Read(path, sizeLimit)
        : bytes.Length > sizeLimit ? new FileBytes(null, bytes.Length, null)
        : FileBytes.Of(bytes);
}

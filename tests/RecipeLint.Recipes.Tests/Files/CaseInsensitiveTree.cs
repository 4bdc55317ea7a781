using RecipeLint.Recipes.Files;

namespace RecipeLint.Recipes.Tests.Files;

/// <summary>Files in memory on a disk that keeps the case of names and does not tell names apart by it, as on Windows and macOS.</summary>
internal sealed class CaseInsensitiveTree(string currentFolder) : IFileTree
{
    private readonly MemoryFileTree _under = new(currentFolder);
    private readonly Dictionary<string, string> _spelled = new(StringComparer.OrdinalIgnoreCase);

    public string CurrentFolder => _under.CurrentFolder;

    public CaseInsensitiveTree Add(string path, string text)
    {
        _under.Add(path, text);
        for (var at = _under.FullPath(path); at.Length > 1; at = at[..Math.Max(1, at.LastIndexOf('/'))])
        {
            _spelled.TryAdd(at, at);
        }

        return this;
    }

    public string FullPath(string path) => _under.FullPath(path);

    public EntryKind Kind(string path) => _under.Kind(Spelled(path));

    public string ResolveLinks(string path) => _under.ResolveLinks(Spelled(path));

    public IReadOnlyList<string> Names(string folder) => _under.Names(Spelled(folder));

    public FileBytes Read(string path, int sizeLimit) => _under.Read(Spelled(path), sizeLimit);

    private string Spelled(string path) => _spelled.GetValueOrDefault(path, path);
}

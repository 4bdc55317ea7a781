using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Another tree in which one file has other bytes: text from standard input or an editor in place of what is on disk.</summary>
/// <param name="under">The tree that answers for everything else.</param>
/// <param name="path">As the user wrote it.</param>
/// <param name="bytes">The whole file.</param>
public sealed class OverlayFileTree(IFileTree under, string path, byte[] bytes) : IFileTree
{
    private readonly string _path = under.FullPath(path);

    public string CurrentFolder => under.CurrentFolder;

    public string FullPath(string path) => under.FullPath(path);

    public EntryKind Kind(string path) => path == _path ? EntryKind.File : under.Kind(path);

    public string ResolveLinks(string path) => path == _path ? path : under.ResolveLinks(path);

    public IReadOnlyList<string> Names(string folder)
    {
        var names = under.Names(folder);
        return FilePaths.FolderOf(_path) != folder || names.Contains(FilePaths.NameOf(_path))
            ? names
            : [.. names.Append(FilePaths.NameOf(_path)).Order(StringComparer.Ordinal)];
    }

    public FileBytes Read(string path, int sizeLimit) =>
        path != _path ? under.Read(path, sizeLimit)
        : bytes.Length > sizeLimit ? new FileBytes(null, bytes.Length, null)
        : FileBytes.Of(bytes);
}

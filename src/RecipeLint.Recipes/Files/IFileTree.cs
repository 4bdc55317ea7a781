namespace RecipeLint.Recipes.Files;

public enum EntryKind
{
    Missing,

    /// <summary>A regular file, also behind a symbolic link.</summary>
    File,

    Folder,

    /// <summary>A folder behind a link; where it leads says ResolveLinks.</summary>
    LinkedFolder,

    /// <summary>Devices, pipes, links that lead nowhere or in circles.</summary>
    Other,
}

/// <summary>
/// The one way to files. Paths are full, with forward slashes and without "." and ".." ("/shop/a.stock.json", "C:/shop").
/// Nothing here throws for what stands on the disk.
/// </summary>
public interface IFileTree
{
    /// <summary>The folder that relative paths of the user start from.</summary>
    string CurrentFolder { get; }

    /// <summary>Turns a path as the user wrote it into a full one.</summary>
    string FullPath(string path);

    EntryKind Kind(string path);

    /// <summary>Where the path ends after every symbolic link on the way; the path itself where it cannot be told.</summary>
    string ResolveLinks(string path);

    /// <summary>True when the last part of the path is itself a symbolic link.</summary>
    bool IsLink(string path) => ResolveLinks(path) != path;

    /// <summary>Names in a folder in ordinal order; empty where it cannot be listed.</summary>
    IReadOnlyList<string> Names(string folder);

    /// <summary>The same with what listing the folder tells of each for nothing.</summary>
    IReadOnlyList<FolderEntry> Entries(string folder) => [.. Names(folder).Select(n => new FolderEntry(n, MayBeFolder: true))];

    /// <summary>Reads a file of at most that many bytes.</summary>
    FileBytes Read(string path, int sizeLimit);
}

/// <summary>A name in a folder.</summary>
/// <param name="MayBeFolder">False when it certainly is none; true says that <see cref="IFileTree.Kind"/> has to be asked.</param>
public sealed record FolderEntry(string Name, bool MayBeFolder);

/// <summary>What reading a file gave: exactly one of bytes, the size of a file that is too large, or the reason why not.</summary>
public readonly record struct FileBytes(byte[]? Bytes, long? TooLarge, string? Failure)
{
    public static FileBytes Of(byte[] bytes) => new(bytes, null, null);
}

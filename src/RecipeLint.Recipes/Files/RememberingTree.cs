using System.Collections.Concurrent;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Another tree, asked for each thing once: what a path is, where its links lead, what a folder holds. It lives as long as one run, so that
/// a file is judged by one state of the disk. The bytes of files are kept too, up to a bound, until their piece was read: to find out what
/// belongs together every file is read once before. For several threads at once.
/// </summary>
internal sealed class RememberingTree(IFileTree under) : IFileTree
{
    /// <summary>Bytes of files that are kept at most.</summary>
    private const long MostBytes = 32 << 20;

    private readonly ConcurrentDictionary<string, byte[]> _bytes = new(StringComparer.Ordinal);
    private long _kept;
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

    public FileBytes Read(string path, int sizeLimit)
    {
        if (_bytes.TryGetValue(path, out var known) && known.Length <= sizeLimit)
        {
            return FileBytes.Of(known);
        }

        var read = under.Read(path, sizeLimit);
        if (read.Bytes is { } bytes && Volatile.Read(ref _kept) + bytes.Length <= MostBytes && _bytes.TryAdd(path, bytes))
        {
            Interlocked.Add(ref _kept, bytes.Length);
        }

        return read;
    }

    /// <summary>Lets go of the bytes of files, which nobody reads again.</summary>
    public void Forget(IEnumerable<string> paths)
    {
        foreach (var path in paths)
        {
            if (_bytes.TryRemove(path, out var bytes))
            {
                Interlocked.Add(ref _kept, -bytes.Length);
            }
        }
    }

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

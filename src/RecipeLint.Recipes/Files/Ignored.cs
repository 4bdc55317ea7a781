using System.Collections.Concurrent;
using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// What a walk through folders leaves out: the patterns of every .gitignore and of "ignore" in every recipelint.json from the root down to
/// the folder, the deeper ones last and so stronger. What somebody names is never asked here. For several threads at once.
/// </summary>
/// <param name="files">Where the lists are read from.</param>
/// <param name="root">Full path; lists above it do not count.</param>
internal sealed class Ignored(IFileTree files, string root)
{
    private const string GitList = ".gitignore";

    private readonly ConcurrentDictionary<string, IgnoreList?> _lists = new(StringComparer.Ordinal);

    /// <summary>Whether a folder that a user named is itself ignored; then nothing in it is, since it was asked for.</summary>
    public bool Covers(string folder) =>
        FilePaths.Upwards(folder, root).Any(at => at != root && IsIgnored(at, isFolder: true));

    /// <summary>Whether a list says of this very path that it is ignored; the folders above it are asked for themselves.</summary>
    /// <param name="path">Full path, below the root.</param>
    public bool IsIgnored(string path, bool isFolder)
    {
        for (var list = ListFor(FilePaths.FolderOf(path)); list is not null; list = list.Above)
        {
            var names = FilePaths.Below(path, list.Folder).Split('/');
            for (var i = list.Patterns.Count - 1; i >= 0; i--)
            {
                var pattern = list.Patterns[i];
                if ((isFolder || !pattern.FoldersOnly) && pattern.Matches(names))
                {
                    return !pattern.TakesBack;
                }
            }
        }

        return false;
    }

    /// <summary>The nearest list that holds for what stands in a folder; null where none does.</summary>
    private IgnoreList? ListFor(string folder)
    {
        if (_lists.TryGetValue(folder, out var known))
        {
            return known;
        }

        var above = folder == root || !FilePaths.IsWithin(folder, root) ? null : ListFor(FilePaths.FolderOf(folder));
        List<IgnorePattern> patterns = [.. OfGit(folder), .. OfSettings(folder)];
        return _lists[folder] = patterns.Count == 0 ? above : new IgnoreList(folder, patterns, above);
    }

    private IEnumerable<IgnorePattern> OfGit(string folder)
    {
        var path = FilePaths.Join(folder, GitList);
        return files.Kind(path) == EntryKind.File && files.Read(path, JsonReading.DefaultSizeLimit).Bytes is { } bytes
            ? Encoding.UTF8.GetString(bytes).Split('\n').Select(IgnorePattern.Parse).OfType<IgnorePattern>()
            : [];
    }

    private IEnumerable<IgnorePattern> OfSettings(string folder)
    {
        var path = FilePaths.Join(folder, DocumentKinds.SettingsFileName);
        if (files.Kind(path) != EntryKind.File || files.Read(path, JsonReading.DefaultSizeLimit).Bytes is not { } bytes
            || bytes.AsSpan().IndexOf("\"ignore\""u8) < 0)
        {
            return [];
        }

        // What is wrong with the file is said when it is read as a document.
        var list = JsonReading.Read(path, bytes).Source.Tree?.Root["ignore"];
        return list is { Kind: JsonKind.Array }
            ? list.Items.Where(i => i.Kind == JsonKind.Text).Select(i => IgnorePattern.Parse(i.Text)).OfType<IgnorePattern>()
            : [];
    }

    private sealed record IgnoreList(string Folder, IReadOnlyList<IgnorePattern> Patterns, IgnoreList? Above);
}

using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// The one folder that everything is read and named from. It follows from the files alone, never from the folder a command is run in.
/// </summary>
internal static class RepositoryRoot
{
    private static readonly string[] _repositoryMarks = [".git", ".hg", ".svn"];

    /// <summary>
    /// The nearest folder upwards that is a repository; without one the outermost that holds a recipelint.json, so that a shop inside a
    /// shop may
    /// draw on it; without either the deepest folder that holds what was asked for and all it refers to.
    /// </summary>
    /// <param name="folder">The folder asked about, or that of the file.</param>
    /// <param name="asked">The files asked about in it.</param>
    /// <param name="threads">Files that may be looked into at once; the answer does not hang on it.</param>
    public static string Of(IFileTree files, string folder, IReadOnlyCollection<string> asked, int threads = 1)
    {
        string? shop = null;
        for (var at = folder; ; at = FilePaths.FolderOf(at))
        {
            if (_repositoryMarks.Any(m => files.Kind(FilePaths.Join(at, m)) != EntryKind.Missing))
            {
                return at;
            }

            if (files.Kind(FilePaths.Join(at, DocumentKinds.SettingsFileName)) == EntryKind.File)
            {
                shop = at;
            }

            if (at == FilePaths.FolderOf(at))
            {
                return shop ?? Holding(files, folder, asked, threads);
            }
        }
    }

    /// <summary>One root for all: the deepest folder that holds every one.</summary>
    public static string Common(IReadOnlyList<string> roots, string otherwise)
    {
        var common = roots.Count > 0 ? roots[0] : otherwise;
        foreach (var root in roots.Skip(1))
        {
            common = FilePaths.CommonFolder(common, root) ?? common;
        }

        return common;
    }

    /// <summary>Nothing marks where the shop ends, so it reaches as far as its own files say.</summary>
    private static string Holding(IFileTree files, string folder, IReadOnlyCollection<string> asked, int threads)
    {
        var root = folder;
        var seen = new HashSet<string>(asked, StringComparer.Ordinal);
        IReadOnlyList<string> open = [.. asked];
        while (open.Count > 0)
        {
            var named = SeveralAtOnce.Of(open, threads, file => NamedBy(files, file));
            open = [.. named.SelectMany(n => n).Where(full => files.Kind(full) == EntryKind.File && seen.Add(full))];
            root = open.Aggregate(root, (at, full) => FilePaths.CommonFolder(at, full) ?? at);
        }

        return root;
    }

    /// <summary>Full paths of what a file refers to.</summary>
    private static List<string> NamedBy(IFileTree files, string file)
    {
        var text = Encoding.UTF8.GetString(files.Read(file, JsonReading.DefaultSizeLimit).Bytes ?? []);
        return [.. References(text).Select(r => FilePaths.Resolve(FilePaths.FolderOf(file), r)).OfType<string>()];
    }

    /// <summary>
    /// What stands in quotes, has neither backslash nor colon and ends like a stock, a water or a profile. Asked of every file of a shop
    /// that nothing marks, and of one file before anything else is read: a regular expression that cannot be slow took longer to be put
    /// together than all the rest of the reading.
    /// </summary>
    internal static IEnumerable<string> References(string text)
    {
        const string end = ".json\"";
        var from = 0;
        for (var at = text.IndexOf(end, StringComparison.Ordinal); at >= 0;
            at = text.IndexOf(end, at + end.Length, StringComparison.Ordinal))
        {
            var close = at + end.Length - 1;
            var open = close > from ? text.LastIndexOfAny(_stops, close - 1, close - from) : -1;
            if (open >= 0 && text[open] == '"' && Array.Exists(_kinds, k => at - open - 1 > k.Length
                && string.CompareOrdinal(text, at - k.Length, k, 0, k.Length) == 0))
            {
                yield return text[(open + 1)..close];
                from = close + 1;
            }
        }
    }

    private static readonly char[] _stops = ['"', '\\', ':'];

    private static readonly string[] _kinds = [".stock", ".water", ".profile"];
}

using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// The one folder that everything is read and named from. It follows from the files alone, never from the folder a command is run in.
/// </summary>
internal static partial class RepositoryRoot
{
    private static readonly string[] _repositoryMarks = [".git", ".hg", ".svn"];

    /// <summary>
    /// The nearest folder upwards that is a repository; without one the outermost that holds a recipelint.json, so that a shop inside a
    /// shop may
    /// draw on it; without either the deepest folder that holds what was asked for and all it refers to.
    /// </summary>
    /// <param name="folder">The folder asked about, or that of the file.</param>
    /// <param name="asked">The files asked about in it.</param>
    public static string Of(IFileTree files, string folder, IReadOnlyCollection<string> asked)
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
                return shop ?? Holding(files, folder, asked);
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
    private static string Holding(IFileTree files, string folder, IReadOnlyCollection<string> asked)
    {
        var root = folder;
        var seen = new HashSet<string>(asked, StringComparer.Ordinal);
        var open = new Queue<string>(asked);
        while (open.TryDequeue(out var file))
        {
            var text = Encoding.UTF8.GetString(files.Read(file, JsonReading.DefaultSizeLimit).Bytes ?? []);
            foreach (Match reference in Reference().Matches(text))
            {
                if (FilePaths.Resolve(FilePaths.FolderOf(file), reference.Groups[1].Value) is { } full
                    && files.Kind(full) == EntryKind.File && seen.Add(full))
                {
                    root = FilePaths.CommonFolder(root, full) ?? root;
                    open.Enqueue(full);
                }
            }
        }

        return root;
    }

    [GeneratedRegex("\"([^\"\\\\:]+\\.(?:stock|water|profile)\\.json)\"", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Reference();
}

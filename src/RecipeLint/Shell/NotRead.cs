using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Shell;

/// <summary>Files that hold something of ours and were passed over because of their names.</summary>
internal static class NotRead
{
    private const int Named = 3;

    /// <summary>One line on them; null where there are none.</summary>
    /// <param name="notOurs">Full paths of JSON files whose names are none of ours.</param>
    /// <param name="root">Full path of what files are named from.</param>
    public static string? Line(IFileTree files, IReadOnlyList<string> notOurs, string root)
    {
        var strays = StrayFile.Among(files, notOurs);
        if (strays.Count == 0)
        {
            return null;
        }

        var told = strays.Take(Named).Select(s => $"'{Shown(s.Path, root)}' holds {Word(s.Kind)}, call it '{s.Name}'");
        var more = strays.Count > Named ? FormattableString.Invariant(
            $"; and {(notOurs.Count < StrayFile.MostLookedInto ? "" : "at least ")}{strays.Count - Named} more") : "";
        return $"not read, for their names do not say what they are: {string.Join("; ", told)}{more}.";
    }

    private static string Shown(string path, string root) =>
        path.StartsWith(root.TrimEnd('/') + "/", StringComparison.Ordinal) ? path[(root.TrimEnd('/').Length + 1)..] : path;

    private static string Word(DocumentKind kind) => kind switch
    {
        DocumentKind.Stock => "a stock",
        DocumentKind.Recipe => "a recipe",
        DocumentKind.Batch => "the record of a batch",
        DocumentKind.Water => "a water",
        _ => "substances",
    };
}

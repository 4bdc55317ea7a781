using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Finds files in folders, in a fixed order and without following links to folders.</summary>
internal static class FolderWalk
{
    private static readonly HashSet<string> Skipped = new(StringComparer.Ordinal) { "bin", "obj", "node_modules" };

    /// <summary>Build output, package folders and everything that starts with a dot are none of ours.</summary>
    public static bool IsSkipped(string name) => name.StartsWith('.') || Skipped.Contains(name);

    /// <summary>Every file below a folder. A folder for which <paramref name="enter"/> is false is left out.</summary>
    public static IEnumerable<string> Files(IFileTree files, string folder, Func<string, bool>? enter = null)
    {
        var pending = new Stack<string>([folder]);
        while (pending.TryPop(out var at))
        {
            var below = new List<string>();
            foreach (var name in files.Names(at))
            {
                var path = FilePaths.Join(at, name);
                switch (files.Kind(path))
                {
                    case EntryKind.File:
                        yield return path;
                        break;
                    case EntryKind.Folder when !IsSkipped(name) && (enter is null || enter(path)):
                        below.Add(path);
                        break;
                }
            }

            for (var i = below.Count - 1; i >= 0; i--)
            {
                pending.Push(below[i]);
            }
        }
    }
}

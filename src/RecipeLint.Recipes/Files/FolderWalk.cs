using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Finds files in folders, in a fixed order. A link to a folder is followed only where it leads to a place below the folder's repository
/// that is not walked anyway; its files then go by their own path, so that none is met twice.
/// </summary>
internal static class FolderWalk
{
    private static readonly HashSet<string> Skipped = new(StringComparer.Ordinal) { "bin", "obj", "node_modules" };

    /// <summary>A walk through more folders is given up: no repository of recipes has so many, a disk or a home folder has.</summary>
    public const int MostFolders = 100_000;

    /// <summary>Build output, package folders and everything that starts with a dot are none of ours.</summary>
    public static bool IsSkipped(string name) => name.StartsWith('.') || Skipped.Contains(name);

    /// <summary>
    /// Every regular file below a folder whose name is wanted. A folder for which <paramref name="enter"/> is false is left out.
    /// </summary>
    /// <param name="within">Where links to folders may lead; null follows none.</param>
    /// <param name="ignored">What is left out; null leaves out nothing more.</param>
    /// <param name="tooMany">Told when there are more folders than <see cref="MostFolders"/>; what was found until then stands.</param>
    public static IEnumerable<string> Files(
        IFileTree files, string folder, Func<string, bool> isWanted, Func<string, bool>? enter = null, string? within = null,
        Ignored? ignored = null, Action? tooMany = null)
    {
        var pending = new Stack<string>([folder]);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (pending.TryPop(out var at))
        {
            if (!seen.Add(at))
            {
                continue;
            }

            if (seen.Count > MostFolders)
            {
                tooMany?.Invoke();
                yield break;
            }

            var below = new List<string>();
            foreach (var (name, mayBeFolder) in files.Entries(at))
            {
                // The disk is asked about nothing that cannot matter.
                var wanted = isWanted(name);
                if (!wanted && (!mayBeFolder || IsSkipped(name)))
                {
                    continue;
                }

                var path = FilePaths.Join(at, name);
                switch (files.Kind(path))
                {
                    case EntryKind.File when wanted && ignored?.IsIgnored(path, isFolder: false) != true:
                        yield return path;
                        break;
                    case EntryKind.Folder when !IsSkipped(name)
                        && (enter is null || enter(path))
                        && ignored?.IsIgnored(path, isFolder: true) != true:
                        below.Add(path);
                        break;
                    case EntryKind.LinkedFolder when within is not null && !IsSkipped(name) && Target(files, path, within) is { } target
                        && !FilePaths.IsWithin(target, folder) && !FilePaths.IsWithin(folder, target) && (enter is null || enter(target)):
                        below.Add(target);
                        break;
                }
            }

            for (var i = below.Count - 1; i >= 0; i--)
            {
                pending.Push(below[i]);
            }
        }
    }

    /// <summary>Where a linked folder stands below a root, spelled as the root is; null where it leads out of it.</summary>
    public static string? Target(IFileTree files, string link, string root)
    {
        var (target, realRoot) = (files.ResolveLinks(link), files.ResolveLinks(root));
        return FilePaths.IsWithin(target, realRoot) ? FilePaths.Join(root, FilePaths.Below(target, realRoot)) : null;
    }
}

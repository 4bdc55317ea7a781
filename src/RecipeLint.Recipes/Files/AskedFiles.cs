using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>What the paths on a command line stand for.</summary>
/// <param name="Files">Full paths of files of ours, in order.</param>
/// <param name="Named">Those of them that were asked for by name, with the path as written; the others were found in a folder.</param>
/// <param name="Roots">The root of each usable path.</param>
internal sealed record AskedFiles(
    IReadOnlyList<string> Files,
    IReadOnlyDictionary<string, string> Named,
    IReadOnlyList<string> Roots,
    IReadOnlyList<UnusablePath> Unusable,
    IReadOnlyList<string> Unrecognised)
{
    public static AskedFiles Find(IFileTree files, IReadOnlyList<string> paths)
    {
        var found = new SortedSet<string>(StringComparer.Ordinal);
        var named = new Dictionary<string, string>(StringComparer.Ordinal);
        var roots = new List<string>();
        var unusable = new List<UnusablePath>();
        var unrecognised = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            if (string.IsNullOrWhiteSpace(path))
            {
                unusable.Add(new UnusablePath(path, "is an empty name"));
                continue;
            }

            var full = files.FullPath(path);
            switch (files.Kind(full))
            {
                case EntryKind.File:
                    roots.Add(RepositoryRoot.Of(files, FilePaths.FolderOf(full), [full]));
                    named[full] = path;
                    (IsOurs(full) ? found : unrecognised).Add(full);
                    break;
                case EntryKind.LinkedFolder when FolderWalk.Target(
                    files, full, RepositoryRoot.Of(files, FilePaths.FolderOf(full), [])) is null:
                    unusable.Add(new UnusablePath(path, "is a link that leads out of the repository"));
                    break;
                case EntryKind.Folder or EntryKind.LinkedFolder:
                    full = files.Kind(full) == EntryKind.Folder
                        ? full
                        : FolderWalk.Target(files, full, RepositoryRoot.Of(files, FilePaths.FolderOf(full), []))!;
                    var top = RepositoryRoot.Of(files, full, []);
                    var ignored = new Ignored(files, top);
                    var below = FolderWalk.Files(files, full, IsOurs, within: top, ignored: ignored.Covers(full) ? null : ignored)
                        .ToArray();
                    roots.Add(RepositoryRoot.Of(files, full, below));
                    found.UnionWith(below);
                    break;
                case EntryKind.Missing when Glob.IsPattern(path):
                    var matches = Glob.Expand(files, full).Where(IsOurs).ToArray();
                    var each = matches.Select(m => RepositoryRoot.Of(files, FilePaths.FolderOf(m), [m]));
                    roots.AddRange(each.Distinct(StringComparer.Ordinal));
                    found.UnionWith(matches);
                    if (matches.Length == 0)
                    {
                        unusable.Add(new UnusablePath(path, "matches no file"));
                    }

                    break;
                case EntryKind.Missing:
                    unusable.Add(new UnusablePath(path, "does not exist" + Near(files, full)));
                    break;
                default:
                    unusable.Add(new UnusablePath(path, "is neither a regular file nor a folder"));
                    break;
            }
        }

        return new AskedFiles([.. found], named, roots, unusable, [.. unrecognised]);
    }

    /// <summary>", but 'x' stands there", where a name in the folder is like the one written.</summary>
    private static string Near(IFileTree files, string full)
    {
        var folder = FilePaths.FolderOf(full);
        var near = Spelling.Nearest(
            FilePaths.NameOf(full), files.Names(folder).Where(n => IsOurs(n) || files.Kind(FilePaths.Join(folder, n)) == EntryKind.Folder));
        return near.Count == 0 ? "" : $"; its folder has {Wording.Join([.. near.Select(n => $"'{n}'")], "and")}";
    }

    private static bool IsOurs(string path) => DocumentKinds.FromFileName(path) is not null;
}

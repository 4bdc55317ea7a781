using System.Globalization;
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
    /// <summary>Full paths of the first JSON files met in folders whose names are none of ours, in order.</summary>
    public IReadOnlyList<string> NotOurs { get; init; } = [];

    private static readonly string TooMuch = string.Create(
        CultureInfo.InvariantCulture, $"holds more than {FolderWalk.MostFolders:N0} folders; name the one of your recipes");

    /// <param name="only">Full paths: what else is found is left out; null leaves out nothing.</param>
    /// <param name="threads">Files that may be looked into at once.</param>
    public static AskedFiles Find(IFileTree files, IReadOnlyList<string> paths, IReadOnlySet<string>? only, int threads = 1)
    {
        var found = Find(files, paths, threads);
        return only is null ? found : found with
        {
            Files = [.. found.Files.Where(only.Contains)],
            NotOurs = [],
            Named = found.Named.Where(n => only.Contains(n.Key)).ToDictionary(StringComparer.Ordinal),
        };
    }

    private static AskedFiles Find(IFileTree files, IReadOnlyList<string> paths, int threads)
    {
        var search = new Search(files, threads);
        foreach (var path in paths)
        {
            search.Take(path);
        }

        return search.Found();
    }

    /// <summary>"; its folder has 'x'", where a name in the folder is like the one written, or the same stands a folder below.</summary>
    private static string Near(IFileTree files, string path, string full)
    {
        if (path.Contains('\\', StringComparison.Ordinal) && files.Kind(files.FullPath(path.Replace('\\', '/'))) != EntryKind.Missing)
        {
            return $"; write '{path.Replace('\\', '/')}'";
        }

        var folder = FilePaths.FolderOf(full);
        var name = FilePaths.NameOf(full);
        var below = files.Names(folder).Where(n => files.Kind(FilePaths.Join(folder, n)) == EntryKind.Folder).ToList();
        bool Has(string n) => !FolderWalk.IsSkipped(n) && files.Kind(FilePaths.Join(FilePaths.Join(folder, n), name)) == EntryKind.File;
        if (below.Find(Has) is { } there)
        {
            return $"; there is '{there}/{name}'";
        }

        var near = Spelling.Nearest(name, files.Names(folder).Where(IsOurs).Concat(below));
        return near.Count == 0 ? "" : $"; its folder has {Wording.Join([.. near.Select(n => $"'{n}'")], "and")}";
    }

    /// <summary>The top of a file system, unless somebody keeps a repository or shop right there.</summary>
    private static bool IsWholeDisk(IFileTree files, string full) =>
        FilePaths.FolderOf(full) == full
        && files.Kind(FilePaths.Join(full, ".git")) == EntryKind.Missing
        && files.Kind(FilePaths.Join(full, DocumentKinds.SettingsFileName)) == EntryKind.Missing;

    private static bool IsOurs(string path) => DocumentKinds.FromFileName(path) is not null;

    /// <summary>Gathers what each path of the command line leads to.</summary>
    private sealed class Search(IFileTree files, int threads)
    {
        private readonly SortedSet<string> _found = new(StringComparer.Ordinal);
        private readonly Dictionary<string, string> _named = new(StringComparer.Ordinal);
        private readonly List<string> _roots = [];
        private readonly List<UnusablePath> _unusable = [];
        private readonly SortedSet<string> _unrecognised = new(StringComparer.Ordinal);
        private readonly SortedSet<string> _notOurs = new(StringComparer.Ordinal);

        public AskedFiles Found() => new([.. _found], _named, _roots, _unusable, [.. _unrecognised])
        {
            NotOurs = [.. _notOurs],
        };

        public void Take(string path)
        {
            if (string.IsNullOrWhiteSpace(path))
            {
                Refuse(path, "is an empty name");
                return;
            }

            var full = files.FullPath(path);
            switch (files.Kind(full))
            {
                case EntryKind.File:
                    File(path, full);
                    break;
                case EntryKind.Folder:
                    Folder(path, full);
                    break;
                case EntryKind.LinkedFolder:
                    LinkedFolder(path, full);
                    break;
                case EntryKind.Missing when Glob.IsPattern(path):
                    Pattern(path, full);
                    break;
                case EntryKind.Missing:
                    Refuse(path, "does not exist" + Near(files, path, full));
                    break;
                default:
                    Refuse(path, "is neither a regular file nor a folder");
                    break;
            }
        }

        private void Refuse(string path, string why) => _unusable.Add(new UnusablePath(path, why));

        private void File(string path, string full)
        {
            _roots.Add(RepositoryRoot.Of(files, FilePaths.FolderOf(full), [full]));
            _named[full] = path;
            (IsOurs(full) ? _found : _unrecognised).Add(full);
        }

        private void LinkedFolder(string path, string full)
        {
            if (FolderWalk.Target(files, full, RepositoryRoot.Of(files, FilePaths.FolderOf(full), [])) is { } target)
            {
                Folder(path, target);
            }
            else
            {
                Refuse(path, "is a link that leads out of the repository");
            }
        }

        private void Folder(string path, string full)
        {
            if (IsWholeDisk(files, full))
            {
                Refuse(path, "is a whole disk; name the folder of your recipes");
                return;
            }

            var top = RepositoryRoot.Of(files, full, []);
            var ignored = new Ignored(files, top);
            var isTooMuch = false;
            var below = new List<string>();
            foreach (var found in FolderWalk.Files(
                files, full, IsWanted, within: top, ignored: ignored.Covers(full) ? null : ignored, tooMany: () => isTooMuch = true))
            {
                if (IsOurs(found))
                {
                    below.Add(found);
                }
                else
                {
                    _notOurs.Add(found);
                }
            }

            if (isTooMuch)
            {
                Refuse(path, TooMuch);
                return;
            }

            _roots.Add(RepositoryRoot.Of(files, full, below, threads));
            _found.UnionWith(below);
        }

        private bool IsWanted(string name) =>
            IsOurs(name) || (_notOurs.Count < StrayFile.MostLookedInto && StrayFile.MayBe(name));

        private void Pattern(string path, string full)
        {
            var matches = Glob.Expand(files, full).Where(IsOurs).ToArray();
            var each = matches.Select(m => RepositoryRoot.Of(files, FilePaths.FolderOf(m), [m]));
            _roots.AddRange(each.Distinct(StringComparer.Ordinal));
            _found.UnionWith(matches);
            if (matches.Length == 0)
            {
                Refuse(path, "matches no file");
            }
        }
    }
}

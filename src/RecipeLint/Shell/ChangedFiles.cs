using System.Collections.Concurrent;
using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Shell;

/// <summary>
/// Which of the files asked about a change reaches: those that differ from a revision or are staged, and everything that draws on them. The
/// findings of a file that draws on a changed one name it.
/// </summary>
internal sealed class ChangedFiles
{
    /// <summary>Changed files that one finding names.</summary>
    private const int MostNamed = 3;

    private readonly GitRepository _git;
    private readonly Input _input;
    private readonly DependencyIndex _index;
    private readonly HashSet<string> _changed;
    private readonly string? _base;
    private readonly string _when;
    private readonly Lazy<IFileTree> _before;

    private ChangedFiles(GitRepository git, Input input, string? revision, string when, IReadOnlySet<string> changed, int threads)
    {
        (_git, _base, _when) = (git, revision, when);
        _before = new(() => revision is null
            ? new MemoryFileTree(input.Files.CurrentFolder).AddFolder($"{git.Top}/.git")
            : git.FilesOf(revision, input.Files.ResolveLinks(input.Files.CurrentFolder)));
        var read = new ConcurrentBag<RunInBrief>();
        _index = DependencyIndex.Of(input.Files, input.Asked, input.Load, threads, w => read.Add(RunInBrief.Of(w)));
        Around = RunInBrief.Together(read);
        _changed = _index.Known.Where(f => Names(input.Files, f).Any(changed.Contains)).ToHashSet(StringComparer.Ordinal);
        Reached = _index.WithUsersOf(_changed.Concat(LeftBehind(input, changed, threads)))
            .Where(_index.Asked.Contains).ToHashSet(StringComparer.Ordinal);
        _input = input with { Load = input.Load with { Only = Reached } };
    }

    /// <summary>Full paths of the files asked about that the change reaches.</summary>
    public IReadOnlySet<string> Reached { get; }

    /// <summary>What all files asked about are like, for rules that compare files with each other.</summary>
    public RunInBrief Around { get; }

    /// <summary>The run over them.</summary>
    /// <param name="mends">Files are to change: they are then named, so that trying out a repair may read what else it touches.</param>
    public Input Input(bool mends) => mends && Reached.Count > 0
        ? _input with { Asked = [.. Reached.Order(StringComparer.Ordinal)], Load = _input.Load with { Only = null } }
        : _input;

    /// <summary>What has changed, for people: "since 'main'".</summary>
    public string When => _when;

    /// <param name="since">A revision; null for what is staged.</param>
    /// <exception cref="UsageException">Git or the revision is missing.</exception>
    public static ChangedFiles Of(Input input, string? since, int threads)
    {
        if (input.FromStandardInput is not null)
        {
            throw new UsageException("'--since' and '--staged' ask git for the files, so '-' does not go with them.");
        }

        var git = GitRepository.Around(FolderOf(input));
        if (since is not null)
        {
            var origin = git.BaseOf(since);
            return new ChangedFiles(
                git, input, origin, $"since '{since}'", git.ChangedSince(origin).ToHashSet(StringComparer.Ordinal), threads);
        }

        var files = input.Files;
        var staged = git.StagedFiles(files.ResolveLinks(files.CurrentFolder));
        IReadOnlyList<string> asked = [.. input.Asked.Select(a => Path.IsPathRooted(a) ? files.ResolveLinks(files.FullPath(a)) : a)];
        return new ChangedFiles(
            git, input with { Files = staged, Asked = asked }, git.Newest(), "in what is staged",
            git.Staged().ToHashSet(StringComparer.Ordinal), threads);
    }

    /// <summary>
    /// The findings that concern what the change reaches; those of a file that only draws on what has changed, and that are new or worse,
    /// name the changed place.
    /// </summary>
    /// <param name="root">Full path of the root of the run.</param>
    /// <param name="sources">Of the run; those of the changed places are added.</param>
    public LintResult Told(
        LintResult result, string root, EngineOptions engine, ref IReadOnlyDictionary<string, SourceFile> sources)
    {
        string Full(string file) => Path.IsPathRooted(file) ? file : $"{root.TrimEnd('/')}/{file}";
        bool Concerns(Finding f) => Reached.Contains(Full(f.Place.File)) || f.Related.Any(r => Reached.Contains(Full(r.Place.File)));
        var left = result with
        {
            Findings = [.. result.Findings.Where(Concerns)],
            Suppressed = [.. result.Suppressed.Where(s => Concerns(s.Finding))],
        };
        var drawing = left.Findings.Where(f => Reached.Contains(Full(f.Place.File)) && !_changed.Contains(Full(f.Place.File))).ToHashSet();
        var before = drawing.Count == 0 ? [] : FindingsBefore(drawing.Select(f => Full(f.Place.File)), engine);
        var told = left.Findings.Select(f => !drawing.Contains(f) || Label(f, before) is not { } label ? f : f with
        {
            Related = [.. f.Related, .. Causes(Full(f.Place.File), root).Select(p => new RelatedPlace(p, label))],
        });
        left = left with { Findings = [.. told] };
        var known = new SortedDictionary<string, SourceFile>(sources.ToDictionary(), StringComparer.Ordinal);
        foreach (var file in left.Findings.SelectMany(f => f.Related.Select(r => r.Place.File).Append(f.Place.File)))
        {
            if (!known.ContainsKey(file) && _input.Files.Read(Full(file), JsonReading.DefaultSizeLimit).Bytes is { } bytes)
            {
                known[file] = JsonReading.Read(file, bytes).Source;
            }
        }

        sources = known;
        return left;
    }

    /// <summary>Files of which something else was drawn on before: what they drew on is gone.</summary>
    private IEnumerable<string> LeftBehind(Input input, IReadOnlySet<string> changed, int threads)
    {
        var gone = changed.Where(p => DocumentKinds.FromFileName(p) is not null && input.Files.Kind(p) == EntryKind.Missing).ToList();
        if (gone.Count == 0)
        {
            return [];
        }

        var users = DependencyIndex.Of(_before.Value, [_git.Top], input.Load with { Only = null }, threads).WithUsersOf(gone);
        return _index.Known.Where(f => Names(input.Files, f).Any(users.Contains));
    }

    private Dictionary<(string, string, string), Finding> FindingsBefore(IEnumerable<string> files, EngineOptions engine)
    {
        var real = files.Select(_input.Files.ResolveLinks).ToHashSet(StringComparer.Ordinal);
        var judged = Judged.Of(_before.Value, [_git.Top], _input.Load with { Only = real }, engine with { Around = null });
        return judged.Result.Findings.Concat(judged.Result.Suppressed.Select(s => s.Finding))
            .GroupBy(f => (f.Rule.Id, f.Place.File, f.IdPath))
            .ToDictionary(g => g.Key, g => g.First());
    }

    /// <summary>What to say of a finding that was not there before or has got worse; null for one that was there all the same.</summary>
    private string? Label(Finding now, Dictionary<(string, string, string), Finding> before)
    {
        if (!before.TryGetValue((now.Rule.Id, now.Place.File, now.IdPath), out var old))
        {
            return $"changed {_when}; before, this was not found";
        }

        return now.Measured is { } measured && old.Measured is { } was && measured.IsWorseThan(was.Value)
            ? string.Create(CultureInfo.InvariantCulture, $"changed {_when}; before, it was {was.Value:G4} {was.Unit}").TrimEnd()
            : null;
    }

    /// <summary>The first changed place of each changed file that a file draws on, stocks first.</summary>
    private IEnumerable<Place> Causes(string file, string root)
    {
        foreach (var full in _index.DrawnOnBy(file).Where(_changed.Contains)
            .OrderBy(f => DocumentKinds.FromFileName(f)).ThenBy(f => f, StringComparer.Ordinal).Take(MostNamed))
        {
            var path = full.StartsWith(root.TrimEnd('/') + "/", StringComparison.Ordinal) ? full[(root.TrimEnd('/').Length + 1)..] : full;
            var place = Tree(_input.Files, full) is { } tree
                ? JsonDifference.First(Tree(_before.Value, _input.Files.ResolveLinks(full))?.Root, tree.Root).Pointer
                : JsonPointer.Root;
            yield return new Place(path, place);
        }
    }

    private static JsonTree? Tree(IFileTree files, string full) =>
        files.Read(full, JsonReading.DefaultSizeLimit).Bytes is { } bytes ? JsonReading.Read(full, bytes).Source.Tree : null;

    /// <summary>A path as git would name it: where its links end, and the last link itself.</summary>
    private static IEnumerable<string> Names(IFileTree files, string path)
    {
        var slash = path.LastIndexOf('/');
        return [files.ResolveLinks(path), slash < 0 ? path : files.ResolveLinks(path[..slash]).TrimEnd('/') + path[slash..]];
    }

    /// <summary>The folder that the first path stands in, or the nearest above it that is there.</summary>
    private static string FolderOf(Input input)
    {
        var at = input.Files.FullPath(input.Asked[0]);
        while (input.Files.Kind(at) is not (EntryKind.Folder or EntryKind.LinkedFolder) && at.LastIndexOf('/') is > 0 and var slash)
        {
            at = at[..slash];
        }

        return at;
    }
}

using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Editor.Documents;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Schema;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Editor.Sessions;

/// <summary>
/// The engine behind the editor: the loader, the analyser and the rules of every other command, over the files with the open documents in
/// their
/// place. A file is judged together with its shop, as 'check' judges the folder. What bytes came to and what followed from them is kept,
/// so that
/// after an edit only what it touches is computed.
/// </summary>
internal sealed class Desk
{
    /// <summary>
    /// Up to so many files a shop is judged whole; in a larger one a file is judged with those it draws on and all that draw on it
    /// (a judgement without news took about a quarter of a millisecond a file when this was set).
    /// </summary>
    public const int WholeShop = 100;

    private static readonly string[] _repositoryMarks = [".git", ".hg", ".svn"];

    private readonly DocumentStore _documents;
    private readonly ParsedFiles _parsed = new();
    private readonly FactsMemory _memory = new();
    private readonly EngineOptions _engine;
    private readonly Dictionary<string, Judged> _judged = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ShopUsers> _large = new(StringComparer.Ordinal);

    public Desk(DocumentStore documents, EngineOptions engine)
    {
        _documents = documents;
        _engine = engine;
        Load = new LoadOptions { Profiles = ProfileLibrary.AllNames, Parsed = _parsed };
    }

    /// <summary>How files are read.</summary>
    public LoadOptions Load { get; }

    /// <summary>How many facts were computed so far.</summary>
    public int Computed => _memory.Computed;

    /// <summary>Forgets what was judged: a document has changed.</summary>
    public void Touch() => _judged.Clear();

    /// <summary>Forgets also which files there are: something happened on the disk.</summary>
    public void TouchDisk()
    {
        _judged.Clear();
        _large.Clear();
    }

    /// <summary>What a file came to; null for one that is none of ours.</summary>
    public View? ViewOf(string path)
    {
        if (DocumentKinds.FromFileName(path) is null)
        {
            return null;
        }

        var judged = Whole(path) ?? WithUsers(path);
        var root = judged.Workspace.Root.TrimEnd('/');
        return new View(path.StartsWith(root + "/", StringComparison.Ordinal) ? path[(root.Length + 1)..] : path, judged, _documents);
    }

    /// <summary>Tries out repairs of what a view has found.</summary>
    public RepairDesk RepairsFor(View view) => new(_documents.Files, Load, _engine, view.Judged);

    /// <summary>True for whatever stands at a full path.</summary>
    public bool Exists(string path) => _documents.Files.Kind(path) != EntryKind.Missing;

    /// <summary>Every file of ours that belongs to the shop of a file, full paths.</summary>
    public IReadOnlyList<string> ShopFilesOf(View view) =>
        _large.TryGetValue(ShopOf(FullFolder(view.FullPathOf(view.File))) ?? "", out var users)
            ? users.Files
            : [.. view.Workspace.Sources.Keys.Select(view.FullPathOf)];

    /// <summary>
    /// Everything that is read and named from one folder with a view, read and not judged; null where nothing marks such a folder, so
    /// that nobody's whole disk is read.
    /// </summary>
    public View? Repository(View view)
    {
        var (root, files) = (view.Workspace.Root, _documents.Files);
        if (!_repositoryMarks.Append(DocumentKinds.SettingsFileName).Any(m => files.Kind(Join(root, m)) != EntryKind.Missing))
        {
            return null;
        }

        var workspace = WorkspaceLoader.Load(files, [root], Load with { Root = root });
        var facts = Analyzer.Analyse(workspace, _memory);
        var unjudged = LintEngine.Judge(facts, _engine with { Rules = [], FactsDocument = null });
        return new View(view.File, new Judged(workspace, facts, unjudged), _documents);
    }

    /// <summary>The file with its whole shop, or without settings with those that stand beside it; null where that is too much.</summary>
    private Judged? Whole(string path)
    {
        var folder = FullFolder(path);
        var shop = ShopOf(folder);
        if (shop is not null && _large.ContainsKey(shop))
        {
            return null;
        }

        var key = shop ?? folder + "\n";
        if (_judged.TryGetValue(key, out var known) && known.Workspace.Sources.Keys.Any(f => Full(known, f) == path))
        {
            return known;
        }

        var files = _documents.Files;
        IReadOnlyList<string> asked = shop is not null
            ? [shop, path]
            : [.. files.Names(folder).Select(n => Join(folder, n)).Where(f => f != path && IsOurs(files, f)).Append(path)];
        var workspace = WorkspaceLoader.Load(files, asked, Load);
        if (shop is not null && workspace.Sources.Count > WholeShop)
        {
            _large[shop] = ShopUsers.Of(workspace);
            return null;
        }

        return _judged[key] = Judge(workspace);
    }

    private Judged WithUsers(string path)
    {
        if (_judged.TryGetValue(path, out var known))
        {
            return known;
        }

        var users = _large[ShopOf(FullFolder(path))!];
        var workspace = WorkspaceLoader.Load(_documents.Files, [.. users.Of(path)], Load);
        users.Learn(workspace);
        return _judged[path] = Judge(workspace);
    }

    private Judged Judge(Workspace workspace)
    {
        var facts = Analyzer.Analyse(workspace, _memory);
        return new Judged(workspace, facts, LintEngine.Judge(facts, _engine));
    }

    /// <summary>The folder of the nearest settings, upwards to where a repository ends; null where there are none.</summary>
    private string? ShopOf(string folder)
    {
        var files = _documents.Files;
        for (var at = folder; ; at = FullFolder(at))
        {
            if (files.Kind(Join(at, DocumentKinds.SettingsFileName)) == EntryKind.File)
            {
                return at;
            }

            if (at == FullFolder(at) || _repositoryMarks.Any(m => files.Kind(Join(at, m)) != EntryKind.Missing))
            {
                return null;
            }
        }
    }

    private static bool IsOurs(IFileTree files, string path) =>
        DocumentKinds.FromFileName(path) is not null && files.Kind(path) == EntryKind.File;

    private static string Full(Judged judged, string file) => Path.IsPathRooted(file) ? file : Join(judged.Workspace.Root, file);

    private static string Join(string folder, string name) => $"{folder.TrimEnd('/')}/{name}";

    private static string FullFolder(string path)
    {
        var slash = path.LastIndexOf('/');
        return slash <= 0 ? "/" : path[..slash] is var folder && folder.EndsWith(':') ? folder + "/" : folder;
    }
}

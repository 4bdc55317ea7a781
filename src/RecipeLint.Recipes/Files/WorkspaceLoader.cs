using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>
/// Reads what was asked for and everything it refers to. Whatever is wrong with one file is a problem in the workspace and keeps no
/// other file from being read. The same files give the same workspace, whatever the order of the paths.
/// </summary>
public sealed class WorkspaceLoader
{
    private readonly IFileTree _files;
    private readonly LoadOptions _options;
    private readonly SourceStore _store;
    private readonly ShopScopes _scopes;
    private readonly ReferenceResolver _references;
    private readonly Queue<string> _pending = new();
    private readonly HashSet<string> _queued = new(StringComparer.Ordinal);
    private readonly Dictionary<string, IReadOnlySet<string>> _drawsOn = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, StockDocument> _stocks = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, RecipeDocument> _recipes = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, WaterDocument> _waters = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, BatchDocument> _batches = new(StringComparer.Ordinal);

    private WorkspaceLoader(IFileTree files, string root, LoadOptions options, ServingFiles served, RepeatedContents repeated)
    {
        _files = files;
        _options = options;
        _store = new SourceStore(files, root, options.SizeLimit, options.Parsed, repeated);
        _scopes = new ShopScopes(files, root, _store, options, served);
        _references = new ReferenceResolver(files, root);
    }

    /// <param name="asked">Files, folders or patterns as the user wrote them.</param>
    public static Workspace Load(IFileTree files, IReadOnlyList<string> asked, LoadOptions options)
    {
        files = new RememberingTree(files);
        var found = AskedFiles.Find(files, asked, options.Only);
        var root = options.Root ?? RepositoryRoot.Common(found.Roots, files.CurrentFolder);
        return Load(files, root, found, options, new ServingFiles(files, root), new RepeatedContents());
    }

    /// <summary>
    /// The same for files that are found already; what serves them and what they have in common is looked up once for all that share it.
    /// </summary>
    internal static Workspace Load(
        IFileTree files, string root, AskedFiles found, LoadOptions options, ServingFiles served, RepeatedContents repeated) =>
        new WorkspaceLoader(files, root, options, served, repeated).Load(root, found);

    private Workspace Load(string root, AskedFiles asked)
    {
        var unusable = asked.Unusable.ToList();
        if (_scopes.ReadChosen() is { } badSettings)
        {
            unusable.Add(badSettings);
        }

        var paths = new List<string>();
        var realRoot = _files.ResolveLinks(root);
        foreach (var full in asked.Files)
        {
            if (FilePaths.IsWithin(_files.ResolveLinks(full), realRoot))
            {
                paths.Add(_store.PathOf(full));
            }
            else if (asked.Named.TryGetValue(full, out var written))
            {
                unusable.Add(new UnusablePath(written, "leads out of the repository"));
            }
            else
            {
                _store.Refuse(new Problem(
                    ProblemKind.ReferenceLeavesRepository,
                    Place.Whole(_store.PathOf(full)),
                    "This is a link that leads out of the repository. Only files inside it are read."));
            }
        }

        paths.ForEach(Enqueue);
        while (_pending.TryDequeue(out var path))
        {
            ReadDocument(path);
        }

        unusable.AddRange(asked.Named.Where(n => _store.Failures.ContainsKey(_store.PathOf(n.Key)))
            .Select(n => new UnusablePath(n.Value, _store.Failures[_store.PathOf(n.Key)])));
        var (stocks, batches) = Held();
        return new Workspace
        {
            Root = root,
            Sources = new SortedDictionary<string, Json.SourceFile>(_store.Sources.ToDictionary(), StringComparer.Ordinal),
            Asked = new SortedSet<string>(paths, StringComparer.Ordinal),
            Stocks = stocks,
            Recipes = [.. _recipes.Values],
            Waters = [.. _waters.Values],
            Batches = batches,
            SubstanceFiles = _scopes.SubstanceFiles,
            Profiles = _scopes.Profiles,
            Catalogue = _scopes.WholeCatalogue(),
            SettingsFor = _scopes.Settled(),
            DrawsOn = _drawsOn,
            Problems = InOrder(),
            Unusable = unusable,
            NotOurs = asked.NotOurs,
            Unrecognised = [.. asked.Unrecognised.Select(_store.PathOf)],
        };
    }

    /// <summary>What was read with references that lead nowhere, in circles or too far left out, and reported.</summary>
    private (IReadOnlyList<StockDocument> Stocks, IReadOnlyList<BatchDocument> Batches) Held()
    {
        var (stocks, loops) = ReferenceLoops.Break([.. _stocks.Values]);
        _store.Report(loops);
        (stocks, var tooDeep) = ReferenceBounds.Hold(stocks);
        _store.Report(tooDeep);
        var (batches, unfit) = BatchChecks.Hold([.. _batches.Values], stocks.ToDictionary(s => s.File, StringComparer.Ordinal), _recipes);
        _store.Report(unfit);
        return (stocks, batches);
    }

    private void Enqueue(string path)
    {
        if (_queued.Add(path))
        {
            _pending.Enqueue(path);
        }
    }

    private void ReadDocument(string path)
    {
        switch (DocumentKinds.FromFileName(path))
        {
            case DocumentKind.Stock:
                var resolution = ResolutionFor(path);
                if (_store.Read(path, DocumentKind.Stock, (fields, item) => new StockReader(fields, resolution).Read(item)) is { } stock)
                {
                    _stocks.Add(path, stock);
                    Follow(path, ReferencesOf(stock));
                }

                break;
            case DocumentKind.Recipe:
                resolution = ResolutionFor(path);
                if (_store.Read(path, DocumentKind.Recipe, (fields, item) => new RecipeReader(fields, resolution).Read(item)) is { } recipe)
                {
                    _recipes.Add(path, recipe);
                    Follow(path, ReferencesOf(recipe));
                }

                break;
            case DocumentKind.Water:
                _scopes.ReadSettingsFor(path);
                if (_store.Read(path, DocumentKind.Water, (fields, item) => new WaterReader(fields).Read(item)) is { } water)
                {
                    _waters.Add(path, water);
                }

                Settle(path);
                break;
            case DocumentKind.Batch:
                resolution = ResolutionFor(path);
                if (_store.Read(path, DocumentKind.Batch, (fields, item) => new BatchReader(fields, resolution).Read(item)) is { } batch)
                {
                    _batches.Add(path, batch);
                    Follow(path, [batch.StockFile, batch.RecipeFile]);
                }

                break;
            case { } kind:
                ReadServing(path, kind);
                break;
        }
    }

    /// <summary>Reads what serves others: lists of substances, profiles, house rules, settings.</summary>
    private void ReadServing(string path, DocumentKind kind)
    {
        if (kind == DocumentKind.Settings)
        {
            _scopes.ReadSettings(path);
        }
        else
        {
            _scopes.ReadSettingsFor(path);
        }

        switch (kind)
        {
            case DocumentKind.Substances:
                _scopes.ReadSubstances(path);
                _scopes.CatalogueFor(path);
                break;
            case DocumentKind.Profile:
                _scopes.ReadProfile(path);
                _scopes.ProfilesFor(path);
                break;
            case DocumentKind.HouseRule:
                _scopes.ReadHouseRule(path);
                break;
        }

        Settle(path);
    }

    private Resolution ResolutionFor(string path)
    {
        var settings = _scopes.ReadSettingsFor(path);
        var (catalogue, unread) = _scopes.CatalogueFor(path);
        var profiles = _scopes.ProfilesFor(path);
        return new Resolution(
            catalogue, settings, _references, _scopes.KnownProfiles(profiles), profiles, unread, ChecksEquipment: !_options.NoConfig);
    }

    private void Follow(string path, IEnumerable<string?> references)
    {
        var named = references.OfType<string>().ToList();
        named.ForEach(Enqueue);
        _drawsOn[path] = new SortedSet<string>([.. named, .. _scopes.ServingOf(path)], StringComparer.Ordinal);
    }

    /// <summary>What serves others is itself judged as its settings say, and held against others of its kind.</summary>
    private void Settle(string path) => _drawsOn[path] = new SortedSet<string>(_scopes.HeldAgainst(path), StringComparer.Ordinal);

    private static IEnumerable<string?> ReferencesOf(StockDocument stock) => stock.Steps.Select(step => step switch
    {
        AliquotStep aliquot => aliquot.StockFile,
        PourStep pour => pour.Of?.Value.File,
        TopUpStep topUp => topUp.Of?.Value.File,
        _ => null,
    });

    private static IEnumerable<string?> ReferencesOf(RecipeDocument recipe) =>
        [recipe.Water?.Value.File, recipe.ProfileFile, .. recipe.Doses.OfType<StockDose>().Select(d => d.StockFile)];

    /// <summary>By file, then by place in it, so that the order of reading never shows.</summary>
    private IReadOnlyList<Problem> InOrder() =>
    [
        .. _store.Problems
            .OrderBy(p => p.Place.File, StringComparer.Ordinal)
            .ThenBy(p => _store.Sources.TryGetValue(p.Place.File, out var source) ? source.Resolve(p.Place).Start : 0)
            .ThenBy(p => p.Kind)
            .ThenBy(p => p.Message, StringComparer.Ordinal),
    ];
}

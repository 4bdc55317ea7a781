using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes;

/// <summary>
/// Everything read in one run: typed documents with references resolved, the sources for excerpts, and what was wrong.
/// Immutable; every list is in the order of the file paths.
/// </summary>
public sealed record Workspace
{
    private readonly ByFile<StockDocument> _stocks = new(s => s.File);
    private readonly ByFile<RecipeDocument> _recipes = new(r => r.File);
    private readonly ByFile<WaterDocument> _waters = new(w => w.File);
    private readonly ByFile<WaterDocument> _builtInWaters = new(w => [w.File.Length == 0 ? w.Name : null]);
    private readonly ByFile<ProfileDocument> _profiles = new(p => p.File);
    private readonly ByFile<Problem> _problems = new(p => p.Place.File);

    public IReadOnlyDictionary<string, SourceFile> Sources { get; init; } = new Dictionary<string, SourceFile>();

    /// <summary>Full path of the folder that all paths are relative to, with forward slashes.</summary>
    public string Root { get; init; } = "";

    /// <summary>Files the user asked about; others were read only because these refer to them.</summary>
    public IReadOnlySet<string> Asked { get; init; } = new HashSet<string>();

    /// <summary>
    /// Says of a folder, by its path below the root, whether every stock and recipe of the run that lies in it or below was read here; null
    /// where that is not known.
    /// </summary>
    public Func<string, bool>? HoldsAllBelow { get; init; }

    public IReadOnlyList<StockDocument> Stocks { get; init; } = [];

    public IReadOnlyList<RecipeDocument> Recipes { get; init; } = [];

    public IReadOnlyList<WaterDocument> Waters { get; init; } = [];

    /// <summary>The shop's own lists of substances.</summary>
    public IReadOnlyList<SubstanceFile> SubstanceFiles { get; init; } = [];

    /// <summary>The shop's own crop profiles.</summary>
    public IReadOnlyList<ProfileDocument> Profiles { get; init; } = [];

    /// <summary>Batches as they were really mixed.</summary>
    public IReadOnlyList<BatchDocument> Batches { get; init; } = [];

    /// <summary>Paths the user asked about that are not there, cannot be read, or match nothing; as written.</summary>
    public IReadOnlyList<UnusablePath> Unusable { get; init; } = [];

    /// <summary>Full paths of the first JSON files met in folders whose names are none of ours: they were not read.</summary>
    public IReadOnlyList<string> NotOurs { get; init; } = [];

    /// <summary>Files asked about by name whose name is none of ours; relative to the root.</summary>
    public IReadOnlyList<string> Unrecognised { get; init; } = [];

    /// <summary>The built-in catalogue with the shop's own substances.</summary>
    public required SubstanceCatalogue Catalogue { get; init; }

    /// <summary>Settings by the file they hold for.</summary>
    public required Func<string, ShopSettings> SettingsFor { get; init; }

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>
    /// What each stock, recipe and batch was read with: the stocks, waters and profiles it refers to, and the settings, substances and
    /// profiles that serve it.
    /// </summary>
    public IReadOnlyDictionary<string, IReadOnlySet<string>> DrawsOn { get; init; } = new Dictionary<string, IReadOnlySet<string>>();

    /// <summary>The files with all that draw on them, directly or through others.</summary>
    public SortedSet<string> WithUsersOf(IEnumerable<string> files)
    {
        var users = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var (user, drawn) in DrawsOn)
        {
            foreach (var file in drawn)
            {
                if (!users.TryGetValue(file, out var known))
                {
                    users.Add(file, known = []);
                }

                known.Add(user);
            }
        }

        var found = new SortedSet<string>(StringComparer.Ordinal);
        var open = new Queue<string>(files);
        while (open.TryDequeue(out var file))
        {
            if (!found.Add(file))
            {
                continue;
            }

            foreach (var user in users.GetValueOrDefault(file) ?? [])
            {
                open.Enqueue(user);
            }
        }

        return found;
    }

    /// <summary>Files that something is read with at most, for it to be known again: the rest is looked at anew each time.</summary>
    private const int MostDrawnOn = 64;

    /// <summary>
    /// The file with all that it was read with, directly or through others, in the order of the paths: what its facts follow from. Null
    /// where these are more than <see cref="MostDrawnOn"/>, so that looking costs little whatever draws on what.
    /// </summary>
    public IReadOnlyList<string>? WithDrawnOn(string file)
    {
        var found = new HashSet<string>(StringComparer.Ordinal) { file };
        var open = new Queue<string>([file]);
        while (open.TryDequeue(out var at))
        {
            foreach (var next in DrawsOn.TryGetValue(at, out var below) ? below.Where(found.Add) : [])
            {
                open.Enqueue(next);
            }

            if (found.Count > MostDrawnOn)
            {
                return null;
            }
        }

        return [.. found.Order(StringComparer.Ordinal)];
    }

    public StockDocument? FindStock(string file) => _stocks.Find(Stocks, file);

    public RecipeDocument? FindRecipe(string file) => _recipes.Find(Recipes, file);

    /// <summary>The same workspace with one stock changed in thought, or added: nothing on the disk changes.</summary>
    public Workspace With(StockDocument changed) =>
        this with { Stocks = [.. Stocks.Where(s => s.File != changed.File).Append(changed).OrderBy(s => s.File, StringComparer.Ordinal)] };

    /// <summary>The same with one recipe changed in thought, or added.</summary>
    public Workspace With(RecipeDocument changed) => this with
    {
        Recipes = [.. Recipes.Where(r => r.File != changed.File).Append(changed).OrderBy(r => r.File, StringComparer.Ordinal)],
    };

    public ProfileDocument? FindProfile(string file) => _profiles.Find(Profiles, file);

    public WaterDocument? FindWater(string file) => _waters.Find(Waters, file);

    /// <summary>A water that is listed without a file.</summary>
    public WaterDocument? FindBuiltInWater(string name) => _builtInWaters.Find(Waters, name);

    /// <summary>What reading found wrong in one file, in the order of <see cref="Problems"/>.</summary>
    public IReadOnlyList<Problem> ProblemsOf(string file) => _problems.All(Problems, file);
}

/// <summary>A path that the user asked about and that cannot be used.</summary>
/// <param name="Path">As written.</param>
/// <param name="Reason">What is wrong, to stand behind the path ("does not exist").</param>
public sealed record UnusablePath(string Path, string Reason);

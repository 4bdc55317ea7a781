using RecipeLint.Chemistry.Substances;
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
    public IReadOnlyDictionary<string, SourceFile> Sources { get; init; } = new Dictionary<string, SourceFile>();

    /// <summary>Files the user asked about; others were read only because these refer to them.</summary>
    public IReadOnlySet<string> Asked { get; init; } = new HashSet<string>();

    public IReadOnlyList<StockDocument> Stocks { get; init; } = [];

    public IReadOnlyList<RecipeDocument> Recipes { get; init; } = [];

    public IReadOnlyList<WaterDocument> Waters { get; init; } = [];

    /// <summary>The built-in catalogue with the shop's own substances.</summary>
    public required SubstanceCatalogue Catalogue { get; init; }

    /// <summary>Settings by the file they hold for.</summary>
    public required Func<string, ShopSettings> SettingsFor { get; init; }

    public IReadOnlyList<Problem> Problems { get; init; } = [];

    public StockDocument? FindStock(string file) => Stocks.FirstOrDefault(s => s.File == file);

    public WaterDocument? FindWater(string file) => Waters.FirstOrDefault(w => w.File == file);
}

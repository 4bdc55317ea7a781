using RecipeLint.Analysis;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What a rule proposes repairs from: the facts of the whole shop and its own options.</summary>
/// <param name="Facts">Of every stock and recipe of the shop, also those not asked about.</param>
/// <param name="Rule">The rule's options as they hold for the file of the finding.</param>
public sealed record RepairContext(Facts Facts, RuleContext Rule)
{
    public Workspace Workspace => Facts.Workspace;

    /// <summary>The stock a finding stands in; null when it stands elsewhere.</summary>
    public StockFacts? StockOf(Finding finding) => Facts.FindStock(finding.Place.File);

    /// <summary>The recipe a finding stands in; null when it stands elsewhere.</summary>
    public RecipeFacts? RecipeOf(Finding finding) => Facts.FindRecipe(finding.Place.File);

    /// <summary>The value that stands at a place; null when nothing does.</summary>
    public JsonItem? Item(Place place) => Workspace.Sources.GetValueOrDefault(place.File)?.Tree?.Find(place.Pointer);

    /// <summary>Recipes that dose a stock, with their entries for it.</summary>
    public IEnumerable<(RecipeFacts Recipe, DoseFacts Dose)> UsersOf(StockFacts stock) =>
        Facts.RecipesWith(stock.Stock.File)
            .SelectMany(r => r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Select(d => (r, d)));

    /// <summary>Steps of other stocks that take a part of this one.</summary>
    public IEnumerable<(StockFacts Stock, AliquotStep Step)> AliquotsOf(StockFacts stock) =>
        Facts.Stocks.SelectMany(s => s.Stock.Steps.OfType<AliquotStep>().Where(a => a.StockFile == stock.Stock.File).Select(a => (s, a)));

    /// <summary>The addition a place belongs to: its step, or something inside it.</summary>
    public AdditionFacts? AdditionAt(StockFacts stock, Place place) =>
        (Facts.FindStock(stock.Stock.File) ?? stock).Additions.FirstOrDefault(a => !a.ThroughAliquot && Holds(a.Place, place));

    /// <summary>The addition a place belongs to: in the steps of a stock, or straight into a recipe's tank.</summary>
    public AdditionFacts? AdditionAt(Place place) =>
        Facts.FindStock(place.File) is { } stock
            ? AdditionAt(stock, place)
            : Facts.FindRecipe(place.File)?.Doses.FirstOrDefault(d => d.Direct is not null && Holds(d.Entry.Place, place))?.Direct;

    /// <summary>The step a place belongs to.</summary>
    public static Step? StepAt(StockFacts stock, Place place) => stock.Stock.Steps.FirstOrDefault(s => Holds(s.Place, place));

    /// <summary>The position of a step in its list, as the file stands.</summary>
    public static int IndexOf(Step step) => int.Parse(step.Place.Pointer.Tokens[^1], System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The number of a finding by its name; null when the finding does not carry it.</summary>
    public static double? Value(Finding finding, string name) => finding.Values.FirstOrDefault(v => v.Name == name)?.Value;

    private static bool Holds(Place outer, Place inner) =>
        outer.File == inner.File
        && (inner.Pointer == outer.Pointer || inner.Pointer.Value.StartsWith(outer.Pointer.Value + "/", StringComparison.Ordinal));
}

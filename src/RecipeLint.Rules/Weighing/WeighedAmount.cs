using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>One substance weighed on a scale of the shop, for a stock or straight into a tank.</summary>
/// <param name="File">The stock or recipe.</param>
/// <param name="Batch">What the weight goes into.</param>
/// <param name="Stock">Null for a weight that goes straight into the tank.</param>
/// <param name="Coldest">The coldest a pre-stock for it would stand.</param>
internal sealed record WeighedAmount(
    AdditionFacts Addition, string File, NetWeight Weighing, ShopSettings Shop, Volume Batch, StockFacts? Stock, Temperature Coldest)
{
    /// <summary>A shed that does not freeze, as stocks without a stated temperature are kept (common practice, no source).</summary>
    private static readonly Temperature _coldShed = new(5);

    internal string Name => Addition.Substance.Name;

    internal Mass Mass => Weighing.Mass;

    internal Scale Scale => Weighing.Scale;

    internal Place AmountPlace => Addition.Place.Child("amount");

    /// <summary>Every weighing of a stock; what comes through aliquots was weighed for another one.</summary>
    internal static IEnumerable<WeighedAmount> In(StockFacts stock) =>
        stock.Additions
            .Where(a => !a.ThroughAliquot)
            .Select(a => Of(a, stock.Stock.File, stock.Settings, stock.Volume, stock, stock.StorageTemperature.Low))
            .OfType<WeighedAmount>();

    internal static IEnumerable<WeighedAmount> In(RecipeFacts recipe)
    {
        var coldest = recipe.Settings.Sites.Count == 0 ? _coldShed : recipe.Settings.Sites.Min(s => s.At.Low);
        return recipe.Doses
            .Select(d => d.Direct)
            .OfType<AdditionFacts>()
            .Select(a => Of(a, recipe.Recipe.File, recipe.Settings, recipe.FinalVolume, null, coldest))
            .OfType<WeighedAmount>();
    }

    /// <summary>True where the weight decides what plants or microbes get: a fifth more or less of a dye harms nobody.</summary>
    internal bool Matters => Addition.Substance.Kind != SubstanceKind.Dye;

    /// <summary>The statement that keeps rules silent about a weight that does not matter; nothing where it does.</summary>
    internal IReadOnlyList<Check> Unimportant =>
        Matters ? [] : [Check.That("it is more than a dye, so that plants or microbes depend on it", false)];

    private static WeighedAmount? Of(
        AdditionFacts addition, string file, ShopSettings shop, Volume batch, StockFacts? stock, Temperature coldest) =>
        addition is { Scale: { Readability.Grams: > 0 } scale, Mass.Grams: > 0 }
            ? new WeighedAmount(addition, file, new NetWeight(scale, addition.Mass), shop, batch, stock, coldest)
            : null;
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Who brings an ion of a solid, as it is called in a sentence.</summary>
/// <param name="Name">The substance by its short name, or the water.</param>
/// <param name="Brings">"calcium", "acid", "alkali".</param>
/// <param name="IsAcid">True when it is an acid as such, such as phosphoric acid where phosphate is the ion.</param>
internal sealed record Supplier(Place Place, string Name, string Brings, bool IsWater, bool IsAcid = false)
{
    /// <summary>At most two, the supplier of the positive ion first.</summary>
    public static IReadOnlyList<Supplier> In(StockFacts stock, Solid solid)
    {
        var waters = stock.Waters.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        var acids = stock.Additions.Where(a => a.Substance.Kind == SubstanceKind.Acid).Select(a => a.Place).ToHashSet();
        var suppliers = SuppliersOfSolid.In(stock, solid)
            .Select(s => Of(s, waters.Contains(s.Id)) with { IsAcid = acids.Contains(s.Place) }).ToList();
        if (suppliers.Count == 1
            && solid.Composition.Any(c => c.Key == Component.Silicate)
            && AcidOf(stock) is { } acid
            && acid.Place != suppliers[0].Place)
        {
            suppliers.Insert(0, new Supplier(acid.Place, Plain(acid.Substance.Name), "acid", false));
        }

        if (suppliers is [var only] && !only.IsWater && Both(stock, only, solid) is { } both)
        {
            return [only with { Brings = both }];
        }

        return suppliers.Count > 2 ? suppliers[..2] : suppliers;
    }

    /// <summary>"calcium and the carbonate", where one substance brings both halves of a solid.</summary>
    private static string? Both(StockFacts stock, Supplier only, Solid solid) =>
        stock.Additions.FirstOrDefault(a => a.Place == only.Place) is { } addition
        && solid.Composition.Select(c => c.Key).FirstOrDefault(c => c is not (Component.Water or Component.Hydrogen)
            && IonFacts.Charge(c) < 0
            && addition.ComponentMoles.GetValueOrDefault(c) > 0) is { } anion
        && IonWords.Of(anion) is var word && word != only.Brings
            ? $"{only.Brings} and the {word}"
            : null;

    /// <inheritdoc cref="In(StockFacts, Solid)"/>
    public static IReadOnlyList<Supplier> In(RecipeFacts recipe, Solid solid) =>
        [.. SuppliersOfSolid.In(recipe, solid).Select(s => Of(s, recipe.Water is { } water && water.Id == s.Id))];

    /// <summary>What takes alkali away: acid as such, else the weak acids dihydrogen phosphate and ammonium.</summary>
    private static AdditionFacts? AcidOf(StockFacts stock) =>
        stock.SuppliersOf(Component.Hydrogen)
            .Concat(stock.SuppliersOf(Component.Phosphate))
            .Concat(stock.SuppliersOf(Component.Ammonium))
            .FirstOrDefault();

    private static Supplier Of(SolidSupplier supplier, bool isWater) =>
        new(
            supplier.Place,
            isWater ? $"the water '{supplier.Name}'" : Plain(supplier.Name),
            supplier.IsAlkali ? "alkali" : IonWords.Of(supplier.Component),
            isWater);

    /// <summary>What stands behind a comma or in brackets tells bags apart, not ions.</summary>
    private static string Plain(string name) => name.Split([", ", " ("], 2, StringSplitOptions.None)[0];
}

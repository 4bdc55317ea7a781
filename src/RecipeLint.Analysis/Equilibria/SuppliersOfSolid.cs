using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>Something put in that supplies ions of a solid.</summary>
/// <param name="Id">Addition id; in a recipe the dose's id, and a slash and the addition's id where it comes with a stock.</param>
/// <param name="Name">Name of the substance or water.</param>
/// <param name="Component">The ion it supplies most to the point ("Ca+2"); "H+" for acid, and for alkali with
/// <paramref name="IsAlkali"/>.</param>
/// <param name="Share">Its part of all of that ion put in, 0 to 1.</param>
/// <param name="IsAlkali">True when what it supplies is the alkali that takes hydrogen ions up.</param>
public sealed record SolidSupplier(string Id, Place Place, string Name, string Component, double Share, bool IsAlkali);

/// <summary>The two things put in that supply most of a solid's ions.</summary>
public static class SuppliersOfSolid
{
    /// <summary>
    /// Of all acid or alkali from which its bearer is named beside the one that brings the rest (common practice, no source).
    /// </summary>
    private const double LeastShare = 0.05;

    /// <summary>
    /// At most two, from different additions; the supplier of the positive ions first. Ordered the same for any order of steps.
    /// </summary>
    public static IReadOnlyList<SolidSupplier> In(StockFacts stock, Solid solid) => Choose(Sources(stock, "", 1), solid);

    /// <inheritdoc cref="In(StockFacts, Solid)"/>
    public static IReadOnlyList<SolidSupplier> In(RecipeFacts recipe, Solid solid)
    {
        var sources = new List<Source>();
        foreach (var dose in recipe.Doses)
        {
            if (dose.Stock is { } stock)
            {
                sources.AddRange(Sources(
                    stock, dose.Id + "/", dose.Volume / stock.Volume).Select(s => s with { Place = dose.Entry.Place }));
            }
            else if (dose.Direct is { } direct)
            {
                sources.Add(new Source(dose.Id, direct.Place, direct.Substance.Name, direct.ComponentMoles));
            }
        }

        if (recipe.Water is { } water)
        {
            sources.Add(new Source(water.Id, water.Place, water.Name, water.ComponentMoles));
        }

        if (recipe.Adjustment is { Reagent: { } reagent } adjustment)
        {
            sources.Add(new Source(adjustment.Id, adjustment.Place, reagent.Name, adjustment.ComponentMoles));
        }

        return Choose(sources, solid);
    }

    private static IEnumerable<Source> Sources(StockFacts stock, string prefix, double share) =>
        stock.Additions.Select(a => new Source(prefix + a.Id, a.Place, a.Substance.Name, a.ComponentMoles.Times(share)))
            .Concat(stock.Waters.Select(w => new Source(prefix + w.Id, w.Place, w.Name, w.ComponentMoles.Times(share))))
            .Concat(stock.Adjustments.Where(a => a.Reagent is not null)
                .Select(a => new Source(prefix + a.Id, a.Place, a.Reagent!.Name, a.ComponentMoles.Times(share))));

    private static IReadOnlyList<SolidSupplier> Choose(IEnumerable<Source> sources, Solid solid)
    {
        var all = sources.ToList();
        var ions = solid.Composition.Where(c => c.Key is not (Component.Water or Component.Hydrogen) && c.Value > 0).ToList();
        var hydrogen = solid.Composition.FirstOrDefault(c => c.Key == Component.Hydrogen).Value;

        // The largest supplier of each ion; what the solid needs more of by charge counts first within the positive and the negative side.
        var ranked = ions
            .SelectMany(i => Shares(
                all, i.Key, 1).Select(s => (Supplier: s, Weight: i.Value * Math.Max(1, Math.Abs(IonFacts.Charge(i.Key))) * s.Share)))
            .ToList();
        var positive = Best(ranked.Where(r => IonFacts.Charge(r.Supplier.Component) > 0), null);
        var negative = Best(ranked.Where(r => IonFacts.Charge(r.Supplier.Component) <= 0), positive?.Id);

        // An acid or a hydroxide has its other half from what brings or takes up hydrogen ions.
        var other = positive is null || negative is null
            ? Best(Notable(Shares(all, Component.Hydrogen, hydrogen < 0 ? -1 : 1)), (positive ?? negative)?.Id)
                ?? (hydrogen < 0 ? Best(Notable(Carbonates(all)), (positive ?? negative)?.Id) : null)
            : null;
        other = hydrogen == 0 ? null : other;
        return [.. new[] { positive, negative, other }.OfType<SolidSupplier>().Take(2)];
    }

    /// <summary>The bicarbonate of a water is not to blame where a bag brings a hundred times its acid.</summary>
    private static IEnumerable<(SolidSupplier Supplier, double Weight)> Notable(IEnumerable<SolidSupplier> suppliers) =>
        suppliers.Where(s => s.Share >= LeastShare).Select(s => (s, s.Share));

    /// <summary>What takes hydrogen ions up as a carbonate, where nothing brings hydroxide as such.</summary>
    private static IEnumerable<SolidSupplier> Carbonates(List<Source> sources) =>
        Shares(sources, Component.Carbonate, 1).Select(s => s with { Component = Component.Hydrogen, IsAlkali = true });

    private static SolidSupplier? Best(IEnumerable<(SolidSupplier Supplier, double Weight)> ranked, string? butId) =>
        ranked.Where(r => r.Supplier.Id != butId)
            .OrderByDescending(r => Rounding.SixDigits(r.Weight))
            .ThenBy(r => r.Supplier.Id, StringComparer.Ordinal)
            .Select(r => r.Supplier)
            .FirstOrDefault();

    private static IEnumerable<SolidSupplier> Shares(List<Source> sources, string component, int sign)
    {
        var total = sources.Select(s => Math.Max(0, sign * s.Moles.GetValueOrDefault(component))).Order().Sum();
        return sources
            .Select(s => (Source: s, Moles: sign * s.Moles.GetValueOrDefault(component)))
            .Where(s => s.Moles > 0)
            .Select(s => new SolidSupplier(
                s.Source.Id, s.Source.Place, s.Source.Name, component, s.Moles / total, component == Component.Hydrogen && sign < 0));
    }

    private sealed record Source(string Id, Place Place, string Name, ComponentMoles Moles);
}

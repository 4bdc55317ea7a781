using System.Collections.Immutable;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Stocks;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Feeds;

/// <summary>The elements of a final solution with who brought how much.</summary>
internal static class ElementTable
{
    public static ImmutableSortedDictionary<string, ElementFact> Of(
        IReadOnlyList<DoseFacts> doses, WaterFacts water, PhAdjustmentFacts? adjustment, Volume final)
    {
        var shares = doses.SelectMany(Shares).Concat(Shares(water, "water", null, "source water", 1));
        if (adjustment?.Reagent is { } reagent)
        {
            shares = shares.Concat(Shares(adjustment.Elements, adjustment.Id, null, adjustment.Place, $"{reagent.Name} that sets the pH"));
        }

        return shares
            .GroupBy(s => s.Key, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(g => g.Key, g => FactOf(g.Key, g, final), StringComparer.Ordinal);
    }

    private static ElementFact FactOf(string key, IEnumerable<Share> shares, Volume final)
    {
        var contributions = shares
            .Select(s => new Contribution(s.Source, s.AdditionId, s.Place, s.Label, new Mass(s.Grams) / final))
            .OrderByDescending(c => c.Concentration)
            .ThenBy(c => c.Source, StringComparer.Ordinal)
            .ThenBy(c => c.AdditionId, StringComparer.Ordinal)
            .ToList();

        // Smallest first, so that the order in the file never shows in the last digits.
        var total = new MassConcentration(contributions.Select(c => c.Concentration.GramsPerLitre).Order().Sum());
        return new ElementFact(key, total, total / new MolarMass(AtomicWeights.Of(NutrientKeys.ElementOf(key))), contributions);
    }

    private static IEnumerable<Share> Shares(DoseFacts dose)
    {
        if (dose.Direct is { } direct)
        {
            return Shares(direct.Elements, dose.Id, null, direct.Place, $"{direct.Substance.Name} dosed directly");
        }

        if (dose.Stock is not { } stock)
        {
            return [];
        }

        var part = dose.Volume / stock.Volume;
        var name = stock.Stock.Name;
        return stock.Additions
            .SelectMany(a => Shares(a.Elements.Times(part), dose.Id, a.Id, a.Place, $"{a.Substance.Name} in '{name}'"))
            .Concat(stock.Adjustments.SelectMany(a => Shares(
                a.Elements.Times(part), dose.Id, a.Id, a.Place, $"{a.Reagent?.Name} that sets the pH of '{name}'")))
            .Concat(stock.Waters.SelectMany(w => Shares(w, dose.Id, w.Id, $"water in '{name}'", part)));
    }

    /// <summary>Water by its values, each at its place in the water's own file.</summary>
    private static IEnumerable<Share> Shares(WaterFacts water, string source, string? additionId, string label, double part) =>
        water.Water is not { } document
            ? []
            : SourceWater.Nutrients(document)
                .Select(n => new Share(
                    n.Key, n.GramsPerLitre * water.Volume.Litres * part, source, additionId, n.Place, $"{label} ('{water.Name}')"));

    private static IEnumerable<Share> Shares(ElementTotals totals, string source, string? additionId, Place place, string label) =>
        NutrientKeys.Grams(totals).Select(n => new Share(n.Key, n.Grams, source, additionId, place, label));

    private sealed record Share(string Key, double Grams, string Source, string? AdditionId, Place Place, string Label);
}

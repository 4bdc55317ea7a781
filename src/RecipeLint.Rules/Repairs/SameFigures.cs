using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Rules.Repairs;

/// <summary>
/// Whether a change of the files leaves every figure that was there before. What could not be read before has no figures yet; a stock
/// that could
/// be read whole, and each addition of the others, has.
/// </summary>
internal static class SameFigures
{
    /// <summary>Far below anything weighed; above the last bits of a sum in another order.</summary>
    private const double Rounding = 1e-9;

    public static bool Differ(Facts before, Facts after) =>
        before.Stocks.Any(was => after.FindStock(was.Stock.File) is { } now && Differ(was, now))
        || before.Recipes.Any(was => after.FindRecipe(was.Recipe.File) is { } now && Differ(was, now));

    private static bool Differ(StockFacts was, StockFacts now) =>
        was.Additions.Any(a => now.Additions.FirstOrDefault(b => b.Id == a.Id) is { } other && Differ(a, other))
        || (was.IsComplete
            && (Differ(was.Volume.Litres, now.Volume.Litres)
                || was.StorageTemperature != now.StorageTemperature
                || was.DeclaredPh != now.DeclaredPh
                || was.Additions.Count != now.Additions.Count
                || was.Totals.Elements.Union(now.Totals.Elements).Any(e => Differ(was.Totals[e].Grams, now.Totals[e].Grams))
                || Differ(was.ComponentMoles, now.ComponentMoles)));

    private static bool Differ(AdditionFacts was, AdditionFacts now) =>
        was.Substance.Id != now.Substance.Id || Differ(was.Mass.Grams, now.Mass.Grams) || Differ(was.Assay.Value, now.Assay.Value)
        || Differ(was.Volume?.Litres ?? 0, now.Volume?.Litres ?? 0);

    private static bool Differ(RecipeFacts was, RecipeFacts now) =>
        was.IsComplete
            && (was.Doses.Any(d => now.Doses.FirstOrDefault(o => o.Id == d.Id) is { } other && Differ(d.Volume.Litres, other.Volume.Litres))
                || Differ(was.FinalVolume.Litres, now.FinalVolume.Litres)
                || was.Elements.Keys.Union(now.Elements.Keys).Any(k => Differ(was.MilligramsPerLitre(k), now.MilligramsPerLitre(k)))
                || Differ(was.ComponentMoles, now.ComponentMoles));

    private static bool Differ(ComponentMoles was, ComponentMoles now) =>
        was.Keys.Union(now.Keys).Any(k => Differ(was.GetValueOrDefault(k), now.GetValueOrDefault(k)));

    private static bool Differ(double was, double now) =>
        Math.Abs(was - now) > Rounding * Math.Max(1, Math.Max(Math.Abs(was), Math.Abs(now)));
}

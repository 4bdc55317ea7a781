using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Editor.Features;

/// <summary>Numbers behind the lines of a stock or recipe, from the facts.</summary>
internal static class Figures
{
    /// <summary>Four digits, never in powers of ten where a person reads them.</summary>
    public static string Of(double value) => Math.Abs(value) is >= 0.001 and < 100_000 or 0
        ? ((decimal)value is var exact && exact != 0
            ? Math.Round(exact, Math.Clamp(3 - (int)Math.Floor(Math.Log10((double)Math.Abs(exact))), 0, 6), MidpointRounding.AwayFromZero)
                .ToString("0.######", CultureInfo.InvariantCulture)
            : "0")
        : value.ToString("0.###E0", CultureInfo.InvariantCulture);

    /// <summary>The addition that a step makes, or a recipe's entry; null where nothing is added there.</summary>
    public static AdditionFacts? AdditionAt(StockFacts? stock, RecipeFacts? recipe, string pointer) =>
        stock?.Additions.FirstOrDefault(a => !a.ThroughAliquot && a.Place.Pointer.Value == pointer)
        ?? recipe?.Doses.FirstOrDefault(d => d.Direct is not null && d.Entry.Place.Pointer.Value == pointer)?.Direct;

    /// <summary>"K 84.7, NO3-N 30.3": what so many grams of elements are in a volume, in mg/L, the largest first.</summary>
    public static IEnumerable<(string Key, double MilligramsPerLitre)> PerLitre(ElementTotals elements, double litres) =>
        NutrientKeys.Grams(elements).Select(g => (g.Key, g.Grams * 1000 / litres)).OrderByDescending(g => g.Item2)
            .ThenBy(g => g.Key, StringComparer.Ordinal);

    /// <summary>What share of an element of the whole a part brings, by key, 0 to 1.</summary>
    public static IEnumerable<(string Key, double Share)> Shares(ElementTotals part, ElementTotals whole)
    {
        var all = NutrientKeys.Grams(whole).ToDictionary(g => g.Key, g => g.Grams, StringComparer.Ordinal);
        return NutrientKeys.Grams(part).Where(g => all.GetValueOrDefault(g.Key) > 0).Select(g => (g.Key, g.Grams / all[g.Key]));
    }

    /// <summary>The entry of a list that a pointer leads into: "/steps/3" of "/steps/3/amount".</summary>
    public static string? EntryOf(IReadOnlyList<string> tokens, string list) =>
        tokens.Count >= 2 && tokens[0] == list ? JsonPointer.Root.Child(list).Child(tokens[1]).Value : null;
}

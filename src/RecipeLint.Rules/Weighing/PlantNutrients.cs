using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Rules.Weighing;

/// <summary>The elements a nutrient solution is made for.</summary>
internal static class PlantNutrients
{
    /// <summary>
    /// The thirteen mineral nutrients of Arnon and Stout (Plant Physiology 14 (1939) 371) and their successors, recalled, without chlorine,
    /// which comes along unasked; nitrogen once, not by form.
    /// </summary>
    private static readonly HashSet<string> _keys = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "Cu", "B", "Mo"];

    internal static bool Contains(string key) => _keys.Contains(key);

    internal static IEnumerable<string> In(ElementTotals totals) => NutrientKeys.Grams(totals).Select(g => g.Key).Where(Contains);
}

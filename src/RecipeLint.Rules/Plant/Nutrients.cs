using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;

namespace RecipeLint.Rules.Plant;

/// <summary>Which rule speaks of which key, so that one cause gives one finding.</summary>
internal static class Nutrients
{
    /// <summary>
    /// Elements every green plant needs and every feed has to bring (E. Epstein and A. J. Bloom, Mineral Nutrition of Plants, 2005;
    /// recalled). Chlorine and nickel are needed too, but come as impurities of the other salts.
    /// </summary>
    public static readonly string[] Essential = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "Cu", "B", "Mo"];

    /// <summary>Of these, the ones that carry the conductivity of a feed.</summary>
    private static readonly string[] Main = ["N", "P", "K", "Ca", "Mg", "S"];

    /// <summary>Main nutrients that a whole feed can leave out by mistake (common practice, no source).</summary>
    private const int MostForgotten = 2;

    /// <summary>Ions that salt a solution up; one rule speaks of both.</summary>
    public static bool IsBallast(string key) => key is "Na" or "Cl";

    /// <summary>Essential elements that neither a dose nor the water brings.</summary>
    public static IReadOnlyList<string> Missing(RecipeFacts recipe) =>
        [.. Essential.Where(key => recipe.MilligramsPerLitre(key) <= 0)];

    public static bool IsMissing(RecipeFacts recipe, string key) => Essential.Contains(key) && recipe.MilligramsPerLitre(key) <= 0;

    /// <summary>
    /// Missing that makes no feed for one purpose but a whole one with a hole in it: all traces are brought, and a main nutrient is not.
    /// Such a crop is lost within weeks.
    /// </summary>
    public static bool IsForgotten(RecipeFacts recipe, IReadOnlyList<string> missing) =>
        missing.Count <= MostForgotten && missing.All(Main.Contains) && missing.Count > 0 && recipe.MilligramsPerLitre(Essential[^1]) > 0;

    public static bool LacksAMainNutrient(RecipeFacts recipe) => Main.Any(key => recipe.MilligramsPerLitre(key) <= 0);

    /// <summary>
    /// Above this an element is excessive for the profile: past what is still run in practice, else past the usual range.
    /// </summary>
    public static double? Excessive(ElementRange range) =>
        range is { Upper: { } upper, SufficientHigh: { } high } ? Math.Max(upper, high) : range.Upper ?? range.SufficientHigh;
}

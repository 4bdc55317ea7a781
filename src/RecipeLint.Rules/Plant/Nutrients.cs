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

    private const string Iron = "Fe";

    /// <summary>Essential elements on the label of a mixture: a double salt or a chelate has two or three.</summary>
    private const int LeastOfAMixture = 4;

    /// <summary>Main nutrients that a whole feed can leave out by mistake (common practice, no source).</summary>
    private const int MostForgotten = 2;

    /// <summary>Main nutrients that a supplement for one purpose leaves to the feed (common practice, no source).</summary>
    private const int LeastLeftOut = 3;

    /// <summary>Ions that salt a solution up; one rule speaks of both.</summary>
    public static bool IsBallast(string key) => key is "Na" or "Cl";

    /// <summary>Essential elements that neither a dose nor the water brings.</summary>
    public static IReadOnlyList<string> Missing(RecipeFacts recipe) =>
        [.. Essential.Where(key => recipe.MilligramsPerLitre(key) <= 0)];

    /// <summary>Essential elements of which there is no more than a share of what plants go short below, or nothing.</summary>
    public static IReadOnlyList<string> HardlyThere(RecipeFacts recipe, double share) =>
    [
        .. Essential.Where(key => recipe.MilligramsPerLitre(key)
            <= share * (recipe.Profile.Elements.FirstOrDefault(e => e.Key == key)?.DeficientBelow ?? 0)),
    ];

    /// <summary>
    /// Nobody said what grows on it: the generic ranges are those of hungry crops, and orchids, a soak for coir or a
    /// supplement keep to none.
    /// </summary>
    public static bool NamesNoCrop(RecipeFacts recipe) => recipe.Profile.Name == ProfileLibrary.GenericName;

    public static bool IsMissing(RecipeFacts recipe, string key) => Essential.Contains(key) && recipe.MilligramsPerLitre(key) <= 0;

    /// <summary>
    /// Missing that makes no feed for one purpose but a whole one with a hole in it: a main nutrient where the others and iron or all
    /// traces are brought, or iron where all else is and a crop is named (without one it may be given apart, as published solutions of
    /// the last century do). Such a crop is lost within weeks.
    /// </summary>
    public static bool IsForgotten(RecipeFacts recipe, IReadOnlyList<string> missing)
    {
        var mains = missing.Count(Main.Contains);
        var isWhole = mains > 0 && mains <= MostForgotten
            && (mains == missing.Count ? recipe.MilligramsPerLitre(Essential[^1]) > 0 : !missing.Contains(Iron));
        return isWhole || (missing is [Iron] && recipe.Profile.Name != ProfileLibrary.GenericName);
    }

    /// <summary>
    /// Where no crop is named and neither phosphorus nor potassium is brought, or hardly a main nutrient, it is a supplement or a soak
    /// and no feed (common practice, no source).
    /// </summary>
    public static bool IsForOnePurpose(RecipeFacts recipe, IReadOnlyList<string> missing) =>
        NamesNoCrop(recipe)
        && (missing.Count(Main.Contains) >= LeastLeftOut || (missing.Contains("P") && missing.Contains("K")));

    /// <summary>
    /// Mixed products known by their label alone, which need not declare all they hold: the salts that bring their traces are often
    /// sulfates, and sulfur is seldom printed (common practice, no source). A single salt or chelate sold by a label is none of them.
    /// </summary>
    public static IReadOnlyList<string> KnownByLabel(RecipeFacts recipe) =>
    [
        .. recipe.Doses
            .SelectMany(d => d.Direct is { } direct ? [direct] : d.Stock?.Additions ?? [])
            .Where(a => a.Substance is { Formula: null, Dissolves.Count: > 0 } known
                && known.Content.Elements.Count(e => Essential.Contains(e.Symbol)) >= LeastOfAMixture)
            .Select(a => a.Substance.Name)
            .Distinct(StringComparer.Ordinal),
    ];

    public static bool LacksAMainNutrient(RecipeFacts recipe) => Main.Any(key => recipe.MilligramsPerLitre(key) <= 0);

    /// <summary>
    /// Above this an element is excessive for the profile: past what is still run in practice, else past the usual range.
    /// </summary>
    public static double? Excessive(ElementRange range) =>
        range is { Upper: { } upper, SufficientHigh: { } high } ? Math.Max(upper, high) : range.Upper ?? range.SufficientHigh;
}

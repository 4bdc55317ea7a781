using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// How more nitrogen is given where ammonium is already too much: as nitrate, so that no advice heals one harm with the other.
/// </summary>
internal static class NitrogenForms
{
    private const string Ammonium = "NH4-N", Nitrogen = "N";

    /// <summary>Other nitrogen in what is still called a nitrate, part of its nitrate (common practice, no source).</summary>
    private const double MostOther = 0.1;

    /// <summary>Nitrates of the trade.</summary>
    private const string Nitrates = "calcium, potassium or magnesium nitrate";

    /// <summary>"N", or what of it to raise; for the middle of a sentence behind "raise".</summary>
    public static string Raised(RecipeFacts recipe, string key) => AsNitrate(recipe, key) ? $"{key} as nitrate ({Nitrates})" : key;

    /// <summary>What to do about too little of an element, a sentence; null where nothing special holds.</summary>
    public static string? Remedy(RecipeFacts recipe, string key) => AsNitrate(recipe, key)
        ? $"Bring what is missing as {Nitrates}: there is more ammonium already than roots bear, so a part of it is better replaced as "
            + "well."
        : null;

    /// <summary>What may bring more of an element in a repair; null where everything may.</summary>
    public static Func<AdditionFacts, bool>? Bringing(RecipeFacts recipe, string key) => AsNitrate(recipe, key) ? IsNitrate : null;

    /// <summary>Prilled calcium nitrate, a fourteenth of whose nitrogen is ammonium, counts as one.</summary>
    private static bool IsNitrate(AdditionFacts addition) =>
        addition.Elements[NitrogenForm.Nitrate].Grams is > 0 and var nitrate
        && addition.Elements[NitrogenForm.Ammonium].Grams + addition.Elements[NitrogenForm.Urea].Grams <= MostOther * nitrate;

    /// <summary>True for nitrogen in a feed with more ammonium than the profile bears, by amount or by share.</summary>
    private static bool AsNitrate(RecipeFacts recipe, string key) => key is Nitrogen or "NO3-N"
        && (Engine.Bound.IsOver(recipe.MilligramsPerLitre(Ammonium), recipe.Profile.Find(Ammonium)?.SufficientHigh)
            || recipe.Profile.Ratios.Any(r => r.Numerator == Ammonium && r.Denominator == Nitrogen
                && Engine.Bound.IsOver(ElementRatio.Of(recipe, r) ?? 0, r.High)));
}

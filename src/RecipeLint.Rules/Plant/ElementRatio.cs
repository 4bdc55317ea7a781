using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Ratios of elements in a final solution, on the basis the profile states.</summary>
internal static class ElementRatio
{
    /// <summary>The ratio, or null when either side is absent.</summary>
    public static double? Of(RecipeFacts recipe, RatioRange range)
    {
        var numerator = Sum(recipe, range.Numerator, range.Basis);
        var denominator = Sum(recipe, range.Denominator, range.Basis);
        return denominator > 0 && numerator > 0 ? numerator / denominator : null;
    }

    /// <summary>The contributions of an element, largest first, labelled with what they bring.</summary>
    public static IEnumerable<RelatedPlace> LargestSources(RecipeFacts recipe, string key) =>
        recipe.Elements.TryGetValue(key, out var fact)
            ? fact.Contributions
                .OrderByDescending(c => c.Concentration.GramsPerLitre)
                .ThenBy(c => c.Label, StringComparer.Ordinal)
                .Select(c => new RelatedPlace(c.Place, $"{c.Label} brings {Say.Number(c.Concentration.MilligramsPerLitre)} mg/L {key}"))
            : [];

    /// <summary>A key, or several joined by "+" inside optional brackets such as "(Ca+Mg)".</summary>
    private static double Sum(RecipeFacts recipe, string keys, string basis) =>
        keys.Trim('(', ')').Split('+').Sum(key => Value(recipe, key, basis));

    private static double Value(RecipeFacts recipe, string key, string basis)
    {
        if (!recipe.Elements.TryGetValue(key, out var fact))
        {
            return 0;
        }

        return basis switch
        {
            "meq" => fact.Molar.MillimolesPerLitre * Valence(key),
            "mass" => fact.Concentration.MilligramsPerLitre,
            _ => fact.Molar.MillimolesPerLitre,
        };
    }

    private static int Valence(string key) => key is "Ca" or "Mg" or "S" ? 2 : 1;
}

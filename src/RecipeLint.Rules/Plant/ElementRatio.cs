using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Ratios of elements in a final solution, on the basis the profile states.</summary>
public static class ElementRatio
{
    /// <summary>The ratio, or null when either side is absent.</summary>
    public static double? Of(RecipeFacts recipe, RatioRange range)
    {
        var numerator = Sum(recipe, range.Numerator, range.Basis);
        var denominator = Sum(recipe, range.Denominator, range.Basis);
        return denominator > 0 && numerator > 0 ? numerator / denominator : null;
    }

    /// <summary>Contributions below this share of an element are not worth a place in a message.</summary>
    private const double NotableShare = 0.05;

    /// <summary>The notable contributions of an element, largest first, labelled with what they bring.</summary>
    public static IEnumerable<RelatedPlace> LargestSources(RecipeFacts recipe, string key) =>
        recipe.Elements.TryGetValue(key, out var fact)
            ? fact.Contributions
                .Where(c => c.Concentration.GramsPerLitre >= NotableShare * fact.Concentration.GramsPerLitre)
                .OrderByDescending(c => c.Concentration.GramsPerLitre)
                .ThenBy(c => c.Label, StringComparer.Ordinal)
                .Select(c => new RelatedPlace(c.Place, $"{c.Label} brings {Say.Number(c.Concentration.MilligramsPerLitre)} mg/L {key}"))
            : [];

    /// <summary>
    /// True when one of the elements leaves its own range so far that it gets a warning of its own: the ratio then follows from that
    /// and would only say the same thing again.
    /// </summary>
    public static bool FollowsFromAnElement(RecipeFacts recipe, RatioRange range) =>
        Keys(range.Numerator).Concat(Keys(range.Denominator)).Any(key =>
        {
            if (recipe.Profile.Find(key) is not { } bounds)
            {
                return false;
            }

            var found = recipe.MilligramsPerLitre(key);
            return Bound.IsUnder(found, bounds.DeficientBelow)
                || (!IsShareOfForms(range)
                    && (Bound.IsOver(found, Nutrients.Excessive(bounds)) || Bound.IsOver(found, bounds.ToxicAbove)));
        });

    /// <summary>A share of forms, such as of ammonium in the nitrogen: much of the form or of the whole does not say it already.</summary>
    private static bool IsShareOfForms(RatioRange range) => range.Numerator.EndsWith($"-{range.Denominator}", StringComparison.Ordinal);

    /// <summary>The keys of one side of a ratio: "K", or "Ca+Mg" with or without brackets.</summary>
    public static string[] Keys(string keys) => keys.Trim('(', ')').Split('+');

    /// <summary>A key, or several joined by "+" inside optional brackets such as "(Ca+Mg)".</summary>
    private static double Sum(RecipeFacts recipe, string keys, string basis) =>
        Keys(keys).Sum(key => Value(recipe, key, basis));

    internal static double Value(RecipeFacts recipe, string key, string basis)
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

    internal static int Valence(string key) => key is "Ca" or "Mg" or "S" ? 2 : 1;
}

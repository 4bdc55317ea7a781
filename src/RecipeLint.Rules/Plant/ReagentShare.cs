using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>What the reagent that sets the pH of the final solution brings besides its acid or alkali.</summary>
internal static class ReagentShare
{
    /// <summary>Nutrients that acids and alkalis carry: nitric, phosphoric and sulfuric acid, potassium hydroxide and carbonate.</summary>
    public static readonly string[] Keys = ["N", "P", "S", "K"];

    /// <summary>mg/L that the reagent brings to the final solution; 0 where there is none or its amount is not known.</summary>
    public static double MilligramsPerLitre(RecipeFacts recipe, string key) =>
        recipe.Adjustment is { Amount: not null } adjustment
            ? NutrientKeys.Grams(adjustment.Elements).Where(n => n.Key == key).Sum(n => n.Grams) * 1000 / recipe.FinalVolume.Litres
            : 0;

    /// <summary>
    /// True when a nutrient leaves its usual range only because of the reagent, and no target says how much is wanted: the finding then is
    /// about the reagent.
    /// </summary>
    public static bool PushesOverTheRange(RecipeFacts recipe, string key)
    {
        if (!Keys.Contains(key) || RecipePlaces.Target(recipe, key) is not null || recipe.Profile.Find(key)?.SufficientHigh is not { } high)
        {
            return false;
        }

        var brought = MilligramsPerLitre(recipe, key);
        var all = recipe.MilligramsPerLitre(key);
        return brought > 0 && Bound.IsOver(all, high) && !Bound.IsOver(all - brought, high);
    }
}

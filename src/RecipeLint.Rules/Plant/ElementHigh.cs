using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element above the usual range, not yet harmful: unusual up to what is still run somewhere, excessive beyond.</summary>
public sealed class ElementHigh : ElementRangeRule
{
    public override string Name => "element-high";

    /// <summary>Sodium and chloride, what the pH reagent pushes up, and nitrate or ammonium where all nitrogen is too much, are said once.</summary>
    protected override bool IsOwnedElsewhere(RecipeFacts recipe, string key) =>
        Nutrients.IsBallast(key)
        || ReagentShare.PushesOverTheRange(recipe, key)
        || (key is "NO3-N" or "NH4-N" && Over(recipe, "N"));

    protected override RangeVerdict? Verdict(double milligramsPerLitre, ElementRange range, string profile)
    {
        if (range.SufficientHigh is not { } high || !Bound.IsOver(milligramsPerLitre, high) || Bound.IsOver(milligramsPerLitre, range.ToxicAbove))
        {
            return null;
        }

        var found = $"The final solution holds {Say.Number(milligramsPerLitre)} mg/L {range.Key}";
        return range.Upper is { } upper && !Bound.IsOver(milligramsPerLitre, upper)
            ? new RangeVerdict(
                high,
                $"{found}, over the {Say.Number(high)} mg/L where the usual range of the '{profile}' profile ends. "
                    + $"Recipes in use run up to {Say.Number(upper)} mg/L, so this is unusual and not wrong. Make sure it is meant.",
                Level.Note)
            : new RangeVerdict(
                Nutrients.Excessive(range) ?? high,
                $"{found}; the '{profile}' profile knows of no use for more than {Say.Number(Nutrients.Excessive(range) ?? high)} mg/L. "
                    + "It crowds out other nutrients and costs money. Lower the largest contribution.");
    }

    private static bool Over(RecipeFacts recipe, string key) =>
        Bound.IsOver(recipe.MilligramsPerLitre(key), recipe.Profile.Find(key)?.SufficientHigh);
}

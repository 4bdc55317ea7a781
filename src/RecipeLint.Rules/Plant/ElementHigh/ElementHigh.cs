using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element above the usual range, not yet harmful: unusual up to what is still run somewhere, excessive beyond.</summary>
internal sealed class ElementHigh : ElementRangeRule
{
    public const string RuleName = "element-high";

    public override string Name => RuleName;

    /// <summary>
    /// Sodium and chloride, what the pH reagent pushes up, and nitrate where all nitrogen is too much, are said once. Ammonium is never
    /// hushed: it harms by itself.
    /// </summary>
    protected override bool IsOwnedElsewhere(RecipeFacts recipe, string key) =>
        Nutrients.IsBallast(key)
        || ReagentShare.PushesOverTheRange(recipe, key)
        || (key == "NO3-N" && Bound.IsOver(recipe.MilligramsPerLitre("N"), recipe.Profile.Find("N")?.SufficientHigh));

    protected override RangeBound? BoundOf(double milligramsPerLitre, ElementRange range) =>
        range.SufficientHigh is not { } high ? null
        : !Bound.IsOver(milligramsPerLitre, high) || (range.Upper is { } upper && !Bound.IsOver(milligramsPerLitre, upper))
            ? new RangeBound(high, false, IsUsual: true)
        : new RangeBound(Nutrients.Excessive(range) ?? high, false);

    protected override string Message(ElementAgainstRange verdict)
    {
        var (range, profile, limit) = (verdict.Range, verdict.Recipe.Profile.Name, verdict.Bound.MilligramsPerLitre);
        var found = $"The final solution holds {Say.Number(verdict.Found)} mg/L {range.Key}";
        return verdict.Bound.IsUsual
            ? $"{found}, over the {Say.Number(limit)} mg/L where the usual range of the '{profile}' profile ends. "
                + $"Recipes in use run up to {Say.Number(range.Upper ?? limit)} mg/L, so this is unusual and not wrong. Make sure it "
                + "is meant."
            : $"{found}; the '{profile}' profile knows of no use for more than {Say.Number(limit)} mg/L. "
                + (range.ToxicAbove is { } toxic
                    ? $"From {Say.Number(toxic)} mg/L it harms. Lower the largest contribution."
                    : range.Key == "NH4-N"
                    ? "Roots poison themselves with what they cannot bind, soonest when warm, and calcium stays out. Bring a part of the "
                        + "nitrogen as nitrate."
                    : "It crowds out other nutrients and costs money. Lower the largest contribution.");
    }
}

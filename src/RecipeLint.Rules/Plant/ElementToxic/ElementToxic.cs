using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element at a level that harms the crop.</summary>
internal sealed class ElementToxic : ElementRangeRule
{
    public const string RuleName = "element-toxic";

    /// <summary>The one element of the profiles that harms who eats the crop before it harms the crop.</summary>
    private const string Selenium = "Se";

    public override string Name => RuleName;

    protected override bool IsToxic => true;

    protected override RangeBound? BoundOf(double milligramsPerLitre, ElementRange range) =>
        range.ToxicAbove is { } toxic ? new RangeBound(toxic, false) : null;

    protected override string Message(ElementAgainstRange verdict) =>
        $"The final solution holds {Say.Number(verdict.Found)} mg/L {verdict.Range.Key}; above "
            + $"{Say.Number(verdict.Bound.MilligramsPerLitre)} mg/L "
            + (verdict.Range.IsToxicToOthers
                ? $"the hardiest other crop is harmed, and of '{verdict.Recipe.Profile.Name}' nobody has found a higher limit. "
                : $"the '{verdict.Recipe.Profile.Name}' profile expects damage. ")
        + (verdict.IsMostlyHeld
            ? $"A chelating agent holds {Held(verdict)} of it, and roots feel mostly what is bare, so damage is "
                + "less sure than with a salt; where the agent is used up or another metal takes it, the bare part grows. Take less of "
                + "what brings it, or try it on a few plants first."
            : verdict.Range.Key == Selenium
                ? "Plants hardly show it: the leaves gather it, and it poisons who eats them. Give nobody of this crop to eat, and find "
                    + "the addition that is too large."
            : "Roots and young leaves suffer first and do not recover. Do not dose this: find the addition that is too large.");

    private static string Held(ElementAgainstRange verdict) => verdict.Unheld < verdict.Found / 1000
        ? "nearly all"
        : $"all but {Say.Number(verdict.Unheld)} mg/L";
}

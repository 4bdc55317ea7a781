using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element at a level that harms the crop.</summary>
public sealed class ElementToxic : ElementRangeRule
{
    public override string Name => "element-toxic";

    protected override RangeVerdict? Verdict(double milligramsPerLitre, ElementRange range, string profile) =>
        range.ToxicAbove is { } toxic && Bound.IsOver(milligramsPerLitre, toxic)
            ? new RangeVerdict(
                toxic,
                $"The final solution holds {Say.Number(milligramsPerLitre)} mg/L {range.Key}; above {Say.Number(toxic)} mg/L the '{profile}' profile expects damage. "
                    + "Roots and young leaves suffer first and do not recover. Do not dose this: find the addition that is too large.")
            : null;
}

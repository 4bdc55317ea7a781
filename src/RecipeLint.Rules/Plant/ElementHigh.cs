using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element above the usual range, not yet harmful.</summary>
public sealed class ElementHigh : ElementRangeRule
{
    public override string Name => "element-high";

    protected override RangeVerdict? Verdict(double milligramsPerLitre, ElementRange range, string profile) =>
        range.SufficientHigh is { } high && milligramsPerLitre > high && !(range.ToxicAbove is { } toxic && milligramsPerLitre > toxic)
            ? new RangeVerdict(
                high,
                $"The final solution holds {Say.Number(milligramsPerLitre)} mg/L {range.Key}, over the {Say.Number(high)} mg/L where the usual range of the '{profile}' profile ends. "
                    + "It crowds out other nutrients and costs money. Lower the largest contribution.")
            : null;
}

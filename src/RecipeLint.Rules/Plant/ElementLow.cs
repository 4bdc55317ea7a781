using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element below what the crop needs.</summary>
public sealed class ElementLow : ElementRangeRule
{
    public override string Name => "element-low";

    /// <summary>What nothing brings is missing, not low.</summary>
    protected override bool IsOwnedElsewhere(RecipeFacts recipe, string key) => Nutrients.IsMissing(recipe, key);

    protected override RangeVerdict? Verdict(double milligramsPerLitre, ElementRange range, string profile)
    {
        if (range.DeficientBelow is { } deficient && Bound.IsUnder(milligramsPerLitre, deficient))
        {
            return new RangeVerdict(
                deficient,
                $"The final solution holds {Say.Number(milligramsPerLitre)} mg/L {range.Key}; the '{profile}' profile expects deficiency below {Say.Number(deficient)} mg/L. "
                    + "Plants go short within weeks. Raise the salt that carries it, or check that no dose is missing.");
        }

        return range.SufficientLow is { } low && Bound.IsUnder(milligramsPerLitre, low)
            ? new RangeVerdict(
                low,
                $"The final solution holds {Say.Number(milligramsPerLitre)} mg/L {range.Key}, under the {Say.Number(low)} mg/L where the usual range of the '{profile}' profile starts. "
                    + "Growth may slow before leaves show it. Raise it if the crop has no other source.",
                Level.Note)
            : null;
    }
}

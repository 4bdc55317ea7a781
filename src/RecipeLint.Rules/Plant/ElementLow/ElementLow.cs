using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>An element below what the crop needs.</summary>
internal sealed class ElementLow : ElementRangeRule
{
    public const string RuleName = "element-low";

    public override string Name => RuleName;

    /// <summary>What nothing brings is missing, not low.</summary>
    protected override bool IsOwnedElsewhere(RecipeFacts recipe, string key) => Nutrients.IsMissing(recipe, key);

    protected override RangeBound? BoundOf(double milligramsPerLitre, ElementRange range) =>
        range.DeficientBelow is { } deficient && (Bound.IsUnder(milligramsPerLitre, deficient) || range.SufficientLow is null)
            ? new RangeBound(deficient, true)
            : range.SufficientLow is { } low ? new RangeBound(low, true, IsUsual: true) : null;

    protected override string Message(ElementAgainstRange verdict)
    {
        var (profile, limit) = (verdict.Recipe.Profile.Name, verdict.Bound.MilligramsPerLitre);
        var found = $"The final solution holds {Say.Number(verdict.Found)} mg/L {verdict.Range.Key}";
        return verdict.Bound.IsUsual
            ? $"{found}, under the {Say.Number(limit)} mg/L where the usual range of the '{profile}' profile starts. "
                + "Growth may slow before leaves show it. "
                + (NitrogenForms.Remedy(verdict.Recipe, verdict.Range.Key) ?? "Raise it if the crop has no other source.")
            : $"{found}; the '{profile}' profile expects deficiency below {Say.Number(limit)} mg/L. "
                + (verdict.IsForgotten ? "That is next to nothing, as if its salt had been left out. " : "")
                + "Plants go short within weeks. "
                + (NitrogenForms.Remedy(verdict.Recipe, verdict.Range.Key)
                    ?? "Raise the salt that carries it, or check that no dose is missing.");
    }
}

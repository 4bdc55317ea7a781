using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>What a shop's options ask of a single weight: those of the two rules on small weights.</summary>
/// <param name="DisplaySteps">Steps of the display a weight must reach.</param>
/// <param name="Uncertainty">Expanded uncertainty (k = 2) of a weight, as a fraction.</param>
public sealed record WeighingNeeds(double DisplaySteps, double Uncertainty)
{
    public static WeighingNeeds Of(RuleTuning tuning) => new(
        tuning.Options<BelowScaleResolutionOptions>(RuleBook.Find(BelowScaleResolution.RuleName)!).DisplaySteps,
        tuning.Options<BelowMinimumWeightOptions>(RuleBook.Find(BelowMinimumWeight.RuleName)!).Limit / 100);
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>A weight so small that the scale's display step decides how much goes in.</summary>
public sealed class BelowScaleResolution : WorkspaceRule, IProposesRepairs
{
    private const string StepsOption = "displaySteps";

    public override string Name => "below-scale-resolution";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var weighed in WeighedAmount.In(facts))
        {
            var steps = context.For(weighed.File).Number(StepsOption);
            if (Shown(weighed) is var shown && weighed.Matters && shown < steps)
            {
                yield return Of(weighed, shown, steps, context);
            }
        }
    }

    /// <summary>Whether this rule reports the weight, with the limit and level its shop set.</summary>
    internal static bool Reports(Facts facts, WeighedAmount weighed) =>
        weighed.Matters && ShopOption.Of(facts, weighed.File, "below-scale-resolution", StepsOption) is { } steps && Shown(weighed) < steps;

    private static double Shown(WeighedAmount weighed) => Rounding.SixDigits(weighed.Mass / weighed.Scale.Readability);

    private static Finding Of(WeighedAmount weighed, double shown, double steps, RuleContext context)
    {
        var (mass, readability) = (weighed.Mass.Grams, weighed.Scale.Readability.Grams);
        var error = 0.5 / shown;
        var limit = BelowMinimumWeight.LimitFor(context.Facts, weighed.File);
        var minimum = new Mass(Math.Max(readability * steps, NetWeight.SmallestWithin(weighed.Scale, limit).Grams));
        var message = $"{Say.Grams(mass)} of {weighed.Name} is only {Say.Number(shown)} display steps of '{weighed.Scale.Name}' (readability {Say.Grams(readability)}): "
            + $"rounding on the display alone can be off by ±{Say.Percent(error)}. The plants get that error from every batch. "
            + TinyWeight.Remedy(weighed, minimum, limit);
        return context.Find(weighed.AmountPlace, message) with
        {
            Measured = new Measured("display steps", shown, steps, ""),
            Values =
            [
                new NamedValue("mass", mass, "g"),
                new NamedValue("readability", readability, "g"),
                new NamedValue("display steps", shown, ""),
                new NamedValue("rounding error", error * 100, "%"),
            ],
        };
    }

    /// <summary>A finer scale of the shop, a larger batch, or a stronger stock.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Equipment.ForWeight(finding, context);
}

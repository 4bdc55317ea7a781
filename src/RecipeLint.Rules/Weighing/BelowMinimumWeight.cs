using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>A weight the scale does show, but does not repeat well enough.</summary>
public sealed class BelowMinimumWeight : WorkspaceRule, IProposesRepairs
{
    private const string RuleName = "below-minimum-weight";

    private const string LimitOption = "limit";

    public override string Name => RuleName;

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var weighed in WeighedAmount.In(facts).Where(w => w.Matters && !BelowScaleResolution.Reports(facts, w)))
        {
            var limit = context.For(weighed.File).Number(LimitOption) / 100;
            var relative = Rounding.SixDigits(weighed.Weighing.RelativeExpanded ?? 0);
            if (relative > limit)
            {
                yield return Uncertain(weighed, relative, limit, context);
            }
            else if (weighed.Weighing.IsBelowStatedMinimum)
            {
                yield return UnderTheMakersMinimum(weighed, relative, context);
            }
        }
    }

    /// <summary>The limit as a fraction that holds for a file; the default where the shop has switched the rule off.</summary>
    internal static double LimitFor(Facts facts, string file) =>
        (ShopOption.Of(facts, file, RuleName, LimitOption)
            ?? double.Parse(RuleBook.Find(RuleName)!.Options.Single(o => o.Name == LimitOption).Default, System.Globalization.CultureInfo.InvariantCulture)) / 100;

    /// <summary>Whether this rule reports the weight, with the limit its shop set.</summary>
    internal static bool Reports(Facts facts, WeighedAmount weighed) =>
        weighed.Matters
        && !BelowScaleResolution.Reports(facts, weighed)
        && ShopOption.Of(facts, weighed.File, RuleName, LimitOption) is { } limit
        && Rounding.SixDigits(weighed.Weighing.RelativeExpanded ?? 0) > limit / 100;

    private static Finding Uncertain(WeighedAmount weighed, double relative, double limit, RuleContext context)
    {
        var (weighing, scale) = (weighed.Weighing, weighed.Scale);
        var minimum = NetWeight.SmallestWithin(scale, limit);
        var assumed = scale.Repeatability is null ? "taken as 1.5 steps, " : "";
        var message = $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} on '{scale.Name}' is only known to ±{Say.Percent(relative)} "
            + $"(repeatability {assumed}{Say.Grams(weighing.Repeatability.Grams)}, display {Say.Grams(scale.Readability.Grams)}); ±{Say.Percent(limit)} takes {Say.Grams(minimum.Grams)}. "
            + "Every batch then differs by that much, unseen. "
            + TinyWeight.Remedy(weighed, minimum, limit);
        return context.Find(weighed.AmountPlace, message, null, scale.Repeatability is null ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("relative expanded uncertainty", relative * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("mass", weighed.Mass.Grams, "g"),
                new NamedValue("standard uncertainty", weighing.Standard.Grams, "g"),
                new NamedValue("relative expanded uncertainty", relative * 100, "%"),
                new NamedValue("smallest weight", minimum.Grams, "g"),
            ],
        };
    }

    private static Finding UnderTheMakersMinimum(WeighedAmount weighed, double relative, RuleContext context)
    {
        var minimum = weighed.Scale.MinimumWeight!.Value;
        var message = $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} is under the minimum weight of '{weighed.Scale.Name}', {Say.Grams(minimum.Grams)}. "
            + $"The maker vouches for nothing below it; by its display and repeatability the weight would still be right to ±{Say.Percent(relative)}. "
            + "Weigh a larger batch, or check the scale with a test weight of that size.";
        return context.Find(weighed.AmountPlace, message, Level.Note, Certainty.Computed) with
        {
            Measured = new Measured("mass", weighed.Mass.Grams, minimum.Grams, "g"),
            Values = [new NamedValue("mass", weighed.Mass.Grams, "g"), new NamedValue("minimum weight", minimum.Grams, "g")],
        };
    }

    /// <summary>A finer scale of the shop, a larger batch, or a stronger stock.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Equipment.ForWeight(finding, context);
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>A weight the scale does show, but does not repeat well enough.</summary>
internal sealed class BelowMinimumWeight : WorkspaceRule<BelowMinimumWeight.Known>, IProposesRepairs
{
    public const string RuleName = "below-minimum-weight";

    public override string Name => RuleName;

    /// <summary>The limit as a fraction that holds for a file; the default where the shop has switched the rule off.</summary>
    internal static double LimitFor(RuleContext context, string file) =>
        (context.Neighbour(RuleName, file)?.Options<BelowMinimumWeightOptions>() ?? new BelowMinimumWeightOptions()).Limit / 100;

    /// <summary>Whether this rule calls the weight too uncertain, with the limit its shop set.</summary>
    internal static bool Reports(RuleContext context, WeighedAmount weighed) =>
        context.Neighbour(RuleName, weighed.File) is { } own && Of(weighed, own) is { Fires: true, IsByMaker: false };

    protected override IEnumerable<Known> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone(s => WeighedAmount.In(s).Select(w => Of(w, context.For(w.File))))
            .Concat(context.OfEachRecipeAlone(r => WeighedAmount.In(r).Select(w => Of(w, context.For(w.File)))));

    protected override Finding Describe(Known verdict, RuleContext context) =>
        verdict.IsByMaker ? UnderTheMakersMinimum(verdict, context) : Uncertain(verdict, context);

    protected override Working Work(Known verdict, RuleContext context)
    {
        var (weighed, check) = (verdict.Weighed, verdict.Checks[0]);
        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", "file");
        if (verdict.IsByMaker)
        {
            work.Check(check, mass, work.Given("minimum weight the maker states", check.Limit, "g", "shop's settings"));
            return work.Statements(verdict).Done(mass);
        }

        var standard = UncertaintySteps.OfWeight(work, weighed, mass);
        var relative = work.Result(
            "expanded uncertainty (k = 2) of the weight", "100 × 2 × standard uncertainty / weight", 100 * (Term)2 * standard / mass, "%");
        work.Check(check, relative, work.Option("limit", verdict.Limit));
        return work.Statements(verdict).Done(relative);
    }

    /// <summary>A finer scale of the shop, a larger batch, or a stronger stock.</summary>
    protected override IEnumerable<RepairProposal> Repair(Known verdict, Finding finding, RepairContext context) =>
        Equipment.ForWeight(finding, context);

    private static Known Of(WeighedAmount weighed, RuleContext options)
    {
        var relative = Rounding.SixDigits(weighed.Weighing.RelativeExpanded ?? 0);
        var limit = options.Options<BelowMinimumWeightOptions>().Limit;
        var unsure = new Check("less sure than a weight should be", Rounding.SixDigits(relative * 100), Relation.Over, limit, "%");
        var byMaker = !unsure.Holds && weighed.Weighing.IsBelowStatedMinimum;
        var check = byMaker
            ? new Check(
                "under what the maker vouches for", weighed.Mass.Grams, Relation.Under, weighed.Scale.MinimumWeight!.Value.Grams, "g")
            : unsure;
        return new Known(weighed, relative, limit, byMaker)
        {
            Files = [weighed.File],
            Checks = [check, .. weighed.Unimportant, .. ReportedAlready(weighed, options)],
        };
    }

    private static IReadOnlyList<Check> ReportedAlready(WeighedAmount weighed, RuleContext context) =>
        BelowScaleResolution.Reports(context, weighed)
            ? [Check.That("the rule below-scale-resolution has not reported this weight already", false)]
            : [];

    private static Finding Uncertain(Known verdict, RuleContext context)
    {
        var (weighed, relative, limit) = (verdict.Weighed, verdict.Relative, verdict.Limit / 100);
        var (weighing, scale) = (weighed.Weighing, weighed.Scale);
        var minimum = NetWeight.SmallestWithin(scale, limit);
        var assumed = scale.Repeatability is null ? "taken as 1.5 steps, " : "";
        var message = $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} on '{scale.Name}' is only known to ±{Say.Percent(relative)} "
            + $"(repeatability {assumed}{Say.Grams(weighing.Repeatability.Grams)}, display {Say.Grams(scale.Readability.Grams)}); "
                + $"±{Say.Percent(limit)} takes {Say.Grams(minimum.Grams)}. "
            + "Every batch then differs by that much, unseen. "
            + TinyWeight.Remedy(weighed, minimum, limit);
        return context.Find(weighed.AmountPlace, message, Harm.Damage, Odds.Certain, scale.Repeatability is null
            ? Certainty.Estimate
            : Certainty.Computed) with
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

    private static Finding UnderTheMakersMinimum(Known verdict, RuleContext context)
    {
        var (weighed, relative) = (verdict.Weighed, verdict.Relative);
        var minimum = weighed.Scale.MinimumWeight!.Value;
        var message =
            $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} is under the minimum weight of '{weighed.Scale.Name}', "
                + $"{Say.Grams(minimum.Grams)}. "
            + "The maker vouches for nothing below it; by its display and repeatability the weight would still be right to "
                + $"±{Say.Percent(relative)}. "
            + "Weigh a larger batch, or check the scale with a test weight of that size.";
        return context.Find(weighed.AmountPlace, message, Harm.Damage, Odds.Possible, Certainty.Computed) with
        {
            Measured = new Measured("mass", weighed.Mass.Grams, minimum.Grams, "g"),
            Values = [new NamedValue("mass", weighed.Mass.Grams, "g"), new NamedValue("minimum weight", minimum.Grams, "g")],
        };
    }

    /// <summary>How well one weight is known.</summary>
    /// <param name="Relative">Expanded uncertainty (k = 2) as a fraction, to six digits.</param>
    /// <param name="Limit">%.</param>
    /// <param name="IsByMaker">True where it is known well enough, but lies under the minimum that the maker of the scale states.</param>
    internal sealed record Known(WeighedAmount Weighed, double Relative, NumberOption Limit, bool IsByMaker) : Verdict;
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>A weight so small that the scale's display step decides how much goes in.</summary>
internal sealed class BelowScaleResolution : WorkspaceRule<BelowScaleResolution.Shown>, IProposesRepairs
{
    public const string RuleName = "below-scale-resolution";

    public override string Name => RuleName;

    /// <summary>Whether this rule reports the weight, with the limit and level its shop set.</summary>
    internal static bool Reports(RuleContext context, WeighedAmount weighed) =>
        context.Neighbour(RuleName, weighed.File) is { } own && Of(weighed, own).Fires;

    protected override IEnumerable<Shown> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone(s => WeighedAmount.In(s).Select(w => Of(w, context.For(w.File))))
            .Concat(context.OfEachRecipeAlone(r => WeighedAmount.In(r).Select(w => Of(w, context.For(w.File)))));

    protected override Finding Describe(Shown verdict, RuleContext context)
    {
        var (weighed, shown, steps) = (verdict.Weighed, verdict.Steps, verdict.Least.Value);
        var (mass, readability) = (weighed.Mass.Grams, weighed.Scale.Readability.Grams);
        var error = 0.5 / shown;
        var limit = BelowMinimumWeight.LimitFor(context, weighed.File);
        var minimum = new Mass(Math.Max(readability * steps, NetWeight.SmallestWithin(weighed.Scale, limit).Grams));
        var message =
            $"{Say.Grams(mass)} of {weighed.Name} is only {Say.Number(shown)} display steps of '{weighed.Scale.Name}' (readability "
                + $"{Say.Grams(readability)}): "
            + $"rounding on the display alone can be off by ±{Say.Percent(error)}. The plants get that error from every batch. "
            + TinyWeight.Remedy(weighed, minimum, limit);
        return context.Find(weighed.AmountPlace, message, ElementTooUncertain.HarmOf(error, context, weighed.File), Odds.Certain) with
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

    protected override Working Work(Shown verdict, RuleContext context)
    {
        var weighed = verdict.Weighed;
        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", "file");
        var step = work.Given("display step (readability)", weighed.Scale.Readability.Grams, "g", "shop's settings");
        var steps = work.Result("display steps", "weight / display step", mass / step);
        work.Result("rounding on the display, at most", "100 × half a step / steps", 100 * (Term)0.5 / steps, "%");
        work.Check(verdict.Checks[0], steps, work.Option("least", verdict.Least));
        return work.Statements(verdict).Done(steps);
    }

    /// <summary>A finer scale of the shop, a larger batch, or a stronger stock.</summary>
    protected override IEnumerable<RepairProposal> Repair(Shown verdict, Finding finding, RepairContext context) =>
        Equipment.ForWeight(finding, context);

    private static Shown Of(WeighedAmount weighed, RuleContext options)
    {
        var shown = Rounding.SixDigits(weighed.Mass / weighed.Scale.Readability);
        var least = options.Options<BelowScaleResolutionOptions>().DisplaySteps;
        var fewer = new Check("fewer steps than a weight should have", shown, Relation.Under, least);
        return new Shown(weighed, shown, least) { Files = [weighed.File], Checks = [fewer, .. weighed.Unimportant] };
    }

    /// <summary>One weight as the display shows it.</summary>
    /// <param name="Steps">Display steps, to six digits.</param>
    internal sealed record Shown(WeighedAmount Weighed, double Steps, NumberOption Least) : Verdict;
}

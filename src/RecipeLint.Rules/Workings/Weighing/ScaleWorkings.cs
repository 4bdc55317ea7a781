using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.Workings.Weighing;

/// <summary>What a scale can do with the weights of a file.</summary>
internal static class ScaleWorkings
{
    private const string File = "file", Shop = "shop's settings";

    public static IEnumerable<RuleWorkings> All { get; } =
    [
        new("below-scale-resolution", (subject, context) => Weights(subject).Select(w => Resolution(w, context.For(w.File)))),
        new("below-minimum-weight", (subject, context) => Weights(subject).Select(w => Minimum(w, subject.Facts, context.For(w.File)))),
        new("over-scale-capacity", (subject, _) => Weights(subject).Where(w => w.Scale.Capacity is { Grams: > 0 }).Select(Capacity).Concat(subject.Stocks.SelectMany(OnNoScale))),
    ];

    private static IEnumerable<WeighedAmount> Weights(WorkingSubject subject) =>
        subject.Stocks.SelectMany(WeighedAmount.In).Concat(subject.Recipes.SelectMany(WeighedAmount.In));

    private static Working Resolution(WeighedAmount weighed, RuleContext context)
    {
        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", File);
        var step = work.Given("display step (readability)", weighed.Scale.Readability.Grams, "g", Shop);
        var steps = work.Result("display steps", "weight / display step", mass / step);
        work.Result("rounding on the display, at most", "100 × half a step / steps", 100 * (Term)0.5 / steps, "%");
        work.Test("fewer steps than a weight should have", steps, Relation.Under, work.Option("least", "displaySteps", context));
        return Matters(work, weighed).Done(steps);
    }

    private static Working Minimum(WeighedAmount weighed, Facts facts, RuleContext context)
    {
        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", File);
        var limit = context.Number("limit");
        if (!(Rounding.SixDigits(weighed.Weighing.RelativeExpanded ?? 0) > limit / 100) && weighed.Weighing.IsBelowStatedMinimum)
        {
            var stated = work.Given("minimum weight the maker states", weighed.Scale.MinimumWeight!.Value.Grams, "g", Shop);
            work.Test("under what the maker vouches for", mass, Relation.Under, stated, "g");
            return Own(Matters(work, weighed), weighed, facts).Done(mass);
        }

        var standard = StandardOf(work, weighed.Scale, weighed.Mass, mass);
        var relative = work.Result("expanded uncertainty (k = 2) of the weight", "100 × 2 × standard uncertainty / weight", 100 * (Term)2 * standard / mass, "%");
        work.Test("less sure than a weight should be", relative, Relation.Over, work.Option("limit", "limit", context), "%");
        return Own(Matters(work, weighed), weighed, facts).Done(relative);
    }

    /// <summary>The standard uncertainty of one weighing from repeatability, rounding and the scale's own error.</summary>
    internal static Term StandardOf(WorkingBuilder work, Scale scale, Mass load, Term mass)
    {
        var step = work.Given("display step (readability)", scale.Readability.Grams, "g", Shop);
        var repeatability = scale.Repeatability is { } stated
            ? work.Given("repeatability (standard deviation)", stated.Grams, "g", Shop)
            : work.Result("repeatability, not stated: taken as 1.5 steps", "1.5 × display step", EquipmentLimits.RepeatabilitySteps.Value * step, "g");
        var rounding = work.Result("rounding of the display, at tare and at gross", "√2 × display step / √12", Term.Root(2) * step / Term.Root(12), "g");
        var steps = EquipmentLimits.ScaleError(load, scale.Readability).Grams / scale.Readability.Grams;
        var calibration = work.Result(
            $"calibration of the scale, limits of ±{Say.Number(steps)} steps at this load (OIML R 76, twice class III)", "steps × display step / √3", steps * step / Term.Root(3), "g");
        return work.Result(
            "standard uncertainty of the weight",
            "root of the sum of the squares",
            Term.Root(Term.Power(repeatability, 2) + Term.Power(rounding, 2) + Term.Power(calibration, 2)),
            "g");
    }

    private static Working Capacity(WeighedAmount weighed)
    {
        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", File);
        var capacity = work.Given("capacity of the scale", weighed.Scale.Capacity!.Value.Grams, "g", Shop);
        if (weighed.Weighing.Load(null) == ScaleLoad.Over || OverScaleCapacity.LightestVessel(weighed.Shop) is not { Tare: { } tare } vessel)
        {
            return work.Test("more than the scale carries", mass, Relation.Over, capacity, "g").Done(mass);
        }

        var half = work.Result("weight from which it lies in a vessel", "capacity / 2", OverScaleCapacity.InAVessel * capacity, "g");
        work.Test("too much for paper or a boat", mass, Relation.AtLeast, half, "g");
        var empty = work.Given($"the lightest vessel, '{vessel.Name}'", tare.Grams, "g", Shop);
        var gross = work.Result("on the scale together", "weight + vessel", mass + empty, "g");
        return work.Test("more than the scale carries", gross, Relation.Over, capacity, "g").Done(gross);
    }

    private static IEnumerable<Working> OnNoScale(StockFacts stock)
    {
        var largest = stock.Settings.Scales.All(s => s.Capacity is not null)
            ? stock.Settings.Scales.OrderByDescending(s => s.Capacity!.Value).FirstOrDefault()
            : null;
        if (largest?.Capacity is not { Grams: > 0 } most)
        {
            yield break;
        }

        foreach (var addition in stock.Additions.Where(a => a is { Scale: null, Measure: null, ThroughAliquot: false } && IsWeighed(stock, a)))
        {
            var work = new WorkingBuilder($"{addition.Substance.Name}, for which the file names no scale");
            var mass = work.Given("weight", addition.Mass.Grams, "g", File);
            yield return work.Test("more than the largest scale carries", mass, Relation.Over, work.Given($"capacity of '{largest.Name}', the largest", most.Grams, "g", Shop), "g").Done(mass);
        }
    }

    private static bool IsWeighed(StockFacts stock, AdditionFacts addition) =>
        stock.Stock.Steps.OfType<AddStep>().FirstOrDefault(s => s.Id == addition.Id)?.Amount?.Value
            is Portion.ByMass or Portion.PerLitreMass or Portion.ByAmount or Portion.PerLitreAmount;

    private static WorkingBuilder Matters(WorkingBuilder work, WeighedAmount weighed) =>
        weighed.Matters ? work : work.Condition("it is more than a dye, so that plants or microbes depend on it", false);

    private static WorkingBuilder Own(WorkingBuilder work, WeighedAmount weighed, Facts facts) =>
        BelowScaleResolution.Reports(facts, weighed) ? work.Condition("the rule below-scale-resolution has not reported this weight already", false) : work;
}

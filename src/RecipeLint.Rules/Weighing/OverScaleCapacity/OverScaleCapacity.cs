using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>More on a scale than it carries, alone or with any vessel the shop has.</summary>
internal sealed class OverScaleCapacity : WorkspaceRule<OverScaleCapacity.Loaded>, IProposesRepairs
{
    public const string RuleName = "over-scale-capacity";

    /// <summary>
    /// Part of the capacity from which a weight lies in a vessel and no longer on a paper or in a boat (common practice, no source).
    /// </summary>
    private const double InAVessel = 0.5;

    public override string Name => RuleName;

    protected override IEnumerable<Loaded> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone(s => OnScales(WeighedAmount.In(s)).Concat(OnNoScale(s)))
            .Concat(context.OfEachRecipeAlone(r => OnScales(WeighedAmount.In(r))));

    private static IEnumerable<Loaded> OnScales(IEnumerable<WeighedAmount> weighed) =>
        weighed.Where(w => w.Scale.Capacity is { Grams: > 0 }).Select(OnAScale);

    protected override Finding Describe(Loaded verdict, RuleContext context) => verdict switch
    {
        { Weighed: null } => CarriedByNone(verdict, context),
        { Vessel: { } vessel } => NoRoomForAVessel(verdict.Weighed, vessel, vessel.Tare!.Value, context),
        _ => Over(verdict.Weighed, context),
    };

    protected override Working Work(Loaded verdict, RuleContext context)
    {
        var (capacity, checks) = (verdict.Scale.Capacity!.Value.Grams, verdict.Checks);
        if (verdict.Weighed is not { } weighed)
        {
            var unnamed = new WorkingBuilder($"{verdict.Addition.Substance.Name}, for which the file names no scale");
            var heavy = unnamed.Given("weight", verdict.Addition.Mass.Grams, "g", "file");
            var most = unnamed.Given($"capacity of '{verdict.Scale.Name}', the largest", capacity, "g", "shop's settings");
            return unnamed.Check(checks[0], heavy, most).Done(heavy);
        }

        var work = new WorkingBuilder($"{weighed.Name} on '{weighed.Scale.Name}'");
        var mass = work.Given("weight", weighed.Mass.Grams, "g", "file");
        var carries = work.Given("capacity of the scale", capacity, "g", "shop's settings");
        if (verdict.Vessel is not { Tare: { } tare } vessel)
        {
            return work.Check(checks[0], mass, carries).Done(mass);
        }

        work.Check(checks[0], mass, work.Result("weight from which it lies in a vessel", "capacity / 2", InAVessel * carries, "g"));
        var empty = work.Given($"the lightest vessel, '{vessel.Name}'", tare.Grams, "g", "shop's settings");
        var gross = work.Result("on the scale together", "weight + vessel", mass + empty, "g");
        return work.Check(checks[1], gross, carries).Done(gross);
    }

    /// <summary>Another scale, or a smaller batch.</summary>
    protected override IEnumerable<RepairProposal> Repair(Loaded verdict, Finding finding, RepairContext context) =>
        Equipment.OtherScales(finding, context).Concat(context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : []);

    private static Loaded OnAScale(WeighedAmount weighed)
    {
        var (mass, capacity) = (weighed.Mass.Grams, weighed.Scale.Capacity!.Value.Grams);
        var over = new Check("more than the scale carries", mass, Relation.Over, capacity, "g");
        if (over.Holds || LightestVessel(weighed.Shop) is not { Tare: { } tare } vessel)
        {
            return new Loaded(weighed.Addition, weighed, weighed.Scale, weighed.AmountPlace, null)
            {
                Files = [weighed.File],
                Checks = [over],
            };
        }

        return new Loaded(weighed.Addition, weighed, weighed.Scale, weighed.AmountPlace, vessel)
        {
            Files = [weighed.File],
            Checks =
            [
                new Check("too much for paper or a boat", mass, Relation.AtLeast, capacity * InAVessel, "g"),
                new Check("more than the scale carries", (weighed.Mass + tare).Grams, Relation.Over, capacity, "g"),
            ],
        };
    }

    /// <summary>
    /// The weights of a stock for which the file names no scale and the shop has none that is assumed, against its largest.
    /// </summary>
    private static IEnumerable<Loaded> OnNoScale(StockFacts stock)
    {
        var largest = stock.Settings.Scales.All(s => s.Capacity is not null)
            ? stock.Settings.Scales.OrderByDescending(s => s.Capacity!.Value).FirstOrDefault()
            : null;
        if (largest?.Capacity is not { Grams: > 0 } capacity)
        {
            yield break;
        }

        foreach (var step in stock.Stock.Steps.OfType<AddStep>())
        {
            var addition = stock.Additions.FirstOrDefault(a => a.Id == step.Id && !a.ThroughAliquot);
            if (addition is { Scale: null, Measure: null }
                && step.Amount is { Value: Portion.ByMass or Portion.PerLitreMass or Portion.ByAmount or Portion.PerLitreAmount } amount)
            {
                yield return new Loaded(addition, null, largest, amount.Place, null)
                {
                    Files = [stock.Stock.File],
                    Checks = [new Check("more than the largest scale carries", addition.Mass.Grams, Relation.Over, capacity.Grams, "g")],
                };
            }
        }
    }

    private static Finding Over(WeighedAmount weighed, RuleContext context)
    {
        var (mass, capacity) = (weighed.Mass.Grams, weighed.Scale.Capacity!.Value.Grams);
        var message = $"{Say.Grams(mass)} of {weighed.Name} is more than '{weighed.Scale.Name}' carries, {Say.Grams(capacity)}. "
            + "An overloaded scale shows an error or a wrong weight, and its cell can be bent for good. "
            + $"{Instead(weighed)}eigh it in {Portions(mass, capacity)}.";
        return context.Find(weighed.AmountPlace, message, Harm.Loss, Odds.Certain) with
        {
            Measured = new Measured("mass", mass, capacity, "g"),
            Values = [new NamedValue("mass", mass, "g"), new NamedValue("capacity", capacity, "g")],
        };
    }

    private static Finding NoRoomForAVessel(WeighedAmount weighed, Vessel vessel, Mass tare, RuleContext context)
    {
        var capacity = weighed.Scale.Capacity!.Value;
        var left = (capacity - weighed.Mass).Grams;
        var gross = (weighed.Mass + tare).Grams;
        var message =
            $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} leaves {Say.Grams(left)} of the {Say.Grams(capacity.Grams)} that "
                + $"'{weighed.Scale.Name}' carries, "
            + $"and the lightest vessel of the shop, '{vessel.Name}', is {Say.Grams(tare.Grams)}. A tared vessel still loads the scale. "
            + (gross - (weighed.Mass.Grams / 2) <= capacity.Grams ? "Weigh in two portions, or in" : "Weigh it in")
                + " a bag or boat that is light enough.";
        return context.Find(weighed.AmountPlace, message, Harm.Habit, Odds.Certain, Certainty.Practice) with
        {
            Measured = new Measured("mass with vessel", gross, capacity.Grams, "g"),
            Values = [new NamedValue("mass with vessel", gross, "g"), new NamedValue("capacity", capacity.Grams, "g")],
            Related = [new RelatedPlace(vessel.Place, "the lightest vessel with a stated tare")],
        };
    }

    /// <summary>A weight no scale of the shop carries, where the file names none.</summary>
    private static Finding CarriedByNone(Loaded verdict, RuleContext context)
    {
        var (addition, largest, capacity) = (verdict.Addition, verdict.Scale, verdict.Scale.Capacity!.Value);
        var message =
            $"No scale of the shop carries {Say.Grams(addition.Mass.Grams)} of {addition.Substance.Name}; the largest, '{largest.Name}', "
                + $"carries {Say.Grams(capacity.Grams)}. "
            + $"How it is weighed is then left to whoever stands there. Weigh it in {Portions(addition.Mass.Grams, capacity.Grams)}, or "
                + "write it in whole bags of known weight.";
        return context.Find(verdict.Place, message, Harm.Damage, Odds.Possible) with
        {
            Measured = new Measured("mass", addition.Mass.Grams, capacity.Grams, "g"),
            Values = [new NamedValue("mass", addition.Mass.Grams, "g"), new NamedValue("capacity", capacity.Grams, "g")],
        };
    }

    private static Vessel? LightestVessel(ShopSettings shop) =>
        shop.Vessels
            .Where(v => v.Tare is { Grams: > 0 })
            .OrderBy(v => v.Tare!.Value)
            .ThenBy(v => v.Name, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>The finest scale of the shop that carries it, as the start of a sentence; else just a capital.</summary>
    private static string Instead(WeighedAmount weighed)
    {
        var other = weighed.Shop.Scales
            .Where(s => s.Readability.Grams > 0)
            .Select(s => new NetWeight(s, weighed.Mass))
            .Where(w => w.Load(null) is ScaleLoad.Within)
            .OrderBy(w => w.Scale.Readability)
            .ThenBy(w => w.Scale.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        return other is null
            ? "W"
            : $"Use '{other.Scale.Name}', which carries {Say.Grams(other.Scale.Capacity!.Value.Grams)} and is right to "
                + $"±{Say.Percent(other.RelativeExpanded ?? 0)} here, or w";
    }

    /// <summary>Equal portions that leave a tenth of the capacity for what they lie in (common practice, no source).</summary>
    private static string Portions(double mass, double capacity)
    {
        var count = Math.Ceiling(Rounding.SixDigits(mass / (0.9 * capacity)));
        return $"{Say.Number(count)} portions of {Say.Grams(mass / count)}";
    }

    /// <summary>One weight and what has to carry it.</summary>
    /// <param name="Weighed">Null where the file names no scale; then <see cref="Scale"/> is the shop's largest.</param>
    /// <param name="Place">The amount.</param>
    /// <param name="Vessel">The lightest of the shop, where the question is whether the scale carries both; has a tare.</param>
    internal sealed record Loaded(AdditionFacts Addition, WeighedAmount? Weighed, Scale Scale, Place Place, Vessel? Vessel) : Verdict;
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>
/// A dose, aliquot or liquid taken with a measure that is too coarse for it, or in more fillings than anyone counts rightly.
/// </summary>
internal sealed class MeasureTooCoarse : WorkspaceRule<MeasureTooCoarse.Taking>, IProposesRepairs
{
    public const string RuleName = "measure-too-coarse";

    private const double TenTimes = 10;

    private static readonly MeasureKind[] _filledByHand =
    [
        MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug,
    ];

    public override string Name => RuleName;

    /// <summary>Whether this rule calls the measure too coarse, with the limit its shop set.</summary>
    internal static bool Reports(RuleContext context, MeasuredVolume taken) =>
        context.Neighbour(RuleName, taken.File) is { } own && Of(taken, own) is { Fires: true, IsByFillings: false };

    protected override IEnumerable<Taking> Judge(Facts facts, RuleContext context) =>
        context.OfEachStockAlone(s => Judged(MeasuredVolume.In(facts, s), context))
            .Concat(context.OfEachRecipeAlone(r => Judged(MeasuredVolume.In(r), context)));

    private static IEnumerable<Taking> Judged(IEnumerable<MeasuredVolume> taken, RuleContext context) =>
        taken.Where(v => v.Pouring.RelativeExpanded is not null).Select(v => Of(v, context.For(v.File)));

    protected override Finding Describe(Taking verdict, RuleContext context) => verdict.IsByFillings
        ? TooManyFillings(verdict.Taken, verdict.Options.Fillings, context)
        : TooCoarse(verdict.Taken, verdict.Options.Limit / 100, context);

    protected override Working Work(Taking verdict, RuleContext context)
    {
        var (pouring, check) = (verdict.Taken.Pouring, verdict.Checks[0]);
        var work = new WorkingBuilder($"{Say.Litres(pouring.Volume.Litres)} {verdict.Taken.What} with '{pouring.Measure.Name}'");
        if (verdict.IsByFillings)
        {
            var fillings = work.Given("fillings", pouring.Fillings, "", "file");
            work.Result("two miscounted", "100 × 2 / fillings", 100 * (Term)2 / fillings, "%");
            return work.Check(check, fillings, work.Option("most", verdict.Options.Fillings)).Done(fillings);
        }

        var relative = UncertaintySteps.OfVolume(work, pouring);
        return work.Check(check, relative, work.Option("limit", verdict.Options.Limit)).Done(relative);
    }

    /// <summary>Another measure of the shop, or more of a weaker stock; fewer fillings of a stronger one.</summary>
    protected override IEnumerable<RepairProposal> Repair(Taking verdict, Finding finding, RepairContext context)
    {
        foreach (var measure in Equipment.OtherMeasures(finding, context))
        {
            yield return measure;
        }

        var entry = verdict.Taken.Entry;
        var taken = context.StockOf(finding) is { } bottle
            ? RepairContext.StepAt(bottle, entry) is AliquotStep { StockFile: { } inner } ? context.Facts.FindStock(inner) : null
            : context.RecipeOf(finding)?.Doses.FirstOrDefault(d => d.Entry.Place.Pointer == entry.Pointer)?.Stock;
        if (taken is null || context.Facts.FindStock(taken.Stock.File) is not { } stock)
        {
            yield break;
        }

        if ((verdict.IsByFillings ? Strength.Stronger(context, stock) : Strength.Weaker(context, stock)) is { } other)
        {
            yield return other;
        }
    }

    private static Taking Of(MeasuredVolume taken, RuleContext context)
    {
        var options = context.Options<MeasureTooCoarseOptions>();
        var unsure =
            new Check("less sure than a volume should be", Rounding.SixDigits(taken.Relative * 100), Relation.Over, options.Limit, "%");
        var many = new Check("more than anyone counts rightly", taken.Pouring.Fillings, Relation.Over, options.Fillings);
        var byFillings = !unsure.Holds && _filledByHand.Contains(taken.Pouring.Measure.Kind) && many.Holds;
        return new Taking(taken, options, byFillings) { Files = [taken.File], Checks = [byFillings ? many : unsure] };
    }

    private static Finding TooCoarse(MeasuredVolume taken, double limit, RuleContext context)
    {
        var (pouring, measure) = (taken.Pouring, taken.Pouring.Measure);
        var times = pouring.Fillings > 1 ? $" in {pouring.Fillings} fillings" : "";
        var known = measure.Tolerance is null ? $", the usual limit of such a {Kind(measure)}" : "";
        var message =
            $"{Say.Litres(pouring.Volume.Litres)} {taken.What} taken with '{measure.Name}'{times} is only known to "
                + $"±{Say.Percent(taken.Relative)}"
            + $" (±{Say.Litres(pouring.Limit.Litres)} a filling{known}). "
            + "Every element it brings can be off by as much. "
            + Remedy(taken, limit);
        return context.Find(
            taken.Place,
            message,
            ElementTooUncertain.HarmOf(taken.Relative, context, taken.File),
            Odds.Certain,
            measure.Tolerance is null ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("relative expanded uncertainty", taken.Relative * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("volume", pouring.Volume.Millilitres, "mL"),
                new NamedValue("fillings", pouring.Fillings, ""),
                new NamedValue("standard uncertainty", pouring.Standard.Millilitres, "mL"),
                new NamedValue("relative expanded uncertainty", taken.Relative * 100, "%"),
            ],
            Related = [new RelatedPlace(measure.Place, "the measure")],
        };
    }

    private static string Remedy(MeasuredVolume taken, double limit)
    {
        var volume = taken.Pouring.Volume;
        if (MeasureAdvice.BestOf(taken.Shop, volume) is var (own, relative) && relative <= limit && own != taken.Pouring.Measure)
        {
            return $"Take '{own.Name}', which is right to ±{Say.Percent(relative)} here.";
        }

        var other = MayBeDiluted(taken) ? "dilute it first and take ten times as much" : "weigh it";
        return MeasureAdvice.ToBuy(volume, limit) is { } bought ? $"Take {bought}, or {other}." : $"{Say.Capital(other)}.";
    }

    /// <summary>
    /// Nine parts of water to one of it: there is room for so much more where it goes, and nothing falls out of it on the way. A liquid as
    /// it is bought may be an acid or a lye, of which a scale takes as little as well.
    /// </summary>
    private static bool MayBeDiluted(MeasuredVolume taken) => taken.Drawn is { } stock
        && (TenTimes - 1) * taken.Pouring.Volume.Litres <= taken.Room.Litres
        && HazardGate.Of(stock).Hazards.All(h => !h.ForbidsPutting)
        && StateTrial.WithWater(stock.Chemistry.Mixing, TenTimes - 1, [], DepositOptions.Of(stock.Settings)) is { Helps: true };

    private static Finding TooManyFillings(MeasuredVolume taken, double limit, RuleContext context)
    {
        var (fillings, name) = (taken.Pouring.Fillings, taken.Pouring.Measure.Name);
        var message = $"{Say.Litres(taken.Pouring.Volume.Litres)} {taken.What} takes {fillings} fillings of '{name}'. "
            + $"Whoever loses count by two is off by {Say.Percent(2.0 / fillings)}, and the time it takes invites it. "
            + "Take a larger measure, or weigh the dose.";
        return context.Find(taken.Place, message, Harm.Habit, Odds.Certain, Certainty.Practice) with
        {
            Measured = new Measured("fillings", fillings, limit, ""),
            Values = [new NamedValue("fillings", fillings, "")],
        };
    }

    private static string Kind(Measure measure) => measure.Kind switch
    {
        MeasureKind.Cylinder => "cylinder",
        MeasureKind.Flask => "flask",
        MeasureKind.Pipette => "pipette",
        MeasureKind.Syringe => "syringe",
        MeasureKind.Injector => "injector",
        MeasureKind.Jug => "jug",
        MeasureKind.Dropper => "dropper",
        _ => "spoon",
    };

    /// <summary>One volume and the measure it is taken with.</summary>
    /// <param name="IsByFillings">True where it is known well enough, but in too many fillings.</param>
    internal sealed record Taking(MeasuredVolume Taken, MeasureTooCoarseOptions Options, bool IsByFillings) : Verdict;
}

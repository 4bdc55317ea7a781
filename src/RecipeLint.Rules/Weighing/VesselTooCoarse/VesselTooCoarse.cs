using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>A stock brought to its volume in something whose marks are too rough for it.</summary>
internal sealed class VesselTooCoarse : StockRule<VesselTooCoarse.Made>, IProposesRepairs
{
    public const string RuleName = "vessel-too-coarse";

    /// <summary>Density of water at 20 °C, kg/L: CIPM/IAPWS water tables, recalled.</summary>
    private const double KilogramsPerLitre = 0.9982;

    public override string Name => RuleName;

    /// <summary>
    /// Whether this rule finds the volume of a stock too uncertain, with the limit its shop set; so does one that overflows.
    /// </summary>
    internal static bool Reports(RuleContext context, StockFacts stock) =>
        context.Neighbour(RuleName, stock.Stock.File) is { } own && Of(stock, own).Checks[0].Holds;

    protected override IEnumerable<Made> Judge(StockFacts stock, RuleContext context) => [Of(stock, context)];

    protected override Finding Describe(Made verdict, RuleContext context)
    {
        var (stock, finished, relative, limit) = (verdict.Stock, verdict.Finished!, verdict.Relative, verdict.Limit / 100);
        var (pouring, name) = (finished.Pouring, finished.Pouring.Measure.Name);
        var size = pouring.Measure.Capacity is { } capacity
            ? $" (holds {Say.Litres(capacity.Litres)}, marks good to ±{Say.Litres(pouring.Limit.Litres)})"
            : "";
        var best = finished.IsStated ? "," : ", and the shop has no better measure for it,";
        var message =
            $"'{stock.Stock.Name}' is brought to {Say.Litres(stock.Volume.Litres)} in '{name}'{size}{best} so its volume is only known to "
                + $"±{Say.Percent(relative)}. "
            + "Everything in the bottle is too strong or too weak by as much. "
            + Remedy(stock.Volume, limit);
        return context.Find(
            finished.Place, message, Harm.Damage, Odds.Certain, pouring.LimitIsAssumed ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("relative expanded uncertainty", relative * 100, limit * 100, "%"),
            Values = [new NamedValue("standard uncertainty", pouring.Standard.Millilitres, "mL"), new NamedValue(
                "relative expanded uncertainty", relative * 100, "%")],
            Related = pouring.Measure.Place.File == finished.Place.File ? [] : [new RelatedPlace(pouring.Measure.Place, "the vessel")],
        };
    }

    protected override Working Work(Made verdict, RuleContext context)
    {
        if (verdict.Finished is not { } finished)
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var assumed = finished.IsStated ? "" : ", the best there is";
        var work = new WorkingBuilder($"'{verdict.Stock.Stock.Name}' brought to {Say.Litres(verdict.Stock.Volume.Litres)} in "
            + $"'{finished.Pouring.Measure.Name}'{assumed}");
        var relative = UncertaintySteps.OfVolume(work, finished.Pouring);
        work.Check(verdict.Checks[0], relative, work.Option("limit", verdict.Limit));
        return work.Statements(verdict).Done(relative);
    }

    /// <summary>Another vessel or flask of the shop.</summary>
    protected override IEnumerable<RepairProposal> Repair(Made verdict, Finding finding, RepairContext context) =>
        Equipment.OtherVessels(finding, context);

    private static Made Of(StockFacts stock, RuleContext options)
    {
        var limit = options.Options<VesselTooCoarseOptions>().Limit;
        if (FinishedVolume.Of(stock) is not { Pouring.RelativeExpanded: { } expanded } finished)
        {
            return new Made(stock, null, 0, limit) { Checks = [Check.That("a vessel or a measure of the shop is known", false)] };
        }

        var relative = Rounding.SixDigits(expanded);
        var unsure = new Check("less sure than a finished volume should be", Rounding.SixDigits(relative * 100), Relation.Over, limit, "%");

        // A vessel that is too small is another rule's to report.
        var overflows = finished.Pouring.Measure.Capacity is { } capacity && capacity < finished.Pouring.Volume;
        return new Made(stock, finished, relative, limit)
        {
            Checks = overflows ? [unsure, Check.That("the batch fits the vessel (else vessel-too-small speaks)", false)] : [unsure],
        };
    }

    private static string Remedy(Volume volume, double limit)
    {
        var cylinder = MeasureAdvice.ToBuy(volume, limit) is { } bought ? $"Bring it to the mark in {bought}, or put" : "Put";
        return $"{cylinder} a mark on the vessel where {Say.Grams(volume.Litres * KilogramsPerLitre * 1000)} of water at 20 °C stands in "
            + "it, weighed in.";
    }

    /// <summary>How well the volume of one stock is known.</summary>
    /// <param name="Finished">Null where neither a vessel nor a measure is known, or nothing is made.</param>
    /// <param name="Relative">Expanded uncertainty (k = 2) as a fraction, to six digits.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Made(StockFacts Stock, FinishedVolume? Finished, double Relative, NumberOption Limit) : Verdict;
}

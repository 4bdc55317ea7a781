using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A stock brought to its volume in something whose marks are too rough for it.</summary>
public sealed class VesselTooCoarse : StockRule, IProposesRepairs
{
    private const string RuleName = "vessel-too-coarse";

    private const string LimitOption = "limit";

    /// <summary>Density of water at 20 °C, kg/L: CIPM/IAPWS water tables, recalled.</summary>
    private const double KilogramsPerLitre = 0.9982;

    public override string Name => RuleName;

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var limit = context.Number(LimitOption) / 100;
        if (FinishedVolume.Of(stock) is not { } finished || RelativeOf(finished) is not { } relative || relative <= limit || Overflows(finished))
        {
            yield break;
        }

        var (pouring, name) = (finished.Pouring, finished.Pouring.Measure.Name);
        var size = pouring.Measure.Capacity is { } capacity ? $" (holds {Say.Litres(capacity.Litres)}, marks good to ±{Say.Litres(pouring.Limit.Litres)})" : "";
        var best = finished.IsStated ? "," : ", and the shop has no better measure for it,";
        var message = $"'{stock.Stock.Name}' is brought to {Say.Litres(stock.Volume.Litres)} in '{name}'{size}{best} so its volume is only known to ±{Say.Percent(relative)}. "
            + "Everything in the bottle is too strong or too weak by as much. "
            + Remedy(stock.Volume, limit);
        yield return context.Find(finished.Place, message, null, pouring.LimitIsAssumed ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("relative expanded uncertainty", relative * 100, limit * 100, "%"),
            Values = [new NamedValue("standard uncertainty", pouring.Standard.Millilitres, "mL"), new NamedValue("relative expanded uncertainty", relative * 100, "%")],
            Related = pouring.Measure.Place.File == finished.Place.File ? [] : [new RelatedPlace(pouring.Measure.Place, "the vessel")],
        };
    }

    /// <summary>Whether this rule reports the stock, with the limit its shop set.</summary>
    internal static bool Reports(Facts facts, StockFacts stock) =>
        ShopOption.Of(facts, stock.Stock.File, RuleName, LimitOption) is { } limit
        && FinishedVolume.Of(stock) is { } finished
        && RelativeOf(finished) > limit / 100;

    /// <summary>A vessel that is too small is another rule's to report.</summary>
    internal static bool Overflows(FinishedVolume finished) =>
        finished.Pouring.Measure.Capacity is { } capacity && capacity < finished.Pouring.Volume;

    private static double? RelativeOf(FinishedVolume finished) =>
        finished.Pouring.RelativeExpanded is { } relative ? Rounding.SixDigits(relative) : null;

    private static string Remedy(Volume volume, double limit)
    {
        var cylinder = MeasureAdvice.ToBuy(volume, limit) is { } bought ? $"Bring it to the mark in {bought}, or put" : "Put";
        return $"{cylinder} a mark on the vessel where {Say.Grams(volume.Litres * KilogramsPerLitre * 1000)} of water at 20 °C stands in it, weighed in.";
    }

    /// <summary>Another vessel or flask of the shop.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Equipment.OtherVessels(finding, context);
}

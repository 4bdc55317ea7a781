using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch that does not fit the vessel it is mixed in.</summary>
public sealed class VesselTooSmall : StockRule, IProposesRepairs
{
    public override string Name => "vessel-too-small";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Vessel is not { } named
            || stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) is not { Capacity: { } capacity } vessel
            || Rounding.SixDigits(stock.Volume / capacity) <= 1)
        {
            yield break;
        }

        var others = stock.Settings.Vessels.Where(v => v.Capacity >= stock.Volume).OrderBy(v => v.Capacity).Select(v => v.Name).ToList();
        var instead = others.Count > 0 ? $"Mix it in '{others[0]}'" : "Name a larger vessel";
        yield return context.Find(
            named.Place,
            $"'{vessel.Name}' holds {Say.Litres(capacity.Litres)}, but the batch is {Say.Litres(stock.Volume.Litres)}: {Say.Litres((stock.Volume - capacity).Litres)} does not fit. "
            + "A batch split between vessels has no mark to top up to, and the parts differ. "
            + $"{instead}, or make {Say.Litres(capacity.Litres)} or less at a time.") with
        {
            Measured = new Measured("batch", stock.Volume.Litres, capacity.Litres, "L"),
            Related = [new RelatedPlace(vessel.Place, "its capacity")],
            Values = [new NamedValue("batch", stock.Volume.Litres, "L"), new NamedValue("capacity", capacity.Litres, "L")],
        };
    }

    /// <summary>Another vessel of the shop, or a smaller batch.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        Equipment.OtherVessels(finding, context).Concat(context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : []);
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch that does not fit the vessel it is mixed in.</summary>
internal sealed class VesselTooSmall : StockRule<BatchInVessel>, IProposesRepairs
{
    public const string RuleName = "vessel-too-small";

    public override string Name => RuleName;

    protected override IEnumerable<BatchInVessel> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Vessel is not { } named
            || stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value) is not { Capacity: { } capacity } vessel)
        {
            yield return new BatchInVessel(stock, default, null,
                null)
            { Checks = [Check.That("it names a vessel of the shop whose capacity is known", false)] };
            yield break;
        }

        var batch = new Check("more than it holds", Rounding.SixDigits(stock.Volume.Litres), Relation.Over,
            Rounding.SixDigits(capacity.Litres), "L");
        yield return new BatchInVessel(stock, capacity, vessel.Place, batch) { Checks = [batch] };
    }

    protected override Finding Describe(BatchInVessel verdict, RuleContext context)
    {
        var (stock, capacity, named) = (verdict.Stock, verdict.Capacity, verdict.Stock.Stock.Vessel!);
        var others = stock.Settings.Vessels.Where(v => v.Capacity >= stock.Volume).OrderBy(v => v.Capacity).Select(v => v.Name).ToList();
        var instead = others.Count > 0 ? $"Mix it in '{others[0]}'" : "Name a larger vessel";
        return context.Find(
            named.Place,
            $"'{named.Value}' holds {Say.Litres(capacity.Litres)}, but the batch is {Say.Litres(stock.Volume.Litres)}: "
                + $"{Say.Litres((stock.Volume - capacity).Litres)} does not fit. "
            + "A batch split between vessels has no mark to top up to, and the parts differ. "
            + $"{instead}, or make {Say.Litres(capacity.Litres)} or less at a time.",
            Harm.Loss,
            Odds.Certain) with
        {
            Measured = new Measured("batch", stock.Volume.Litres, capacity.Litres, "L"),
            Related = [new RelatedPlace(verdict.VesselPlace!, "its capacity")],
            Values = [new NamedValue("batch", stock.Volume.Litres, "L"), new NamedValue("capacity", capacity.Litres, "L")],
        };
    }

    protected override Working Work(BatchInVessel verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the vessel of '{verdict.Stock.Stock.Name}'");
        if (verdict.Batch is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        var batch = work.Given("the batch", verdict.Stock.Volume.Litres, "L", From.File);
        var holds = work.Given($"'{verdict.Stock.Stock.Vessel!.Value}' holds", verdict.Capacity.Litres, "L", "shop's settings");
        work.Result("left over", "batch - capacity", batch - holds, "L");
        return work.Check(check, batch, holds).Done(batch);
    }

    /// <summary>Another vessel of the shop, or a smaller batch.</summary>
    protected override IEnumerable<RepairProposal> Repair(BatchInVessel verdict, Finding finding, RepairContext context) =>
        Equipment.OtherVessels(finding, context).Concat(context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : []);
}

/// <summary>A batch and the vessel it is mixed in.</summary>
/// <param name="VesselPlace">Null where no vessel of the shop is named.</param>
internal sealed record BatchInVessel(StockFacts Stock, Volume Capacity, Place? VesselPlace, Check? Batch) : Verdict;

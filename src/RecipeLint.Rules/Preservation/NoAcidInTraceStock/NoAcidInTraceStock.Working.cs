using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>How near the hydroxides are, or what an ordinary water does.</summary>
internal sealed partial class NoAcidInTraceStock
{
    protected override Working Work(UnacidifiedMetals verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"metal hydroxides in '{verdict.Stock.Stock.Name}'");
        if (verdict.Concentrate is { } concentrate)
        {
            work.Check(concentrate, work.Given("most of a trace metal that no chelate holds", concentrate.Value, "mol/L", From.Engine),
                concentrate.Limit);
        }

        var value = verdict switch
        {
            MetalsAtTheEdge edge => AtTheEdge(work, edge, context),
            MetalsInTapWater tap => InTapWater(work, tap, context),
            _ => null,
        };
        return work.Statements(verdict).Done(value);
    }

    private static Term AtTheEdge(WorkingBuilder work, MetalsAtTheEdge verdict, RuleContext context)
    {
        var (metal, solid) = (verdict.Metal, verdict.Solid);
        var (_, index) = Saturation.Write(work, verdict.State.Clear!, solid);
        var count = Settled.CountOf(solid, metal.Component);
        var share = work.Result(
            $"{metal.Name} there against {metal.Name} that would be saturated", $"100 × 10^(index / {((Term)count).Text})",
                100 * Term.TenTo(index / count), "%");
        work.Check(verdict.Edge, share, work.Option("limit", context.Options<NoAcidInTraceStockOptions>().CloseTo));
        return share;
    }

    private static Term InTapWater(WorkingBuilder work, MetalsInTapWater verdict, RuleContext context)
    {
        work.Remark("Clear as it stands. The file does not say which water it is made with; with ordinary tap water:");
        var litres = work.Given("water whose kind is open", verdict.OpenLitres, "L", From.File);
        var alkalinity = work.Option("alkalinity of ordinary water", context.Options<NoAcidInTraceStockOptions>().OrdinaryAlkalinity);
        work.Result("alkalinity it brings", "litres × meq/L", litres * alkalinity, "meq");
        var percent = work.Given($"{verdict.Metal.Name} that falls out then", verdict.Lost.Value, "%", From.Engine);
        work.Check(verdict.Lost, percent, work.Option("limit", context.Options<NoAcidInTraceStockOptions>().MostLost));
        return percent;
    }
}

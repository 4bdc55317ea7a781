using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>
/// What the hazard gate sees in a stock and no rule of its own speaks of: pressure, poisonous gas, runaway, boiling.
/// </summary>
internal sealed class GasOrHeatInStock : StockRule<VesselHazard>, IProposesRepairs
{
    public const string RuleName = "gas-or-heat-in-stock";

    public override string Name => RuleName;

    protected override IEnumerable<VesselHazard> Judge(StockFacts stock, RuleContext context)
    {
        var hazards = HazardGate.Of(stock).Present.Where(IsOwn).ToList();
        return hazards.Count == 0
            ? [VesselHazard.None(stock.Stock.Place, stock.Stock.Name)]
            : hazards.Select(h => VesselHazard.Of(stock.Stock.Place, stock.Stock.Name, h));
    }

    protected override Finding Describe(VesselHazard verdict, RuleContext context) => verdict.Describe(context);

    protected override Working Work(VesselHazard verdict, RuleContext context) => verdict.Work();

    /// <summary>One of the two out.</summary>
    protected override IEnumerable<RepairProposal> Repair(VesselHazard verdict, Finding finding, RepairContext context) =>
        Additions.DropOneOf(finding, context);

    /// <summary>
    /// Bleach of known strength, peroxide with iron, copper or manganese, nitric acid or an oxidiser with organic matter, what ferments and
    /// what nobody can name are the matter of other rules; gas of which an open vessel lets little off, heat below boiling, and that of
    /// acid in water alone are no finding.
    /// </summary>
    private static bool IsOwn(Hazard hazard) => hazard.Kind switch
    {
        HazardKind.OxygenPressure => !VesselHazard.IsOfMetals(hazard),
        HazardKind.HydrogenSulfide or HazardKind.SulfurDioxide => true,
        HazardKind.AcidFumes or HazardKind.Ammonia => true,
        HazardKind.Chlorine or HazardKind.Chloramines => hazard.From is { Moles.Count: 0 },
        HazardKind.NitrogenOxides => hazard.With is not { } with || !with.Is(HazardRole.Organic) || hazard.From!.Is(HazardRole.Nitrite),
        HazardKind.Runaway => hazard.From is { } from && !from.Is(HazardRole.Peroxide) && !from.Is(HazardRole.Hypochlorite),
        HazardKind.CarbonDioxidePressure => hazard.Grade == HazardGrade.Grave,
        HazardKind.Heat => hazard is { Grade: HazardGrade.Grave, With: not null },
        _ => false,
    };
}

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

    /// <summary>Days in which little ferments (common practice, no source).</summary>
    private const double DaysFresh = 7;

    public override string Name => RuleName;

    protected override IEnumerable<VesselHazard> Judge(StockFacts stock, RuleContext context)
    {
        var hazards = HazardGate.Of(stock).PresentBesides(h => IsSaid(h, stock, context)).Where(Counts).ToList();

        // What nobody can name is said where nothing that can be named is.
        var named = hazards.Where(h => h.Kind != HazardKind.UnknownContents).ToList();
        hazards = named.Count > 0 ? named : hazards;
        hazards = KeptPeroxide.Of(stock) is { } slow ? [.. hazards, slow] : hazards;
        return hazards.Count == 0
            ? [VesselHazard.None(stock.Stock.Place, stock.Stock.Name)]
            : VesselHazard.Of(stock.Stock.Place, stock.Stock.Name, hazards);
    }

    protected override Finding Describe(VesselHazard verdict, RuleContext context) => verdict.Describe(context);

    protected override Working Work(VesselHazard verdict, RuleContext context) => verdict.Work();

    /// <summary>One of the two out; of heat alone more water first, of what ferments a short life.</summary>
    protected override IEnumerable<RepairProposal> Repair(VesselHazard verdict, Finding finding, RepairContext context) =>
        (verdict.Hazard, context.StockOf(finding)) switch
        {
            ({ Kind: HazardKind.Heat, With: null }, { } stock) => Pours.MostWaterFirst(context, stock),
            ({ Kind: HazardKind.FermentationPressure }, { } stock) => [Keep.For(context, stock, DaysFresh)],
            ({ Kind: HazardKind.OxygenPressure, With: null }, { } stock) => [Keep.Cooler(context, stock)],
            _ => Additions.DropOneOf(finding, context),
        };

    /// <summary>
    /// Whatever makes the gate refuse, what ferments in a bottle that is kept, and water onto a lye. Gas of which an open vessel lets
    /// little off and heat below boiling are no finding.
    /// </summary>
    private static bool Counts(Hazard hazard) =>
        hazard.Forbids(VesselAction.Order) || hazard.Kind == HazardKind.FermentationPressure
        || hazard is { Kind: HazardKind.Heat, IsWhereTheyMeet: true };

    /// <summary>True when a rule of its own speaks of it in this stock.</summary>
    private static bool IsSaid(Hazard hazard, StockFacts stock, RuleContext context)
    {
        RuleContext? Own(string rule) => context.Neighbour(rule, stock.Stock.File);
        return hazard.Kind switch
        {
            HazardKind.Chlorine => Own(HypochloriteWithAcid.RuleName) is { } own && HypochloriteWithAcid.Judged(stock, own).Fires,
            HazardKind.Chloramines =>
                Own(HypochloriteWithAmmonium.RuleName) is { } own && HypochloriteWithAmmonium.Judged(stock, own).Fires,
            HazardKind.NitrogenOxides when hazard.IsWhereTheyMeet =>
                Own(NitricWithOrganic.RuleName) is { } own && NitricWithOrganic.Judged(stock, own).Any(v => v.Fires),
            HazardKind.Fire or HazardKind.Runaway when hazard.IsWhereTheyMeet =>
                Own(OxidiserWithOrganic.RuleName) is { } own && OxidiserWithOrganic.Judged(stock, own).Any(v => v.Fires),
            HazardKind.Heat when hazard.IsWhereTheyMeet =>
                Own(WaterOntoAcid.RuleName) is { } own && WaterOntoAcid.Judged(stock, own).Any(v => v.Fires),
            _ => false,
        };
    }
}

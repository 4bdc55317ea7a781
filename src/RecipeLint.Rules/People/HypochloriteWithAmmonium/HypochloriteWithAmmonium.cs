using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Bleach with ammonium, urea or glycine in one stock: chloramines.</summary>
internal sealed class HypochloriteWithAmmonium : StockRule<Chlorine>, IProposesRepairs
{
    public const string RuleName = "hypochlorite-with-ammonium";

    public override string Name => RuleName;

    protected override IEnumerable<Chlorine> Judge(StockFacts stock, RuleContext context) => [Judged(stock, context)];

    /// <summary>What this rule finds, for one that leaves it to this rule.</summary>
    internal static Chlorine Judged(StockFacts stock, RuleContext own)
    {
        var partner = Check.That("ammonium, urea or glycine goes in too", stock.Additions.Any(
            a => HazardGate.NitrogenCarriers.Any(n => Reactants.Brings(a, n))));
        return Chlorine.Of(stock, partner, own.Options<HypochloriteWithAmmoniumOptions>().ChlorineFrom);
    }

    protected override Finding Describe(Chlorine verdict, RuleContext context)
    {
        var (stock, bleach, chlorine) = (verdict.Stock, verdict.Bleach!, verdict.GramsPerLitre);
        var partner = stock.Additions.Where(a => HazardGate.NitrogenCarriers.Any(n => Reactants.Brings(a, n)))
            .OrderByDescending(a => HazardGate.NitrogenCarriers.Sum(n => a.ComponentMoles.GetValueOrDefault(n)))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .First();
        var moles = Math.Min(
            chlorine * stock.Volume.Litres / Reactants.ChlorineGramsPerMole,
            stock.Additions.Sum(a => HazardGate.NitrogenCarriers.Sum(n => a.ComponentMoles.GetValueOrDefault(n))));
        return context.Find(
            bleach.Place,
            $"{Say.Capital(bleach.Substance.Name)} and {partner.Substance.Name} in one stock form chloramines: up to {Say.Number(moles)} "
                + "mol in this batch. "
            + "They are irritant gases that harm the lungs, and with much bleach the explosive nitrogen trichloride can form. "
            + "Never bring them together, not even in a waste bottle; leave one of them out and follow the safety data sheets.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured("available chlorine", chlorine * 1000, verdict.Limit, "mg/L"),
            Values = [new NamedValue("available chlorine", chlorine * 1000, "mg/L"), new NamedValue("chloramine", moles, "mol")],
            Related = [new RelatedPlace(partner.Place, "brings the ammonium, urea or glycine")],
        };
    }

    protected override Working Work(Chlorine verdict, RuleContext context) => verdict.Work();

    /// <summary>One of the two out.</summary>
    protected override IEnumerable<RepairProposal> Repair(Chlorine verdict, Finding finding, RepairContext context) =>
        Additions.DropOneOf(finding, context);
}

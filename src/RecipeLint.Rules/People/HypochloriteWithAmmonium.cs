using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Bleach with ammonium, urea or glycine in one stock: chloramines.</summary>
public sealed class HypochloriteWithAmmonium : StockRule, IProposesRepairs
{
    /// <summary>What bleach turns to chloramines, as the hazard gate has it.</summary>
    internal static IReadOnlyList<string> Nitrogen => HazardGate.NitrogenCarriers;

    public override string Name => "hypochlorite-with-ammonium";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var chlorine = Reactants.ChlorineGramsPerLitre(stock);
        var bleach = stock.Additions.FirstOrDefault(a => Reactants.Brings(a, Reactants.Hypochlorite));
        var partner = stock.Additions.Where(a => Nitrogen.Any(n => Reactants.Brings(a, n)))
            .OrderByDescending(a => Nitrogen.Sum(n => a.ComponentMoles.GetValueOrDefault(n)))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .FirstOrDefault();
        if (bleach is null || partner is null || Rounding.SixDigits(chlorine * 1000) < context.Number("chlorineFrom"))
        {
            yield break;
        }

        var moles = Math.Min(
            chlorine * stock.Volume.Litres / Reactants.ChlorineGramsPerMole,
            stock.Additions.Sum(a => Nitrogen.Sum(n => a.ComponentMoles.GetValueOrDefault(n))));
        yield return context.Find(
            bleach.Place,
            $"{Say.Capital(bleach.Substance.Name)} and {partner.Substance.Name} in one stock form chloramines: up to {Say.Number(moles)} mol in this batch. "
            + "They are irritant gases that harm the lungs, and with much bleach the explosive nitrogen trichloride can form. "
            + "Never bring them together, not even in a waste bottle; leave one of them out and follow the safety data sheets.") with
        {
            Measured = new Measured("available chlorine", chlorine * 1000, context.Number("chlorineFrom"), "mg/L"),
            Values = [new NamedValue("available chlorine", chlorine * 1000, "mg/L"), new NamedValue("chloramine", moles, "mol")],
            Related = [new RelatedPlace(partner.Place, "brings the ammonium, urea or glycine")],
        };
    }

    /// <summary>One of the two out.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Additions.DropOneOf(finding, context);
}

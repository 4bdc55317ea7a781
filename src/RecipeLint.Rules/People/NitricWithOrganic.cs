using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Strong nitric acid and organic matter in one vessel without enough water between them.</summary>
public sealed class NitricWithOrganic : StockRule, IProposesRepairs
{
    public override string Name => "nitric-with-organic";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Additions.Any(a => Reactants.IsNitricAcid(a.Substance)))
        {
            yield break;
        }

        var strong = context.Number("nitricFrom");
        var organic = context.Number("organicFrom");
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0))
        {
            // Where the stream enters, what is poured meets what stands there undiluted.
            var before = (Nitric: 100 * Reactants.Share(moment.Before, Reactants.IsNitricAcid), Organic: 100 * Reactants.Share(moment.Before, Reactants.IsOrganic));
            var after = 100 * Reactants.Share(moment.After, Reactants.IsNitricAcid);
            var acid = moment.Added.LastOrDefault(a => Reactants.IsNitricAcid(a.Substance));
            var fuel = moment.Added.LastOrDefault(a => Reactants.IsOrganic(a.Substance));
            var pouredAcid = acid is null || moment.Added.Count > 1 ? 0 : Strength(acid);
            var pouredFuel = fuel is null || moment.Added.Count > 1 ? 0 : Strength(fuel);
            var nitric = pouredAcid >= strong && Rounding.SixDigits(before.Organic) >= organic ? pouredAcid
                : Rounding.SixDigits(before.Nitric) >= strong && pouredFuel >= organic ? before.Nitric
                : Rounding.SixDigits(after) >= strong && moment.After.Additions.Any(a => Reactants.IsOrganic(a.Substance)) ? after
                : 0;
            if (nitric <= 0)
            {
                continue;
            }

            var other = moment.After.Additions.LastOrDefault(a => acid is null ? Reactants.IsNitricAcid(a.Substance) : Reactants.IsOrganic(a.Substance));
            var name = (acid is null ? fuel : other)?.Substance.Name ?? "organic matter";
            yield return context.Find(
                moment.Step.Place,
                $"Nitric acid of {Say.Number(nitric)} % meets {name} with too little water between them; the limit is {Say.Number(strong)} %. "
                + "So strong it oxidises organic matter, sometimes only after a while, with heat, brown poisonous fumes and bursting vessels. "
                + "Dilute each in most of the water first, as in a weak stock, where the two get along, or use separate stocks, and never close a vessel in which they met; the safety data sheets decide.") with
            {
                Measured = new Measured("nitric acid where they meet", nitric, strong, "%"),
                Values = [new NamedValue("nitric acid where they meet", nitric, "%")],
                Related = other is null || other.Place == moment.Step.Place ? [] : [new RelatedPlace(other.Place, "already in the vessel")],
            };
            yield break;
        }
    }

    internal static double Strength(AdditionFacts addition) =>
        addition.Mass.Grams > 0 ? Rounding.SixDigits(100 * VesselContents.PureGrams(addition) / addition.Mass.Grams) : 0;

    /// <summary>More water between the two, or one of them out.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Pours.KeepApart(finding, context);
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Peroxide, strong hypochlorite or a dry oxidising salt together with organic matter. Nitric acid has a rule of its own.</summary>
public sealed class OxidiserWithOrganic : StockRule, IProposesRepairs
{
    public override string Name => "oxidiser-with-organic";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0 && m.Added.All(a => !a.ThroughAliquot)))
        {
            if (Wet(moment, context) is { } wet)
            {
                yield return wet;
                yield break;
            }

            if (Dry(moment, context) is { } dry)
            {
                yield return dry;
                yield break;
            }
        }
    }

    /// <summary>A peroxide or bleach at the strength it has where it meets the organic matter.</summary>
    private static Finding? Wet(MixingStep moment, RuleContext context)
    {
        var organic = context.Number("organicFrom");
        foreach (var (component, what, limit) in new[] { (Reactants.Peroxide, "hydrogen peroxide", context.Number("peroxideFrom")), (Reactants.Hypochlorite, "hypochlorite", context.Number("hypochloriteFrom")) })
        {
            bool Oxidises(Substance s) => s.Form == PhysicalForm.Liquid && s.Dissolves.Any(d => d.Component == component && d.MolesPerGram > 0);

            // Bleach with an acid is chlorine gas first of all, and said by that rule.
            bool Burns(Substance s) => Reactants.IsOrganic(s) && (component != Reactants.Hypochlorite || s.Kind != SubstanceKind.Acid);

            if (!moment.After.Additions.Any(a => Oxidises(a.Substance)))
            {
                continue;
            }

            var added = moment.Added[^1];
            var strength = 100 * VesselContents.PureGrams(added) / added.Mass.Grams;
            var before = 100 * Reactants.Share(moment.Before, Oxidises);
            var after = 100 * Reactants.Share(moment.After, Oxidises);
            var met = Oxidises(added.Substance) && 100 * Reactants.Share(moment.Before, Burns) >= organic ? strength
                : Burns(added.Substance) && strength >= organic ? before
                : moment.After.Additions.Any(a => Burns(a.Substance)) ? after
                : 0;
            if (Rounding.SixDigits(met) < limit || moment.After.Additions.LastOrDefault(a => Burns(a.Substance)) is not { } fuel)
            {
                continue;
            }

            var partner = moment.After.Additions.Last(a => Oxidises(a.Substance) != Oxidises(added.Substance) && (Oxidises(a.Substance) || Burns(a.Substance)));
            return context.Find(
                moment.Step.Place,
                $"{Say.Capital(what)} of {Say.Number(met)} % meets {fuel.Substance.Name} in this step: from {Say.Number(limit)} % on it reacts with organic matter, with heat and gas, and suddenly where there are traces of iron, copper or manganese. "
                + "It also destroys the chelate or preservative it meets. "
                + "Keep the two in separate stocks, or dilute the oxidiser in most of the water first, and follow the safety data sheets; never close the vessel tightly.") with
            {
                Measured = new Measured(what + " where they meet", met, limit, "%"),
                Values = [new NamedValue(what + " where they meet", met, "%"), new NamedValue("limit", limit, "%")],
                Related = partner.Place == moment.Step.Place ? [] : [new RelatedPlace(partner.Place, "already in the vessel")],
            };
        }

        return null;
    }

    /// <summary>Oxidising solids and organic matter in a vessel into which no water has come yet.</summary>
    private static Finding? Dry(MixingStep moment, RuleContext context)
    {
        if (moment.After.FreeWaterGrams > 0)
        {
            return null;
        }

        var oxidisers = moment.After.Additions.Where(a => a.Substance.Hazards?.Statements.Contains("H272") == true).ToList();
        var fuels = moment.After.Additions.Where(a => a.Substance.FeedsMicrobes || a.Substance.Kind == SubstanceKind.Organic).ToList();
        if (oxidisers.Count == 0 || fuels.Count == 0)
        {
            return null;
        }

        var fuel = fuels.Sum(f => f.Mass.Grams);
        var share = 100 * fuel / (fuel + oxidisers.Sum(o => o.Mass.Grams));
        if (Rounding.SixDigits(share) <= context.Number("combustibleFrom"))
        {
            return null;
        }

        return context.Find(
            moment.Step.Place,
            $"{Say.Capital(oxidisers[0].Substance.Name)} and {fuels[0].Substance.Name} lie together in a dry vessel: {Say.Number(share)} % of organic matter in an oxidiser, over the limit of {Say.Number(context.Number("combustibleFrom"))} %; such a mixture can burn fiercely, even without air. "
            + "A spark, hot metal or rubbing can set it off. "
            + "Pour the water first and dissolve one after the other in it; never premix or grind them dry, and follow the safety data sheets.",
            Level.Warning) with
        {
            Measured = new Measured("organic matter in the dry oxidiser", share, context.Number("combustibleFrom"), "%"),
            Values = [new NamedValue("organic matter in the dry oxidiser", share, "%")],
        };
    }

    /// <summary>More water between the two, or one of them out.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Pours.KeepApart(finding, context);
}

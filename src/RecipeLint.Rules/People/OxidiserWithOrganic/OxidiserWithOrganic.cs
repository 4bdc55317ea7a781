using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Peroxide, strong hypochlorite or a dry oxidising salt together with organic matter. Nitric acid has a rule of its own.</summary>
internal sealed class OxidiserWithOrganic : StockRule<OxidiserWithOrganic.Vessel>, IProposesRepairs
{
    public const string RuleName = "oxidiser-with-organic";

    public override string Name => RuleName;

    protected override IEnumerable<Vessel> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<OxidiserWithOrganicOptions>();
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0 && m.Added.All(a => !a.ThroughAliquot)))
        {
            foreach (var vessel in Wet(stock, moment, options).Append(Dry(stock, moment, options)).OfType<Vessel>())
            {
                any = true;
                yield return vessel;
                if (vessel.Fires)
                {
                    yield break;
                }
            }
        }

        if (!any)
        {
            yield return new Vessel(stock, null, null, null, default) { Checks = [Check.That("an oxidiser and organic matter come into one vessel", false)] };
        }
    }

    protected override Finding Describe(Vessel verdict, RuleContext context) => verdict switch
    {
        { Meeting: { } meeting, Oxidiser: { } oxidiser } => Liquid(verdict, meeting, oxidiser, context),
        _ => Solid(verdict, verdict.Mixture!, context),
    };

    protected override Working Work(Vessel verdict, RuleContext context)
    {
        if (verdict is { Meeting: { } meeting, Oxidiser: { } oxidiser })
        {
            var met = new WorkingBuilder($"{oxidiser.Name} and organic matter at step '{meeting.Moment.Step.Id}'");
            var strength = meeting.Work(met, oxidiser.Oxidises, oxidiser.Burns, oxidiser.Name);
            return met.Check(verdict.Checks[0], strength, met.Option("limit", verdict.Limit)).Done(strength);
        }

        if (verdict.Mixture is not { } mixture)
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"a dry oxidiser and organic matter at step '{mixture.Moment.Step.Id}'");
        var fuel = work.Given("organic matter", mixture.Fuels.Sum(f => f.Mass.Grams), "g", "file");
        var salt = work.Given("oxidising salts", mixture.Oxidisers.Sum(f => f.Mass.Grams), "g", "file");
        var share = work.Result("organic matter in the mixture", "100 × organic / (organic + salts)", 100 * fuel / (fuel + salt), "%");
        return work.Check(verdict.Checks[0], share, work.Option("limit", verdict.Limit)).Done(share);
    }

    /// <summary>More water between the two, or one of them out.</summary>
    protected override IEnumerable<RepairProposal> Repair(Vessel verdict, Finding finding, RepairContext context) => Pours.KeepApart(finding, context);

    /// <summary>A peroxide or bleach at the strength it has where it meets the organic matter.</summary>
    private static IEnumerable<Vessel> Wet(StockFacts stock, MixingStep moment, OxidiserWithOrganicOptions options)
    {
        Liquids[] liquids = [new(Reactants.Peroxide, "hydrogen peroxide"), new(Reactants.Hypochlorite, "hypochlorite")];
        foreach (var oxidiser in liquids)
        {
            var added = moment.Added[^1];
            if (!(added.Mass.Grams > 0) || !moment.After.Additions.Any(a => oxidiser.Oxidises(a.Substance)) || !moment.After.Additions.Any(a => oxidiser.Burns(a.Substance)))
            {
                continue;
            }

            var strength = 100 * VesselContents.PureGrams(added) / added.Mass.Grams;
            var enters = oxidiser.Oxidises(added.Substance) && 100 * Reactants.Share(moment.Before, oxidiser.Burns) >= options.OrganicFrom;
            var stands = !enters && oxidiser.Burns(added.Substance) && strength >= options.OrganicFrom;

            // Poured into an empty vessel it meets nothing.
            if (stands && !(moment.Before.Grams > 0))
            {
                continue;
            }

            var met = enters ? new Meeting(moment, MeetingPoint.Stream, strength)
                : stands ? new Meeting(moment, MeetingPoint.Standing, 100 * Reactants.Share(moment.Before, oxidiser.Oxidises))
                : new Meeting(moment, MeetingPoint.Mixed, 100 * Reactants.Share(moment.After, oxidiser.Oxidises));
            var limit = oxidiser.Component == Reactants.Peroxide ? options.PeroxideFrom : options.HypochloriteFrom;
            yield return new Vessel(stock, met, oxidiser, null, limit)
            {
                Checks = [new Check("so strong that it reacts", Rounding.SixDigits(met.Strength), Relation.AtLeast, limit, "%")],
            };
        }
    }

    /// <summary>Oxidising solids and organic matter in a vessel into which no water has come yet.</summary>
    private static Vessel? Dry(StockFacts stock, MixingStep moment, OxidiserWithOrganicOptions options)
    {
        var oxidisers = moment.After.Additions.Where(a => a.Substance.Hazards?.Statements.Contains("H272") == true).ToList();
        var fuels = moment.After.Additions.Where(a => a.Substance.FeedsMicrobes || a.Substance.Kind == SubstanceKind.Organic).ToList();
        var (fuel, salt) = (fuels.Sum(f => f.Mass.Grams), oxidisers.Sum(o => o.Mass.Grams));
        return moment.After.FreeWaterGrams > 0 || !(fuel > 0) || !(salt > 0)
            ? null
            : new Vessel(stock, null, null, new DryMixture(moment, oxidisers, fuels, 100 * fuel / (fuel + salt)), options.CombustibleFrom)
            {
                Checks = [new Check("so much that it can burn", Rounding.SixDigits(100 * fuel / (fuel + salt)), Relation.Over, options.CombustibleFrom, "%")],
            };
    }

    private static Finding Liquid(Vessel verdict, Meeting meeting, Liquids oxidiser, RuleContext context)
    {
        var (moment, met, what, limit) = (meeting.Moment, meeting.Strength, oxidiser.Name, verdict.Limit.Value);
        var added = moment.Added[^1];
        var fuel = moment.After.Additions.Last(a => oxidiser.Burns(a.Substance));
        var partner = moment.After.Additions.LastOrDefault(a => oxidiser.Oxidises(a.Substance) != oxidiser.Oxidises(added.Substance) && (oxidiser.Oxidises(a.Substance) || oxidiser.Burns(a.Substance)));
        return context.Find(
            moment.Step.Place,
            $"{Say.Capital(what)} of {Say.Number(met)} % meets {fuel.Substance.Name} in this step: from {Say.Number(limit)} % on it reacts with organic matter, with heat and gas, and suddenly where there are traces of iron, copper or manganese. "
            + "It also destroys the chelate or preservative it meets. "
            + "Keep the two in separate stocks, or dilute the oxidiser in most of the water first, and follow the safety data sheets; never close the vessel tightly.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured(what + " where they meet", met, limit, "%"),
            Values = [new NamedValue(what + " where they meet", met, "%"), new NamedValue("limit", limit, "%")],
            Related = partner is null || partner.Place == moment.Step.Place ? [] : [new RelatedPlace(partner.Place, "already in the vessel")],
        };
    }

    private static Finding Solid(Vessel verdict, DryMixture mixture, RuleContext context)
    {
        var (moment, oxidisers, fuels, share) = mixture;
        return context.Find(
            moment.Step.Place,
            $"{Say.Capital(oxidisers[0].Substance.Name)} and {fuels[0].Substance.Name} lie together in a dry vessel: {Say.Number(share)} % of organic matter in an oxidiser, over the limit of {Say.Number(verdict.Limit.Value)} %; such a mixture can burn fiercely, even without air. "
            + "A spark, hot metal or rubbing can set it off. "
            + "Pour the water first and dissolve one after the other in it; never premix or grind them dry, and follow the safety data sheets.",
            Harm.Person,
            Odds.Possible) with
        {
            Measured = new Measured("organic matter in the dry oxidiser", share, verdict.Limit.Value, "%"),
            Values = [new NamedValue("organic matter in the dry oxidiser", share, "%")],
        };
    }

    /// <summary>What comes together in the vessel of one stock.</summary>
    /// <param name="Meeting">Of a liquid oxidiser; else null.</param>
    /// <param name="Mixture">Of a dry one; else null.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Vessel(StockFacts Stock, Meeting? Meeting, Liquids? Oxidiser, DryMixture? Mixture, NumberOption Limit) : Verdict;

    /// <summary>Liquids that oxidise by one component, and what they react with.</summary>
    internal sealed record Liquids(string Component, string Name)
    {
        internal bool Oxidises(Substance substance) =>
            substance.Form == PhysicalForm.Liquid && substance.Dissolves.Any(d => d.Component == Component && d.MolesPerGram > 0);

        /// <summary>Bleach with an acid is chlorine gas first of all, and said by that rule.</summary>
        internal bool Burns(Substance substance) =>
            Reactants.IsOrganic(substance) && (Component != Reactants.Hypochlorite || substance.Kind != SubstanceKind.Acid);
    }

    /// <summary>Oxidising solids and organic matter without water.</summary>
    /// <param name="Percent">Of organic matter.</param>
    internal sealed record DryMixture(MixingStep Moment, IReadOnlyList<AdditionFacts> Oxidisers, IReadOnlyList<AdditionFacts> Fuels, double Percent);
}

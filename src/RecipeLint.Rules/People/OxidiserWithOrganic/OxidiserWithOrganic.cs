using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>
/// Peroxide, strong hypochlorite or a dry oxidising salt together with organic matter. Nitric acid has a rule of its own.
/// </summary>
internal sealed class OxidiserWithOrganic : StockRule<OxidiserWithOrganic.Vessel>, IProposesRepairs
{
    public const string RuleName = "oxidiser-with-organic";

    public override string Name => RuleName;

    protected override IEnumerable<Vessel> Judge(StockFacts stock, RuleContext context) => Judged(stock, context);

    /// <summary>What this rule finds, for one that leaves it to this rule.</summary>
    internal static IEnumerable<Vessel> Judged(StockFacts stock, RuleContext own)
    {
        var options = own.Options<OxidiserWithOrganicOptions>();
        var limits = HazardLimits.Default with
        {
            Oxidiser = HazardLimits.Default.Oxidiser with
            {
                PeroxideFrom = options.PeroxideFrom,
                HypochloriteFrom = options.HypochloriteFrom,
                OrganicFrom = options.OrganicFrom,
                CombustibleFrom = options.CombustibleFrom,
            },
        };
        var any = false;
        foreach (var vessel in stock.Mixing.Steps.SelectMany(m => Wet(stock, m, limits, options)
            .Append(Dry(stock, m, limits, options))
            .OfType<Vessel>()))
        {
            any = true;
            yield return vessel;
            if (vessel.Fires)
            {
                yield break;
            }
        }

        if (!any)
        {
            yield return new Vessel(stock, null, null, null, "", default)
            {
                Checks =
                [Check.That("an oxidiser and organic matter come into one vessel", false)]
            };
        }
    }

    protected override Finding Describe(Vessel verdict, RuleContext context) =>
        verdict.Met is { } met ? Liquid(verdict.Moment!, met, verdict.Oxidiser, context) : Solid(verdict, verdict.Dry!, context);

    protected override Working Work(Vessel verdict, RuleContext context)
    {
        if (verdict is { Moment: { } at, Met: { } met })
        {
            var wet = new WorkingBuilder($"{verdict.Oxidiser} and organic matter at step '{at.Step.Id}'");
            var strength = Meeting.Work(wet, met, verdict.Oxidiser);
            return wet.Check(verdict.Checks[0], strength, wet.Option("limit", verdict.Limit)).Done(strength);
        }

        if (verdict is not { Moment: { } moment, Dry: { } dry })
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"a dry oxidiser and organic matter at step '{moment.Step.Id}'");
        var fuel = work.Given("organic matter", dry.FuelGrams, "g", "file");
        var salt = work.Given("oxidising salts", dry.OxidiserGrams, "g", "file");
        var share = work.Result("organic matter in the mixture", "100 × organic / (organic + salts)", 100 * fuel / (fuel + salt), "%");
        return work.Check(verdict.Checks[0], share, work.Option("limit", verdict.Limit)).Done(share);
    }

    /// <summary>One of them in a bottle of its own, or out; the dry ones also with water first.</summary>
    protected override IEnumerable<RepairProposal> Repair(Vessel verdict, Finding finding, RepairContext context) =>
        Pours.KeepApart(finding, context);

    /// <summary>A peroxide or bleach at the strength it has where it meets the organic matter.</summary>
    private static IEnumerable<Vessel> Wet(StockFacts stock, MixingStep moment, HazardLimits limits, OxidiserWithOrganicOptions options)
    {
        (HazardRole Role, string Name, NumberOption Limit)[] liquids =
        [
            (HazardRole.Peroxide, "hydrogen peroxide", options.PeroxideFrom),
            (HazardRole.Hypochlorite, "hypochlorite", options.HypochloriteFrom),
        ];
        foreach (var (role, name, limit) in liquids)
        {
            if (MeetingHazards.OxidiserWithOrganic(moment.Before, moment.After, role, limits) is { } met)
            {
                yield return new Vessel(stock, moment, met, null, name, limit)
                {
                    Checks = [new Check("so strong that it reacts", Rounding.SixDigits(met.Percent), Relation.AtLeast, met.Limit, "%")],
                };
            }
        }
    }

    private static Vessel? Dry(StockFacts stock, MixingStep moment, HazardLimits limits, OxidiserWithOrganicOptions options) =>
        MeetingHazards.DryTogether(moment.Before, moment.After, limits) is { } dry
            ? new Vessel(stock, moment, null, dry, "", options.CombustibleFrom)
            {
                Checks = [new Check("so much that it can burn", Rounding.SixDigits(dry.Percent), Relation.Over, dry.Limit, "%")],
            }
            : null;

    private static Finding Liquid(MixingStep moment, StrongMeeting met, string what, RuleContext context)
    {
        var other = met.Reagent.Place == moment.Step.Place ? met.Partner.Place : met.Reagent.Place;
        return context.Find(
            moment.Step.Place,
            $"{Say.Capital(what)} of {Say.Number(met.Percent)} % meets {met.Partner.Name} in this step: from {Say.Number(met.Limit)} % on "
                + "it reacts with organic matter, with heat and gas, and suddenly where there are traces of iron, copper or manganese. "
            + "It also destroys the chelate or preservative it meets. "
            + "Keep the two in separate stocks; where they have met already do not close the vessel, pour nothing into it and leave it: "
                + "the safety data sheets decide.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured(what + " where they meet", met.Percent, met.Limit, "%"),
            Values = [new NamedValue(what + " where they meet", met.Percent, "%"), new NamedValue("limit", met.Limit, "%")],
            Related = other is null || other == moment.Step.Place ? [] : [new RelatedPlace(other, "already in the vessel")],
        };
    }

    private static Finding Solid(Vessel verdict, DryMeeting dry, RuleContext context) => context.Find(
        verdict.Moment!.Step.Place,
        $"{Say.Capital(dry.Oxidisers[0].Name)} and {dry.Fuels[0].Name} lie together in a dry vessel: {Say.Number(dry.Percent)} % of "
            + $"organic matter in an oxidiser, over the limit of {Say.Number(dry.Limit)} %; such a mixture can burn fiercely, even "
                + "without air. "
        + "A spark, hot metal or rubbing can set it off. "
        + "Pour the water first and dissolve one after the other in it; never premix or grind them dry, and follow the safety data sheets.",
        Harm.Person,
        verdict.StaysDry && verdict.Checks[0].IsTwice ? Odds.Certain : Odds.Possible) with
    {
        Measured = new Measured("organic matter in the dry oxidiser", dry.Percent, dry.Limit, "%"),
        Values = [new NamedValue("organic matter in the dry oxidiser", dry.Percent, "%")],
    };

    /// <summary>What comes together in the vessel of one stock, as the gate sees it.</summary>
    /// <param name="Moment">Null where the two never are in one vessel.</param>
    /// <param name="Met">Of a liquid oxidiser; else null.</param>
    /// <param name="Dry">Of a dry one; else null.</param>
    /// <param name="Oxidiser">Name of the liquid one; empty for a dry one.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Vessel(
        StockFacts Stock, MixingStep? Moment, StrongMeeting? Met, DryMeeting? Dry, string Oxidiser, NumberOption Limit) : Verdict
    {
        /// <summary>No step brings water: what is made is the dry mixture itself.</summary>
        public bool StaysDry => Stock.Mixing.Steps.All(s => s.After.FreeWaterGrams <= 0);
    }
}

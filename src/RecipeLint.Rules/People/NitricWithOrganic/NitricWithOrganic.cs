using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>Strong nitric acid and organic matter in one vessel without enough water between them.</summary>
internal sealed class NitricWithOrganic : StockRule<NitricWithOrganic.Vessel>, IProposesRepairs
{
    public const string RuleName = "nitric-with-organic";

    public override string Name => RuleName;

    protected override IEnumerable<Vessel> Judge(StockFacts stock, RuleContext context) => Judged(stock, context);

    /// <summary>What this rule finds, for one that leaves it to this rule.</summary>
    internal static IEnumerable<Vessel> Judged(StockFacts stock, RuleContext own)
    {
        var options = own.Options<NitricWithOrganicOptions>();
        var limits = HazardLimits.Default with
        {
            StrongAcid = HazardLimits.Default.StrongAcid with { NitricFrom = options.NitricFrom, NitricOrganicFrom = options.OrganicFrom },
        };
        var any = false;
        foreach (var moment in stock.Mixing.Steps)
        {
            if (MeetingHazards.NitricWithOrganic(moment.Before, moment.After, limits) is not { } met)
            {
                continue;
            }

            any = true;
            var strong = new Check("so strong that it oxidises", Rounding.SixDigits(met.Percent), Relation.AtLeast, met.Limit, "%");
            yield return new Vessel(stock, moment, met, options.NitricFrom) { Checks = [strong] };
            if (met.IsDangerous)
            {
                yield break;
            }
        }

        if (!any)
        {
            yield return new Vessel(stock, null, null, options.NitricFrom)
            {
                Checks =
                [Check.That("nitric acid and organic matter come into one vessel", false)]
            };
        }
    }

    protected override Finding Describe(Vessel verdict, RuleContext context)
    {
        var (moment, met) = (verdict.Moment!, verdict.Met!);
        var other = met.Reagent.Place == moment.Step.Place ? met.Partner.Place : met.Reagent.Place;
        return context.Find(
            moment.Step.Place,
            $"Nitric acid of {Say.Number(met.Percent)} % meets {met.Partner.Name} with too little water between them; the limit is "
                + $"{Say.Number(met.Limit)} %. "
            + "So strong it oxidises organic matter, sometimes only after a while, with heat, brown poisonous fumes and bursting vessels. "
            + "Keep the two in separate stocks; where they have met already do not close the vessel, pour nothing into it, water "
                + "included, and leave it: the safety data sheets decide.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured("nitric acid where they meet", met.Percent, met.Limit, "%"),
            Values = [new NamedValue("nitric acid where they meet", met.Percent, "%")],
            Related = other is null || other == moment.Step.Place ? [] : [new RelatedPlace(other, "already in the vessel")],
        };
    }

    protected override Working Work(Vessel verdict, RuleContext context)
    {
        if (verdict is not { Moment: { } moment, Met: { } met })
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"nitric acid and organic matter at step '{moment.Step.Id}'");
        var strength = Meeting.Work(work, met, "nitric acid");
        return work.Check(verdict.Checks[0], strength, work.Option("limit", verdict.Limit)).Done(strength);
    }

    /// <summary>One of them in a bottle of its own, or out.</summary>
    protected override IEnumerable<RepairProposal> Repair(Vessel verdict, Finding finding, RepairContext context) =>
        Pours.KeepApart(finding, context);

    /// <summary>What comes together in the vessel of one stock.</summary>
    /// <param name="Moment">The step at which the two are in one vessel; null where they never are.</param>
    /// <param name="Met">As the gate sees it; null with the step.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Vessel(StockFacts Stock, MixingStep? Moment, StrongMeeting? Met, NumberOption Limit) : Verdict;
}

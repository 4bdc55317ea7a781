using RecipeLint.Analysis;
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

    protected override IEnumerable<Vessel> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<NitricWithOrganicOptions>();
        var any = false;
        foreach (var moment in stock.Mixing.Steps.Where(m => m.Added.Count > 0 && m.After.Grams > 0))
        {
            if (!moment.After.Additions.Any(a => Reactants.IsNitricAcid(a.Substance)) || !moment.After.Additions.Any(a => Reactants.IsOrganic(a.Substance)))
            {
                continue;
            }

            any = true;
            var meetings = Meetings(moment, options.OrganicFrom).ToList();
            var met = meetings.Find(m => Rounding.SixDigits(m.Strength) >= options.NitricFrom) ?? meetings.MaxBy(m => m.Strength)!;
            var strong = new Check("so strong that it oxidises", Rounding.SixDigits(met.Strength), Relation.AtLeast, options.NitricFrom, "%");
            yield return new Vessel(stock, met, options.NitricFrom) { Checks = [strong] };
            if (strong.Holds)
            {
                yield break;
            }
        }

        if (!any)
        {
            yield return new Vessel(stock, null, options.NitricFrom) { Checks = [Check.That("nitric acid and organic matter come into one vessel", false)] };
        }
    }

    protected override Finding Describe(Vessel verdict, RuleContext context)
    {
        var (moment, nitric, strong) = (verdict.Meeting!.Moment, verdict.Meeting.Strength, verdict.Limit.Value);
        var acid = moment.Added.LastOrDefault(a => Reactants.IsNitricAcid(a.Substance));
        var fuel = moment.Added.LastOrDefault(a => Reactants.IsOrganic(a.Substance));
        var other = moment.After.Additions.LastOrDefault(a => acid is null ? Reactants.IsNitricAcid(a.Substance) : Reactants.IsOrganic(a.Substance));
        var name = (acid is null ? fuel : other)?.Substance.Name ?? "organic matter";
        return context.Find(
            moment.Step.Place,
            $"Nitric acid of {Say.Number(nitric)} % meets {name} with too little water between them; the limit is {Say.Number(strong)} %. "
            + "So strong it oxidises organic matter, sometimes only after a while, with heat, brown poisonous fumes and bursting vessels. "
            + "Dilute each in most of the water first, as in a weak stock, where the two get along, or use separate stocks, and never close a vessel in which they met; the safety data sheets decide.",
            Harm.Person,
            Odds.Certain) with
        {
            Measured = new Measured("nitric acid where they meet", nitric, strong, "%"),
            Values = [new NamedValue("nitric acid where they meet", nitric, "%")],
            Related = other is null || other.Place == moment.Step.Place ? [] : [new RelatedPlace(other.Place, "already in the vessel")],
        };
    }

    protected override Working Work(Vessel verdict, RuleContext context)
    {
        if (verdict.Meeting is not { } meeting)
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"nitric acid and organic matter at step '{meeting.Moment.Step.Id}'");
        var strength = meeting.Work(work, Reactants.IsNitricAcid, Reactants.IsOrganic, "nitric acid");
        return work.Check(verdict.Checks[0], strength, work.Option("limit", verdict.Limit)).Done(strength);
    }

    /// <summary>More water between the two, or one of them out.</summary>
    protected override IEnumerable<RepairProposal> Repair(Vessel verdict, Finding finding, RepairContext context) => Pours.KeepApart(finding, context);

    /// <summary>Where the stream enters, what is poured meets what stands there undiluted; then all of it is mixed.</summary>
    private static IEnumerable<Meeting> Meetings(MixingStep moment, double organicFrom)
    {
        var alone = moment.Added.Count == 1 ? moment.Added[0] : null;
        if (alone is not null && Reactants.IsNitricAcid(alone.Substance) && Rounding.SixDigits(100 * Reactants.Share(moment.Before, Reactants.IsOrganic)) >= organicFrom)
        {
            yield return new Meeting(moment, MeetingPoint.Stream, Strength(alone));
        }

        if (alone is not null && Reactants.IsOrganic(alone.Substance) && Strength(alone) >= organicFrom && Reactants.Share(moment.Before, Reactants.IsNitricAcid) > 0)
        {
            yield return new Meeting(moment, MeetingPoint.Standing, 100 * Reactants.Share(moment.Before, Reactants.IsNitricAcid));
        }

        yield return new Meeting(moment, MeetingPoint.Mixed, 100 * Reactants.Share(moment.After, Reactants.IsNitricAcid));
    }

    private static double Strength(AdditionFacts addition) =>
        addition.Mass.Grams > 0 ? Rounding.SixDigits(100 * VesselContents.PureGrams(addition) / addition.Mass.Grams) : 0;

    /// <summary>What comes together in the vessel of one stock.</summary>
    /// <param name="Meeting">Null where the two do not.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Vessel(StockFacts Stock, Meeting? Meeting, NumberOption Limit) : Verdict;
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A stock that counts as toxic for reproduction, unless its bench label already names the hazard.</summary>
internal sealed class ReprotoxicNotice : StockRule<ReprotoxicNotice.Mixed>, IProposesRepairs
{
    public const string RuleName = "reprotoxic-notice";

    public override string Name => RuleName;

    protected override IEnumerable<Mixed> Judge(StockFacts stock, RuleContext context)
    {
        var mixture = new MixtureHazards(stock);
        var limit = context.Options<ReprotoxicNoticeOptions>().From;
        if (mixture.Bringing("H360").Count == 0)
        {
            return [new Mixed(stock, mixture, limit) { Checks = [Check.That("it holds a substance that carries H360", false)] }];
        }

        var enough = new Check(
            "enough to carry the statement",
            Rounding.SixDigits(mixture.Weighted(MixtureHazards.ReproductionRow(limit))),
            Relation.AtLeast,
            limit,
            "%");
        return [new Mixed(stock, mixture, limit) { IsBrought = true, Checks = [enough, .. MixtureSteps.Silencers(stock, context)] }];
    }

    protected override Finding Describe(Mixed verdict, RuleContext context)
    {
        var (stock, hazard) = (verdict.Stock, verdict.Mixture.Reproduction(verdict.Limit)!);
        var first = hazard.Substances[0];
        return context.Find(
            first.Place,
            $"'{stock.Stock.Name}' holds {Say.Number(hazard.Percent)} % by mass of "
                + $"{Say.List(hazard.Substances.Select(a => a.Substance.Name).Distinct())}: from {Say.Number(hazard.Limit)} % a mixture "
                    + "counts as toxic for reproduction (H360). "
            + "It may harm fertility or the unborn child, most of all as dust or when swallowed. "
            + "Say so on the label, raise no dust, wear gloves, and let nobody who is or may be pregnant weigh it; the safety data sheet "
                + "and local rules decide.",
            stock.Stock.ForBench ? Harm.Person : Harm.Damage,
            Odds.Possible) with
        {
            Measured = new Measured("toxic for reproduction", hazard.Percent, hazard.Limit, "%"),
            Values = [new NamedValue("toxic for reproduction", hazard.Percent, "%"), new NamedValue("limit", hazard.Limit, "%")],
            Related =
                [.. hazard.Substances.Skip(1).Where(a => a.Place != first.Place).Select(a => new RelatedPlace(a.Place, "counts with it"))],
        };
    }

    protected override Working Work(Mixed verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"H360 for '{verdict.Stock.Stock.Name}'");
        if (!verdict.IsBrought)
        {
            return work.Statements(verdict).Done();
        }

        var percent = MixtureSteps.Sum(work, verdict.Mixture, MixtureHazards.ReproductionRow(verdict.Limit));
        return work.Check(verdict.Checks[0], percent, work.Option("limit", verdict.Limit)).Statements(verdict).Done(percent);
    }

    /// <summary>The hazards on the label.</summary>
    protected override IEnumerable<RepairProposal> Repair(Mixed verdict, Finding finding, RepairContext context) =>
        HazardLabel.Repairs(finding, context);

    /// <summary>One stock as a mixture.</summary>
    /// <param name="Limit">%.</param>
    internal sealed record Mixed(StockFacts Stock, MixtureHazards Mixture, NumberOption Limit) : Verdict
    {
        /// <summary>True where something in it carries the statement.</summary>
        internal bool IsBrought { get; init; }
    }
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A bench sheet for a stock that can hurt, whose label says nothing of it.</summary>
internal sealed class HazardousSubstanceWithoutCaution : StockRule<HazardousSubstanceWithoutCaution.Mixed>, IProposesRepairs
{
    public const string RuleName = "hazardous-substance-without-caution";

    public override string Name => RuleName;

    protected override IEnumerable<Mixed> Judge(StockFacts stock, RuleContext context)
    {
        // Reproduction and water life have notices of their own.
        var mixture = new MixtureHazards(stock);
        var hazards = mixture.Health();
        var rows = MixtureHazards.HealthTable
            .Where(r => hazards.Count > 0 ? r.Code == hazards[0].Code : mixture.Parts(r).Any())
            .ToList();
        if (rows.Count == 0)
        {
            yield return new Mixed(
                stock, mixture, [], null)
            { Checks = [Check.That("it holds a substance with a hazard to health", false)] };
        }

        foreach (var row in rows)
        {
            yield return new Mixed(stock, mixture, hazards, row)
            {
                Checks =
                [
                    new Check("enough to carry the statement", Rounding.SixDigits(mixture.Weighted(row)), Relation.AtLeast, row.Limit, "%"),
                    Check.That("it is marked for the bench", stock.Stock.ForBench),
                    .. MixtureSteps.Silencers(stock, context),
                ],
            };
        }
    }

    protected override Finding Describe(Mixed verdict, RuleContext context)
    {
        var (stock, mixture, hazards) = (verdict.Stock, verdict.Mixture, verdict.Hazards);
        var bringing = hazards.SelectMany(h => h.Substances).Distinct().Take(4).ToList();
        var worst = hazards[0];
        return context.Find(
            stock.Stock.Label?.Place ?? stock.Stock.Place,
            $"'{stock.Stock.Name}' can {Say.List(hazards.Select(h => $"{h.Words} ({h.Code})"))}, and its label names no hazard: it holds "
                + $"{Say.List(bringing.Select(a => $"{Say.Number(mixture.Percent(a))} % {a.Substance.Name}"))} by mass. "
            + "Whoever finds the bottle, or splashes it, has to know at once. "
            + "State the hazard on the label in the words of the suppliers' safety data sheets, which decide, and keep goggles and gloves "
                + "beside it.",
            Harm.Person,
            verdict.Checks[0].IsTwice ? Odds.Certain : Odds.Possible) with
        {
            Measured = new Measured(worst.Code, worst.Percent, worst.Limit, "%"),
            Values = [.. hazards.Select(h => new NamedValue(h.Code, h.Percent, "%"))],
            Related = [.. bringing.Select(a => a.Place).Distinct().Select(p => new RelatedPlace(p, "brings it"))],
        };
    }

    protected override Working Work(Mixed verdict, RuleContext context)
    {
        if (verdict.Row is not { } row)
        {
            return new WorkingBuilder($"'{verdict.Stock.Stock.Name}'").Statements(verdict).Done();
        }

        var work = new WorkingBuilder($"{row.Code} for '{verdict.Stock.Stock.Name}'");
        var percent = MixtureSteps.Sum(work, verdict.Mixture, row);
        work.Check(verdict.Checks[0], percent, work.Given("limit for a mixture", verdict.Checks[0].Limit, "%", "CLP Annex I"));
        return work.Statements(verdict).Done(percent);
    }

    /// <summary>The hazards on the label.</summary>
    protected override IEnumerable<RepairProposal> Repair(Mixed verdict, Finding finding, RepairContext context) =>
        HazardLabel.Repairs(finding, context);

    /// <summary>One statement on one stock.</summary>
    /// <param name="Hazards">All that it carries, the gravest first.</param>
    /// <param name="Row">The statement; null where nothing in it has any.</param>
    internal sealed record Mixed(
        StockFacts Stock, MixtureHazards Mixture, IReadOnlyList<MixtureHazard> Hazards, MixtureRow? Row) : Verdict;
}

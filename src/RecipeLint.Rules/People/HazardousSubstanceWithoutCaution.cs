using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A bench sheet for a stock that can hurt, whose label says nothing of it.</summary>
public sealed class HazardousSubstanceWithoutCaution : StockRule, IProposesRepairs
{
    public override string Name => "hazardous-substance-without-caution";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Stock.ForBench || stock.Stock.Label is { Hazard: true } || !Reactants.AmountsAreMeant(stock, context))
        {
            yield break;
        }

        // Reproduction and water life have notices of their own.
        var mixture = new MixtureHazards(stock);
        var hazards = mixture.Health();
        if (hazards.Count == 0)
        {
            yield break;
        }

        var bringing = hazards.SelectMany(h => h.Substances).Distinct().Take(4).ToList();
        var worst = hazards[0];
        yield return context.Find(
            stock.Stock.Label?.Place ?? stock.Stock.Place,
            $"'{stock.Stock.Name}' can {Say.List(hazards.Select(h => $"{h.Words} ({h.Code})"))}, and its label names no hazard: it holds {Say.List(bringing.Select(a => $"{Say.Number(mixture.Percent(a))} % {a.Substance.Name}"))} by mass. "
            + "Whoever finds the bottle, or splashes it, has to know at once. "
            + "State the hazard on the label in the words of the suppliers' safety data sheets, which decide, and keep goggles and gloves beside it.") with
        {
            Measured = new Measured(worst.Code, worst.Percent, worst.Limit, "%"),
            Values = [.. hazards.Select(h => new NamedValue(h.Code, h.Percent, "%"))],
            Related = [.. bringing.Select(a => a.Place).Distinct().Select(p => new RelatedPlace(p, "brings it"))],
        };
    }

    /// <summary>The hazards on the label.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => HazardLabel.Repairs(finding, context);
}

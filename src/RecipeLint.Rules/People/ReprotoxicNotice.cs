using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A stock that counts as toxic for reproduction, unless its bench label already names the hazard.</summary>
public sealed class ReprotoxicNotice : StockRule, IProposesRepairs
{
    public override string Name => "reprotoxic-notice";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Label is { Hazard: true } || !Reactants.AmountsAreMeant(stock, context))
        {
            yield break;
        }

        var mixture = new MixtureHazards(stock);
        if (mixture.Reproduction(context.Number("from")) is not { } hazard)
        {
            yield break;
        }

        var first = hazard.Substances[0];
        yield return context.Find(
            first.Place,
            $"'{stock.Stock.Name}' holds {Say.Number(hazard.Percent)} % by mass of {Say.List(hazard.Substances.Select(a => a.Substance.Name).Distinct())}: from {Say.Number(hazard.Limit)} % a mixture counts as toxic for reproduction (H360). "
            + "It may harm fertility or the unborn child, most of all as dust or when swallowed. "
            + "Say so on the label, raise no dust, wear gloves, and let nobody who is or may be pregnant weigh it; the safety data sheet and local rules decide.",
            stock.Stock.ForBench ? Level.Warning : null) with
        {
            Measured = new Measured("toxic for reproduction", hazard.Percent, hazard.Limit, "%"),
            Values = [new NamedValue("toxic for reproduction", hazard.Percent, "%"), new NamedValue("limit", hazard.Limit, "%")],
            Related = [.. hazard.Substances.Skip(1).Where(a => a.Place != first.Place).Select(a => new RelatedPlace(a.Place, "counts with it"))],
        };
    }

    /// <summary>The hazards on the label.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => HazardLabel.Repairs(finding, context);
}

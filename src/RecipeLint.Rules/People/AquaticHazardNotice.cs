using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>A concentrate that must not reach a drain or ditch, unless its bench label already names the hazard.</summary>
public sealed class AquaticHazardNotice : StockRule, IProposesRepairs
{
    private static readonly (Element Element, string Name)[] _metals =
        [(Element.Cu, "copper"), (Element.Zn, "zinc"), (new("Co"), "cobalt"), (new("Ni"), "nickel"), (Element.Mn, "manganese")];

    public override string Name => "aquatic-hazard-notice";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Label is { Hazard: true } || !Reactants.AmountsAreMeant(stock, context))
        {
            yield break;
        }

        var mixture = new MixtureHazards(stock);
        if (mixture.Water(context.Number("from")) is not { } hazard)
        {
            yield break;
        }

        var first = hazard.Substances[0];
        var metals = _metals.Select(m => (m.Name, Grams: stock.Totals[m.Element].Grams)).Where(m => m.Grams > 0).Take(2).ToList();
        var holds = metals.Count == 0 ? "" : $" A batch holds {Say.List(metals.Select(m => $"{Say.Grams(m.Grams)} of {m.Name}"))}.";
        yield return context.Find(
            first.Place,
            $"'{stock.Stock.Name}' counts as {hazard.Words} to water life with long lasting effects ({hazard.Code}), through {Say.List(hazard.Substances.Select(a => a.Substance.Name).Distinct().Take(3))}: "
            + $"by the factors of the regulation they add up to {Say.Number(hazard.Percent)} %, limit {Say.Number(hazard.Limit)} %.{holds} "
            + "Concentrate, rinsings and left-overs do not belong in a drain, ditch or pond: say so on the label and hand left-overs to licensed waste collection; the safety data sheets and local rules decide.",
            stock.Stock.ForBench ? Level.Warning : null) with
        {
            Measured = new Measured("weighted share", hazard.Percent, hazard.Limit, "%"),
            Values = [new NamedValue("weighted share", hazard.Percent, "%"), .. metals.Select(m => new NamedValue(m.Name, m.Grams, "g"))],
            Related = [.. hazard.Substances.Skip(1).Select(a => a.Place).Distinct().Where(p => p != first.Place).Take(4).Select(p => new RelatedPlace(p, "counts with it"))],
        };
    }

    /// <summary>The hazards on the label.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => HazardLabel.Repairs(finding, context);
}

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A bench sheet with sulfates of technical grade, whose insoluble rest is never filtered off.</summary>
public sealed class NoFilterAfterTechnicalSulfate : StockRule, IProposesRepairs
{
    public override string Name => "no-filter-after-technical-sulfate";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Stock.ForBench || stock.Stock.Steps.Any(s => s is HandlingStep { Handling: Handling.Filter }))
        {
            yield break;
        }

        var technical = stock.Additions
            .Where(a => !a.ThroughAliquot && a.AssayDeclared && a.Substance.Form == PhysicalForm.Solid
                && a.Assay.Percent < context.Number("technicalBelow") && a.ComponentMoles.GetValueOrDefault("SO4-2") > 0)
            .OrderByDescending(Rest)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        var perLitre = technical.Sum(Rest) / stock.Volume.Litres;
        if (technical.Count == 0 || Rounding.SixDigits(perLitre) < context.Number("rest"))
        {
            yield break;
        }

        yield return context.Find(
            technical[0].Place,
            $"{Say.List(technical.Select(a => $"{a.Substance.Name} of {Say.Percent(a.Assay.Value)}"))} can leave up to {Say.Number(perLitre)} g/L of grit and clay in '{stock.Stock.Name}', and no step filters it. "
            + "What technical sulfates leave undissolved clogs syringes, injectors and drippers. "
            + "Let it settle overnight, pour off, and add a filter step (a coffee filter holds 15 to 20 µm) before the top-up.") with
        {
            Measured = new Measured("undissolved rest", perLitre, context.Number("rest"), "g/L"),
            Values = [new NamedValue("undissolved rest", perLitre, "g/L")],
            Related = [.. technical.Skip(1).Select(a => new RelatedPlace(a.Place, "also of technical grade"))],
        };
    }

    internal static double Rest(AdditionFacts addition) => addition.Mass.Grams * (1 - addition.Assay.Value);

    /// <summary>A filter before the top-up.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        yield return Repair.Chemistry("filter", "Filter through a coffee filter before the top-up.", Steps.Insert(stock, Steps.BeforeTopUp(stock, context), ("filter", "coffee filter")));
    }
}

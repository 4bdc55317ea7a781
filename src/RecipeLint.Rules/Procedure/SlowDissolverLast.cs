using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>The salt that dissolves slowest put in last, into water the others have already filled.</summary>
public sealed class SlowDissolverLast : StockRule, IProposesRepairs
{
    public override string Name => "slow-dissolver-last";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        if (moments.Any(m => m.Step is HandlingStep { Handling: Handling.Warm }))
        {
            yield break;
        }

        var solids = moments.Where(m => m.Step is AddStep && m.Before.FreeWaterGrams > 0 && m.Added is [{ Substance.Form: PhysicalForm.Solid }]).ToList();
        if (solids.Count < 2 || Slow(solids[^1]) is not { } share)
        {
            yield break;
        }

        var last = solids[^1];
        var before = last.Before.Additions.Where(a => a.Substance.Form == PhysicalForm.Solid).ToList();
        var crowd = before.Sum(a => a.Mass.Grams) / last.Before.FreeWaterGrams * 1000;
        if (Rounding.SixDigits(share) < context.Number("shareOfSolubility") / 100 || share > 1 || Rounding.SixDigits(crowd) < context.Number("saltsBefore"))
        {
            yield break;
        }

        var name = last.Added[0].Substance.Name;
        yield return context.Find(
            last.Step.Place,
            $"The {name} goes in last, although it is the slow one: it takes {Say.Percent(share)} of what the water holds of it at {Say.Number(VesselContents.BenchCelsius)} °C, "
            + $"and by then the water already carries {Say.Number(crowd)} g/L of other salts. The last of it often stays undissolved at the bottom. "
            + "Put it in first, while the water is warm and empty, and wait until it is clear.") with
        {
            Measured = new Measured("share of its solubility", share * 100, context.Number("shareOfSolubility"), "%"),
            Values = [new NamedValue("share of its solubility", share * 100, "%"), new NamedValue("salts before it", crowd, "g/L")],
        };

        double? Slow(MixingStep moment)
        {
            var substance = moment.Added[0].Substance;
            return HandbookSolubility.GramsPer100GramsWater(substance, VesselContents.BenchCelsius) is { } solubility
                && solubility * 10 < context.Number("slowBelow")
                && solids.Take(solids.Count - 1).All(m => m.Added[0].Substance.Id != substance.Id)
                ? VesselContents.PureGrams(moment.Added[0]) / (solubility * moment.After.FreeWaterGrams / 100)
                : null;
        }
    }

    /// <summary>First into the water.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (RepairContext.StepAt(stock, finding.Place) is { } slow && stock.Stock.Steps.FirstOrDefault(s => s is AddStep or AliquotStep) is { } first && Steps.Move(stock, context, slow, first) is { } move)
        {
            yield return Repair.Chemistry("move-first", $"Put '{slow.Id}' in first.", move);
        }

        foreach (var warm in Pours.Warm(finding, context))
        {
            yield return warm;
        }
    }
}

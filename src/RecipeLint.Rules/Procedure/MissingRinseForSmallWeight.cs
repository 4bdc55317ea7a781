using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A bench sheet with weights so small that what clings to the weighing boat counts, and no step that rinses it in.</summary>
public sealed class MissingRinseForSmallWeight : StockRule, IProposesRepairs
{
    public override string Name => "missing-rinse-for-small-weight";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Stock.ForBench)
        {
            yield break;
        }

        var clings = context.Number("clings") / 1000;
        var limit = context.Number("loss") / 100;
        var moments = stock.Mixing.Steps;
        var small = moments
            .Where(m => m.Step is AddStep && !moments.Skip(m.Index + 1).Any(l => l.Step is HandlingStep { Handling: Handling.Rinse }))
            .SelectMany(m => m.Added)
            .Where(a => a.Substance is { Form: PhysicalForm.Solid, Kind: not SubstanceKind.Dye } && a.Mass.Grams > 0 && Rounding.SixDigits(clings / a.Mass.Grams) > limit)
            .OrderBy(a => a.Mass.Grams)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        if (small.Count == 0)
        {
            yield break;
        }

        var loss = Math.Min(1, clings / small[0].Mass.Grams);
        yield return context.Find(
            small[0].Place,
            $"{Say.List(small.Select(a => $"{Say.Grams(a.Mass.Grams)} of {a.Substance.Name}"))} {(small.Count == 1 ? "is" : "are")} weighed without a step that rinses the boat into the vessel: "
            + $"about {context.Word("clings")} mg cling to it, {Say.Percent(loss)} of the smallest. That much of a trace element is missing in every litre. "
            + "Add a rinse step after the small weights: two rinses with a little of the water still to be poured.") with
        {
            Measured = new Measured("loss on the boat", loss * 100, limit * 100, "%"),
            Values = [new NamedValue("mass", small[0].Mass.Grams, "g"), new NamedValue("loss on the boat", loss * 100, "%")],
            Related = [.. small.Skip(1).Select(a => new RelatedPlace(a.Place, "also a small weight"))],
        };
    }

    /// <summary>A rinse behind the last small weight.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var places = finding.Related.Select(r => r.Place).Append(finding.Place).Select(p => RepairContext.StepAt(stock, p)).OfType<RecipeLint.Recipes.Documents.Step>();
        var last = places.Select(RepairContext.IndexOf).DefaultIfEmpty(-1).Max();
        if (last >= 0)
        {
            yield return Repair.Chemistry("rinse", "Rinse the boat twice into the vessel after the last small weight.", Steps.Insert(stock, last + 1, ("rinse", "boat, twice, into the vessel")));
        }
    }
}

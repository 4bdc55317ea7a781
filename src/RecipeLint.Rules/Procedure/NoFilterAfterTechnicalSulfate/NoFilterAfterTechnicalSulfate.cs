using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Procedure;

/// <summary>A bench sheet with sulfates of technical grade, whose insoluble rest is never filtered off.</summary>
internal sealed class NoFilterAfterTechnicalSulfate : StockRule<UnfilteredRest>, IProposesRepairs
{
    public const string RuleName = "no-filter-after-technical-sulfate";

    public override string Name => RuleName;

    protected override IEnumerable<UnfilteredRest> Judge(StockFacts stock, RuleContext context)
    {
        var technical = stock.Additions
            .Where(a => !a.ThroughAliquot && a.AssayDeclared && a.Substance.Form == PhysicalForm.Solid
                && a.Assay.Percent < context.Options<NoFilterAfterTechnicalSulfateOptions>().TechnicalBelow
                    && BenchChemistry.Brings(a, BenchChemistry.Sulfate))
            .OrderByDescending(Rest)
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .ToList();
        var rest = technical.Count == 0
            ? null
            : new Check("enough to clog", Rounding.SixDigits(technical.Sum(Rest) / stock.Volume.Litres), Relation.AtLeast,
            context.Options<NoFilterAfterTechnicalSulfateOptions>().Rest, "g/L");
        yield return new UnfilteredRest(stock, technical, rest)
        {
            Checks =
            [
                .. rest is null ? [] : new[] { rest },
                Check.That("it holds a sulfate of technical grade", rest is not null),
                Check.That("it is marked for the bench", stock.Stock.ForBench),
                Check.That("no step filters it", !stock.Stock.Steps.Any(s => s is HandlingStep { Handling: Handling.Filter })),
            ],
        };
    }

    protected override Finding Describe(UnfilteredRest verdict, RuleContext context)
    {
        var (technical, rest) = (verdict.Technical, verdict.Rest!);
        return context.Find(
            technical[0].Place,
            $"{Say.List(technical.Select(a => $"{a.Substance.Name} of {Say.Percent(a.Assay.Value)}"))} can leave up to "
                + $"{Say.Number(rest.Value)} g/L of grit and clay in '{verdict.Stock.Stock.Name}', and no step filters it. "
            + "What technical sulfates leave undissolved clogs syringes, injectors and drippers. "
            + "Let it settle overnight, pour off, and add a filter step (a coffee filter holds 15 to 20 µm) before the top-up.",
            Harm.Habit,
            Odds.Certain) with
        {
            Measured = new Measured("undissolved rest", rest.Value, rest.Limit, "g/L"),
            Values = [new NamedValue("undissolved rest", rest.Value, "g/L")],
            Related = [.. technical.Skip(1).Select(a => new RelatedPlace(a.Place, "also of technical grade"))],
        };
    }

    protected override Working Work(UnfilteredRest verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"what technical sulfates leave in '{verdict.Stock.Stock.Name}'");
        if (verdict.Rest is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        var parts = new List<Term>();
        foreach (var addition in verdict.Technical)
        {
            var mass = work.Given(addition.Substance.Name, addition.Mass.Grams, "g", From.File);
            var assay = work.Given("its assay", addition.Assay.Percent, "%", From.File);
            parts.Add(work.Result("of it not the salt", "weight × (1 - assay / 100)", mass * (1 - (assay / 100)), "g"));
        }

        var rest = work.Result("in a litre", "sum / batch",
            Term.Sum(parts) / work.Given("the batch", verdict.Stock.Volume.Litres, "L", From.File), "g/L");
        return work.Check(check, rest, work.Option("limit",
            context.Options<NoFilterAfterTechnicalSulfateOptions>().Rest)).Statements(verdict).Done(rest);
    }

    /// <summary>A filter before the top-up.</summary>
    protected override IEnumerable<RepairProposal> Repair(UnfilteredRest verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is { } stock)
        {
            yield return Mend.Chemistry(
                "filter", "Filter through a coffee filter before the top-up.",
                    Steps.Insert(stock, Steps.BeforeTopUp(stock, context), ("filter", "coffee filter")));
        }
    }

    private static double Rest(AdditionFacts addition) => addition.Mass.Grams * (1 - addition.Assay.Value);
}

/// <summary>What technical sulfates leave undissolved.</summary>
/// <param name="Technical">What leaves most first.</param>
/// <param name="Rest">g/L; null without any.</param>
internal sealed record UnfilteredRest(StockFacts Stock, IReadOnlyList<AdditionFacts> Technical, Check? Rest) : Verdict;

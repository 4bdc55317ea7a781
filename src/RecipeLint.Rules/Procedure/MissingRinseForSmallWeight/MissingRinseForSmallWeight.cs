using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Procedure;

/// <summary>A bench sheet with weights so small that what clings to the weighing boat counts, and no step that rinses it in.</summary>
internal sealed class MissingRinseForSmallWeight : StockRule<UnrinsedWeights>, IProposesRepairs
{
    public const string RuleName = "missing-rinse-for-small-weight";

    public override string Name => RuleName;

    protected override IEnumerable<UnrinsedWeights> Judge(StockFacts stock, RuleContext context)
    {
        var clings = context.Options<MissingRinseForSmallWeightOptions>().Clings / 1000;
        var limit = context.Options<MissingRinseForSmallWeightOptions>().Loss;
        var weighed = stock.Mixing.Steps.Where(m => m.Step is AddStep).SelectMany(m => m.Added.Select(a => (Moment: m, Addition: a)))
            .Where(a => a.Addition.Substance is { Form: PhysicalForm.Solid, Kind: not SubstanceKind.Dye } && a.Addition.Mass.Grams > 0)
            .OrderBy(a => a.Addition.Mass.Grams).ThenBy(a => a.Addition.Id, StringComparer.Ordinal)
            .ToList();
        if (weighed.Count == 0)
        {
            return [new UnrinsedWeights(stock, [], null) { Checks = [Check.That("a solid is weighed for it", false)] }];
        }

        // The smallest that no later step rinses in decides; where all are, the smallest is shown.
        var open = weighed.Where(a => !IsRinsed(stock, a.Moment)).Select(a => a.Addition).ToList();
        var smallest = open.Count > 0 ? open[0] : weighed[0].Addition;
        var loss = new Check("enough to miss", Lost(smallest), Relation.Over, limit, "%");
        var small = open.Where(a => Lost(a) > limit).DefaultIfEmpty(smallest).ToList();
        return
        [
            new UnrinsedWeights(stock, small, loss)
            {
                Checks = [loss, Check.That("it is marked for the bench", stock.Stock.ForBench),
                    Check.That("no step after it rinses the boat", open.Count > 0)],
            },
        ];

        double Lost(AdditionFacts addition) => Rounding.SixDigits(100 * clings / addition.Mass.Grams);
    }

    protected override Finding Describe(UnrinsedWeights verdict, RuleContext context)
    {
        var small = verdict.Small;
        var loss = Math.Min(100, verdict.Loss!.Value);
        return context.Find(
            small[0].Place,
            $"{Say.List(small.Select(a => $"{Say.Grams(a.Mass.Grams)} of {a.Substance.Name}"))} {(small.Count == 1 ? "is" : "are")} "
                + "weighed without a step that rinses the boat into the vessel: "
            + $"about {context.Options<MissingRinseForSmallWeightOptions>().Clings} mg cling to it, {Say.Percent(loss / 100)} of the "
            + "smallest. That much of a trace element is missing in every litre. "
            + "Add a rinse step after the small weights: two rinses with a little of the water still to be poured.",
            Harm.Habit,
            Odds.Certain) with
        {
            Measured = new Measured("loss on the boat", loss, verdict.Loss.Limit, "%"),
            Values = [new NamedValue("mass", small[0].Mass.Grams, "g"), new NamedValue("loss on the boat", loss, "%")],
            Related = [.. small.Skip(1).Select(a => new RelatedPlace(a.Place, "also a small weight"))],
        };
    }

    protected override Working Work(UnrinsedWeights verdict, RuleContext context)
    {
        var name = verdict.Stock.Stock.Name;
        if (verdict.Loss is not { } check)
        {
            return new WorkingBuilder($"'{name}'").Statements(verdict).Done();
        }

        var addition = verdict.Small[0];
        var work = new WorkingBuilder($"{addition.Substance.Name}, the smallest weight of '{name}' that counts");
        var loss = work.Result(
            "lost on the boat", "100 × what clings / weight",
            100 * (work.Option("what clings to it",
                context.Options<MissingRinseForSmallWeightOptions>().Clings) / 1000) / work.Given("weight", addition.Mass.Grams, "g",
                    From.File), "%");
        return work.Check(check, loss, work.Option("limit",
            context.Options<MissingRinseForSmallWeightOptions>().Loss)).Statements(verdict).Done(loss);
    }

    /// <summary>A rinse behind the last small weight.</summary>
    protected override IEnumerable<RepairProposal> Repair(UnrinsedWeights verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var last = verdict.Small
            .Select(a => RepairContext.StepAt(stock, a.Place))
            .OfType<Step>()
            .Select(RepairContext.IndexOf)
            .DefaultIfEmpty(-1)
            .Max();
        if (last >= 0)
        {
            yield return Mend.Chemistry(
                "rinse", "Rinse the boat twice into the vessel after the last small weight.",
                    Steps.Insert(stock, last + 1, ("rinse", "boat, twice, into the vessel")));
        }
    }

    private static bool IsRinsed(StockFacts stock, MixingStep moment) =>
        stock.Mixing.Steps.Skip(moment.Index + 1).Any(l => l.Step is HandlingStep { Handling: Handling.Rinse });
}

/// <summary>Small weights and what stays on the boat.</summary>
/// <param name="Small">The smallest first; all of which too much is lost, else the one that is nearest to it.</param>
/// <param name="Loss">Of the smallest; null where no solid is weighed.</param>
internal sealed record UnrinsedWeights(StockFacts Stock, IReadOnlyList<AdditionFacts> Small, Check? Loss) : Verdict;

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

/// <summary>The salt that dissolves slowest put in last, into water the others have already filled.</summary>
internal sealed class SlowDissolverLast : StockRule<LastSolid>, IProposesRepairs
{
    public const string RuleName = "slow-dissolver-last";

    public override string Name => RuleName;

    protected override IEnumerable<LastSolid> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var solids = moments.Where(m => m.Step is AddStep
            && m.Before.FreeWaterGrams > 0
            && m.Added is [{ Substance.Form: PhysicalForm.Solid }]).ToList();
        if (solids.Count < 2 || moments.Any(m => m.Step is HandlingStep { Handling: Handling.Warm }))
        {
            return [Silent(stock, "two or more solids go into water that is not warmed")];
        }

        var last = solids[^1];
        var substance = last.Added[0].Substance;
        if (HandbookSolubility.GramsPer100GramsWater(substance, VesselContents.BenchCelsius) is not { } solubility)
        {
            return [Silent(stock, "the solubility of the last solid is known")];
        }

        var others = last.Before.Additions.Where(a => a.Substance.Form == PhysicalForm.Solid).Sum(a => a.Mass.Grams);
        var share = Rounding.SixDigits(100 * VesselContents.PureGrams(last.Added[0]) / (solubility * last.After.FreeWaterGrams / 100));
        var slow = new Check("one of the slow ones", Rounding.SixDigits(solubility * 10), Relation.Under,
            context.Options<SlowDissolverLastOptions>().SlowBelow, "g");
        var much = new Check("much of it", share, Relation.AtLeast, context.Options<SlowDissolverLastOptions>().ShareOfSolubility, "%");
        var fits = new Check("and not more than it holds", share, Relation.AtMost, 100, "%");
        var crowd = new Check(
            "water that is full already", Rounding.SixDigits(1000 * others / last.Before.FreeWaterGrams), Relation.AtLeast,
                context.Options<SlowDissolverLastOptions>().SaltsBefore, "g/L");
        var first = solids.Take(solids.Count - 1).All(m => m.Added[0].Substance.Id != substance.Id);
        return
        [
            new LastSolid(stock, last, solubility, others, slow, much, fits, crowd)
            {
                Checks = [slow, much, fits, crowd, Check.That("none of it went in before", first)],
            },
        ];
    }

    protected override Finding Describe(LastSolid verdict, RuleContext context)
    {
        var last = verdict.Moment!;
        var name = last.Added[0].Substance.Name;
        var (share, crowd) = (verdict.Much!.Value, verdict.Crowd!.Value);
        return context.Find(
            last.Step.Place,
            $"The {name} goes in last, although it is the slow one: it takes {Say.Percent(share / 100)} of what the water holds of it "
                + $"at {Say.Number(VesselContents.BenchCelsius)} °C, "
            + $"and by then the water already carries {Say.Number(crowd)} g/L of other salts. The last of it often stays undissolved "
            + "at the bottom. "
            + context.AdviceFor(verdict.Stock).Sentence(
                new Way("put it in first, while the water is warm and empty, and wait until it is clear", Puts.Keeping)),
            Harm.Habit,
            Odds.Certain) with
        {
            Measured = new Measured("share of its solubility", share, verdict.Much.Limit, "%"),
            Values = [new NamedValue("share of its solubility", share, "%"), new NamedValue("salts before it", crowd, "g/L")],
        };
    }

    protected override Working Work(LastSolid verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the last solid of '{verdict.Stock.Stock.Name}'");
        if (verdict is not { Moment: { } last, Slow: { } slow, Much: { } much, Fits: { } fits, Crowd: { } full })
        {
            return work.Statements(verdict).Done();
        }

        var addition = last.Added[0];
        var solubility = work.Given($"{addition.Substance.Name} that 100 g of water hold at 20 °C", verdict.Solubility, "g",
            From.SolubilityTable);
        work.Check(slow, work.Result("in a kg of water", "10 × that", 10 * solubility, "g"),
            work.Option("slow below", context.Options<SlowDissolverLastOptions>().SlowBelow));
        var grams = work.Given("of it, pure", VesselContents.PureGrams(addition), "g", From.File);
        var water = work.Given("water in the vessel", last.After.FreeWaterGrams, "g", From.File);
        var share = work.Result("of what the water holds", "100 × grams / (solubility × water / 100)",
            100 * grams / (solubility * water / 100), "%");
        work.Check(much, share, work.Option("least", context.Options<SlowDissolverLastOptions>().ShareOfSolubility)).Check(fits, share,
            100);
        var others = work.Given("other solids in it by then", verdict.OtherGrams, "g", From.File);
        var crowd = work.Result(
            "in a litre of water", "1000 × others / water",
                1000 * others / work.Given("water before it", last.Before.FreeWaterGrams, "g", From.File), "g/L");
        return work.Check(full, crowd, work.Option("least",
            context.Options<SlowDissolverLastOptions>().SaltsBefore)).Statements(verdict).Done(share);
    }

    /// <summary>First into the water.</summary>
    protected override IEnumerable<RepairProposal> Repair(LastSolid verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (RepairContext.StepAt(
            stock, finding.Place) is { } slow && stock.Stock.Steps.FirstOrDefault(s => s is AddStep or AliquotStep) is { } first
            && Steps.Move(stock, context, slow, first) is { } move)
        {
            yield return Mend.Chemistry("move-first", $"Put '{slow.Id}' in first.", move);
        }

        foreach (var warm in Pours.Warm(finding, context))
        {
            yield return warm;
        }
    }

    private static LastSolid Silent(StockFacts stock, string what) =>
        new(stock, null, 0, 0, null, null, null, null) { Checks = [Check.That(what, false)] };
}

/// <summary>The solid that goes in last.</summary>
/// <param name="Moment">Null where there is no such solid.</param>
/// <param name="Solubility">g in 100 g of water at the bench.</param>
/// <param name="OtherGrams">Other solids in the vessel by then.</param>
internal sealed record LastSolid(
    StockFacts Stock, MixingStep? Moment, double Solubility, double OtherGrams, Check? Slow, Check? Much, Check? Fits,
    Check? Crowd) : Verdict;

using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>
/// A bench sheet for a concentrate so strong in nitrogen or phosphorus that left-overs must not go down a drain, whose label does not say
/// what becomes of them.
/// </summary>
internal sealed class ConcentrateToDrain : StockRule<ConcentrateToDrain.Load>
{
    public const string RuleName = "concentrate-to-drain";

    public override string Name => RuleName;

    protected override IEnumerable<Load> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<ConcentrateToDrainOptions>();
        var load = new[] { ("nitrogen", Element.N, options.Nitrogen), ("phosphorus", Element.P, options.Phosphorus) }
            .Select(l => (Name: l.Item1, Grams: stock.Concentration(l.Item2).GramsPerLitre, Limit: l.Item3))
            .Select(l => new Load(stock, l.Name, l.Grams, l.Limit, Rounding.SixDigits(l.Grams * 1000 / l.Limit)) { Checks = [] })
            .MaxBy(l => l.Times)!;
        List<Check> checks =
        [
            new("a strong concentrate", load.Times, Relation.AtLeast, options.From),
            Check.That("it is marked for the bench", stock.Stock.ForBench),
            Check.That("its label does not say what becomes of left-overs", stock.Stock.Label is not { Disposal: true }),
        ];

        // Where the notice on water life speaks, it says the same with more weight.
        if (AquaticHazardNotice.Reports(context, stock))
        {
            checks.Add(Check.That("aquatic-hazard-notice does not say the same already", false));
        }

        if (!Reactants.AmountsAreMeant(stock, context))
        {
            checks.Add(Check.That(Reactants.AmountsMeant, false));
        }

        yield return load with { Checks = checks };
    }

    protected override Finding Describe(Load verdict, RuleContext context)
    {
        var (stock, name, grams, limit, times) = (verdict.Stock, verdict.Name, verdict.GramsPerLitre, verdict.Limit.Value, verdict.Times);
        var from = verdict.Checks[0].Limit;
        return context.Find(
            stock.Stock.Label?.Place ?? stock.Stock.Place,
            $"'{stock.Stock.Name}' holds {Say.Number(grams)} g/L {name}, {Say.Number(times)} times the {Say.Number(limit)} mg/L that "
                + $"treated waste water may carry: one litre of it down a drain spends what {Say.Number(times / 1000)} m³ of that water "
                    + "may. "
            + "Ditches and ponds turn green and foul, and a small treatment plant is upset. "
            + "Say on the label what becomes of left-overs and rinsings, in \"disposal\": use them up on plants at the usual dilution, or "
                + "hand them to whoever collects such waste where you are; local rules decide.",
            Harm.Damage,
            Odds.Possible) with
        {
            Measured = new Measured($"{name} against treated waste water", times, from, ""),
            Values = [new NamedValue(name, grams, "g/L"), new NamedValue("times the limit", times, "")],
        };
    }

    protected override Working Work(Load verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"{verdict.Name} of '{verdict.Stock.Stock.Name}' against treated waste water");
        var held = work.Given($"{verdict.Name} in the stock", verdict.GramsPerLitre, "g/L", "amounts in the file");
        var times =
            work.Result("times as much", "1000 × g/L / mg/L", 1000 * held / work.Option("treated waste water may carry", verdict.Limit));
        return work.Check(verdict.Checks[0], times, work.Option("from", context.Options<ConcentrateToDrainOptions>().From))
            .Statements(verdict)
            .Done(times);
    }

    /// <summary>What a stock holds most of, against what treated waste water may carry.</summary>
    /// <param name="Limit">mg/L.</param>
    /// <param name="Times">How many times the limit, to six digits.</param>
    internal sealed record Load(StockFacts Stock, string Name, double GramsPerLitre, NumberOption Limit, double Times) : Verdict;
}

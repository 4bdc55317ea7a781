using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>An aliquot larger than what the stock it is taken from makes.</summary>
internal sealed class MoreThanTheStockMakes : StockRule<AliquotOfStock>
{
    public const string RuleName = "more-than-the-stock-makes";

    public override string Name => RuleName;

    protected override IEnumerable<AliquotOfStock> Judge(StockFacts stock, RuleContext context)
    {
        var room = 1 + (context.Options<MoreThanTheStockMakesOptions>().Tolerance / 100);
        var drawn = stock.Aliquots.Select(a => (Aliquot: a, Of: context.Facts.Workspace.FindStock(a.StockFile)))
            .Where(d => d.Of?.Makes is { Value.Litres: > 0 })
            .ToList();
        return drawn.Count == 0
            ? [new AliquotOfStock(stock, null, "", 0, null) { Checks = [Check.That("a step takes an aliquot of a stock", false)] }]
            : drawn.Select(d => Of(stock, d.Aliquot, d.Of!.Name, d.Of.Makes!.Value.Litres, room));
    }

    protected override Finding Describe(AliquotOfStock verdict, RuleContext context)
    {
        var (aliquot, over) = (verdict.Aliquot!, verdict.Over!);
        return context.Find(
            aliquot.Place,
            $"The step takes {Say.Litres(over.Value)} of '{verdict.Name}', which makes {Say.Litres(verdict.Makes)}: there is not so "
                + "much of it. Done with what there is, everything it brings comes out short. "
            + "Correct the aliquot or what the pre-stock makes; where two batches are meant, let it make as much as is taken.",
            Harm.Loss,
            Odds.Certain) with
        {
            Measured = new Measured("taken", over.Value, verdict.Makes, "L"),
            Values = [new NamedValue("taken", over.Value, "L"), new NamedValue("made", verdict.Makes, "L")],
        };
    }

    protected override Working Work(AliquotOfStock verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"aliquots of '{verdict.Stock.Stock.Name}'");
        if (verdict.Over is not { } over)
        {
            return work.Statements(verdict).Done();
        }

        var taken = work.Given($"taken of '{verdict.Name}'", over.Value, "L", From.File);
        var made = work.Given("it makes", verdict.Makes, "L", From.File);
        var most = work.Result(
            "most there is", "made × (1 + tolerance / 100)",
            made * (1 + (work.Option("tolerance", context.Options<MoreThanTheStockMakesOptions>().Tolerance) / 100)), "L");
        return work.Check(over, taken, most).Done(taken);
    }

    private static AliquotOfStock Of(StockFacts stock, AliquotFacts aliquot, string name, double makes, double room)
    {
        var over = new Check("more than there is", Rounding.SixDigits(aliquot.Volume.Litres), Relation.Over, makes * room, "L");
        return new AliquotOfStock(stock, aliquot, name, makes, over) { Checks = [over] };
    }
}

/// <summary>An aliquot against the stock it is taken from.</summary>
/// <param name="Aliquot">Null where no step takes one.</param>
/// <param name="Makes">L.</param>
internal sealed record AliquotOfStock(StockFacts Stock, AliquotFacts? Aliquot, string Name, double Makes, Check? Over) : Verdict;

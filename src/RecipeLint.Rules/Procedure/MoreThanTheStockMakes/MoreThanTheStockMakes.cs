using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// An aliquot larger than what the stock it is taken from makes: it cannot be taken. A tank that takes more than a batch can be filled from
/// several, which somebody has to mix first.
/// </summary>
internal sealed class MoreThanTheStockMakes : WorkspaceRule<TakenOfStock>
{
    public const string RuleName = "more-than-the-stock-makes";

    public override string Name => RuleName;

    protected override IEnumerable<TakenOfStock> Judge(Facts facts, RuleContext context) =>
        facts.Stocks.SelectMany(s => OfSteps(facts, s, context.For(s.Stock.File)))
            .Concat(facts.Recipes.SelectMany(r => OfDoses(r, context.For(r.Recipe.File))));

    protected override Finding Describe(TakenOfStock verdict, RuleContext context) => verdict.IsDosed
        ? Find(
            verdict,
            context,
            $"One filling of '{verdict.By}' takes {Say.Litres(verdict.Over!.Value)} of '{verdict.Name}', which makes "
                + $"{Say.Litres(verdict.Makes)}: that is {verdict.Batches} batches of it. Whoever has mixed one stands before a tank that "
                + "is filled in part. "
                + $"Mix {verdict.Batches} before the tank is begun, each checked by itself; or let the file of '{verdict.Name}' make as "
                + "much as a filling takes, where vessel and scale hold it.",
            Harm.Habit)
        : Find(
            verdict,
            context,
            $"The step takes {Say.Litres(verdict.Over!.Value)} of '{verdict.Name}', which makes {Say.Litres(verdict.Makes)}: there is not "
                + "so much of it. Done with what there is, everything it brings comes out short. "
                + "Correct the aliquot or what the pre-stock makes; where two batches are meant, let it make as much as is taken.",
            Harm.Loss);

    protected override Working Work(TakenOfStock verdict, RuleContext context)
    {
        var work = new WorkingBuilder(verdict.IsDosed ? $"what '{verdict.By}' takes of a stock" : $"aliquots of '{verdict.By}'");
        if (verdict.Over is not { } over)
        {
            return work.Statements(verdict).Done();
        }

        var taken = work.Given(
            verdict.IsDosed ? $"a filling takes of '{verdict.Name}'" : $"taken of '{verdict.Name}'", over.Value, "L",
            verdict.IsDosed ? From.Amounts : From.File);
        var made = work.Given("it makes", verdict.Makes, "L", From.File);
        var most = work.Result(
            "most there is", "made × (1 + tolerance / 100)", made * (1 + (work.Option("tolerance", verdict.Tolerance) / 100)), "L");
        return work.Check(over, taken, most).Done(taken);
    }

    private static Finding Find(TakenOfStock verdict, RuleContext context, string message, Harm harm) =>
        context.Find(verdict.Place!, message, harm, Odds.Certain) with
        {
            Measured = new Measured("taken", verdict.Over!.Value, verdict.Makes, "L"),
            Values =
            [
                new NamedValue("taken", verdict.Over.Value, "L"), new NamedValue("made", verdict.Makes, "L"),
                .. verdict.IsDosed ? [new NamedValue("batches", verdict.Batches, "")] : Array.Empty<NamedValue>(),
            ],
        };

    private static IEnumerable<TakenOfStock> OfSteps(Facts facts, StockFacts stock, RuleContext own)
    {
        var empty = new TakenOfStock(stock.Stock.Name, false, Tolerance(own))
        {
            Files = [stock.Stock.File],
            Checks = [Check.That("a step takes an aliquot of a stock", false)],
        };
        var drawn = stock.Aliquots.Select(a => (Aliquot: a, Of: facts.Workspace.FindStock(a.StockFile)))
            .Where(d => d.Of?.Makes is { Value.Litres: > 0 })
            .ToList();
        return drawn.Count == 0
            ? [empty]
            : drawn.Select(d => empty.Of(d.Aliquot.Place, d.Of!.Name, d.Aliquot.Volume.Litres, d.Of.Makes!.Value.Litres));
    }

    /// <summary>A stock that is dosed twice is drawn from the same bottle.</summary>
    private static IEnumerable<TakenOfStock> OfDoses(RecipeFacts recipe, RuleContext own)
    {
        var empty = new TakenOfStock(recipe.Recipe.Name, true, Tolerance(own))
        {
            Files = [recipe.Recipe.File],
            Checks = [Check.That("a stock that says what it makes is dosed", false)],
        };
        var dosed = recipe.Doses.Where(d => d is { Stock.Stock.Makes.Value.Litres: > 0, Volume.Litres: > 0 })
            .GroupBy(d => d.Stock!.Stock.File, StringComparer.Ordinal)
            .ToList();
        return dosed.Count == 0
            ? [empty]
            : dosed.Select(g => (Doses: g.ToList(), g.First().Stock!.Stock)).Select(d => empty.Of(
                d.Doses[0].Entry.Place, d.Stock.Name, d.Doses.Sum(x => x.Volume.Litres), d.Stock.Makes!.Value.Litres));
    }

    private static NumberOption Tolerance(RuleContext context) => context.Options<MoreThanTheStockMakesOptions>().Tolerance;
}

/// <summary>What a step or a tank takes of a stock against what one batch of it makes.</summary>
/// <param name="By">Name of the stock or recipe that takes it.</param>
/// <param name="IsDosed">True for a tank, which can be filled from several batches.</param>
internal sealed record TakenOfStock(string By, bool IsDosed, NumberOption Tolerance) : Verdict
{
    /// <summary>The step or the first dose; null where nothing is taken.</summary>
    public Place? Place { get; init; }

    /// <summary>Name of what is taken.</summary>
    public string Name { get; init; } = "";

    /// <summary>L.</summary>
    public double Makes { get; init; }

    /// <summary>Null where nothing is taken.</summary>
    public Check? Over { get; init; }

    /// <summary>How many batches of it that is; what is let pass of one needs no other.</summary>
    public int Batches => (int)Math.Min(int.MaxValue, Math.Ceiling((Over!.Value / (Makes * Room)) - 1e-9));

    private double Room => 1 + (Tolerance / 100);

    /// <param name="litres">That are taken.</param>
    public TakenOfStock Of(Place place, string name, double litres, double makes)
    {
        var over = new Check("more than there is", Rounding.SixDigits(litres), Relation.Over, makes * Room, "L");
        return this with { Place = place, Name = name, Makes = makes, Over = over, Checks = [over] };
    }
}

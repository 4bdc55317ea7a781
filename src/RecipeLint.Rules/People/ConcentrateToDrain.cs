using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.People;

/// <summary>
/// A bench sheet for a concentrate so strong in nitrogen or phosphorus that left-overs must not go down a drain, whose label does not say
/// what becomes of them.
/// </summary>
public sealed class ConcentrateToDrain : StockRule
{
    public override string Name => "concentrate-to-drain";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.Stock.ForBench || stock.Stock.Label is { Disposal: true } || NoticedAlready(stock, context))
        {
            yield break;
        }

        var (name, grams, limit, times) = Loads(stock, context).MaxBy(l => l.Times);
        var from = context.Number("from");
        if (!Reactants.AmountsAreMeant(stock, context) || times < from)
        {
            yield break;
        }

        yield return context.Find(
            stock.Stock.Label?.Place ?? stock.Stock.Place,
            $"'{stock.Stock.Name}' holds {Say.Number(grams)} g/L {name}, {Say.Number(times)} times the {Say.Number(limit)} mg/L that treated waste water may carry: one litre of it down a drain spends what {Say.Number(times / 1000)} m³ of that water may. "
            + "Ditches and ponds turn green and foul, and a small treatment plant is upset. "
            + "Say on the label what becomes of left-overs and rinsings, in \"disposal\": use them up on plants at the usual dilution, or hand them to whoever collects such waste where you are; local rules decide.") with
        {
            Measured = new Measured($"{name} against treated waste water", times, from, ""),
            Values = [new NamedValue(name, grams, "g/L"), new NamedValue("times the limit", times, "")],
        };
    }

    /// <summary>Where the notice on water life speaks, it says the same with more weight.</summary>
    internal static bool NoticedAlready(StockFacts stock, RuleContext context) =>
        stock.Stock.Label is not { Hazard: true }
        && ShopOption.Of(context.Facts, stock.Stock.File, "aquatic-hazard-notice", "from") is { } limit
        && new MixtureHazards(stock).Water(limit) is not null;

    /// <summary>Nitrogen and phosphorus in g/L, the limit in mg/L, and how many times the limit that is.</summary>
    internal static IEnumerable<(string Name, double Grams, double Limit, double Times)> Loads(StockFacts stock, RuleContext context) =>
        new[] { ("nitrogen", Element.N, context.Number("nitrogen")), ("phosphorus", Element.P, context.Number("phosphorus")) }
            .Select(l => (l.Item1, Grams: stock.Concentration(l.Item2).GramsPerLitre, Limit: l.Item3))
            .Select(l => (l.Item1, l.Grams, l.Limit, Rounding.SixDigits(l.Grams * 1000 / l.Limit)));
}

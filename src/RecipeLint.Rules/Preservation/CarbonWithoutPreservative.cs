using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>Food for moulds and bacteria in a kept stock, and nothing that stops them.</summary>
public sealed class CarbonWithoutPreservative : StockRule
{
    public override string Name => "carbon-without-preservative";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= context.Number("freshDays"))
        {
            yield break;
        }

        if (stock.Additions.Any(a => a.Substance.IsPreservative && a.Mass.Grams > 0))
        {
            yield break;
        }

        var food = stock.Additions
            .Where(a => a.Substance.FeedsMicrobes)
            .Select(a => (Addition: a, Grams: a.Mass.Grams * a.Substance.Strength.Value / stock.Volume.Litres))
            .OrderByDescending(f => f.Grams)
            .ThenBy(f => f.Addition.Id, StringComparer.Ordinal)
            .ToList();
        var total = food.Sum(f => f.Grams);
        if (food.Count == 0 || Rounding.SixDigits(total) < context.Number("minimumFood"))
        {
            yield break;
        }

        var worst = food[0].Addition;
        var kept = stock.Stock.Keep?.For is { } time ? $"kept for {Say.Days(time.Value.Days)}" : "that is kept";
        var message = $"'{stock.Stock.Name}' holds {Say.Number(total)} g/L of organic matter ({Say.List(food.Select(f => f.Addition.Substance.Name).Distinct(StringComparer.Ordinal))}) and no preservative. "
            + $"Moulds and bacteria live on it: a stock {kept} grows slime that eats the acid or chelate and clogs drippers. "
            + $"Add potassium sorbate or sodium benzoate ({context.Word("usualDose")} g/L) before the acid, use a mineral acid instead, or mix it fresh within {context.Word("freshDays")} days.";
        yield return context.Find(worst.Place, message) with
        {
            Related = [.. food.Skip(1).Select(f => new RelatedPlace(f.Addition.Place, "also feeds microbes"))],
            Measured = new Measured("organic matter", total, context.Number("minimumFood"), "g/L"),
            Values = [new NamedValue("organic matter", total, "g/L")],
        };
    }
}

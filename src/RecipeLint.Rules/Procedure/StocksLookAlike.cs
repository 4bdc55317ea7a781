using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>Stocks of one recipe, mixed from bench sheets, that no colour tells apart.</summary>
public sealed class StocksLookAlike : RecipeRule
{
    public override string Name => "stocks-look-alike";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var bottles = recipe.Doses
            .Where(d => d.Stock is { Stock.ForBench: true, Stock.Label: null or { Colour: null } })
            .DistinctBy(d => d.Stock!.Stock.File)
            .Select(d => (Dose: d, Stock: d.Stock!, Colour: StockColour.Of(d.Stock!)))
            .ToList();
        foreach (var alike in bottles.Where(b => b.Colour is not null).GroupBy(b => b.Colour!).Where(g => g.Count() > 1).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var stocks = alike.ToList();
            var rates = stocks.Where(s => s.Dose.Dose is { LitresPerLitre: > 0 }).Select(s => s.Dose.Dose!.Value.LitresPerLitre).ToList();
            var apart = rates.Count > 1 ? rates.Max() / rates.Min() : 1;
            var stake = apart >= 2
                ? $"They are dosed {Say.Number(apart)} times apart, so a swapped bottle is that much too strong."
                : "A swapped bottle gives one part twice and the other not at all.";
            yield return context.Find(
                stocks[^1].Dose.Entry.Place,
                $"{Say.List(stocks.Select(s => $"'{s.Stock.Stock.Name}'"))} are {(stocks.Count == 2 ? "both" : "all")} {alike.Key} and no label states a colour. "
                + $"{stake} Give all but one a food dye (1 to 5 mg/L), always the same colour for the same part, and write it on the label.") with
            {
                Related = [.. stocks.Select(s => new RelatedPlace(s.Stock.Stock.Place, $"{alike.Key}, worked out from its contents"))],
                Values = [new NamedValue("stocks alike", stocks.Count, ""), new NamedValue("dose apart", apart, "")],
            };
        }
    }
}

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
        foreach (var alike in Alike(recipe))
        {
            var stocks = alike.ToList();
            var declared = stocks.Count(s => s.Declared);
            var rates = stocks.Where(s => s.Dose.Dose is { LitresPerLitre: > 0 }).ToList();
            var apart = rates.Count > 1 ? rates.Max(Rate) / rates.Min(Rate) : 1;
            var strongest = rates.Count > 1 ? rates.MinBy(Rate)!.Stock : null;
            var unmarked = apart >= 2 && strongest is { Stock.Label: null or { Dilution: false } };
            var stake = apart >= 2
                ? $"They are dosed {Say.Number(apart)} times apart, so a swapped bottle is that much too strong"
                    + (unmarked ? $", and nothing marks '{strongest!.Stock.Name}' as the concentrated one: its label has no dilution." : ".")
                : "A swapped bottle gives one part twice and the other not at all.";
            var why = declared == 0 ? " and no label states a colour" : declared == stocks.Count ? " by their labels" : ", by a label or by what is in them";
            yield return context.Find(
                stocks[^1].Dose.Entry.Place,
                $"{Say.List(stocks.Select(s => $"'{s.Stock.Stock.Name}'"))} are {(stocks.Count == 2 ? "both" : "all")} {alike.Key}{why}. "
                + $"{stake} Give all but one a food dye (1 to 5 mg/L) or label of its own colour, always the same for the same part, and write it on the label.") with
            {
                Related =
                [
                    .. stocks.Select(s => new RelatedPlace(
                        s.Declared ? s.Stock.Stock.Label!.Place : s.Stock.Stock.Place, $"{alike.Key}, {(s.Declared ? "as its label says" : "worked out from its contents")}")),
                ],
                Values = [new NamedValue("stocks alike", stocks.Count, ""), new NamedValue("dose apart", apart, "")],
            };
        }
    }

    /// <summary>The bench stocks of a recipe that share a colour, declared on the label or worked out, by its plain word.</summary>
    internal static IEnumerable<IGrouping<string, Bottle>> Alike(RecipeFacts recipe) =>
        recipe.Doses
            .Where(d => d.Stock is { Stock.ForBench: true })
            .DistinctBy(d => d.Stock!.Stock.File)
            .Select(d => new Bottle(d, d.Stock!, d.Stock!.Stock.Label?.Colour is { } declared ? StockColour.Plain(declared.ToLowerInvariant()) : StockColour.Of(d.Stock!), d.Stock!.Stock.Label?.Colour is not null))
            .Where(b => b.Colour is not null)
            .GroupBy(b => b.Colour!)
            .Where(g => g.Count() > 1)
            .OrderBy(g => g.Key, StringComparer.Ordinal);

    private static double Rate(Bottle bottle) => bottle.Dose.Dose!.Value.LitresPerLitre;

    /// <summary>A stock as it stands on the shelf.</summary>
    /// <param name="Colour">Plain word; null where a dye of unknown make decides.</param>
    /// <param name="Declared">True when the label states it.</param>
    internal sealed record Bottle(DoseFacts Dose, StockFacts Stock, string? Colour, bool Declared);
}

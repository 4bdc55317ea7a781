using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Calcium and sulfate in one stock past the solubility of gypsum.</summary>
public sealed class CalciumWithSulfate : StockRule
{
    public override string Name => "calcium-with-sulfate";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var calcium = stock.Concentration("Ca+2").MolesPerLitre;
        var sulfate = stock.Concentration("SO4-2").MolesPerLitre;
        var supplierOfCalcium = stock.SuppliersOf("Ca+2").FirstOrDefault();
        var supplierOfSulfate = stock.SuppliersOf("SO4-2").FirstOrDefault();
        if (supplierOfCalcium is null || supplierOfSulfate is null)
        {
            yield break;
        }

        var limit = ConditionalSolubility.GypsumProduct(ConditionalSolubility.IonicStrength(stock));
        var ratio = Rounding.SixDigits(calcium * sulfate / limit);
        if (ratio <= context.Number("closeAt"))
        {
            yield break;
        }

        var grams = ConditionalSolubility.Excess(calcium, sulfate, limit) * ConditionalSolubility.GypsumMolarMass;
        var settles = ratio > context.Number("settlesAt");
        var message = (settles
                ? $"About {Say.Number(grams)} g/L of gypsum (calcium sulfate) will settle out of '{stock.Stock.Name}': {Say.Number(calcium * 1000)} mmol/L calcium meets "
                    + $"{Say.Number(sulfate * 1000)} mmol/L sulfate, {Say.Number(ratio)} times the product that stays dissolved. "
                : $"'{stock.Stock.Name}' is close to dropping gypsum (calcium sulfate): {Say.Number(calcium * 1000)} mmol/L calcium with "
                    + $"{Say.Number(sulfate * 1000)} mmol/L sulfate is {Say.Number(ratio)} times the product that stays dissolved. ")
            + "What settles is lost to the plants, blocks filters and drippers and hardly dissolves again. "
            + $"Keep {supplierOfCalcium.Substance.Name} in one part and {supplierOfSulfate.Substance.Name} in another.";
        yield return context.Find(supplierOfCalcium.Place, message, settles ? null : Level.Note) with
        {
            Related = [new RelatedPlace(supplierOfSulfate.Place, "brings the sulfate")],
            Measured = new Measured("product over limit", ratio, context.Number("closeAt"), ""),
            Values =
            [
                new NamedValue("calcium", calcium * 1000, "mmol/L"),
                new NamedValue("sulfate", sulfate * 1000, "mmol/L"),
                new NamedValue("product over limit", ratio, ""),
                new NamedValue("gypsum", grams, "g/L"),
            ],
        };
    }
}

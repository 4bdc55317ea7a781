using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>A weight so small that the scale's display step decides how much goes in.</summary>
public sealed class BelowScaleResolution : StockRule
{
    private const double PreStockMillilitres = 250;

    public override string Name => "below-scale-resolution";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var steps = context.Number("displaySteps");
        foreach (var addition in stock.Additions)
        {
            if (addition.ThroughAliquot || addition.Scale is not { } scale || addition.Mass.Grams <= 0)
            {
                continue;
            }

            var shown = Rounding.SixDigits(addition.Mass / scale.Readability);
            if (shown >= steps)
            {
                continue;
            }

            var error = 0.5 / shown;
            var message = $"{Say.Grams(addition.Mass.Grams)} of {addition.Substance.Name} is only {Say.Number(shown)} display steps of '{scale.Name}' (readability {Say.Grams(scale.Readability.Grams)}): "
                + $"rounding on the display alone can be off by ±{Say.Percent(error)}. The plants get that error from every batch. "
                + Remedy(stock, addition, scale.Readability.Grams * steps);
            var place = addition.Place.Child("amount");
            yield return context.Find(place, message) with
            {
                Measured = new Measured("display steps", shown, steps, ""),
                Values =
                [
                    new NamedValue("mass", addition.Mass.Grams, "g"),
                    new NamedValue("readability", scale.Readability.Grams, "g"),
                    new NamedValue("display steps", shown, ""),
                    new NamedValue("rounding error", error * 100, "%"),
                ],
            };
        }
    }

    /// <summary>A pre-stock with the aliquot worked out, and the batch size that would do instead.</summary>
    private static string Remedy(StockFacts stock, AdditionFacts addition, double minimumGrams)
    {
        var batch = stock.Volume.Litres * minimumGrams / addition.Mass.Grams;
        var aliquot = addition.Mass.Grams / minimumGrams * PreStockMillilitres;
        return $"Dissolve {Say.Grams(minimumGrams)} in water to {Say.Number(PreStockMillilitres)} mL and add {Say.Number(aliquot)} mL of that instead, "
            + $"make {Say.Litres(batch)} at once, or use a finer scale.";
    }
}

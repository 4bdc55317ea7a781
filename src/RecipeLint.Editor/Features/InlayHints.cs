using System.Globalization;
using System.Text.Json.Nodes;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Editor.Documents;
using RecipeLint.Editor.Sessions;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Editor.Features;

/// <summary>Behind each amount: how much that is in mmol/L, and what it comes to in the final solution.</summary>
internal static class InlayHints
{
    private const int Shown = 3;

    public static JsonNode Of(View view, TextRange range)
    {
        var hints = view.Stock is { } stock ? OfStock(view, stock) : view.Recipe is { } recipe ? OfRecipe(recipe) : [];
        return Lsp.Array(hints.Select(h => (Range: view.RangeOf(h.At), h.Text)).Where(h => h.Range.Touches(range))
            .OrderBy(h => h.Range.End).Select(h => new JsonObject
            {
                ["position"] = Lsp.Node(h.Range.End),
                ["label"] = h.Text,
                ["paddingLeft"] = true,
            }));
    }

    private static IEnumerable<(Place At, string Text)> OfStock(View view, StockFacts stock)
    {
        foreach (var step in stock.Stock.Steps.OfType<AddStep>().Where(s => s.Amount is not null))
        {
            if (stock.Additions.FirstOrDefault(a => !a.ThroughAliquot
                && a.Place.Pointer.Value == step.Place.Pointer.Value) is not { } addition)
            {
                continue;
            }

            var text = addition.Substance.Formula is { } formula && addition.Substance.Strength.Value > 0
                ? MillimolesPerLitre(addition, formula.MolarMass.GramsPerMole, stock.Volume.Litres)
                : $"{Figures.Of(addition.Mass.Grams / stock.Volume.Litres)} g/L";
            yield return (step.Amount!.Place, text + Final(view, stock, addition.Elements));
        }
    }

    private static string MillimolesPerLitre(AdditionFacts addition, double gramsPerMole, double litres)
    {
        var pure = addition.Mass.Grams * addition.Substance.Strength.Value * addition.Assay.Value;
        return $"{Figures.Of(pure * 1000 / gramsPerMole / litres)} mmol/L";
    }

    /// <summary>At the dose of the one recipe that doses the stock, else at the dose it was made for.</summary>
    private static string Final(View view, StockFacts stock, ElementTotals elements)
    {
        var doses = view.Facts.Recipes.SelectMany(r =>
            r.Doses.Where(d => d.Stock?.Stock.File == stock.Stock.File).Select(d => d.Dose?.LitresPerLitre)).Distinct().ToList();
        var dose = doses is [{ } only] ? only : stock.Stock.Dose?.Value.LitresPerLitre;
        if (dose is not { } litres)
        {
            return "";
        }

        var figures = Figures.PerLitre(elements, stock.Volume.Litres / litres).Where(f => f.MilligramsPerLitre >= 0.001).Take(Shown)
            .ToList();
        return figures.Count == 0 ? ""
            : string.Create(CultureInfo.InvariantCulture, $" → {Listed(figures)} mg/L at {Figures.Of(litres * 1000)} mL/L");
    }

    private static IEnumerable<(Place At, string Text)> OfRecipe(RecipeFacts recipe)
    {
        foreach (var dose in recipe.Doses)
        {
            var at = dose.Entry switch
            {
                StockDose stock => stock.Dose?.Place ?? stock.Amount?.Place ?? stock.Stock.Place,
                DirectDose direct => direct.Amount?.Place ?? direct.What.Place,
                _ => dose.Entry.Place,
            };
            var figures = Figures.PerLitre(dose.Elements, recipe.FinalVolume.Litres).Where(f => f.MilligramsPerLitre >= 0.001)
                .Take(2 * Shown).ToList();
            if (figures.Count > 0)
            {
                var moles = dose.Direct is { Substance.Formula: { } formula } direct
                    ? MillimolesPerLitre(direct, formula.MolarMass.GramsPerMole, recipe.FinalVolume.Litres) + " → "
                    : "→ ";
                yield return (at, $"{moles}{Listed(figures)} mg/L");
            }
        }
    }

    private static string Listed(IEnumerable<(string Key, double MilligramsPerLitre)> figures) =>
        string.Join(", ", figures.Select(f => $"{f.Key} {Figures.Of(f.MilligramsPerLitre)}"));
}

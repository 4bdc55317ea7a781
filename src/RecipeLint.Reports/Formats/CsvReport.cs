using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.ComputedFacts;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// The figures of every stock and recipe asked about as CSV, one figure a row: file, kind, name, what, of what, value, unit, expanded
/// uncertainty (k = 2). Numbers are raw and read back to the same value, but a pH that no meter reads, which is said in words; lines end
/// with CR LF (RFC 4180).
/// </summary>
public static class CsvReport
{
    private const string Head = "file,kind,name,figure,of,value,unit,expanded uncertainty";

    public static void Write(TextWriter writer, Report report)
    {
        Line(writer, Head);
        if (report.Facts is not { } facts)
        {
            return;
        }

        foreach (var file in report.Asked.Order(StringComparer.Ordinal))
        {
            if (facts.FindStock(file) is { } stock)
            {
                Stock(writer, facts, stock);
            }
            else if (facts.Recipes.FirstOrDefault(r => r.Recipe.File == file) is { } recipe)
            {
                Recipe(writer, facts, recipe);
            }
        }
    }

    private static void Stock(TextWriter writer, Facts facts, StockFacts stock)
    {
        var rows = new Rows(writer, stock.Stock.File, "stock", stock.Stock.Name);
        rows.Figure("volume", "", stock.Volume.Litres, "L");
        rows.Figure("dose", "", stock.Stock.Dose?.Value.MillilitresPerLitre, "mL/L");
        var known = ElementUncertainty.Of(stock, facts.FindStock);
        foreach (var (key, grams) in NutrientKeys.Grams(stock.Totals))
        {
            rows.Figure(
                "concentration",
                key,
                (new Mass(grams) / stock.Volume).MilligramsPerLitre,
                "mg/L",
                known.Elements.GetValueOrDefault(key)?.Expanded.MilligramsPerLitre);
        }

        foreach (var state in stock.Chemistry.States.Where(s => s.IsSolved))
        {
            var moment = StateFactsJson.MomentName(state);
            rows.Ph(moment, state);
            rows.Figure("density", moment, state.Density?.GramsPerMillilitre, "g/mL");
        }
    }

    private static void Recipe(TextWriter writer, Facts facts, RecipeFacts recipe)
    {
        var rows = new Rows(writer, recipe.Recipe.File, "recipe", recipe.Recipe.Name);
        rows.Figure("volume", "", recipe.FinalVolume.Litres, "L");
        var known = ElementUncertainty.Of(recipe, facts.FindStock);
        foreach (var (key, fact) in recipe.Elements)
        {
            rows.Figure(
                "concentration",
                key,
                fact.Concentration.MilligramsPerLitre,
                "mg/L",
                known.Elements.GetValueOrDefault(key)?.Expanded.MilligramsPerLitre);
        }

        foreach (var ion in recipe.Ions.Where(i => i.Charge != 0))
        {
            rows.Figure("charge", ion.Name, ion.ChargeConcentration.MilliequivalentsPerLitre, "meq/L");
        }

        foreach (var state in recipe.Chemistry.States.Where(s => s.IsSolved))
        {
            var moment = StateFactsJson.MomentName(state);
            rows.Ph(moment, state);
            rows.Figure("EC at 25 °C", moment, state.Conductivity.At25?.MillisiemensPerCentimetre, "mS/cm");
        }
    }

    private static void Line(TextWriter writer, string line)
    {
        writer.Write(line);
        writer.Write("\r\n");
    }

    private sealed class Rows(TextWriter writer, string file, string kind, string name)
    {
        private readonly string _start = $"{CsvEscape.Text(file)},{kind},{CsvEscape.Text(name)}";

        public void Figure(string figure, string of, double? value, string unit, double? uncertainty = null)
        {
            if (value is { } number && double.IsFinite(number))
            {
                Words(figure, of, Number(number), unit, uncertainty is { } known ? Number(known) : "");
            }
        }

        public void Ph(string of, SolutionState state) =>
            Words("pH", of, PhDoubt.In(state.Mix) ? "not known" : PhDoubt.OffTheScale(state.Ph) ?? Number(state.Ph));

        private void Words(string figure, string of, string value, string unit = "", string uncertainty = "") =>
            Line(writer, $"{_start},{figure},{CsvEscape.Text(of)},{value},{unit},{uncertainty}");

        private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
    }
}

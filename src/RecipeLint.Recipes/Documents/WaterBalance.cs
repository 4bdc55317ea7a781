using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// Cations against anions: 100 (sum of cations - sum of anions) / (sum of both), in meq/L (Standard Methods for the Examination of
/// Water and Wastewater, method 1030 E; recalled). Values that are a range count by their middle.
/// </summary>
public static class WaterBalance
{
    /// <summary>Per cent; the bound the laboratory trade puts on a routine analysis is 5 to 10 (common practice, no source).</summary>
    public const double LimitPercent = 10;

    /// <summary>With less than this the check would only say that the analysis is partial.</summary>
    public const int MajorsNeeded = 3;

    /// <summary>Below 0.4 meq/L in all, rounding alone unbalances an analysis.</summary>
    public const double LeastEquivalentsPerLitre = 0.4e-3;

    private static readonly string[] Majors = ["Ca", "Mg", "Na", "alkalinity", "Cl", "SO4"];

    /// <summary>Reports an imbalance over 10 % of an analysis that states most of the major ions.</summary>
    internal static void Check(
        IReadOnlyList<WaterReading> readings,
        Located<Interval<ChargeConcentration>>? alkalinity,
        JsonItem? ions,
        FieldReader fields)
    {
        var missing = Majors.Where(m => !States(m, readings, alkalinity)).ToArray();
        if (ions is null || Majors.Length - missing.Length < MajorsNeeded)
        {
            return;
        }

        var cations = readings.Where(r => r.Analyte.Charge > 0).Sum(r => Middle(r.Equivalents));
        var anions = readings.Where(r => r.Analyte.Charge < 0 && r.Analyte.Component != Component.Carbonate).Sum(r => Middle(r.Equivalents)) + Carbonates(readings, alkalinity);
        var sum = cations + anions;
        var percent = sum > 0 ? 100 * (cations - anions) / sum : 0;
        if (cations == 0 || anions == 0 || sum < LeastEquivalentsPerLitre || Math.Abs(percent) <= LimitPercent)
        {
            return;
        }

        var shortOf = percent > 0 ? "anions" : "cations";
        var hint = missing.Length > 0 ? $" Not stated: {Wording.Join(missing, "and")}." : "";
        fields.Report(new Problem(
            ProblemKind.UnbalancedWater,
            fields.At(ions).Key,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Cations carry {Milli(cations)} meq/L and anions {Milli(anions)} meq/L, an imbalance of {Math.Abs(percent):0.0} %; ")
            + string.Create(CultureInfo.InvariantCulture, $"over {LimitPercent} % a value, a unit or a basis is wrong, or {shortOf} are missing.{hint} ")
            + "Check 'as CaCO3', 'as N' and 'as S' on the report.")
        {
            Values =
            [
                new NamedValue("ImbalancePercent", percent, "%"),
                new NamedValue("limit", LimitPercent, "%"),
                new NamedValue("cations", cations * 1000, "meq/L"),
                new NamedValue("anions", anions * 1000, "meq/L"),
            ],
        });
    }

    /// <summary>The stated alkalinity, else what bicarbonate and carbonate carry, eq/L.</summary>
    private static double Carbonates(IReadOnlyList<WaterReading> readings, Located<Interval<ChargeConcentration>>? alkalinity) =>
        alkalinity is { Value: var stated }
            ? (stated.Low.EquivalentsPerLitre + stated.High.EquivalentsPerLitre) / 2
            : readings.Where(r => r.Analyte.Component == Component.Carbonate).Sum(r => Middle(r.Equivalents));

    private static bool States(string major, IReadOnlyList<WaterReading> readings, Located<Interval<ChargeConcentration>>? alkalinity) => major switch
    {
        "alkalinity" => alkalinity is not null || readings.Any(r => r.Analyte.Component == Component.Carbonate),
        "SO4" => readings.Any(r => r.Analyte.Component == Component.Sulfate),
        _ => readings.Any(r => r.Analyte.Key == major),
    };

    private static double Middle(Interval<double> range) => (range.Low + range.High) / 2;

    private static string Milli(double equivalents) => (equivalents * 1000).ToString("0.00", CultureInfo.InvariantCulture);
}

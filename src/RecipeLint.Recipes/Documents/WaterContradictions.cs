using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>
/// Figures of one analysis that cannot all be right: hardness against calcium and magnesium, alkalinity against bicarbonate, and
/// conductivity
/// against what is dissolved. A range counts by the end that fits best.
/// </summary>
internal static class WaterContradictions
{
    /// <summary>As for the balance of the ions.</summary>
    private const double Slack = WaterBalance.LimitPercent / 100;

    /// <summary>eq/L that rounding can make of it.</summary>
    private const double Rounding = 0.2e-3;

    /// <summary>
    /// Cations in meq/L for each mS/cm. About 10 in natural waters (US Salinity Laboratory, Agriculture Handbook 60, 1954; recalled);
    /// between
    /// potassium chloride (7, from its limiting molar conductivity) and water near saturation with gypsum (14, 30.5 meq/L at 2.2 mS/cm;
    /// recalled).
    /// </summary>
    private const double LeastPerMillisiemens = 7e-3;

    private const double MostPerMillisiemens = 14e-3;

    public static void Check(
        IReadOnlyList<WaterReading> readings,
        Located<Interval<ChargeConcentration>>? alkalinity,
        Located<Interval<ChargeConcentration>>? hardness,
        Located<Interval<Conductivity>>? ec,
        FieldReader fields)
    {
        var hard = Sum(readings, "Ca", "Mg");
        var carbonate = Sum(readings, "HCO3", "CO3");
        if (hardness is { } total && hard is { } ions)
        {
            var statesBoth = Has(readings, "Ca") && Has(readings, "Mg");
            if (IsMore(ions, Of(total)) || (statesBoth && IsMore(Of(total), ions)))
            {
                var which = statesBoth ? "calcium and magnesium come" : "the one of calcium and magnesium that is stated comes";
                var what = $"The hardness is {Text(Of(total))} meq/L, but {which} to {Text(ions)} meq/L: hardness is the sum of the two.";
                Report(fields, total.Place, what, Of(total), ions);
            }
        }

        if (alkalinity is { } capacity && carbonate is { } stated && (IsMore(stated, Of(capacity)) || IsMore(Of(capacity), stated)))
        {
            var what = $"The alkalinity is {Text(Of(capacity))} meq/L, but bicarbonate and carbonate come to {Text(stated)} meq/L: "
                + "in such a water they are the same.";
            Report(fields, capacity.Place, what, Of(capacity), stated);
        }

        if (ec is { } conductivity)
        {
            CheckConductivity(readings, alkalinity, hardness, conductivity, fields);
        }
    }

    private static void CheckConductivity(
        IReadOnlyList<WaterReading> readings,
        Located<Interval<ChargeConcentration>>? alkalinity,
        Located<Interval<ChargeConcentration>>? hardness,
        Located<Interval<Conductivity>> ec,
        FieldReader fields)
    {
        var most = ec.Value.High.MillisiemensPerCentimetre * MostPerMillisiemens;
        var cations = Whole(readings.Where(r => r.Analyte.Charge > 0));
        var anions = Whole(readings.Where(r => r.Analyte.Charge < 0));
        var (hard, carbonate) = (hardness is null ? 0 : Of(hardness).Low, alkalinity is null ? 0 : Of(alkalinity).Low);
        var least = new[] { cations.Low, anions.Low, hard, carbonate }.Max();
        var shown = Number((ec.Value.Low.MillisiemensPerCentimetre + ec.Value.High.MillisiemensPerCentimetre) / 2);
        if (least > most + Rounding)
        {
            var room = $"A conductivity of {shown} mS/cm has room for about {Number(most * 1000)} meq/L, "
                + $"but {Number(least * 1000)} meq/L are stated on one side.";
            Report(fields, ec.Place, room, new(most, most), new(least, least));
            return;
        }

        var isWhole = new[] { "Ca", "Mg", "Na" }.All(k => Has(readings, k));
        var needed = ec.Value.Low.MillisiemensPerCentimetre * LeastPerMillisiemens;
        if (isWhole && cations.High < needed - Rounding)
        {
            var lack = $"A conductivity of {shown} mS/cm needs at least about {Number(needed * 1000)} meq/L of cations, "
                + $"but those stated come to {Number(cations.High * 1000)} meq/L.";
            Report(fields, ec.Place, lack, new(needed, needed), cations);
        }
    }

    private static void Report(FieldReader fields, Place place, string what, Interval<double> one, Interval<double> other) =>
        fields.Report(new Problem(
            ProblemKind.UnbalancedWater,
            place,
            what + " One of the figures, its unit or its basis is wrong: compare them with the report.")
        {
            Values =
            [
                new NamedValue("stated", (one.Low + one.High) / 2 * 1000, "meq/L"),
                new NamedValue("from the others", (other.Low + other.High) / 2 * 1000, "meq/L"),
            ],
        });

    /// <summary>True when the least of the one is above the most of the other by more than the slack.</summary>
    private static bool IsMore(Interval<double> one, Interval<double> other) => one.Low > (other.High * (1 + Slack)) + Rounding;

    private static Interval<double> Of(Located<Interval<ChargeConcentration>> charge) =>
        new(charge.Value.Low.EquivalentsPerLitre, charge.Value.High.EquivalentsPerLitre);

    private static bool Has(IReadOnlyList<WaterReading> readings, string key) => readings.Any(r => r.Analyte.Key == key);

    private static Interval<double>? Sum(IReadOnlyList<WaterReading> readings, params string[] keys) =>
        readings.Where(r => keys.Contains(r.Analyte.Key)).ToList() is { Count: > 0 } found ? Whole(found) : null;

    private static Interval<double> Whole(IEnumerable<WaterReading> readings)
    {
        var all = readings.ToList();
        return new(all.Sum(r => r.Equivalents.Low), all.Sum(r => r.Equivalents.High));
    }

    private static string Text(Interval<double> equivalents) => Number((equivalents.Low + equivalents.High) / 2 * 1000);

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

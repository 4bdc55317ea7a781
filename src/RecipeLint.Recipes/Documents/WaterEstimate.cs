using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Recipes.Documents;

/// <summary>A composition with what had to be estimated to complete it.</summary>
internal sealed record WaterComposition(
    IReadOnlyList<WaterValue> Values,
    Located<Interval<ChargeConcentration>>? Alkalinity,
    Located<Interval<ChargeConcentration>>? Hardness,
    IReadOnlyList<string> Estimates);

/// <summary>
/// Makes a composition of what an analysis states. Hardness, alkalinity and conductivity say how much charge there is but not of which
/// ion; what fills the gap is assumed, and every assumption is put into words.
/// </summary>
internal static class WaterEstimate
{
    /// <summary>Share of hardness that is calcium where nothing tells it, by charge (common practice, no source).</summary>
    private const double CalciumShare = 0.75;

    /// <summary>
    /// Cations in meq/L are about ten times the conductivity in mS/cm (US Salinity Laboratory, Agriculture Handbook 60, 1954; recalled).
    /// </summary>
    private const double EquivalentsPerMillisiemens = 0.010;

    public static WaterComposition Complete(
        IReadOnlyList<WaterReading> readings,
        Located<Interval<ChargeConcentration>>? hardness,
        Located<Interval<ChargeConcentration>>? alkalinity,
        Located<Interval<Conductivity>>? ec)
    {
        var values = readings.Select(r => r.Value).ToList();
        var estimates = new List<string>();
        if (hardness is not null)
        {
            AddHardness(values, hardness, estimates);
        }

        var carbonates = readings.Where(r => r.Analyte.Component == Component.Carbonate).ToArray();
        if (alkalinity is not null && carbonates.Length == 0)
        {
            values.Add(new WaterValue(Component.Carbonate, new Located<string>("HCO3", alkalinity.Place), Moles(alkalinity.Value, 1)));
            estimates.Add("All alkalinity is taken as bicarbonate.");
        }

        if (readings.Count == 0)
        {
            Close(values, ec, hardness?.Place ?? alkalinity?.Place, estimates);
        }

        return new WaterComposition(
            values,
            alkalinity ?? CarbonateAlkalinity(carbonates),
            hardness ?? StatedHardness(readings),
            estimates);
    }

    private static void AddHardness(List<WaterValue> values, Located<Interval<ChargeConcentration>> hardness, List<string> estimates)
    {
        var calcium = values.FirstOrDefault(v => v.Component == Component.Calcium);
        var magnesium = values.FirstOrDefault(v => v.Component == Component.Magnesium);
        if (calcium is null && magnesium is null)
        {
            values.Add(new WaterValue(
                Component.Calcium, new Located<string>("Ca", hardness.Place), Moles(hardness.Value, 2, CalciumShare)));
            values.Add(new WaterValue(
                Component.Magnesium, new Located<string>("Mg", hardness.Place), Moles(hardness.Value, 2, 1 - CalciumShare)));
            estimates.Add($"Hardness is taken as {Percent(CalciumShare)} calcium and {Percent(1 - CalciumShare)} magnesium by charge.");
        }
        else if (calcium is null || magnesium is null)
        {
            var (component, key, known) = calcium is null ? (Component.Calcium, "Ca", magnesium!) : (Component.Magnesium, "Mg", calcium);
            var total = Moles(hardness.Value, 2);
            var low = Math.Max(0, total.Low.MolesPerLitre - known.Concentration.High.MolesPerLitre);
            var high = Math.Max(low, total.High.MolesPerLitre - known.Concentration.Low.MolesPerLitre);
            values.Add(new WaterValue(component, new Located<string>(key, hardness.Place), new(new(low), new(high))));
            estimates.Add($"{(calcium is null ? "Calcium" : "Magnesium")} is what the hardness leaves beside the stated "
                + $"{(calcium is null ? "magnesium" : "calcium")}.");
        }
    }

    /// <summary>No single ion is stated: the charge that is left is given to sodium or chloride.</summary>
    private static void Close(List<WaterValue> values, Located<Interval<Conductivity>>? ec, Place? place, List<string> estimates)
    {
        var hard = Charge(values, Component.Calcium, 2) + Charge(values, Component.Magnesium, 2);
        var carbonate = Charge(values, Component.Carbonate, 1);
        var total = Math.Max(hard, carbonate);
        if (ec is not null)
        {
            var middle = (ec.Value.Low.MillisiemensPerCentimetre + ec.Value.High.MillisiemensPerCentimetre) / 2;
            total = Math.Max(total, middle * EquivalentsPerMillisiemens);
            estimates.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"A conductivity of {middle:0.###} mS/cm is taken as {middle * EquivalentsPerMillisiemens * 1000:0.##} meq/L of cations "
                    + $"and as much of anions."));
        }

        if ((ec?.Place ?? place) is not { } at)
        {
            return;
        }

        Fill(values, Component.Sodium, "Na", total - hard, at, "sodium", estimates);
        Fill(values, Component.Chloride, "Cl", total - carbonate, at, "chloride", estimates);
    }

    private static void Fill(
        List<WaterValue> values, string component, string key, double equivalents, Place place, string name, List<string> estimates)
    {
        if (equivalents > 1e-9)
        {
            var moles = new AmountConcentration(equivalents);
            values.Add(new WaterValue(component, new Located<string>(key, place), new(moles, moles)));
            estimates.Add(
                $"The {(equivalents * 1000).ToString("0.##", CultureInfo.InvariantCulture)} meq/L that is left is taken as {name}.");
        }
    }

    private static Located<Interval<ChargeConcentration>>? CarbonateAlkalinity(WaterReading[] carbonates) => carbonates.Length == 0
        ? null
        : new Located<Interval<ChargeConcentration>>(
            new(new(carbonates.Sum(c => c.Equivalents.Low)), new(carbonates.Sum(c => c.Equivalents.High))),
            carbonates[0].Value.Key.Place);

    private static Located<Interval<ChargeConcentration>>? StatedHardness(IReadOnlyList<WaterReading> readings)
    {
        var calcium = readings.FirstOrDefault(r => r.Analyte.Key == "Ca");
        var magnesium = readings.FirstOrDefault(r => r.Analyte.Key == "Mg");
        return calcium is null || magnesium is null
            ? null
            : new Located<Interval<ChargeConcentration>>(
                new(new(calcium.Equivalents.Low + magnesium.Equivalents.Low), new(calcium.Equivalents.High + magnesium.Equivalents.High)),
                calcium.Value.Key.Place);
    }

    private static Interval<AmountConcentration> Moles(Interval<ChargeConcentration> charge, int perIon, double share = 1) =>
        new(new(charge.Low.EquivalentsPerLitre * share / perIon), new(charge.High.EquivalentsPerLitre * share / perIon));

    private static double Charge(List<WaterValue> values, string component, int perIon) =>
        values.Where(v => v.Component == component)
            .Sum(v => (v.Concentration.Low.MolesPerLitre + v.Concentration.High.MolesPerLitre) / 2 * perIon);

    private static string Percent(double share) => (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}

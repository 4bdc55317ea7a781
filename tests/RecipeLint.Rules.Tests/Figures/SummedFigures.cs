using RecipeLint.Analysis.Preservation;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Figures;

/// <summary>What masses, times and uncertainties come to, without an equilibrium.</summary>
internal static class SummedFigures
{
    /// <summary>mol/L of chlorine under one atmosphere of it at 25 °C (recalled).</summary>
    public const double HenryOfChlorine = 0.09;

    /// <summary>Minutes.</summary>
    public const double HalfAYear = 365.25 / 2 * 24 * 60;

    public static Formula FormulaOf(string text) => FormulaParser.Parse(text);

    public static double Mass(string formula) => FormulaOf(formula).MolarMass.GramsPerMole;

    public static Substance Bought(string id) => SubstanceCatalogue.BuiltIn.Substances.Single(s => s.Id == id);

    /// <summary>Per cent of carbon in a liquid extract that states none.</summary>
    public static Func<double> Carbon(string origin) => () => 100 * ExtractOrigins.Named(origin).Carbon.Value;

    /// <summary>The limit of raw water for an element, the graver one first.</summary>
    public static Func<double> RawWater(string key, int which) => () =>
        Owner.In("WaterLimits.cs", [.. Enumerable.Repeat($"new(\"{key}\", \"", which + 1), "\", "]);

    /// <summary>mg/L of a contaminant in water that is applied for years.</summary>
    public static Func<double> InWater(string element) => () => Owner.In("ContaminantLimits.cs", "InWater", $"new(\"{element}\", ");

    /// <summary>g/L of nitrogen in a part whose feed holds so many g/L of calcium as calcium nitrate.</summary>
    public static double NitrogenOfPart(double calcium, double strength) => strength * calcium * 2 * Mass("N") / Mass("Ca");

    /// <summary>
    /// Per cent of the positive charge of a feed of 15 meq/L that 2 mg/L of iron, 0.5 of manganese, 0.3 of zinc and 0.05 of copper carry.
    /// </summary>
    public static double TraceCharge() =>
        100 * 2 * ((2 / Mass("Fe")) + (0.5 / Mass("Mn")) + (0.3 / Mass("Zn")) + (0.05 / Mass("Cu"))) / 15;

    /// <summary>Days in which bleach of so many per cent loses a fifth, by the second-order law of the rule on shelf life.</summary>
    public static double BleachLosesAFifth(double percent, double celsius)
    {
        const string Rule = "ShelfLifeTooLong.cs";
        var rate = Math.Pow(Owner.In(Rule, "BleachTenDegrees = "), (celsius - 25) / 10)
            / (Owner.In(Rule, "BleachHalvesAt = ") * Owner.In(Rule, "BleachHalvesInDays = "));
        return ((1 / 0.8) - 1) / (rate * percent);
    }

    /// <summary>g/L of sodium benzoate that so much food, g/L, takes for a month at the pH to which benzoate works best.</summary>
    public static double BenzoateFor(double food) =>
        new PreservativeNeeds().Least("benzoic acid", food, 30) / 1000 * Mass("C7H5NaO2") / Mass("C7H6O2")
            / SolvedFigures.Uncharged("Benzoate-", "H(Benzoate)", PreservativeJudgement.WorkingPh);

    /// <summary>Expanded over standard uncertainty.</summary>
    public static double CoverageFactor() => Weighed(0.01).RelativeExpanded!.Value * 0.25 / Weighed(0.01).Standard.Grams;

    /// <summary>Per cent of a normal distribution within two standard deviations: integrated in steps of a thousandth.</summary>
    public static double WithinTwoDeviations() =>
        100 * Enumerable.Range(-2000, 4000).Sum(k => Math.Exp(-Math.Pow((k + 0.5) / 1000.0, 2) / 2)) / 1000 / Math.Sqrt(2 * Math.PI);

    /// <summary>A quarter of a gram on a scale that shows steps of so many grams and states nothing more.</summary>
    public static Analysis.Uncertainty.Weighing Weighed(double step) =>
        new(new Scale("scale", Place.Whole("recipelint.json"), null, new Mass(step), null, null), new Mass(0.25));

    /// <summary>5 mL in a cylinder of 100 mL that shows single millilitres.</summary>
    public static Pouring Poured() => Pouring.Of(
        new Measure("cylinder", Place.Whole("recipelint.json"), MeasureKind.Cylinder, new Volume(0.1), new Volume(0.001), new Tolerance(null, 0.001)),
        new Volume(0.005));

    /// <summary>Per cent.</summary>
    public static double Combined() => Math.Sqrt((12 * 12) + (0.3 * 0.3) + (0.6 * 0.6) + (0.6 * 0.6) + (1.2 * 1.2));
}

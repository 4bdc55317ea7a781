using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>Figures that explanations beyond precipitation state, against what the engine or a plain sum gives.</summary>
public sealed class StatedFigureTests
{
    /// <summary>Rule, the words of its explanation, what comes out, lowest and highest that the words cover.</summary>
    private static readonly (string Rule, string Words, Func<double> Given, double Low, double High)[] Stated =
    [
        ("chelate-short", "log K 25 with EDTA, against 19 for copper and 17 for zinc", () => LogKWithEdta("Fe+3", "Fe(EDTA)-"), 24.5, 25.6),
        ("chelate-short", "log K 25 with EDTA, against 19 for copper and 17 for zinc", () => LogKWithEdta("Cu+2", "Cu(EDTA)-2"), 18.4, 19.4),
        ("chelate-short", "log K 25 with EDTA, against 19 for copper and 17 for zinc", () => LogKWithEdta("Zn+2", "Zn(EDTA)-2"), 16.1, 17.4),
        ("chelate-short", "at pH 5.8 only a few thousandths of a milligram per litre do", IronWithoutHolder, 0.0005, 0.02),
        ("chelate-robbed", "takes EDTA from about pH 6.5 on", CalciumTakesEdta, 5.9, 7.1),
        ("chelate-outside-its-ph", "leaves a third of the iron on it at pH 5 and less than a tenth at pH 6", () => HeldByIdha(5), 25, 42),
        ("chelate-outside-its-ph", "leaves a third of the iron on it at pH 5 and less than a tenth at pH 6", () => HeldByIdha(6), 0, 10),
        ("preservative-too-weak", "Half of the benzoic acid is uncharged at pH 4.2, a tenth at 5.2 and a hundredth at 6.2", () => Uncharged("Benzoate-", "H(Benzoate)", 4.2), 0.45, 0.55),
        ("preservative-too-weak", "Half of the benzoic acid is uncharged at pH 4.2, a tenth at 5.2 and a hundredth at 6.2", () => Uncharged("Benzoate-", "H(Benzoate)", 5.2), 0.08, 0.12),
        ("preservative-too-weak", "Half of the benzoic acid is uncharged at pH 4.2, a tenth at 5.2 and a hundredth at 6.2", () => Uncharged("Benzoate-", "H(Benzoate)", 6.2), 0.008, 0.012),
        ("preservative-too-weak", "sorbic acid lies half a unit higher (4.76)", () => Uncharged("Sorbate-", "H(Sorbate)", 4.76), 0.45, 0.55),
        ("preservative-too-strong", "benzoic acid 1.7 g/L at 0 °C", () => 122.12 * Soluble("Benzoic acid", "Benzoate-", 0), 1.55, 1.85),
        ("preservative-too-strong", "sorbic acid about half of that", () => 112.13 * Soluble("Sorbic acid", "Sorbate-", 0) / (122.12 * Soluble("Benzoic acid", "Benzoate-", 0)), 0.35, 0.65),
        ("preservative-too-strong", "50 µmol/L (6 mg/L)", () => 0.05 * Mass("C7H6O2"), 5.5, 6.5),
        ("preservative-too-strong", "At 1:1000 a gram per litre leaves 7 µmol/L", () => 1e3 / Mass("C7H5NaO2"), 6.5, 7.5),
        ("acid-brings-too-much", "they bring 56 mg/L N, 124 mg/L P or 64 mg/L S", () => 4 * Mass("N"), 55.5, 56.5),
        ("acid-brings-too-much", "they bring 56 mg/L N, 124 mg/L P or 64 mg/L S", () => 4 * Mass("P"), 123.5, 124.5),
        ("acid-brings-too-much", "they bring 56 mg/L N, 124 mg/L P or 64 mg/L S", () => 2 * Mass("S"), 63.5, 64.5),
        ("ph-outside-window", "A feed of nitrates and dihydrogen phosphate in pure water rests near pH 5", RestingFeed, 4.6, 5.4),
        ("target-missed", "P2O5 read as P (0.436)", () => 2 * Mass("P") / Mass("P2O5"), 0.4355, 0.4365),
        ("target-missed", "K2O as K (0.830)", () => 2 * Mass("K") / Mass("K2O"), 0.8295, 0.8305),
        ("target-missed", "nitrate as nitrogen (4.43)", () => Mass("NO3") / Mass("N"), 4.425, 4.435),
        ("target-missed", "magnesium sulfate anhydrous for heptahydrate: 2.05", () => Mass("MgSO4·7H2O") / Mass("MgSO4"), 2.045, 2.055),
        ("target-missed", "zinc sulfate monohydrate for heptahydrate: 1.60", () => Mass("ZnSO4·7H2O") / Mass("ZnSO4·H2O"), 1.595, 1.605),
        ("hypochlorite-with-acid", "holds some 0.25 mmol of dissolved chlorine a litre", () => 1000 * 0.1 * 1e-5 * 0.1 / 4e-4, 0.245, 0.255),
        ("cools-on-dissolving", "Potassium nitrate takes 35 kJ/mol", () => HeatOfSolution.Find("KNO3")!.KilojoulesPerMol, 34.5, 35.5),
        ("cools-on-dissolving", "calcium nitrate tetrahydrate 31", () => HeatOfSolution.Find("Ca(NO3)2·4H2O")!.KilojoulesPerMol, 30.5, 33),
        ("cools-on-dissolving", "ammonium nitrate 26", () => HeatOfSolution.Find("NH4NO3")!.KilojoulesPerMol, 25.5, 26.5),
        ("cools-on-dissolving", "150 g of potassium nitrate in 800 mL cool it by 15 K", () => -BatchTemperature.AfterDissolving([new("KNO3", 150)], 800, 20).ChangeKelvin!.Value, 13.5, 16),
        ("no-final-volume-step", "A litre of water with 200 g of salt in it is 1.07 to 1.1 litres", () => Litres(200 / Mass("KNO3"), ("K+", 1), ("NO3-", 1)), 1.065, 1.105),
        ("no-final-volume-step", "A litre of water with 200 g of salt in it is 1.07 to 1.1 litres", () => Litres(200 / Mass("NH4NO3"), ("NH4+", 1), ("NO3-", 1)), 1.065, 1.13),
        ("topped-up-past-volume", "100 g of potassium nitrate about 40 mL", () => 1000 * (Litres(100 / Mass("KNO3"), ("K+", 1), ("NO3-", 1)) - Litres(0)), 35, 45),
        ("topped-up-past-volume", "100 g of Epsom salt about 50 mL", () => 1000 * (Epsom() - Litres(0)), 45, 58),
        ("doses-shift-the-volume", "are 2.1 % of the tank", () => 100 * (10 + 10 + 1) / 1000.0, 2.05, 2.15),
        ("charge-imbalance", "200 mg/L Ca are 200 / 40.08 × 2 = 9.98 meq/L", () => 200 / Mass("Ca") * 2, 9.975, 9.985),
        ("ratio-out-of-range", "K in meq/L is mg/L divided by 39.10, Ca mg/L divided by 20.04, Mg mg/L divided by 12.15", () => Mass("K"), 39.095, 39.105),
        ("ratio-out-of-range", "K in meq/L is mg/L divided by 39.10, Ca mg/L divided by 20.04, Mg mg/L divided by 12.15", () => Mass("Ca") / 2, 20.035, 20.045),
        ("ratio-out-of-range", "K in meq/L is mg/L divided by 39.10, Ca mg/L divided by 20.04, Mg mg/L divided by 12.15", () => Mass("Mg") / 2, 12.145, 12.155),
        ("target-missed", "40 mg/L of P2O5, which is 17.5 mg/L of P", () => 40 * 2 * Mass("P") / Mass("P2O5"), 17.4, 17.55),
        ("target-missed", "a gallon for a litre (3.785)", () => 231 * Math.Pow(0.254, 3), 3.7845, 3.7855),
        ("water-unfit", "3 meq/L (69 mg/L)", () => 3 * Mass("Na"), 68.5, 69.5),
        ("water-unfit", "4 meq/L (142 mg/L)", () => 4 * Mass("Cl"), 141.5, 142.5),
        ("water-unfit", "10 meq/L (355 mg/L)", () => 10 * Mass("Cl"), 354, 355.5),
        ("chelate-short", "7.0 g of disodium EDTA dihydrate for each gram of iron", () => 1.05 * Mass("Na2C10H14N2O8·2H2O") / Mass("Fe"), 6.95, 7.05),
        ("iron-partly-unstable", "41 mg/L of the same product, of which 2 mg/L iron are ortho-ortho", () => 2 / 0.048, 40.5, 42),
        ("below-minimum-weight", "u = 0.0166 g, and 0.25 g is known to 2·0.0166/0.25 = ±13 %", () => Weighed(0.01).Standard.Grams, 0.01655, 0.01665),
        ("below-minimum-weight", "u = 0.0166 g, and 0.25 g is known to 2·0.0166/0.25 = ±13 %", () => 100 * Weighed(0.01).RelativeExpanded!.Value, 12.5, 13.5),
        ("below-minimum-weight", "(±1.3 %)", () => 100 * Weighed(0.001).RelativeExpanded!.Value, 1.25, 1.35),
        ("below-scale-resolution", "±25 %", () => 100 * 0.5 / 2, 24.9, 25.1),
        ("dose-without-margin", "0.183·(1 + 1/4) = 0.229 mg/L", () => 0.183 * 1.25, 0.2285, 0.2295),
        ("dose-without-margin", "(0.25/0.183) - 1 = 37 % too much", () => 100 * (0.25 / 0.183 - 1), 36.5, 37.5),
        ("element-too-uncertain", "√(12² + 0.3² + 0.6² + 0.6² + 1.2²) = 12.1 %, so ±24 % expanded", Combined, 12.05, 12.15),
        ("element-too-uncertain", "√(12² + 0.3² + 0.6² + 0.6² + 1.2²) = 12.1 %, so ±24 % expanded", () => 2 * Combined(), 23.5, 24.5),
        ("element-too-uncertain", "98 % of the variance is the weight", () => 100 * 144 / (Combined() * Combined()), 97.5, 99),
        ("measure-too-coarse", "±1 mL is 1 % of 100 mL and 20 % of 5 mL", () => 100 * 1 / 5.0, 19.9, 20.1),
        ("measure-too-coarse", "u = √((1/√3)² + (1/√12)²) = 0.645 mL, so 2·0.645/5 = ±26 %", () => Poured().Standard.Millilitres, 0.6445, 0.6455),
        ("measure-too-coarse", "u = √((1/√3)² + (1/√12)²) = 0.645 mL, so 2·0.645/5 = ±26 %", () => 100 * Poured().RelativeExpanded!.Value, 25.5, 26.5),
        ("measure-too-coarse", "2·0.04/√3 = ±4.6 %", () => 100 * 2 * 0.04 / Math.Sqrt(3), 4.55, 4.65),
        ("vessel-too-coarse", "if 500 mL are really 580 mL, everything is 14 % too weak", () => 100 * (1 - 500 / 580.0), 13.5, 14.5),
        ("vessel-too-coarse", "2·0.30/√3 = ±35 %", () => 100 * 2 * 0.3 / Math.Sqrt(3), 34.5, 35.5),
        ("batch-outlasts-shelf-life", "at two a week that is 12.5 weeks", () => 50 / 2.0 / 2, 12.45, 12.55),
        ("batch-outlasts-shelf-life", "only 17 L are used", () => 365.25 / 12 / 7 * 2 * 2, 16.5, 17.5),
        ("over-scale-capacity", "150 g in a jug of 210 g is 360 g", () => 150 + 210, 359.9, 360.1),
        ("no-final-volume-step", "whoever stops at 900 mL doses a tenth too much", () => 100 * (1000 / 900.0 - 1), 9, 12),
        ("no-final-volume-step", "water shrinks by 0.6 % from 40 to 20 °C", () => 100 * (1 - (Water.DensityGramsPerMl(40) / Water.DensityGramsPerMl(20))), 0.55, 0.65),
        ("chlorine-at-the-roots", "at pH 5.5 and 15 mg/L less than a thousand-millionth of a mole per litre stands as Cl2", () => 1e9 * HenryOfChlorine * 1e-6 * ChlorineInTank.PartsPerMillion(15, 0, 5.5), 0, 1),
        ("batch-reading-off", "for a stock of potassium dihydrogen phosphate alone, which comes to pH 4.3", () => Solve(20, null, ("K+", 0.35), ("H2PO4-", 0.35)).Ph, 4.2, 4.4),
        ("magnesium-ammonium-phosphate", "MKP keeps it at pH 4 to 4.5", () => Solve(20, null, ("K+", 0.15), ("H2PO4-", 0.15), ("Mg+2", 0.2), ("SO4-2", 0.2)).Ph, 3.95, 4.5),
        ("chelating-acid-drops-out", "of the acid of DTPA it holds about 5 g", () => 393.35 * Soluble("DTPA acid", "DTPA-5", 20), 4, 6),
        ("salt-past-its-solubility", "about 100 g/L of disodium EDTA", () => 372.24 * SaltVerdicts.Solubility(ConstantSet.Product.FindSolid("Disodium EDTA dihydrate")!, 20)!.Value, 95, 115),
        ("stock-freezes", "ice takes 9 % more room", () => 100 * ((Water.DensityGramsPerMl(0.01) / 0.9167) - 1), 8.5, 9.5),
        ("ambiguous-unit", "17 % too weak or 20 % too strong", () => 100 * ((4.54609 / 3.785412) - 1), 19.5, 20.5),
        ("ambiguous-unit", "17 % too weak or 20 % too strong", () => 100 * (1 - (3.785412 / 4.54609)), 16.5, 17.5),
        ("ambiguous-substance", "A gram of the dry salt holds 2.05 times as much magnesium", () => Mass("MgSO4·7H2O") / Mass("MgSO4"), 2.045, 2.055),
        ("impossible-analysis", "2.3 times its real phosphorus and 1.2 times its potassium", () => Mass("P2O5") / (2 * Mass("P")), 2.25, 2.35),
        ("impossible-analysis", "2.3 times its real phosphorus and 1.2 times its potassium", () => Mass("K2O") / (2 * Mass("K")), 1.15, 1.25),
        ("iron-with-phosphate", "at 25 °C half of it in 34 days at pH 2.3 and in 174 days at pH 5.4", () => PyrophosphateHydrolysis.HalfLifeDays(2.3, 25), 33.5, 34.5),
        ("iron-with-phosphate", "at 25 °C half of it in 34 days at pH 2.3 and in 174 days at pH 5.4", () => PyrophosphateHydrolysis.HalfLifeDays(5.4, 25), 173.5, 174.5),
        ("preservative-drops-out", "of its calcium salt a litre of water holds about 27 g at 20 °C", () => Mass("Ca(C7H5O2)2") * SaltVerdicts.Solubility(ConstantSet.Product.FindSolid("Calcium benzoate")!, 20)!.Value, 24, 31),
        ("chelate-nitrogen-counted", "about 1 mg/L with 2 mg/L of iron", () => 2 * 2 * Mass("N") / Mass("Fe"), 0.95, 1.05),
        ("vessel-too-coarse", "±150 mL is ±30 % of 500 mL", () => 100 * 150 / 500.0, 29.9, 30.1),
        ("silicate-with-acid-or-metal", "In the tank at 30 mg/L it is harmless", () => Solve(20, 6, ("H4SiO4", 0.03 / Mass("SiO2"))).SaturationIndex("Amorphous silica")!.Value, -5, -0.3),
        ("doses-shift-the-volume", "poured into 200 L they make 204.2 L", () => 200 * 1.021, 204.15, 204.25),
    ];

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Stated.Length)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void AnExplanationStatesWhatComesOut(int row)
    {
        var (rule, words, given, low, high) = Stated[row];
        var folder = RuleFolder.All.Single(f => f.Name == rule);
        Assert.Contains(words, File.ReadAllText(System.IO.Path.Combine(folder.Path, "explanation.md")), StringComparison.Ordinal);
        var figure = given();
        Assert.True(figure >= low && figure <= high, $"{rule}: '{words}', given {figure:0.####}, allowed {low} to {high}");
    }

    private static double Mass(string formula) => FormulaParser.Parse(formula).MolarMass.GramsPerMole;

    /// <summary>mol/L of chlorine under one atmosphere of it at 25 °C (recalled).</summary>
    private const double HenryOfChlorine = 0.09;

    /// <summary>A quarter of a gram on a scale that shows steps of so many grams and states nothing more.</summary>
    private static Analysis.Uncertainty.Weighing Weighed(double step) =>
        new(new Scale("scale", Place.Whole("recipelint.json"), null, new Mass(step), null, null), new Mass(0.25));

    /// <summary>5 mL in a cylinder of 100 mL that shows single millilitres.</summary>
    private static Pouring Poured() => Pouring.Of(
        new Measure("cylinder", Place.Whole("recipelint.json"), MeasureKind.Cylinder, new Volume(0.1), new Volume(0.001), new Tolerance(null, 0.001)),
        new Volume(0.005));

    private static double Combined() => Math.Sqrt((12 * 12) + (0.3 * 0.3) + (0.6 * 0.6) + (0.6 * 0.6) + (1.2 * 1.2));

    /// <summary>log10 K in concentrations at an ionic strength of 0.1, as tables print it.</summary>
    private static double LogKWithEdta(string metal, string complex)
    {
        var state = Solve(25, 2, (metal, 1e-4), ("EDTA-4", 1e-4), ("K+", 0.1), ("NO3-", 0.1));
        return Math.Log10(state.Molality(complex) / state.Molality(metal) / state.Molality("EDTA-4"));
    }

    /// <summary>mg/L of iron(III) that fresh rust leaves dissolved at pH 5.8, 20 °C.</summary>
    private static double IronWithoutHolder()
    {
        var input = Input(20, 5.8, ("Fe+3", 1e-4), ("NO3-", 0.01), ("K+", 0.01)) with { HoldPh = true };
        var answer = Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily));
        return 55845 * (1e-4 - answer.Formed("Ferrihydrite (amorphous)") - answer.Formed("Ferrihydrite (aged)"));
    }

    /// <summary>pH at which calcium holds half the EDTA of 36 µmol/kg of Fe-EDTA in a feed with 4 mmol/kg of calcium, rust falling out.</summary>
    private static double CalciumTakesEdta()
    {
        double low = 4, high = 9;
        for (var k = 0; k < 20; k++)
        {
            var middle = (low + high) / 2;
            var input = Input(20, middle, ("Fe+3", 3.6e-5), ("EDTA-4", 3.6e-5), ("Na+", 3.6e-5), ("Ca+2", 4e-3), ("NO3-", 8e-3)) with { HoldPh = true };
            var left = Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily)).Left;
            if (left.Molality("Ca(EDTA)-2") + left.Molality("CaH(EDTA)-") < 1.8e-5)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>Share of 36 µmol/kg of Fe-IDHA that a feed with calcium and phosphate leaves on the agent, per cent.</summary>
    private static double HeldByIdha(double ph)
    {
        var input = Input(
            20, ph, ("Fe+3", 3.6e-5), ("IDHA-4", 3.6e-5), ("Na+", 3.6e-5), ("Ca+2", 4e-3), ("K+", 5e-3), ("NO3-", 11.5e-3), ("H2PO4-", 1.5e-3));
        var left = Equilibrium.Ask(input with { HoldPh = true }, MayForm.Of(SolidRole.FormsReadily)).Left;
        return 100 * (left.Molality("Fe(IDHA)-") + left.Molality("Fe(OH)(IDHA)-2") + left.Molality("Fe(OH)2(IDHA)-3")) / 3.6e-5;
    }

    private static double Uncharged(string ion, string acid, double ph) => Solve(25, ph, (ion, 1e-3), ("Na+", 1e-3)).Molality(acid) / 1e-3;

    private static double Soluble(string solid, string ion, double celsius)
    {
        double low = 1e-4, high = 1;
        for (var k = 0; k < 40; k++)
        {
            var middle = Math.Sqrt(low * high);
            if (Solve(celsius, null, (ion, middle)).SaturationIndex(solid) is <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>4 mmol/kg of calcium nitrate, 5 of potassium nitrate and 1 of potassium dihydrogen phosphate.</summary>
    private static double RestingFeed() => Solve(25, null, ("Ca+2", 4e-3), ("K+", 6e-3), ("NO3-", 13e-3), ("H2PO4-", 1e-3)).Ph;

    /// <summary>Litres of a kilogram of water with a salt in it, 20 °C.</summary>
    private static double Litres(double molPerKg, params (string Ion, double Count)[] ions) =>
        SolutionDensity.Of(ions.ToDictionary(i => i.Ion, i => i.Count * molPerKg, StringComparer.Ordinal), 20).State!.Value.LitresPerKgWater;

    /// <summary>Litres of a kilogram of water with 100 g of Epsom salt, whose crystal water becomes water.</summary>
    private static double Epsom()
    {
        var moles = 100 / Mass("MgSO4·7H2O");
        var water = 1 + (moles * 7 * 0.018015);
        return water * Litres(moles / water, ("Mg+2", 1), ("SO4-2", 1));
    }

    private static Equilibrium Solve(double celsius, double? ph, params (string Ion, double MolPerKg)[] totals) =>
        EquilibriumSolver.Product.Solve(Input(celsius, ph, totals));

    private static SolutionInput Input(double celsius, double? ph, params (string Ion, double MolPerKg)[] totals) => new()
    {
        Totals = new ComponentTotals(totals.Select(t => KeyValuePair.Create(t.Ion, t.MolPerKg))),
        Celsius = celsius,
        FixedPh = ph,
    };
}

using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// Mixtures that others measured, none of which calibrates anything: buffers of two acids, sea water, freezing points, carbon dioxide, the
/// share of ammonia and the free part of EDTA over pH. Tolerances were written down before the program was asked, and stayed.
/// </summary>
public sealed class PublishedSolutionsTests
{
    internal const string Table = "tests/RecipeLint.Chemistry.Tests/Tables/published-solutions.md";

    private const double KilogramsWaterInSeaWater = 0.96483;

    /// <summary>
    /// The old tables of buffers count on Sørensen's scale, which lies that much below the scale of activities (R. G. Bates, Determination of
    /// pH, 2nd ed. 1973, recalled). It was put in after their rows had come out 0.02 to 0.11 high.
    /// </summary>
    private const double SorensenScale = 0.04;

    [Fact]
    public void WhatOthersMeasuredIsGivenBack()
    {
        FactTable.Hold(Table, "# Published solutions: mixtures that nothing was fitted to\n\nTolerances were written down before the program was asked: in units of pH or log10, else in per cent. Buffers of 1909 to 1921 are moved by 0.04 from Sørensen's scale to that of activities (Bates 1973).\n\n", [.. Rows()]);
    }

    private static IEnumerable<FactRow> Rows() =>
        [.. PhosphateBuffers(), .. OtherBuffers(), .. Ammonia(), .. CarbonDioxide(), .. FreeEdta(), .. SeaWater(), .. FreezingPoints(),
            .. SaturatedSalts(), .. SingleSalts(), .. OnePerCent(), .. BoricAcid(), .. HardWater(), .. Gypsum(), .. SoldLiquids()];

    private static IEnumerable<FactRow> PhosphateBuffers()
    {
        const string sorensen = "S. P. L. Sørensen 1909 (recalled)", mcIlvaine = "T. C. McIlvaine, J. Biol. Chem. 49 (1921) 183 (recalled)";
        foreach (var (parts, ph) in ((double, double)[])
            [(1, 5.906), (2, 6.239), (3, 6.468), (4, 6.643), (5, 6.813), (6, 6.979), (7, 7.168), (8, 7.381), (9, 7.731)])
        {
            yield return new("mixed buffer", $"{parts} parts of M/15 Na2HPO4 to {10 - parts} of KH2PO4, 18 °C", "pH", ph + SorensenScale,
                Solve(18, ("Na+", 2 * parts / 150), ("K+", (10 - parts) / 150), ("H2PO4-", 1.0 / 15)).Ph, 0.05, sorensen);
        }

        foreach (var (phosphate, ph) in ((double, double)[])
            [(0.40, 2.2), (4.11, 3), (7.71, 4), (10.30, 5), (12.63, 6), (16.47, 7), (19.45, 8)])
        {
            yield return new("mixed buffer", $"{phosphate} mL of 0.2 M Na2HPO4 to {20 - phosphate:0.00} mL of 0.1 M citric acid, 21 °C", "pH", ph + SorensenScale,
                Solve(21, ("Na+", 0.4 * phosphate / 20), ("H2PO4-", 0.2 * phosphate / 20), ("Citrate-3", 0.1 * (20 - phosphate) / 20)).Ph, 0.1,
                mcIlvaine);
        }
    }

    private static IEnumerable<FactRow> OtherBuffers()
    {
        const string walpole = "G. S. Walpole, J. Chem. Soc. 105 (1914) 2501 (recalled)", bates = "R. G. Bates, Determination of pH, 2nd ed. 1973 (recalled)";
        foreach (var (salt, ph) in ((double, double)[])[(1, 3.72), (5, 4.63), (9, 5.57)])
            yield return new("mixed buffer", $"{salt} parts of 0.2 M sodium acetate to {10 - salt} of acetic acid, 18 °C", "pH", ph + SorensenScale,
                Solve(18, ("Na+", 0.02 * salt), ("Acetate-", 0.2)).Ph, 0.06, walpole);
        yield return new("mixed buffer", "0.1 m acetic acid with 0.1 m sodium acetate, 25 °C", "pH", 4.652, Solve(25, ("Na+", 0.1), ("Acetate-", 0.2)).Ph, 0.03, bates);
        yield return new("acid", "0.1 m HCl, 25 °C", "pH", 1.110, Solve(25, ("Cl-", 0.1)).Ph, 0.03, bates);
        yield return new("acid", "0.01 m HCl with 0.09 m KCl, 25 °C", "pH", 2.098, Solve(25, ("K+", 0.09), ("Cl-", 0.1)).Ph, 0.03, bates);
    }

    private static IEnumerable<FactRow> Ammonia()
    {
        foreach (var (celsius, ph, percent) in ((double, double, double)[])
            [(5, 8, 1.24), (10, 8, 1.83), (15, 8, 2.67), (20, 8, 3.82), (25, 8, 5.38), (30, 8, 7.46), (20, 7, 0.396), (25, 7, 0.566), (20, 9, 28.4), (25, 9, 36.3)])
        {
            var state = Solve(Input(celsius, ("NH4+", 5e-4), ("Cl-", 5e-4)) with { FixedPh = ph });
            yield return new("ammonia share", $"ammonia of ammonium at pH {ph}, {celsius} °C", "%", percent, 100 * state.Molality("NH3") / 5e-4, 0.04,
                "K. Emerson et al., J. Fish. Res. Board Can. 32 (1975) 2379 (recalled)");
        }
    }

    private static IEnumerable<FactRow> CarbonDioxide()
    {
        // Volumes of gas at 0 °C and 1 atm in a volume of water; a mole of it fills 22.26 L.
        foreach (var (celsius, volumes) in ((double, double)[])[(0, 1.713), (10, 1.194), (20, 0.878), (25, 0.759), (30, 0.665), (40, 0.530)])
            yield return new("carbon dioxide", $"dissolved in water under 1 atm, {celsius} °C", "mol/kg", volumes / 22.26 / Water.DensityGramsPerMl(celsius),
                UnderCarbonDioxide(1, celsius).Molality("CO2"), 0.03, "CRC Handbook of Chemistry and Physics (recalled)");
        const string stumm = "W. Stumm & J. J. Morgan, Aquatic Chemistry, 3rd ed. 1996 (recalled)";
        var air = Math.Pow(10, -3.5);
        yield return new("carbon dioxide", "water under 10^-3.5 atm, 25 °C", "pH", 5.65, UnderCarbonDioxide(air, 25).Ph, 0.05, stumm);
        yield return new("carbon dioxide", "water under 1 atm, 25 °C", "pH", 3.91, UnderCarbonDioxide(1, 25).Ph, 0.05, stumm);
        yield return new("alkalinity", "1 meq/kg under 10^-3.5 atm, 25 °C", "pH", 8.30, UnderCarbonDioxide(air, 25, ("Na+", 1e-3)).Ph, 0.1, stumm);
        yield return new("alkalinity", "0.1 meq/kg under 10^-3.5 atm, 25 °C", "pH", 7.32, UnderCarbonDioxide(air, 25, ("Na+", 1e-4)).Ph, 0.1, stumm);
        var calcite = Chemistry.Equilibrium.Equilibrium.Ask(Input(25, ("Ca+2", 0.01), ("CO3-2", 0.01)), MayForm.Of(SolidRole.FormsReadily));
        yield return new("alkalinity", "water closed over calcite, 25 °C", "pH", 9.91, calcite.Left.Ph, 0.1, stumm);
    }

    private static IEnumerable<FactRow> FreeEdta()
    {
        foreach (var (ph, share) in ((double, double)[])[(4, 3.0e-9), (5, 2.9e-7), (6, 1.8e-5), (7, 3.8e-4), (8, 4.2e-3), (9, 0.041), (10, 0.30)])
        {
            // The pH of a titration at 0.1 mol/L is that of the concentration; of the activity it is 0.11 higher.
            var state = Solve(Input(25, ("EDTA-4", 1e-4), ("K+", 0.1), ("Cl-", 0.1)) with { FixedPh = ph + 0.11 });
            yield return new("chelate over pH", $"EDTA without protons at pH {ph}, ionic strength 0.1", "log10", Math.Log10(share),
                Math.Log10(state.Molality("EDTA-4") / 1e-4), 0.2, "D. C. Harris, Quantitative Chemical Analysis, 8th ed. 2010 (recalled)");
        }
    }

    private static IEnumerable<FactRow> SeaWater()
    {
        const string salinity = "Practical Salinity Scale 1978 (recalled)", state = "International Equation of State of Sea Water 1980 (recalled)";
        foreach (var (celsius, milliSiemens) in ((double, double)[])[(0, 29.04), (15, 42.914), (20, 47.91), (25, 53.07)])
        {
            var sea = Sea(35, celsius);
            yield return new("conductivity of mixed salts", $"sea water of salinity 35, {celsius} °C", "mS/cm", milliSiemens,
                SolutionConductivity.Of(Molalities(sea), celsius).MilliSiemensPerCm!.Value, 0.03, salinity);
        }

        foreach (var (celsius, density) in ((double, double)[])[(0, 1.028106), (10, 1.026952), (20, 1.024763), (25, 1.023343)])
            yield return new("density of mixed salts", $"sea water of salinity 35, {celsius} °C", "g/mL", density,
                SolutionDensity.Of(Molalities(Sea(35, celsius)), celsius).GramsPerMl!.Value, 0.0015, state);
        foreach (var (practical, celsius) in ((double, double)[])[(10, -0.5425), (20, -1.0832), (35, -1.922)])
            yield return new("freezing point", $"sea water of salinity {practical}", "°C", celsius,
                Osmosis.FreezingPointC(Sea(practical, 0).WaterActivity)!.Value, 0.03, "UNESCO 1983, Technical Papers in Marine Science 44 (recalled)");
    }

    /// <summary>Relative humidity over saturated salts, up to the ionic strength that the model covers; the tolerance was 1 % before it was asked.</summary>
    private static IEnumerable<FactRow> SaturatedSalts()
    {
        foreach (var (solid, called, kelvins, ions) in ((string, string, (double Celsius, double Percent)[], (string, double)[])[])
            [
                ("Niter", "KNO3", [(10, 95.96), (20, 94.62), (25, 93.58)], [("K+", 10), ("NO3-", 10)]),
                ("Sylvite", "KCl", [(0, 88.61), (10, 86.77), (20, 85.11), (25, 84.34), (30, 83.62)], [("K+", 9), ("Cl-", 9)]),
                ("Arcanite", "K2SO4", [(0, 98.77), (10, 98.18), (20, 97.59), (25, 97.30), (30, 97.00)], [("K+", 4), ("SO4-2", 2)]),
            ])
        {
            var salt = ConstantSet.Product.FindSolid(solid)!;
            foreach (var (celsius, percent) in kelvins)
            {
                var left = EquilibriumSolver.Product.Precipitate(Input(celsius, ions), [salt]);
                Assert.True(left.Converged, left.Failure);
                yield return new("water activity", $"over saturated {called}, {celsius} °C", "%", percent, 100 * left.Final.WaterActivity, 0.01,
                    "L. Greenspan, J. Res. Natl. Bur. Stand. 81A (1977) 89 (recalled)");
            }
        }
    }

    /// <summary>Conductivity per equivalent, of salts that the ions were not fitted to; the tolerance was 3 % before it was asked.</summary>
    private static IEnumerable<FactRow> SingleSalts()
    {
        foreach (var (called, each, points, ions) in ((string, int, (double PerLitre, double Lambda)[], (string, double)[])[])
            [
                ("KNO3", 1, [(0.01, 132.82), (0.05, 126.31), (0.1, 120.40)], [("K+", 1), ("NO3-", 1)]),
                ("NH4Cl", 1, [(0.01, 141.28), (0.05, 133.29), (0.1, 128.75)], [("NH4+", 1), ("Cl-", 1)]),
                ("sodium acetate", 1, [(0.01, 83.76), (0.05, 76.92)], [("Na+", 1), ("Acetate-", 1)]),
                ("KHCO3", 1, [(0.01, 110.08)], [("K+", 1), ("CO3-2", 1)]),
                ("NaOH", 1, [(0.01, 238.0)], [("Na+", 1)]),
                ("CuSO4", 2, [(0.01, 83.12), (0.05, 59.05), (0.1, 50.58)], [("Cu+2", 1), ("SO4-2", 1)]),
            ])
        {
            foreach (var (equivalents, lambda) in points)
            {
                var molar = ions.ToDictionary(i => i.Item1, i => i.Item2 * equivalents / each, StringComparer.Ordinal);
                var water = molar.First().Value / SolutionDensity.ToMolality(molar, 25).Amounts!.First().Value;
                var input = Input(25, [.. molar.Select(m => (m.Key, m.Value / water))]);
                var state = Solve(called == "KHCO3" ? input with { FixedPh = 8.2 } : input);
                yield return new("conductivity of single salts", $"{equivalents} eq/L {called}, 25 °C", "mS/cm", equivalents * lambda,
                    SolutionConductivity.Of(Molalities(state), 25).MilliSiemensPerCm!.Value, 0.03, "CRC Handbook, equivalent conductivity of electrolytes (recalled)");
            }
        }
    }

    /// <summary>pH of one per cent by mass, as makers and handbooks give it; the tolerance was 0.2 before it was asked.</summary>
    private static IEnumerable<FactRow> OnePerCent()
    {
        const string merck = "The Merck Index and makers' sheets (recalled)";
        foreach (var (called, ph, grams, ions) in ((string, double, double, (string, double)[])[])
            [
                ("KH2PO4", 4.5, 136.09, [("K+", 1), ("H2PO4-", 1)]), ("NH4H2PO4", 4.5, 115.03, [("NH4+", 1), ("H2PO4-", 1)]),
                ("(NH4)2HPO4", 8.0, 132.06, [("NH4+", 2), ("H2PO4-", 1)]), ("K2HPO4", 9.0, 174.18, [("K+", 2), ("H2PO4-", 1)]),
                ("Na2HPO4", 9.1, 141.96, [("Na+", 2), ("H2PO4-", 1)]), ("Na2CO3", 11.37, 105.99, [("Na+", 2), ("CO3-2", 1)]),
                ("K2CO3", 11.5, 138.21, [("K+", 2), ("CO3-2", 1)]), ("NaHCO3", 8.2, 84.007, [("Na+", 1), ("CO3-2", 1)]),
                ("citric acid", 2.3, 192.12, [("Citrate-3", 1)]), ("borax decahydrate", 9.24, 381.37, [("Na+", 2), ("B(OH)3", 4)]),
            ])
        {
            yield return new("one per cent by mass", $"{called}, 25 °C", "pH", ph,
                Solve(25, [.. ions.Select(i => (i.Item1, i.Item2 * 1000 / 99 / grams))]).Ph, 0.2, merck);
        }
    }

    /// <summary>
    /// Boric acid by mass per cent at 20 °C: makers' sheets (recalled; the ends, 0.1 % and saturated, read in a registration dossier of boric
    /// oxide). From 2 % on the acid is that of polyborates. The tolerance was 0.2 before it was asked.
    /// </summary>
    private static IEnumerable<FactRow> BoricAcid()
    {
        foreach (var (percent, ph) in ((double, double)[])[(0.1, 6.1), (1, 5.1), (2, 4.5), (3, 4.2), (4.72, 3.7)])
            yield return new("boric acid over strength", $"{percent} % by mass, 20 °C", "pH", ph,
                Solve(20, ("B(OH)3", 10 * percent / 61.83 / (1 - (percent / 100)))).Ph, 0.2, "makers' sheets of boric acid (recalled, ends read)");
    }

    /// <summary>Water over lime under carbon dioxide; tolerances 0.1 and 10 % before it was asked.</summary>
    private static IEnumerable<FactRow> HardWater()
    {
        const string stumm = "W. Stumm & J. J. Morgan, Aquatic Chemistry, 3rd ed. 1996 (recalled)", frear = "G. L. Frear & J. Johnston, J. Am. Chem. Soc. 51 (1929) 2082 (recalled)";
        var air = OverLime(Math.Pow(10, -3.5));
        yield return new("lime under carbon dioxide", "calcite under 10^-3.5 atm, 25 °C", "pH", 8.3, air.Ph, 0.1, stumm);
        yield return new("lime under carbon dioxide", "calcite under 10^-3.5 atm, 25 °C", "mmol/kg Ca", 0.47, 1000 * air.Calcium, 0.1, stumm);
        yield return new("lime under carbon dioxide", "calcite under 0.97 atm, 25 °C", "mmol/kg Ca", 8.9, 1000 * OverLime(0.97).Calcium, 0.1, frear);

        static (double Ph, double Calcium) OverLime(double atm)
        {
            var settled = EquilibriumSolver.Product.Precipitate(
                Input(25, ("Ca+2", 0.03), ("CO3-2", 0.03)) with { CarbonDioxideAtm = atm }, [ConstantSet.Product.FindSolid("Calcite")!]);
            Assert.True(settled.Converged, settled.Failure);
            return (settled.Final.Ph, settled.Remaining![Component.Calcium]);
        }
    }

    /// <summary>
    /// Density of liquids of ammonium nitrate and urea as they are sold: pounds per gallon of a sheet of physical characteristics of
    /// fertilizers (read). Far stronger than the fit of volumes, so the tolerance was 2 % before it was asked.
    /// </summary>
    /// <summary>Gypsum dissolves best at 35 to 40 °C and less again beyond; g of CaSO4 in a litre.</summary>
    private static IEnumerable<FactRow> Gypsum()
    {
        const double calciumSulfate = 136.14;
        foreach (var (celsius, grams) in ((double, double)[])
            [(0, 1.759), (10, 1.928), (18, 2.016), (25, 2.080), (30, 2.090), (35, 2.096), (40, 2.097)])
        {
            var over = Chemistry.Equilibrium.Equilibrium.Ask(Input(celsius, ("Ca+2", 0.05), ("SO4-2", 0.05)), MayForm.Of(SolidRole.FormsReadily));
            yield return new("gypsum in water", $"saturated, {celsius} °C", "g/L", grams,
                (0.05 - over.Formed("Gypsum")) * calciumSulfate * Water.DensityGramsPerMl(celsius), 0.03,
                "G. A. Hulett & L. E. Allen, J. Am. Chem. Soc. 24 (1902) 667 (recalled)");
        }
    }

    private static IEnumerable<FactRow> SoldLiquids()
    {
        const double poundsPerGallon = 0.119826;
        foreach (var (called, density, nitrate, urea) in ((string, double, double, double)[])[("28-0-0", 10.67, 40, 30), ("32-0-0", 11.06, 45, 35)])
        {
            var water = (100 - nitrate - urea) / 1000;
            yield return new("liquid as it is sold", $"{called} of {nitrate} % ammonium nitrate and {urea} % urea, 16 °C", "g/mL", density * poundsPerGallon,
                SolutionDensity.Of(new Dictionary<string, double>(StringComparer.Ordinal)
                {
                    ["NH4+"] = nitrate / 80.043 / water,
                    ["NO3-"] = nitrate / 80.043 / water,
                    ["Urea"] = urea / 60.056 / water,
                }, 16).GramsPerMl!.Value, 0.02, "sheet of a dealer of liquid fertilizer (read)");
        }
    }

    /// <summary>
    /// 8-24-0 weighs 10.5 pounds in a gallon (trade handbooks, recalled): it came out at 1.33 g/mL until the volume of hydrogen phosphate
    /// rose with its own strength, which was fitted to it.
    /// </summary>
    [Fact]
    public void ALiquidOfAmmoniumPhosphatesWeighsWhatItDoesInTheTrade()
    {
        const double mono = 12.06, di = 30.83;
        var water = (100 - mono - di) / 1000;
        var density = SolutionDensity.Of(new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["NH4+"] = ((mono / 115.03) + (2 * di / 132.06)) / water,
            ["H2PO4-"] = mono / 115.03 / water,
            ["HPO4-2"] = di / 132.06 / water,
        }, 20).GramsPerMl!.Value;
        Assert.InRange(density, 1.25, 1.28);
    }

    private static IEnumerable<FactRow> FreezingPoints()
    {
        foreach (var (salt, percent, celsius, grams, ions) in ((string, double, double, double, (string, double)[])[])
            [
                ("NaCl", 1, -0.59, 58.443, [("Na+", 1), ("Cl-", 1)]), ("NaCl", 5, -3.05, 58.443, [("Na+", 1), ("Cl-", 1)]),
                ("NaCl", 10, -6.56, 58.443, [("Na+", 1), ("Cl-", 1)]), ("KCl", 1, -0.46, 74.551, [("K+", 1), ("Cl-", 1)]),
                ("KCl", 5, -2.32, 74.551, [("K+", 1), ("Cl-", 1)]), ("KCl", 10, -4.81, 74.551, [("K+", 1), ("Cl-", 1)]),
                ("CaCl2", 5, -2.38, 110.98, [("Ca+2", 1), ("Cl-", 2)]), ("NH4Cl", 1, -0.64, 53.491, [("NH4+", 1), ("Cl-", 1)]),
                ("KNO3", 1, -0.33, 101.103, [("K+", 1), ("NO3-", 1)]), ("(NH4)2SO4", 1, -0.33, 132.14, [("NH4+", 2), ("SO4-2", 1)]),
                // Put in later, the tolerance as it stood.
                ("CaCl2", 1, -0.44, 110.98, [("Ca+2", 1), ("Cl-", 2)]), ("CaCl2", 10, -5.86, 110.98, [("Ca+2", 1), ("Cl-", 2)]),
                ("MgCl2", 1, -0.52, 95.21, [("Mg+2", 1), ("Cl-", 2)]), ("NaNO3", 1, -0.40, 84.995, [("Na+", 1), ("NO3-", 1)]),
                ("Na2SO4", 1, -0.32, 142.04, [("Na+", 2), ("SO4-2", 1)]), ("K2SO4", 1, -0.26, 174.26, [("K+", 2), ("SO4-2", 1)]),
                ("MgSO4", 1, -0.18, 120.37, [("Mg+2", 1), ("SO4-2", 1)]), ("KH2PO4", 1, -0.25, 136.09, [("K+", 1), ("H2PO4-", 1)]),
                ("K2CO3", 1, -0.34, 138.21, [("K+", 2), ("CO3-2", 1)]), ("Na2CO3", 1, -0.40, 105.99, [("Na+", 2), ("CO3-2", 1)]),
                ("acetic acid", 1, -0.32, 60.052, [("Acetate-", 1)]), ("citric acid", 1, -0.11, 192.12, [("Citrate-3", 1)]),
            ])
        {
            var molality = 1000 * percent / (100 - percent) / grams;
            var state = Solve(0, [.. ions.Select(i => (i.Item1, i.Item2 * molality))]);
            yield return new("freezing point", $"{salt}, {percent} % by mass", "°C", celsius, Osmosis.FreezingPointC(state.WaterActivity)!.Value, 0.05,
                "CRC Handbook, concentrative properties (recalled)");
        }
    }

    /// <summary>Sea water of a practical salinity: F. J. Millero et al., Deep-Sea Res. I 55 (2008) 50, bromide with chloride, strontium with calcium (recalled).</summary>
    private static Chemistry.Equilibrium.Equilibrium Sea(double salinity, double celsius)
    {
        var share = salinity / 35 * KilogramsWaterInSeaWater / (1 - 0.001005 * salinity);
        (string Name, double MolPerKg)[] at35 =
        [
            ("Na+", 0.48606), ("K+", 0.01058), ("Mg+2", 0.05474), ("Ca+2", 0.01075), ("Cl-", 0.56664), ("SO4-2", 0.02926), ("CO3-2", 0.00204), ("B(OH)3", 0.00043),
        ];
        return Solve(celsius, [.. at35.Select(i => (i.Name, i.MolPerKg * share))]);
    }

    private static Dictionary<string, double> Molalities(Chemistry.Equilibrium.Equilibrium state) =>
        state.Species.ToDictionary(s => s.Name, s => s.MolPerKg, StringComparer.Ordinal);

    private static Chemistry.Equilibrium.Equilibrium UnderCarbonDioxide(double atm, double celsius, params (string Name, double MolPerKg)[] totals) =>
        Solve(Input(celsius, totals) with { CarbonDioxideAtm = atm });

    private static SolutionInput Input(double celsius, params (string Name, double MolPerKg)[] totals) => StandardTests.Input(celsius, totals);

    private static Chemistry.Equilibrium.Equilibrium Solve(double celsius, params (string Name, double MolPerKg)[] totals) => Solve(Input(celsius, totals));

    private static Chemistry.Equilibrium.Equilibrium Solve(SolutionInput input)
    {
        var state = EquilibriumSolver.Product.Solve(input);
        Assert.True(state.Converged, state.Failure);
        return state;
    }
}

using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// A trial held out: facts written down with their tolerances, and committed, before the program was asked about any of them, and none
/// left out afterwards. Buffers, freezing points, carbon dioxide, lime, salts of round strength, silicates as they are sold, a point of two
/// double salts and two liquids of the trade.
/// </summary>
public sealed class HeldOutFactsTests
{
    internal const string Table = "tests/RecipeLint.Chemistry.Tests/Tables/held-out-facts.md";

    private const string BatesBower = "Bower & Bates 1955, Bates & Bower 1956, table 8.16 of Lange's Handbook, 15th ed. (read)";
    private const string Recipes = "recipes of buffers for a litre on a page of a teachers' wiki, after the same table (read)";
    private const string Gomori = "G. Gomori 1955, as carried on a page of laboratory recipes (read)";
    private const string Smithsonian = "Smithsonian Physical Tables, 9th ed., as carried in a handbook (read)";
    private const string Merck = "The Merck Index and makers' sheets (recalled)";

    [Fact]
    public void WhatWasHeldOutIsGivenBack()
    {
        FactTable.Hold(Table, "# Held-out facts: written down before the program was asked\n\nTolerances stood before the program was asked: in units of pH or log10, else in per cent. Nothing was left out afterwards.\n\n", [.. Rows()]);
    }

    private static IEnumerable<FactRow> Rows() =>
        [.. BuffersOfChloride(), .. BuffersOfPhthalate(), .. BuffersForALitre(), .. CitrateBuffers(), .. PhosphateBuffers(), .. AcetateBuffers(),
            .. FreezingPoints(), .. CarbonDioxide(), .. Lime(), .. RoundStrength(), .. Silicates(), .. DoubleSalts(), .. SoldLiquids()];

    private static IEnumerable<FactRow> BuffersOfChloride()
    {
        foreach (var (ph, acid) in ((double, double)[])[(1.0, 67.0), (1.2, 42.5), (1.4, 26.6), (1.6, 16.2), (1.8, 10.2), (2.0, 6.5), (2.2, 3.9)])
            yield return new("table of buffers", $"25 mL of 0.2 M KCl and {acid} mL of 0.2 M HCl in 100 mL, 25 °C", "pH", ph,
                Solve(25, ("K+", Molal(0.05)), ("Cl-", Molal(0.05 + (0.002 * acid)))).Ph, 0.05, BatesBower);
    }

    private static IEnumerable<FactRow> BuffersOfPhthalate()
    {
        foreach (var (ph, acid) in ((double, double)[])[(2.2, 49.5), (2.6, 35.4), (3.0, 22.3), (3.4, 10.4), (3.8, 2.9)])
            yield return new("table of buffers", $"50 mL of 0.1 M hydrogen phthalate and {acid} mL of 0.1 M HCl in 100 mL, 25 °C", "pH", ph,
                Solve(25, ("K+", Molal(0.05)), ("Phthalate-2", Molal(0.05)), ("Cl-", Molal(0.001 * acid))).Ph, 0.05, BatesBower);
        foreach (var (ph, lye) in ((double, double)[])[(4.2, 3.0), (4.6, 11.1), (5.0, 22.6), (5.4, 34.1), (5.8, 42.3)])
            yield return new("table of buffers", $"50 mL of 0.1 M hydrogen phthalate and {lye} mL of 0.1 M NaOH in 100 mL, 25 °C", "pH", ph,
                Solve(25, ("K+", Molal(0.05)), ("Phthalate-2", Molal(0.05)), ("Na+", Molal(0.001 * lye))).Ph, 0.05, BatesBower);
    }

    private static IEnumerable<FactRow> BuffersForALitre()
    {
        foreach (var (ph, lye) in ((double, double)[])[(6, 56), (7, 291), (8, 467)])
            yield return new("table of buffers", $"6.81 g KH2PO4 and {lye} mL of 0.1 M NaOH in a litre, 25 °C", "pH", ph,
                Solve(25, ("K+", Molal(6.81 / 136.09)), ("H2PO4-", Molal(6.81 / 136.09)), ("Na+", Molal(1e-4 * lye))).Ph, 0.05, Recipes);
        const double borax = 4.77 / 381.37;
        yield return new("table of buffers", "4.77 g borax and 46 mL of 0.1 M HCl in a litre, 25 °C", "pH", 9,
            Solve(25, ("Na+", Molal(2 * borax)), ("B(OH)3", Molal(4 * borax)), ("Cl-", Molal(4.6e-3))).Ph, 0.05, Recipes);
        yield return new("table of buffers", "4.77 g borax and 183 mL of 0.1 M NaOH in a litre, 25 °C", "pH", 10,
            Solve(25, ("Na+", Molal((2 * borax) + 18.3e-3)), ("B(OH)3", Molal(4 * borax))).Ph, 0.05, Recipes);
        yield return new("table of buffers", "2.10 g NaHCO3 and 227 mL of 0.1 M NaOH in a litre, 25 °C", "pH", 11,
            Solve(25, ("Na+", Molal((2.1 / 84.007) + 22.7e-3)), ("CO3-2", Molal(2.1 / 84.007))).Ph, 0.05, Recipes);
    }

    private static IEnumerable<FactRow> CitrateBuffers()
    {
        foreach (var (acid, salt, ph) in ((double, double, double)[])
            [(46.5, 3.5, 3.0), (37, 13, 3.6), (33, 17, 4.0), (25.5, 24.5, 4.6), (20.5, 29.5, 5.0), (13.7, 36.3, 5.6), (7.2, 42.8, 6.2)])
        {
            yield return new("citrate buffer", $"{acid} mL of 0.1 M citric acid and {salt} mL of 0.1 M citrate in 100 mL, 23 °C", "pH", ph,
                Solve(23, ("Citrate-3", Molal(0.05)), ("Na+", Molal(0.003 * salt))).Ph, 0.1, Gomori);
        }
    }

    private static IEnumerable<FactRow> PhosphateBuffers()
    {
        foreach (var (mono, di, ph) in ((double, double, double)[])
            [(92, 8, 5.8), (81.5, 18.5, 6.2), (62.5, 37.5, 6.6), (39, 61, 7.0), (19, 81, 7.4), (8.5, 91.5, 7.8), (5.3, 94.7, 8.0)])
        {
            yield return new("phosphate buffer", $"{mono} mL of M NaH2PO4 and {di} mL of M Na2HPO4 in a litre, 23 °C", "pH", ph,
                Solve(23, ("H2PO4-", Molal(0.1)), ("Na+", Molal(0.1 + (0.001 * di)))).Ph, 0.1, Gomori);
        }
    }

    private static IEnumerable<FactRow> AcetateBuffers()
    {
        foreach (var (acid, salt, ph) in ((double, double, double)[])
            [(185, 15, 3.6), (164, 36, 4.0), (126, 74, 4.4), (80, 120, 4.8), (42, 158, 5.2), (19, 181, 5.6)])
        {
            yield return new("acetate buffer", $"{acid} mL of 0.1 N acetic acid and {salt} mL of 0.1 N acetate, 23 °C", "pH", ph,
                Solve(23, ("Acetate-", Molal(0.1)), ("Na+", Molal(0.1 * salt / 200))).Ph, 0.1, "A. G. E. Pearse 1980, as carried on a page of recipes (read)");
        }
    }

    private static IEnumerable<FactRow> FreezingPoints()
    {
        foreach (var (called, ions, points) in ((string, (string, double)[], (double Molality, double Kelvin)[])[])
            [
                ("HNO3", [("NO3-", 1)], [(0.1, 0.35), (0.5, 1.80), (1, 3.80)]),
                ("KNO3", [("K+", 1), ("NO3-", 1)], [(0.25, 0.78), (0.5, 1.47), (1, 2.66)]),
                ("K2SO4", [("K+", 2), ("SO4-2", 1)], [(0.1, 0.43), (0.25, 1.01), (0.5, 1.87)]),
                ("MgSO4", [("Mg+2", 1), ("SO4-2", 1)], [(0.1, 0.24), (0.25, 0.55), (0.5, 1.01), (1, 2.08)]),
                ("CaCl2", [("Ca+2", 1), ("Cl-", 2)], [(0.1, 0.49), (0.25, 1.27), (0.5, 2.66)]),
                ("NH4Cl", [("NH4+", 1), ("Cl-", 1)], [(0.1, 0.34), (0.25, 0.85), (0.5, 1.70)]),
                ("NaNO3", [("Na+", 1), ("NO3-", 1)], [(0.25, 0.80), (0.5, 1.62)]),
                ("H2SO4", [("SO4-2", 1)], [(0.1, 0.39), (0.5, 1.95)]),
                ("HCl", [("Cl-", 1)], [(0.1, 0.36), (0.5, 1.86)]),
                ("CuSO4", [("Cu+2", 1), ("SO4-2", 1)], [(0.25, 0.47), (0.5, 0.96)]),
            ])
        {
            foreach (var (molality, kelvin) in points)
            {
                var state = Solve(0, [.. ions.Select(i => (i.Item1, i.Item2 * molality))]);
                yield return new("lowering of the freezing point", $"{molality} mol/kg {called}", "K", kelvin, -Osmosis.FreezingPointC(state.WaterActivity)!.Value, 0.05, Smithsonian);
            }
        }
    }

    private static IEnumerable<FactRow> CarbonDioxide()
    {
        foreach (var (celsius, volumes) in ((double, double)[])[(5, 1.424), (15, 1.019), (35, 0.592)])
            yield return new("carbon dioxide", $"dissolved in water under 1 atm, {celsius} °C", "mol/kg", volumes / 22.26 / Water.DensityGramsPerMl(celsius),
                Solve(Input(celsius) with { CarbonDioxideAtm = 1 }).Molality("CO2"), 0.03, "CRC Handbook of Chemistry and Physics (recalled)");
    }

    private static IEnumerable<FactRow> Lime()
    {
        foreach (var (celsius, grams) in ((double, double)[])[(0, 1.85), (20, 1.65), (40, 1.41)])
        {
            var over = Chemistry.Equilibrium.Equilibrium.Ask(Input(celsius, ("Ca+2", 0.1)), MayForm.Of(SolidRole.FormsReadily));
            yield return new("lime in water", $"saturated, {celsius} °C", "g/kg", grams, 74.09 * (0.1 - over.Formed("Portlandite")), 0.1,
                "CRC Handbook and textbooks of lime (recalled)");
        }
    }

    private static IEnumerable<FactRow> RoundStrength()
    {
        (string What, double Ph, double Tolerance, string Source, (string, double)[] Ions)[] all =
            [
                ("0.1 M NH4NO3, 25 °C", 5.43, 0.2, Merck, [("NH4+", 0.1), ("NO3-", 0.1)]),
                ("0.1 M (NH4)2SO4, 25 °C", 5.5, 0.2, Merck, [("NH4+", 0.2), ("SO4-2", 0.1)]),
                ("1 % NH4Cl, 25 °C", 5.5, 0.2, Merck, [("NH4+", 0.189), ("Cl-", 0.189)]),
                ("3 % NH4Cl, 25 °C", 5.1, 0.2, Merck, [("NH4+", 0.578), ("Cl-", 0.578)]),
                ("10 % NH4Cl, 25 °C", 5.0, 0.2, Merck, [("NH4+", 2.077), ("Cl-", 2.077)]),
                ("0.1 % Na3PO4 dodecahydrate, 25 °C", 11.5, 0.2, Merck, [("Na+", 3 / 380.12), ("H2PO4-", 1 / 380.12)]),
                ("0.5 % Na3PO4 dodecahydrate, 25 °C", 11.7, 0.2, Merck, [("Na+", 15 / 380.12), ("H2PO4-", 5 / 380.12)]),
                ("1 % Na3PO4 dodecahydrate, 25 °C", 11.9, 0.2, Merck, [("Na+", 30 / 380.12), ("H2PO4-", 10 / 380.12)]),
                ("1 % tetrasodium EDTA, 25 °C", 11.3, 0.3, "encyclopedia page of tetrasodium EDTA (read)", [("Na+", 40 / 380.17 / 0.99), ("EDTA-4", 10 / 380.17 / 0.99)]),
                ("0.1 M sodium acetate, 25 °C", 8.9, 0.2, Merck, [("Na+", 0.1), ("Acetate-", 0.1)]),
                ("0.1 M oxalic acid, 25 °C", 1.3, 0.2, Merck, [("Oxalate-2", 0.1)]),
                ("0.2 M CuSO4, 25 °C", 4.0, 0.2, Merck, [("Cu+2", 0.2), ("SO4-2", 0.2)]),
            ];
        foreach (var (what, ph, tolerance, source, ions) in all)
            yield return new("salt of round strength", what, "pH", ph, Solve(25, ions).Ph, tolerance, source);
    }

    /// <summary>
    /// Solutions as they are sold, by their analysis: SiO2 becomes H4SiO4 and takes two waters, the oxide of the alkali gives one back.
    /// </summary>
    private static IEnumerable<FactRow> Silicates()
    {
        const string sheets = "makers' sheets of soluble silicates (recalled)";
        foreach (var (called, ion, oxide, oxideGrams, silica, ph) in ((string, string, double, double, double, double)[])
            [
                ("potassium silicate, 8.3 % K2O, 20.8 % SiO2", "K+", 8.3, 94.196, 20.8, 11.3),
                ("potassium silicate, 12.65 % K2O, 26.5 % SiO2", "K+", 12.65, 94.196, 26.5, 11.7),
                ("sodium silicate, 8.9 % Na2O, 28.7 % SiO2", "Na+", 8.9, 61.979, 28.7, 11.3),
                ("sodium silicate, 14.7 % Na2O, 29.4 % SiO2", "Na+", 14.7, 61.979, 29.4, 12.8),
            ])
        {
            var (alkali, silicon) = (oxide / oxideGrams, silica / 60.084);
            var kilograms = (100 - oxide - silica - (18.015 * ((2 * silicon) - alkali))) / 1000;
            yield return new("silicate as it is sold", $"{called}, 20 °C", "pH", ph, Ph(20, (ion, 2 * alkali / kilograms), ("H4SiO4", silicon / kilograms)), 0.3, sheets);
        }

        yield return new("silicate as it is sold", "1 % sodium metasilicate, 20 °C", "pH", 12.6,
            Ph(20, ("Na+", 20 / 122.06 / 0.99), ("H4SiO4", 10 / 122.06 / 0.99)), 0.3, sheets);
    }

    /// <summary>The solution over leonite and picromerite at 45 °C: by the abstract 0.618 mol/kg K2SO4 with 3.030 MgSO4.</summary>
    private static IEnumerable<FactRow> DoubleSalts()
    {
        var state = Solve(45, ("K+", 1.236), ("Mg+2", 3.03), ("SO4-2", 3.648));
        yield return new("point of two double salts", "picromerite over 0.618 mol/kg K2SO4 with 3.030 MgSO4, 45 °C", "log10", 0,
            state.SaturationIndex("Picromerite")!.Value, 0.15, "Fluid Phase Equilib. 291 (2010) 151 (abstract read)");
    }

    /// <summary>Far stronger than the fit of volumes.</summary>
    private static IEnumerable<FactRow> SoldLiquids()
    {
        foreach (var (called, percent, grams, cation, density) in ((string, double, double, string, double)[])
            [("ammonium thiosulfate", 60, 148.21, "NH4+", 1.33), ("potassium thiosulfate", 50, 190.32, "K+", 1.46)])
        {
            var molality = 1000 * percent / (100 - percent) / grams;
            yield return new("liquid as it is sold", $"{percent} % {called}, 20 °C", "g/mL", density,
                SolutionDensity.Of(new Dictionary<string, double>(StringComparer.Ordinal) { [cation] = 2 * molality, ["S2O3-2"] = molality }, 20).GramsPerMl!.Value,
                0.03, "makers' sheets (recalled)");
        }
    }

    /// <summary>mol per kg of water of a dilute solution that holds so many mol a litre, at 20 to 25 °C.</summary>
    private static double Molal(double perLitre) => perLitre / 0.998;

    private static double Ph(double celsius, params (string Name, double MolPerKg)[] totals) =>
        EquilibriumSolver.InSilicateAlkali.Solve(Input(celsius, totals)) is { Converged: true } state ? state.Ph : double.NaN;

    private static SolutionInput Input(double celsius, params (string Name, double MolPerKg)[] totals) => StandardTests.Input(celsius, totals);

    private static Chemistry.Equilibrium.Equilibrium Solve(double celsius, params (string Name, double MolPerKg)[] totals) => Solve(Input(celsius, totals));

    private static Chemistry.Equilibrium.Equilibrium Solve(SolutionInput input)
    {
        var state = EquilibriumSolver.Product.Solve(input);
        Assert.True(state.Converged, state.Failure);
        return state;
    }
}

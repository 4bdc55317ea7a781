using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Solubilities the product set predicts: nothing here was fitted unless the table says so.</summary>
public sealed class SolubilityTests
{
    private const string Tables = "tests/RecipeLint.Chemistry.Tests/Tables/";

    /// <summary>Carbon dioxide in water that has stood in air, mol/kg at 25 °C: Henry's constant 10^-1.47 times 4.2e-4 atm.</summary>
    private const double CarbonDioxideOfStoodWater = 1.4e-5;

    private static readonly EquilibriumSolver Product = EquilibriumSolver.Product;

    private static SolutionInput Input(double celsius, params (string Name, double MolPerKg)[] totals) => StandardTests.Input(celsius, totals);

    /// <summary>Amount of a substance, mol/kg, that just saturates a solution with a solid.</summary>
    private static double Solubility(string solid, Func<double, SolutionInput> with, double low = 1e-6, double high = 1, int halvings = 60)
    {
        for (var k = 0; k < halvings; k++)
        {
            var middle = Math.Sqrt(low * high);
            if (Product.Solve(with(middle)).SaturationIndex(solid) is <= 0) low = middle; else high = middle;
        }
        return Math.Sqrt(low * high);
    }

    private static double GypsumInSodiumChloride(double celsius, double salt) =>
        Solubility("Gypsum", ca => Input(celsius, ("Na+", salt), ("Cl-", salt), ("Ca+2", ca), ("SO4-2", ca)), 1e-4);

    /// <summary>
    /// Within 10 % up to ionic strength 6 mol/kg, the end of the model's range; beyond, the table shows by how much it misses.
    /// </summary>
    [Fact]
    public void GypsumDissolvesInSaltsAsMeasured()
    {
        using var doc = JsonDocument.Parse(File.ReadAllText(Path.Combine(
            Repository.Root, "tests", "RecipeLint.Chemistry.Tests", "Equilibrium", "Data", "measured-mixtures.json")));
        var table = new StringBuilder("# Gypsum in salt solutions: predicted against measured\n\nNot fitted, except Na2SO4 at 25 °C, which the constant of Ca(SO4)2-2 was taken from. Marshall & Slusher 1966 (NaCl), Block & Waters 1968 (Na2SO4). mol per kg of water. Above ionic strength 6 the model is outside its range.\n\n");
        table.Append("| salt | °C | salt | CaSO4 measured | CaSO4 predicted | difference, % | I |\n|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var p in doc.RootElement.GetProperty("gypsum").EnumerateArray())
        {
            var sulfate = p.TryGetProperty("Na2SO4", out var value);
            double salt = sulfate ? value.GetDouble() : p.GetProperty("NaCl").GetDouble(), celsius = p.GetProperty("t").GetDouble(), measured = p.GetProperty("CaSO4").GetDouble();
            SolutionInput With(double ca) => sulfate
                ? Input(celsius, ("Na+", 2 * salt), ("Ca+2", ca), ("SO4-2", ca + salt))
                : Input(celsius, ("Na+", salt), ("Cl-", salt), ("Ca+2", ca), ("SO4-2", ca));
            var predicted = Solubility("Gypsum", With, 1e-4);
            var ionic = Product.Solve(With(predicted)).IonicStrength;
            var difference = 100 * (predicted / measured - 1);
            table.Append(CultureInfo.InvariantCulture, $"| {(sulfate ? "Na2SO4" : "NaCl")} | {celsius:0.#} | {salt:0.###} | {measured:0.0000} | {predicted:0.0000} | {difference:+0;-0;0} | {ionic:0.0} |\n");
            if (ionic <= 6 && Math.Abs(difference) > 10) faults.Add($"{(sulfate ? "Na2SO4" : "NaCl")} {salt} at {celsius} °C: {difference:0.0} %");
        }
        Repository.Golden(Tables + "gypsum-in-salts.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    // Molar mass of the anhydrous salt, g/mol, CIAAW abridged weights, and the ions one formula unit brings.
    private static readonly Dictionary<string, (double Mass, (string Name, int Count)[] Ions)> SaltsWithGypsum = new()
    {
        ["MgSO4"] = (120.36, [("Mg+2", 1), ("SO4-2", 1)]),
        ["K2SO4"] = (174.25, [("K+", 2), ("SO4-2", 1)]),
        ["(NH4)2SO4"] = (132.13, [("NH4+", 2), ("SO4-2", 1)]),
        ["MgCl2"] = (95.21, [("Mg+2", 1), ("Cl-", 2)]),
        ["CaCl2"] = (110.98, [("Ca+2", 1), ("Cl-", 2)]),
        ["NaCl"] = (58.44, [("Na+", 1), ("Cl-", 1)]),
        ["KCl"] = (74.55, [("K+", 1), ("Cl-", 1)]),
        ["NH4Cl"] = (53.49, [("NH4+", 1), ("Cl-", 1)]),
        ["Mg(NO3)2"] = (148.31, [("Mg+2", 1), ("NO3-", 2)]),
        ["Ca(NO3)2"] = (164.09, [("Ca+2", 1), ("NO3-", 2)]),
        ["KNO3"] = (101.10, [("K+", 1), ("NO3-", 1)]),
        ["NaNO3"] = (84.99, [("Na+", 1), ("NO3-", 1)]),
        ["NH4NO3"] = (80.04, [("NH4+", 1), ("NO3-", 1)]),
    };

    private const double CalciumSulfateGramsPerMol = 136.14, NearSaturationGramsPerLitre = 300;

    /// <summary>
    /// The fit of the coefficients of gypsum: at most 10 % on the optimistic side, 25 % on the cautious side up to ionic strength 6, beyond
    /// which no verdict rests on it. Magnesium chloride and sulfate above <see cref="NearSaturationGramsPerLitre"/>, where next to nothing dissolves, are
    /// allowed 20 %: coefficients that follow them closer (three follow all of magnesium sulfate within 6 %) cost the solver its answer in
    /// mixtures of much calcium and magnesium with sulfate.
    /// </summary>
    [Fact]
    public void GypsumDissolvesInFertilizerSaltsAsFitted()
    {
        using var doc = Measured();
        var table = new StringBuilder("# Gypsum in fertilizer salts at 25 °C: the fit\n\nThe coefficients named GYPf in the constants were fitted to these values; measured g of CaSO4 per litre are recalled, see the sources in measured-mixtures.json. g/L became mol per kg of water with the density model of the program. Ionic strength is that of the free ions.\n\n");
        table.Append("| salt | g/L | mol/kg | I | CaSO4 measured, g/L | mol/kg | fitted, mol/kg | difference, % | source |\n|---|---|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var p in doc.RootElement.GetProperty("gypsumInSalts").EnumerateArray())
        {
            var salt = p.GetProperty("salt").GetString()!;
            double grams = p.GetProperty("gramsPerLitre").GetDouble(), calcium = p.GetProperty("CaSO4").GetDouble(), celsius = p.GetProperty("t").GetDouble();
            var (mass, ions) = SaltsWithGypsum[salt];
            var kilograms = KilogramsWaterPerLitre(ions, grams / mass, calcium / CalciumSulfateGramsPerMol, celsius);
            double molal = grams / mass / kilograms, measured = calcium / CalciumSulfateGramsPerMol / kilograms;
            var (predicted, ionic) = GypsumIn([(salt, molal)], celsius);
            var difference = 100 * (predicted / measured - 1);
            table.Append(CultureInfo.InvariantCulture, $"| {salt} | {grams:0.###} | {molal:0.000} | {ionic:0.0} | {calcium:0.###} | {measured:0.0000} | {predicted:0.0000} | {difference:+0;-0;0} | {p.GetProperty("source").GetString()} |\n");
            var optimistic = salt.StartsWith("Mg", StringComparison.Ordinal) && grams > NearSaturationGramsPerLitre ? 20 : 10;
            if (ionic <= 6 && (difference > optimistic || difference < -25)) faults.Add($"{salt} {grams} g/L: {difference:0.0} %");
        }
        Repository.Golden(Tables + "gypsum-in-fertilizer-salts.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    /// <summary>
    /// Cold, warm and with two salts, nothing of which was fitted: against the model of Harvie, Moller &amp; Weare 1984. That model gives up to
    /// 9 % less than was measured in magnesium sulfate at 25 °C, and lets gypsum dissolve less there at 40 °C than at 25 °C, where Wollmann
    /// &amp; Voigt 2008 (abstract) measured more: what is predicted lies between.
    /// </summary>
    [Fact]
    public void GypsumInMixedSaltsAgreesWithAnotherModel()
    {
        using var doc = Measured();
        var table = new StringBuilder("# Gypsum in one and two salts against another model\n\nNot fitted. Computed with the equations of Harvie, Moller & Weare 1984 and the parameters of the USGS database pitzer.dat: a model fitted to other measurements, not a measurement. At 25 °C it gives up to 9 % less than was measured in magnesium sulfate; from 25 to 40 °C it falls there, where Wollmann & Voigt 2008 (abstract) measured a rise. mol per kg of water.\n\n");
        table.Append("| salts | °C | I | other model | predicted | difference, % |\n|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var p in doc.RootElement.GetProperty("gypsumOfAnotherModel").EnumerateArray())
        {
            var salts = p.GetProperty("salts").EnumerateObject().Select(s => (s.Name, s.Value.GetDouble())).ToList();
            double celsius = p.GetProperty("t").GetDouble(), other = p.GetProperty("CaSO4").GetDouble();
            var (predicted, ionic) = GypsumIn(salts, celsius);
            var difference = 100 * (predicted / other - 1);
            var what = string.Join(", ", salts.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} {s.Item2:0.##}")));
            table.Append(CultureInfo.InvariantCulture, $"| {what} | {celsius:0} | {ionic:0.0} | {other:0.0000} | {predicted:0.0000} | {difference:+0;-0;0} |\n");
            if (difference is > 45 or < -45) faults.Add($"{what} at {celsius} °C: {difference:0.0} %");
        }
        Repository.Golden(Tables + "gypsum-in-mixed-salts.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static JsonDocument Measured() => JsonDocument.Parse(File.ReadAllText(Path.Combine(
        Repository.Root, "tests", "RecipeLint.Chemistry.Tests", "Equilibrium", "Data", "measured-mixtures.json")));

    private static (double MolPerKg, double Ionic) GypsumIn(IReadOnlyList<(string Salt, double MolPerKg)> salts, double celsius)
    {
        SolutionInput With(double ca)
        {
            var totals = new Dictionary<string, double> { ["Ca+2"] = ca, ["SO4-2"] = ca };
            foreach (var (salt, molal) in salts)
                foreach (var (ion, n) in SaltsWithGypsum[salt].Ions) totals[ion] = totals.GetValueOrDefault(ion) + n * molal;
            return Input(celsius, [.. totals.Select(t => (t.Key, t.Value))]);
        }
        var predicted = Solubility("Gypsum", With, 1e-4, 0.6, 40);
        return (predicted, Product.Solve(With(predicted)).IonicStrength);
    }

    private static double KilogramsWaterPerLitre((string Name, int Count)[] ions, double molar, double calcium, double celsius)
    {
        var molarity = new Dictionary<string, double> { ["Ca+2"] = calcium, ["SO4-2"] = calcium };
        foreach (var (ion, n) in ions) molarity[ion] = molarity.GetValueOrDefault(ion) + n * molar;
        var molality = SolutionDensity.ToMolality(molarity, celsius);
        return molarity["Ca+2"] / molality.Amounts!["Ca+2"];
    }

    /// <summary>Marshall &amp; Slusher 1966 at 25 °C: 0.015 in water, 0.056 near 3 to 4 mol/kg of sodium chloride, 0.049 at 6.</summary>
    [Fact]
    public void GypsumRisesAndThenFallsInSodiumChloride()
    {
        var at = ((double[])[0, 0.5, 1, 2, 3, 4, 5, 6]).Select(m => GypsumInSodiumChloride(25, m)).ToList();
        var highest = at.IndexOf(at.Max());
        Assert.InRange(highest, 4, 6);
        for (var i = 1; i <= highest; i++) Assert.True(at[i] > at[i - 1]);
        for (var i = highest + 1; i < at.Count; i++) Assert.True(at[i] < at[i - 1]);
    }

    private const string Handbook = "CRC Handbook", Recalled = " (from memory)";

    /// <summary>Solid, °C, measured mol/kg, what may be missing (%), carbon dioxide in the water, source.</summary>
    private static readonly (string Solid, double Celsius, double MolPerKg, double Tolerance, double CarbonDioxide, string Source)[] InWater =
    [
        ("Gypsum", 0, 0.0128, 10, 0, Handbook),
        ("Gypsum", 10, 0.0141, 10, 0, Handbook),
        ("Gypsum", 25, 0.0151, 10, 0, Handbook + "; Marshall & Slusher 1966 the same"),
        ("Gypsum", 25, 0.01525, 10, 0, "0.0152 mol/L, coarse crystals, Lebedev & Kosorukov 2017, Geochem. Int. 55, 205"),
        ("Gypsum", 40, 0.0155, 10, 0, Handbook),
        ("Struvite", 25, 0.1692 / 245.41, 10, CarbonDioxideOfStoodWater, "169.2 ± 4.3 mg/L in deionised water, Bhuiyan, Mavinic & Beckie 2007, Environ. Technol. 28, 1015"),
        ("Struvite", 35, 0.2127 / 245.41, 10, CarbonDioxideOfStoodWater, "212.7 ± 3.8 mg/L in deionised water, Bhuiyan, Mavinic & Beckie 2007, Environ. Technol. 28, 1015"),
        ("Calcite", 25, 0.000130, 10, 0, "0.013 g/kg without carbon dioxide, " + Handbook + Recalled),
        ("Amorphous silica", 25, 0.0019, 10, 0, "Gunnarsson & Arnorsson 2000" + Recalled),
        ("Portlandite", 25, 0.0216, 10, 0, "1.6 g/kg, " + Handbook + Recalled),
        // The constant is known to half a unit of its logarithm only; the acid is a permanent deposit once formed, so the sharper limit warns.
        ("EDTA acid", 25, 0.00171, 35, 0, "0.5 g/L, Merck Index"),
    ];

    /// <summary>What each row of the table of predictions promises; the one row looser than 10 % says so.</summary>
    [Fact]
    public void SolidsDissolveInWaterAsMeasured()
    {
        var table = new StringBuilder("# Solubilities in water: predicted against measured\n\nNot fitted. mol per kg of water. What was fitted instead stands in calibrated-salts.md; gypsum in salts in gypsum-in-salts.md; brushite in brushite.md.\n\n");
        table.Append("| solid | °C | measured | predicted | difference, % | promised, % | source |\n|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var (solid, celsius, measured, tolerance, carbonDioxide, source) in InWater)
        {
            var formula = ConstantSet.Product.FindSolid(solid)!.Composition.Where(c => c.Key is not ("H+" or "H2O")).ToList();
            SolutionInput With(double m)
            {
                var totals = new ComponentTotals(formula.Select(c => KeyValuePair.Create(c.Key, c.Value * m)));
                return new SolutionInput { Totals = carbonDioxide > 0 ? totals.With("CO3-2", carbonDioxide) : totals, Celsius = celsius };
            }
            var predicted = Solubility(solid, With);
            var difference = 100 * (predicted / measured - 1);
            table.Append(CultureInfo.InvariantCulture, $"| {solid} | {celsius:0} | {measured:0.######} | {predicted:0.######} | {difference:+0.0;-0.0;0.0} | {tolerance} | {source} |\n");
            if (Math.Abs(difference) > tolerance) faults.Add($"{solid} at {celsius} °C: {difference:0.0} %");
        }
        Repository.Golden(Tables + "predicted-solubilities.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    /// <summary>
    /// Brushite in dilute phosphoric acid against the isotherms of Gregory, Moreno, Patel &amp; Brown 1970 (J. Res. Natl. Bur. Stand. 74A, 461;
    /// pH 3.5 to 7, 5 to 37.5 °C), given by their solubility product and ion pairs. Worked out here by hand with Davies' activity coefficients
    /// and the phosphoric acid constants of Goldberg, Kishore &amp; Lennen 2002; the constants of the pairs and the solid are theirs in the product
    /// set too, so this checks that everything else in it leaves the isotherm where they measured it. Handbook figures for water run from
    /// 0.09 (the root of the solubility product, pairs and hydrogen phosphate left out) to 0.3 g/L, without pH or source, and check nothing.
    /// </summary>
    [Fact]
    public void BrushiteFollowsItsMeasuredIsotherm()
    {
        var table = new StringBuilder("# Brushite in phosphoric acid: predicted against the isotherms of Gregory, Moreno, Patel & Brown 1970\n\nmmol per kg of water.\n\n| °C | pH | phosphate, isotherm | phosphate, predicted | calcium, isotherm | calcium, predicted | difference, % |\n|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var celsius in (double[])[5, 15, 25, 37.5])
            foreach (var ph in (double[])[3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7])
            {
                var (calcium, phosphate) = Isotherm(celsius, ph);
                // At a given phosphate the charges alone nearly fix the calcium: the test is how much of both there is at a pH.
                double low = 1e-4, high = 1, predicted = 0;
                for (var k = 0; k < 24; k++)
                {
                    var middle = Math.Sqrt(low * high);
                    predicted = Solubility("Brushite", ca => Input(celsius, ("Ca+2", ca), ("H2PO4-", middle)), 1e-5, middle, 30);
                    if (Product.Solve(Input(celsius, ("Ca+2", predicted), ("H2PO4-", middle))).Ph > ph) low = middle; else high = middle;
                }
                var difference = 100 * (predicted / calcium - 1);
                table.Append(CultureInfo.InvariantCulture, $"| {celsius:0.#} | {ph:0.0} | {1000 * phosphate:0.00} | {1000 * low:0.00} | {1000 * calcium:0.00} | {1000 * predicted:0.00} | {difference:+0.0;-0.0;0.0} |\n");
                if (Math.Abs(difference) > 10) faults.Add($"{celsius} °C, pH {ph}: {difference:0.0} %");
            }
        Repository.Golden(Tables + "brushite.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static (double Calcium, double Phosphate) Isotherm(double celsius, double ph)
    {
        double t = celsius + 273.15, lt = Math.Log10(t);
        double ks = Math.Exp(-8403.5 / t + 41.863 - 0.09678 * t), kx = Math.Exp(51090 / t - 341.14 + 0.5880 * t), ky = Math.Exp(19373 / t - 122.81 + 0.1994 * t);
        double K(double pk, double dh, double dcp) => Math.Pow(10, ConstantSet.LogK(TableWriter.VanTHoff(-pk, dh, dcp), t, lt));
        double k1 = K(2.148, -8.0, -0.141), k2 = K(7.198, 3.6, -0.23), h = Math.Pow(10, -ph), ionic = 0.005;
        double low = 1e-8, high = 1, calcium = 0, phosphate = 0;
        for (var round = 0; round < 60; round++)
        {
            var root = Math.Sqrt(ionic);
            var davies = -DebyeHueckel.A(celsius) * (root / (1 + root) - 0.3 * ionic);
            double f1 = Math.Pow(10, davies), f2 = Math.Pow(10, 4 * davies);
            (low, high) = (1e-8, 1);
            for (var k = 0; k < 100; k++)
            {
                // The activity of HPO4-2 that closes the charge.
                double secondary = Math.Sqrt(low * high), free = ks / secondary, primary = secondary * h / k2;
                double ca = free / f2, h2 = primary / f1, h1 = secondary / f2, pair1 = ky * free * primary / f1;
                var charge = 2 * ca + pair1 + h / f1 - h2 - 2 * h1 - 1e-14 / h / f1;
                if (charge > 0) low = secondary; else high = secondary;
                calcium = ca + pair1 + kx * ks;
                phosphate = h2 + h1 + pair1 + kx * ks + primary * h / k1;
                ionic = 0.5 * (4 * ca + pair1 + h / f1 + h2 + 4 * h1);
            }
        }
        return (calcium, phosphate);
    }

    /// <summary>
    /// Mean activity coefficients at 0, 10 and 40 °C against Pitzer's equation with the parameters of Pitzer &amp; Mayorga 1973 and the
    /// temperature derivatives of Silvester &amp; Pitzer 1978 (as in the USGS database pitzer.dat), which the slopes of the product set come from.
    /// Magnesium chloride is left out: the source databases pair its ions besides.
    /// </summary>
    [Theory]
    [InlineData("Na+", "SO4-2", 2, 1, 0.01958, 1.113, 0.00497, 2.367e-3, 5.6325e-3, -4.87904e-4, 1.5)]
    [InlineData("K+", "Cl-", 1, 1, 0.04835, 0.2122, -0.00084, 5.794e-4, 10.71e-4, -5.095e-5, 4)]
    [InlineData("Ca+2", "Cl-", 1, 2, 0.3159, 1.614, -0.00034, -1.725e-4, 3.9e-3, 0, 2)]
    public void ActivityCoefficientsFollowTemperature(string cation, string anion, int cations, int anions, double b0, double b1, double c, double b0T, double b1T, double cT, double most)
    {
        foreach (var celsius in (double[])[0, 10, 25, 40])
            foreach (var share in (double[])[0.2, 0.5, 1])
            {
                double m = share * most, dt = celsius - 25;
                var state = Product.Solve(Input(celsius, (cation, cations * m), (anion, anions * m)));
                double nu = cations + anions;
                var mean = (cations * (state.LogActivity(cation)!.Value - Math.Log10(cations * m)) + anions * (state.LogActivity(anion)!.Value - Math.Log10(anions * m))) / nu;
                int z = Math.Max(cations, anions);
                double ionic = 0.5 * m * (cations * anions * anions + anions * cations * cations), root = Math.Sqrt(ionic), a = DebyeHueckel.A(celsius) * Problem.Ln10 / 3;
                var f = -a * (root / (1 + 1.2 * root) + 2 / 1.2 * Math.Log(1 + 1.2 * root));
                var b = 2 * (b0 + b0T * dt) + (b1 + b1T * dt) / (2 * ionic) * (1 - (1 + 2 * root - 2 * ionic) * Math.Exp(-2 * root));
                var pitzer = (z * f + m * 2 * cations * anions / nu * b + m * m * 2 * Math.Pow(cations * anions, 1.5) / nu * 1.5 * (c + cT * dt)) / Problem.Ln10;
                Assert.True(Math.Abs(mean - pitzer) < 0.02, $"{cation} {anion} {m} mol/kg at {celsius} °C: log10 {mean:0.000}, Pitzer {pitzer:0.000}");
            }
    }

    /// <summary>
    /// Copper sulfate gives a pale blue precipitate with borax (qualitative analysis, from memory). The constants of the reference set, three
    /// decades above the reviewed one (CuB(OH)4+ 4.1, review of borate complexes in J. Coord. Chem. 34, 1995), keep all of it dissolved.
    /// </summary>
    [Fact]
    public void CopperFallsOutOfBorax()
    {
        var input = Input(25, ("Na+", 0.1), ("B(OH)3", 0.2), ("Cu+2", 0.001), ("SO4-2", 0.001));
        PrecipitationResult Settled(ConstantSet set) => new EquilibriumSolver(set).Precipitate(input, SolidRole.FormsReadily);
        var (now, reference) = (Settled(ConstantSet.Product), Settled(ConstantSet.ReferenceExtended));
        Assert.True(now.Remaining["Cu+2"] < 1e-4, $"{now.Remaining["Cu+2"]}");
        Assert.Equal(0.001, reference.Remaining["Cu+2"], 1e-6);
        // log K of Cu+2 + B(OH)4- = CuB(OH)4+.
        double Log(string name) => now.Final.LogActivity(name)!.Value;
        Assert.Equal(4.1, Log("Cu(B(OH)4)+") - Log("Cu+2") - Log("B(OH)4-"), 0.001);
    }

    /// <summary>Gypsum gives way to syngenite near 0.2 mol/kg of potassium sulfate at 25 °C (classical change point about 0.19, from memory).</summary>
    [Fact]
    public void GypsumChangesToSyngeniteInPotassiumSulfate()
    {
        string First(double sulfate)
        {
            var result = Product.Precipitate(Input(25, ("K+", 2 * sulfate), ("SO4-2", sulfate + 0.05), ("Ca+2", 0.05)),
                [ConstantSet.Product.FindSolid("Gypsum")!, ConstantSet.Product.FindSolid("Syngenite")!]);
            Assert.True(result.Converged, result.Failure);
            return string.Join("+", result.Deposits.Select(d => d.Solid.Name));
        }
        Assert.Equal("Gypsum", First(0.12));
        Assert.Equal("Syngenite", First(0.40));
    }
}

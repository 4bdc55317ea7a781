using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Soluble salts: the round trip of the calibration, and measured mixtures that were not fitted.</summary>
public sealed class SaltTests
{
    private static readonly EquilibriumSolver Solver = EquilibriumSolver.Product;
    private static readonly (double Factor, string Name)[] Scales = [(0.6, "0.60"), (0.85, "0.85"), (1.0, "1.00"), (1.5, "1.50")];

    /// <summary>
    /// A round-trip check: the handbook values (CRC Handbook of Chemistry and Physics) were fitted, so this shows that the fit and the
    /// activity model give them back, not that the model predicts them.
    /// </summary>
    [Fact]
    public void CalibratedSaltsReturnTheirHandbookSolubility()
    {
        var table = new StringBuilder("# Calibrated salts: round trip\n\nThe constants were fitted to these values; the table shows what the fit loses. Sources stand in Data/thermo/solubility.json.\n\n");
        table.Append("| solid | °C | handbook, mol/kg | returned, mol/kg | difference, % | I, mol/kg |\n|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var row in Calibration.Rows().Where(r => r.DH is null))
            for (var i = 0; i < row.At.Count; i++)
            {
                var factor = Saturation(f => row.Saturated(i, f), row.Solid);
                var ionic = Solver.Solve(row.Saturated(i)).IonicStrength;
                table.Append(CultureInfo.InvariantCulture,
                    $"| {row.Solid} | {row.At[i].Celsius:0} | {row.At[i].MolPerKg:0.####} | {row.At[i].MolPerKg * factor:0.####} | {100 * (factor - 1):+0.0;-0.0;0.0} | {ionic:0.0} |\n");
                // Merck values of the two preservatives have two digits: 8 % at their smallest.
                var allowed = row.Solid is "Benzoic acid" or "Sorbic acid" ? 0.08 : 0.015;
                if (Math.Abs(factor - 1) > allowed) faults.Add($"{row.Solid} at {row.At[i].Celsius} °C: {factor:0.000}");
            }
        Repository.Golden("tests/RecipeLint.Chemistry.Tests/Tables/calibrated-salts.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    /// <summary>
    /// Water holds 9.2 mol/kg of K2HPO4 and 5.0 of (NH4)2HPO4 at 20 °C (CRC Handbook): below that neither they nor their acid salts fall out,
    /// above it the salt itself does. The totals alone would make MKP and MAP of them, though hardly any of the phosphate is H2PO4-.
    /// </summary>
    [Theory]
    [InlineData("K+", 2, null)]
    [InlineData("K+", 5, null)]
    [InlineData("K+", 8, null)]
    [InlineData("NH4+", 1, null)]
    [InlineData("NH4+", 3, null)]
    [InlineData("NH4+", 4.5, null)]
    [InlineData("NH4+", 7, "DAP")]
    [InlineData("NH4+", 11, "DAP")]
    public void AlkalinePhosphatesDropThemselvesAndNotTheirAcidSalts(string cation, double molPerKg, string? falls)
    {
        var input = new SolutionInput { Totals = new ComponentTotals([new(cation, 2 * molPerKg), new("H2PO4-", molPerKg)]), Celsius = 20 };
        var answer = Chemistry.Equilibrium.Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily, SolidRole.SolubleSalt));
        Assert.True(answer.Converged, answer.Failure);
        Assert.Equal(falls is null ? 0 : 1, SaltVerdicts.Of(input, answer.Clear).Count(v => answer.Formed(v.Solid.Name) > 0));
        if (falls is not null) Assert.True(answer.Formed(falls) > 0);
    }

    /// <summary>
    /// 1.65 mol/L of KH2PO4 and 1.35 of K2HPO4 are kept as a clear solution at 20 to 25 °C (USP, Potassium Phosphates Compounded Injection,
    /// 2025; about 0.87 kg of water in a litre). They came out with 60 % of the acid salt on the floor.
    /// </summary>
    [Theory]
    [InlineData(20)]
    [InlineData(25)]
    public void MonopotassiumPhosphateStaysBesideDipotassiumPhosphate(double celsius)
    {
        const double water = 0.87, mono = 224 / 136.09, di = 236 / 174.18;
        var input = new SolutionInput
        {
            Totals = new ComponentTotals([new("K+", (mono + 2 * di) / water), new("H2PO4-", (mono + di) / water)]),
            Celsius = celsius,
        };
        var answer = Chemistry.Equilibrium.Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily, SolidRole.SolubleSalt));
        Assert.True(answer.Converged, answer.Failure);
        Assert.Equal(0, answer.Formed("MKP"));
    }

    /// <summary>
    /// 200 g/L of KH2PO4 with 300 of K2HPO4 at 10 °C: no more of the acid salt falls out than went in, and what is left stays a buffer. It
    /// was 308 g/L and pH 12, because the share that still had its protons was that of the clear solution.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void AnAcidSaltThatFallsOutLeavesLessOfItself(double celsius)
    {
        const double water = 0.86, mono = 200 / 136.09, di = 300 / 174.18;
        var input = new SolutionInput
        {
            Totals = new ComponentTotals([new("K+", (mono + 2 * di) / water), new("H2PO4-", (mono + di) / water)]),
            Celsius = celsius,
        };
        var answer = Chemistry.Equilibrium.Equilibrium.Ask(input, MayForm.Of(SolidRole.FormsReadily, SolidRole.SolubleSalt));
        Assert.True(answer.Converged, answer.Failure);
        Assert.True(answer.Formed("MKP") < mono / water, $"{answer.Formed("MKP")} mol/kg of MKP");
        Assert.InRange(answer.Left.Ph, 6, 9.5);
    }

    /// <summary>
    /// 1.07 mol/kg of KH2PO4 at 15 °C, three quarters of what water holds there (CRC Handbook), is clear as long as it is alone; with as
    /// much of other salts the measured mixtures do not allow that promise.
    /// </summary>
    [Theory]
    [InlineData(1.07, 0, SaltState.Clear)]
    [InlineData(0.8, 1, SaltState.Close)]
    public void ASaltAloneIsAsSureAsItsTable(double phosphate, double nitrate, SaltState expected)
    {
        var (verdicts, _) = Verdicts([("KH2PO4", phosphate), ("KNO3", nitrate)], 15, 1);
        Assert.Equal(expected, verdicts.Single(v => v.Solid.Name == "MKP").State);
    }

    /// <summary>
    /// The most of ideal mixed crystals is never less than what the equilibrium gives of both salts without mixing, and never more than there is.
    /// </summary>
    [Theory]
    [InlineData(0.75, 3.5, "SO4-2", 0.5)]
    [InlineData(2.5, 2, "NO3-", 1)]
    [InlineData(5, 6, "NO3-", 1)]
    [InlineData(2, 2.5, "H2PO4-", 1)]
    [InlineData(3, 5, "H2PO4-", 1)]
    [InlineData(2, 9, "SO4-2", 0.5)]
    public void TheMostOfMixedCrystalsIsNeverLessThanTheSaltsApart(double potassium, double ammonium, string anion, double perCation)
    {
        (string, double)[] amounts = [("K+", potassium), ("NH4+", ammonium), (anion, perCation * (potassium + ammonium))];
        var input = new SolutionInput { Totals = new ComponentTotals(amounts.Select(a => KeyValuePair.Create(a.Item1, a.Item2))), Celsius = 10 };
        var answer = Chemistry.Equilibrium.Equilibrium.Ask(input, MayForm.Of(SolidRole.SolubleSalt));
        Assert.True(answer.Converged, answer.Failure);
        var mixed = Assert.Single(SaltVerdicts.Of(input, answer.Clear).Select(v => v.Mixed).OfType<MixedCrystal>());
        var apart = new[] { mixed.Of, mixed.With }.Sum(s => answer.Formed(s.Name) * s.MolarMassGramsPerMole);
        Assert.InRange(mixed.MostGramsPerKg, 0.98 * apart, (39.1 * potassium) + (18.04 * ammonium) + (97 * perCation * (potassium + ammonium)));
        Assert.True(mixed.MostGramsPerKg > 0);
    }

    /// <summary>Factor on all amounts at which a solid is just saturated.</summary>
    internal static double Saturation(Func<double, SolutionInput> at, string solid, double low = 0.7, double high = 1.35)
    {
        for (var k = 0; k < 60; k++)
        {
            var middle = Math.Sqrt(low * high);
            if (Solver.Solve(at(middle)).SaturationIndex(solid) is <= 0) low = middle; else high = middle;
        }
        return Math.Sqrt(low * high);
    }

    /// <summary>
    /// Scaling all salts at fixed water: never clear at or above the measured saturation, never "crystallises" at or below 0.85 of it,
    /// clear by 0.6 and "crystallises" by 1.5. Measured: Wan &amp; Wang 2018; IUPAC-NIST Solubility Data Series 66.
    /// </summary>
    [Fact]
    public void MeasuredMixturesAreBracketed()
    {
        using var doc = JsonDocument.Parse(File.ReadAllText(Path.Combine(
            Repository.Root, "tests", "RecipeLint.Chemistry.Tests", "Equilibrium", "Data", "measured-mixtures.json")));
        var table = new StringBuilder("# Measured mixtures against the verdict on soluble salts\n\nNothing here was fitted but the powers of the share that is dihydrogen phosphate (KB71, VOO) and what holds potassium nitrate beside other nitrates and potassium sulfate beside nitrate in the cold (TH97n). Index: calibrated; product: of total molalities; both at the measured saturation.\n\n");
        table.Append("| system | °C | mol/kg | saturated with | I | index | product | at 0.60 | at 0.85 | at 1.00 | at 1.50 | source |\n|---|---|---|---|---|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var (p, molal) in Points("points", false).Concat(Points("molal", true)))
        {
            var salts = p.EnumerateObject().Where(x => Salts.ContainsKey(x.Name)).Select(x => (x.Name, Amount: x.Value.GetDouble())).ToList();
            if (!molal) salts = InMolality(salts);
            var solids = p.GetProperty("solids").EnumerateArray().Select(s => s.GetString()!).ToList();
            var celsius = p.GetProperty("t").GetDouble();
            var states = Scales.Select(s => Verdicts(salts, celsius, s.Factor)).ToList();
            foreach (var solid in solids)
            {
                var where = string.Create(CultureInfo.InvariantCulture, $"{string.Join(" + ", salts.Select(s => $"{s.Name} {s.Amount:0.###}"))} mol/kg at {celsius:0.#} °C, {solid}");
                var verdicts = states.SelectMany(v => v.Verdicts.Where(x => x.Solid.Name == solid)).ToList();
                var source = p.GetProperty("source").GetString()!;
                // Not what the rule is about: crystals of two phosphates; and a model's value for arcanite, whose both measures ignore how much
                // potassium sulfate magnesium sulfate takes with it (they err to the cautious side there).
                var shown = p.TryGetProperty("mixedCrystals", out _) || p.TryGetProperty("cautious", out _) || (source == "HMW" && solid == "Arcanite" && salts.Count == 2 && salts[1].Amount > 0);
                if (shown) Assert.NotEqual(SaltState.Clear, verdicts[2].State);
                else if (verdicts[0].State != SaltState.Clear) faults.Add($"{where}: {verdicts[0].State} at 0.60");
                if (!shown && verdicts[1].State == SaltState.Crystallises) faults.Add($"{where}: crystallises at 0.85");
                if (verdicts[2].State == SaltState.Clear) faults.Add($"{where}: clear at saturation");
                if (verdicts[3].State != SaltState.Crystallises) faults.Add($"{where}: {verdicts[3].State} at 1.50");
                table.Append(CultureInfo.InvariantCulture,
                    $"| {string.Join(", ", salts.Select(s => s.Name))} | {celsius:0.#} | {string.Join(", ", salts.Select(s => s.Amount.ToString("0.000", CultureInfo.InvariantCulture)))} | {solid} | {states[2].State.IonicStrength:0.0} | {Sign(verdicts[2].CalibratedIndex)} | {Sign(verdicts[2].ProductIndex)} | {string.Join(" | ", verdicts.Select(v => v.State.ToString().ToLowerInvariant()))} | {source} |\n");
            }
        }
        Repository.Golden("tests/RecipeLint.Chemistry.Tests/Tables/measured-mixtures.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));

        IEnumerable<(JsonElement Point, bool Molal)> Points(string list, bool molal) =>
            doc.RootElement.GetProperty(list).EnumerateArray().Select(p => (p, molal));
    }

    /// <summary>
    /// Solutions of ammonium nitrate and urea as they are sold, mass per cent of nitrate and urea and the temperature from which on they are
    /// clear (Fertilizer Manual, UNIDO and IFDC 1998, as quoted in open pages: -18, -10 and -2 °C; -18 and -10 lie below the model).
    /// </summary>
    [Theory]
    [InlineData(40, 30, 0)]
    [InlineData(42, 33, 0)]
    [InlineData(45, 35, 0)]
    [InlineData(45, 35, 20)]
    public void AmmoniumNitrateAndUreaHoldEachOther(double nitrate, double urea, double celsius)
    {
        Assert.NotEqual(SaltState.Crystallises, Of(1).State);
        Assert.Equal(SaltState.Crystallises, Of(1.6).State);
        Assert.True(Ureas(1) <= 1.001, "urea in the solution that is sold");

        SaltVerdict Of(double times) => SaltVerdicts.Of(Input(times), Solver.Solve(Input(times))).Single(v => v.Solid.Name == "Ammonium nitrate");

        double Ureas(double times) => Input(times).InertIons[0].MolPerKg / UreaSolubility.MolPerKg(celsius, Input(times).Totals);

        double Moles(double percent, double mass) => 1000 * percent / mass / (100 - nitrate - urea);

        SolutionInput Input(double times) => new()
        {
            Totals = new ComponentTotals([KeyValuePair.Create("NH4+", times * Moles(nitrate, 80.043)), KeyValuePair.Create("NO3-", times * Moles(nitrate, 80.043))]),
            InertIons = [new InertIon(UreaSolubility.Name, 0, Moles(urea, 60.056))],
            Celsius = celsius,
        };
    }

    /// <summary>
    /// Saturated solutions of both at 50 °C hold more than is taken for them: mass per cent of nitrate and urea over one of them, beside
    /// what each holds alone with the trace of phosphate that was there (Tudorovskaya &amp; Margolis 1966, IUPAC-NIST Solubility Data Series 66).
    /// </summary>
    [Theory]
    [InlineData(40.28, 11.66, 34.32, true)]
    [InlineData(55.78, 26.49, 34.32, true)]
    [InlineData(60.84, 47.53, 34.32, true)]
    [InlineData(62.34, 54.04, 34.32, true)]
    [InlineData(25.62, 59.89, 33.08, false)]
    [InlineData(25.57, 56.56, 33.08, false)]
    [InlineData(8.88, 38.12, 33.08, false)]
    public void UreaAndNitrateAreTakenToHoldLessThanWasMeasured(double nitrate, double urea, double alone, bool overNitrate)
    {
        var held = overNitrate
            ? 1 + UreaSolubility.NitrateHeldByUrea(urea, 50)
            : UreaSolubility.MolPerKg(50, new ComponentTotals([KeyValuePair.Create("NH4+", nitrate), KeyValuePair.Create("NO3-", nitrate)])) / UreaSolubility.MolPerKg(50);
        Assert.InRange(held, 1, (overNitrate ? nitrate : urea) / alone);
    }

    /// <summary>
    /// Disodium octaborate tetrahydrate by mass per cent saturates water with borax (makers' sheets, recalled; 9.5 and 21.9 read in open pages):
    /// the points the coefficients of polyborates were fitted to, and half of each is clear.
    /// </summary>
    [Theory]
    [InlineData(0, 2.4)]
    [InlineData(10, 4.5)]
    [InlineData(20, 9.5)]
    [InlineData(30, 21.9)]
    public void OctaborateSaturatesWhereItIsSaid(double celsius, double percent)
    {
        var index = At(percent).SaturationIndex("Borax")!.Value;
        Assert.InRange(index, -0.08, 0.12);
        Assert.True(At(percent / 2).SaturationIndex("Borax") < index);
        Assert.True(At(percent).SaturationIndex("Boric acid") < 0);

        Chemistry.Equilibrium.Equilibrium At(double share)
        {
            // Na2B8O13·4H2O takes 8 mol of its own water to become boric acid and gives none.
            var moles = share / 412.52;
            var water = (100 - share - (8 * 0.018015 * 1000 * moles)) / 1000;
            return Solver.Solve(new SolutionInput
            {
                Totals = new ComponentTotals([KeyValuePair.Create("Na+", 2 * moles / water), KeyValuePair.Create("B(OH)3", 8 * moles / water)]),
                Celsius = celsius,
            });
        }
    }

    private static string Sign(double? v) => v is null ? "" : Math.Round(v.Value, 2) is 0 ? "0.00" : v.Value.ToString("+0.00;-0.00", CultureInfo.InvariantCulture);

    // Molar masses in g/mol, CIAAW abridged weights; the component totals one formula unit brings.
    private static readonly Dictionary<string, (double Mass, (string Name, int Count)[] Ions)> Salts = new()
    {
        ["KNO3"] = (101.102, [("K+", 1), ("NO3-", 1)]),
        ["KH2PO4"] = (136.084, [("K+", 1), ("H2PO4-", 1)]),
        ["NH4H2PO4"] = (115.025, [("NH4+", 1), ("H2PO4-", 1)]),
        ["(NH4)2HPO4"] = (132.056, [("NH4+", 2), ("H2PO4-", 1)]),
        ["NaCl"] = (58.44, [("Na+", 1), ("Cl-", 1)]),
        ["KCl"] = (74.548, [("K+", 1), ("Cl-", 1)]),
        ["K2SO4"] = (174.252, [("K+", 2), ("SO4-2", 1)]),
        ["MgSO4"] = (120.361, [("Mg+2", 1), ("SO4-2", 1)]),
        ["NH4NO3"] = (80.043, [("NH4+", 1), ("NO3-", 1)]),
        ["NH4Cl"] = (53.49, [("NH4+", 1), ("Cl-", 1)]),
        ["(NH4)2SO4"] = (132.13, [("NH4+", 2), ("SO4-2", 1)]),
        ["NaNO3"] = (84.994, [("Na+", 1), ("NO3-", 1)]),
    };

    /// <summary>From mass percent of the solution to mol per kg of its water.</summary>
    private static List<(string Name, double Amount)> InMolality(List<(string Name, double Amount)> salts)
    {
        var water = 100 - salts.Sum(s => s.Amount);
        return [.. salts.Select(s => (s.Name, 1000 * s.Amount / Salts[s.Name].Mass / water))];
    }

    private static (IReadOnlyList<SaltVerdict> Verdicts, Chemistry.Equilibrium.Equilibrium State) Verdicts(List<(string Name, double Amount)> salts, double celsius, double scale)
    {
        var input = new SolutionInput
        {
            Totals = new ComponentTotals(salts.SelectMany(s => Salts[s.Name].Ions.Select(i => KeyValuePair.Create(i.Name, scale * i.Count * s.Amount)))),
            Celsius = celsius,
        };
        var state = Solver.Solve(input);
        Assert.True(state.Converged, state.Failure);
        return (SaltVerdicts.Of(input, state), state);
    }
}

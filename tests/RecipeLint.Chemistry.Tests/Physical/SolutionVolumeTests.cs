using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class SolutionVolumeTests
{
    // CRC Handbook of Chemistry and Physics, Standard Density of Water (recalled to five figures).
    [Theory]
    [InlineData(0, 0.99984)]
    [InlineData(4, 0.99997)]
    [InlineData(10, 0.99970)]
    [InlineData(20, 0.99821)]
    [InlineData(25, 0.99705)]
    [InlineData(30, 0.99565)]
    [InlineData(45, 0.99021)]
    public void WaterHasItsHandbookDensity(double temperatureC, double gramsPerMl) =>
        Assert.Equal(gramsPerMl, Water.DensityGramsPerMl(temperatureC), 1.1e-5);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(100.1)]
    [InlineData(double.NaN)]
    public void WaterOutsideItsRangeIsRefused(double temperatureC) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Water.DensityGramsPerMl(temperatureC));

    /// <summary>
    /// CRC Handbook, Concentrative Properties of Aqueous Solutions, every solute of the table up to 20 mass %. The ion volumes were
    /// fitted to the same table (ions) or to it alone (neutral solutes), so for one salt this is a round trip; mixtures and other
    /// temperatures below are not.
    /// </summary>
    [Fact]
    public void DensitiesFollowTheHandbook()
    {
        var table = new StringBuilder("# Density: model against the CRC Handbook at 20 °C\n\nPer cent, model minus table; asserted within 0.5 up to 20 mass %. ")
            .Append("Single solutes are a round trip of the fit, not a prediction.\nSource: CRC Handbook of Chemistry and Physics, 102nd ed., Concentrative Properties of Aqueous Solutions.\n\n")
            .Append("| solute | rows | worst to 5 % | worst to 20 % | at mass % | worst 20 to 40 % (not asserted) |\n| --- | ---: | ---: | ---: | ---: | ---: |\n");
        var tested = 0;
        foreach (var solute in PhysicalData.Measured("density-of-solutions.json").GetProperty("solutes").EnumerateArray())
        {
            double weak = 0, worst = 0, at = 0, strong = 0;
            var rows = 0;
            foreach (var row in solute.GetProperty("rows").EnumerateArray())
            {
                var massPercent = row[0].GetDouble();
                var error = 100 * ((HandbookSolution(solute, massPercent).GramsPerMl!.Value / row[2].GetDouble()) - 1);
                if (massPercent <= 5 && Math.Abs(error) > Math.Abs(weak))
                    weak = error;
                if (massPercent > 20)
                {
                    strong = Math.Abs(error) > Math.Abs(strong) ? error : strong;
                    continue;
                }

                rows++;
                if (Math.Abs(error) > Math.Abs(worst))
                    (worst, at) = (error, massPercent);
                Assert.True(Math.Abs(error) < 0.5, $"{solute.GetProperty("solute")} at {massPercent} %: {error:0.00} %");
            }

            tested++;
            table.Append(CultureInfo.InvariantCulture, $"| {solute.GetProperty("solute")} | {rows} | {weak:0.00} | {worst:0.00} | {at:0.#} | {(strong == 0 ? "" : strong.ToString("0.00", CultureInfo.InvariantCulture))} |\n");
        }

        Assert.Equal(45, tested);
        PhysicalData.AssertFresh("tests/RecipeLint.Chemistry.Tests/Physical/Golden/density-deviations.md", table.ToString());
    }

    // The printed molarity has three decimals; half a digit of it is the second term.
    [Fact]
    public void MolaritiesFollowTheHandbook()
    {
        foreach (var solute in PhysicalData.Measured("density-of-solutions.json").GetProperty("solutes").EnumerateArray())
        {
            foreach (var row in solute.GetProperty("rows").EnumerateArray())
            {
                if (row[0].GetDouble() > 20)
                    continue;
                var molality = Molality(solute, row[0].GetDouble());
                var molarity = SolutionDensity.ToMolarity(molality, 20).Amounts!;
                var first = solute.GetProperty("species").EnumerateObject().First();
                var perMol = molarity[first.Name] / first.Value.GetDouble();
                Assert.True(Math.Abs(perMol - row[1].GetDouble()) < (0.006 * row[1].GetDouble()) + 0.0006, $"{solute.GetProperty("solute")} at {row[0]} %: {perMol:0.0000}");
            }
        }
    }

    // Sulfuric acid is tabulated as H+ + HSO4-; how much of the HSO4- dissociates (up to about a quarter) must not matter beyond 0.5 %.
    [Fact]
    public void SulfuricAcidFitsHoweverMuchOfItDissociates()
    {
        var solute = PhysicalData.Measured("density-of-solutions.json").GetProperty("solutes").EnumerateArray().Single(e => e.GetProperty("formula").GetString() == "H2SO4");
        foreach (var row in solute.GetProperty("rows").EnumerateArray())
        {
            var massPercent = row[0].GetDouble();
            if (massPercent is < 2 or > 20)
                continue;
            var m = Molality(solute, massPercent)["HSO4-"];
            var split = new Dictionary<string, double> { ["H+"] = 1.25 * m, ["HSO4-"] = 0.75 * m, ["SO4-2"] = 0.25 * m };
            Assert.InRange(SolutionDensity.Of(split, 20).GramsPerMl!.Value / row[2].GetDouble(), 0.995, 1.005);
        }
    }

    /// <summary>Other temperatures, against Laliberté 2009 within the range of each salt's data: not fitted but for one damping number.</summary>
    [Fact]
    public void TemperatureDependenceFollowsTheCorrelation()
    {
        var table = new StringBuilder("# Density from 0 to 45 °C: model against Laliberté 2009\n\nPer cent, model minus correlation, worst over 0, 5, 15, 25, 35, 45 °C inside each salt's range.\n")
            .Append("Source: M. Laliberté, J. Chem. Eng. Data 54 (2009) 1725. Asserted within 0.5 to 10 mass % (ZnCl2, which forms complexes: 1) and within 1 to 20 mass %.\n\n| salt | worst to 10 % | at °C | worst to 20 % | at °C |\n| --- | ---: | ---: | ---: | ---: |\n");
        foreach (var salt in Laliberte.Salts)
        {
            var name = salt.GetProperty("salt").GetString()!;
            double weak = 0, weakAt = 0, strong = 0, strongAt = 0;
            foreach (double t in new[] { 0, 5, 15, 25, 35, 45 })
            {
                if (t < salt.GetProperty("t_C")[0].GetDouble() || t > salt.GetProperty("t_C")[1].GetDouble())
                    continue;
                foreach (var w in new[] { 0.02, 0.05, 0.1, 0.15, 0.2 })
                {
                    if (w > salt.GetProperty("massFractionUpTo").GetDouble())
                        continue;
                    var m = 1000 * w / (1 - w) / salt.GetProperty("g_mol").GetDouble();
                    var molality = salt.GetProperty("species").EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetDouble() * m);
                    var error = 100 * ((SolutionDensity.Of(molality, t).GramsPerMl!.Value / Laliberte.Density([(name, w)], t)) - 1);
                    if (w <= 0.1 && Math.Abs(error) > Math.Abs(weak))
                        (weak, weakAt) = (error, t);
                    if (Math.Abs(error) > Math.Abs(strong))
                        (strong, strongAt) = (error, t);
                }
            }

            table.Append(CultureInfo.InvariantCulture, $"| {name} | {weak:0.00} | {weakAt} | {strong:0.00} | {strongAt} |\n");

            // ZnCl2 forms complexes this model takes as ions.
            Assert.True(Math.Abs(weak) < (name == "ZnCl2" ? 1 : 0.5), $"{name}: {weak:0.00} % at {weakAt} °C");
            Assert.True(Math.Abs(strong) < 1, $"{name}: {strong:0.00} % at {strongAt} °C");
        }

        PhysicalData.AssertFresh("tests/RecipeLint.Chemistry.Tests/Physical/Golden/density-temperature.md", table.ToString());
    }

    // Mixed stocks: no handbook table was found; two independent models (this and Laliberté's mixing rule) must agree.
    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(35)]
    public void MixedStocksAgreeWithTheCorrelation(double temperatureC)
    {
        Compare(("Ca(NO3)2", 1), ("KNO3", 0.5));
        Compare(("MgSO4", 0.4), ("KNO3", 0.8), ("KH2PO4", 0.3), ("K2SO4", 0.2));
        Compare(("Ca(NO3)2", 0.8), ("Mg(NO3)2", 0.4), ("NH4NO3", 0.3));
        Compare(("K2SO4", 0.3), ("MgSO4", 0.8), ("(NH4)2SO4", 0.3));
        Compare(("FeSO4", 0.05), ("MnSO4", 0.04), ("ZnSO4", 0.02), ("CuSO4", 0.005));

        void Compare(params (string Salt, double Molality)[] salts)
        {
            var grams = salts.Select(s => s.Molality * Laliberte.Salt(s.Salt).GetProperty("g_mol").GetDouble()).ToArray();
            var reference = Laliberte.Density([.. salts.Zip(grams, (s, g) => (s.Salt, g / (1000 + grams.Sum())))], temperatureC);
            var molality = new Dictionary<string, double>();
            foreach (var (salt, m) in salts)
            {
                foreach (var ion in Laliberte.Salt(salt).GetProperty("species").EnumerateObject())
                    molality[ion.Name] = molality.GetValueOrDefault(ion.Name) + (m * ion.Value.GetDouble());
            }

            Assert.InRange(SolutionDensity.Of(molality, temperatureC).GramsPerMl!.Value / reference, 0.995, 1.005);
        }
    }

    [Fact]
    public void AComplexCountsAsItsParts()
    {
        var paired = SolutionDensity.Of(new Dictionary<string, double> { ["CaSO4"] = 0.01, ["Ca+2"] = 0.02, ["SO4-2"] = 0.02 }, 25);
        var free = SolutionDensity.Of(new Dictionary<string, double> { ["Ca+2"] = 0.03, ["SO4-2"] = 0.03 }, 25);
        Assert.Equal(free.GramsPerMl!.Value, paired.GramsPerMl!.Value, 1e-12);
        Assert.Empty(paired.SpeciesWithoutVolume);
        Assert.Empty(paired.EstimateBecause);
    }

    [Fact]
    public void SpeciesWithoutVolumeAreNamed()
    {
        var chelate = SolutionDensity.Of(new Dictionary<string, double> { ["Fe(EDTA)-"] = 0.1, ["Na+"] = 0.1 }, 20);
        Assert.Equal(["Fe(EDTA)-"], chelate.SpeciesWithoutVolume);
        Assert.Contains("Fe(EDTA)-", Assert.Single(chelate.EstimateBecause), StringComparison.Ordinal);

        // 0.55 cm³/g on an iron chelate of 344.06 g/mol is 189 cm³/mol.
        var bare = SolutionDensity.Of(new Dictionary<string, double> { ["Na+"] = 0.1, ["Fe(EDTA)-"] = 0 }, 20);
        Assert.Equal(18.92, chelate.State!.Value.MlPerKgWater - bare.State!.Value.MlPerKgWater, 0.2);

        var traces = SolutionDensity.Of(new Dictionary<string, double> { ["Fe(EDTA)-"] = 4e-5, ["K+"] = 4e-5 }, 20);
        Assert.Equal(["Fe(EDTA)-"], traces.SpeciesWithoutVolume);
        Assert.Empty(traces.EstimateBecause);

        var dye = SolutionDensity.Of(new Dictionary<string, double> { ["Dye-"] = 0.01, ["Na+"] = 0.01 }, 20);
        Assert.Equal(["Dye-"], dye.SpeciesWithoutVolume);
        Assert.Single(dye.EstimateBecause);
        var weighed = SolutionDensity.Of(new Dictionary<string, double> { ["Dye-"] = 0.01, ["Na+"] = 0.01 }, 20, new Dictionary<string, double> { ["Dye-"] = 400 });
        Assert.True(weighed.GramsPerMl > dye.GramsPerMl);
    }

    [Fact]
    public void InputThatIsNoSolutionIsRefused()
    {
        Assert.NotNull(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = -1 }, 20).NotGivenBecause);
        Assert.NotNull(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = double.NaN }, 20).NotGivenBecause);
        Assert.NotNull(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = 1 }, double.NaN).NotGivenBecause);
        Assert.NotNull(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = 1 }, -5).NotGivenBecause);
        Assert.NotNull(SolutionDensity.ToMolality(new Dictionary<string, double> { ["Sucrose"] = 6 }, 20).NotGivenBecause);
        Assert.False(SolutionVolume.For(["Mg+2"]).Evaluate([1e6], 20).IsGiven && SolutionVolume.For(["Mg+2"]).Evaluate([1e6], 20).DensityGramsPerMl < 0);
        Assert.NotEmpty(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = 6, ["NO3-"] = 6 }, 20).EstimateBecause);
        Assert.NotEmpty(SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = 1, ["NO3-"] = 1 }, 60).EstimateBecause);
    }

    [Fact]
    public void MolarityAndMolalityAreInverse() => Gen.Select(Gen.Double[0, 1.5], Gen.Double[0, 1.5], Gen.Double[0, 0.5], Gen.Double[0, 45]).Sample((ca, k, mg, t) =>
    {
        var molality = new Dictionary<string, double> { ["Ca+2"] = ca, ["K+"] = k, ["Mg+2"] = mg, ["NO3-"] = (2 * ca) + k, ["SO4-2"] = mg };
        var molarity = SolutionDensity.ToMolarity(molality, t).Amounts!;
        var back = SolutionDensity.ToMolality(molarity, t).Amounts!;
        return molality.All(p => Math.Abs(back[p.Key] - p.Value) <= 1e-10 * (1 + p.Value));
    });

    [Fact]
    public void OrderOfSpeciesChangesNothingButTheLastDigit() => Gen.Shuffle(new[] { "K+", "NO3-", "Ca+2", "CaSO4", "SO4-2", "Urea" }).Sample(names =>
    {
        var values = names.Select(n => n.Length * 0.05).ToArray();
        var shuffled = SolutionVolume.For(names).Evaluate(values, 15).DensityGramsPerMl;
        var sorted = SolutionVolume.For([.. names.Order(StringComparer.Ordinal)]).Evaluate([.. names.Order(StringComparer.Ordinal).Select(n => n.Length * 0.05)], 15).DensityGramsPerMl;
        return Math.Abs(shuffled - sorted) < 1e-13;
    });

    private static DensityResult HandbookSolution(JsonElement solute, double massPercent) => SolutionDensity.Of(Molality(solute, massPercent), 20);

    private static Dictionary<string, double> Molality(JsonElement solute, double massPercent)
    {
        var mol = 10 * massPercent / solute.GetProperty("g_mol").GetDouble();
        var kilogramsWater = 1 - (massPercent / 100);
        return solute.GetProperty("species").EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetDouble() * mol / kilogramsWater);
    }
}

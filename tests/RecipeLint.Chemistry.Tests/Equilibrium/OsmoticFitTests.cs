using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// The fit of the interactions of sulfates of two charges and of magnesium chloride: osmotic coefficients at 25 °C against
/// those that the coefficients were fitted to, and that none of them turns back beyond the last measured strength.
/// </summary>
public sealed class OsmoticFitTests
{
    private const string Table = "tests/RecipeLint.Chemistry.Tests/Tables/osmotic-fit.md";

    private const string May = "May, Rowland, Hefter & Königsberger 2011 (parameters read in a copy)", Usgs = "USGS database pitzer.dat (read)",
        Pitzer73 = "Pitzer & Mayorga 1973 (parameters read in a copy)";

    private static readonly double Third = 3 / Math.Pow(2, 2.5);

    private sealed record Salt(
        string Name, string Cation, string Anion, int Anions, double B0, double B1, double B2, double C, double Last, double Within, string Source);

    /// <summary>Pitzer's parameters, the last strength they hold for, mol/kg, and what the fit may miss, %.</summary>
    private static readonly Salt[] Salts =
    [
        new("MgSO4", "Mg+2", "SO4-2", 1, 0.221, 3.343, -37.23, 0.025, 3, 3.5, Usgs),
        new("ZnSO4", "Zn+2", "SO4-2", 1, 0.1991, 2.63, -37.74, 0.02892, 3.5, 3, May),
        new("CuSO4", "Cu+2", "SO4-2", 1, 0.2281, 2.505, -50.28, 0.005787, 1.42, 3, May),
        new("NiSO4", "Ni+2", "SO4-2", 1, 0.1594, 2.944, -50.94, 0.04078, 2.5, 4, May),
        new("MnSO4", "Mn+2", "SO4-2", 1, 0.2065, 2.9511, -40, 0.01636, 4, 2.5, Usgs),
        new("FeSO4", "Fe+2", "SO4-2", 1, 0.2568, 3.063, -42, 0.0209, 2, 4, Usgs),
        new("MgCl2", "Mg+2", "Cl-", 2, 0.4698 * 0.75, 2.242 * 0.75, 0, 0.00979 * Third, 4.5, 3.5, Pitzer73),
        new("Ca(NO3)2", "Ca+2", "NO3-", 2, 0.2811 * 0.75, 1.879 * 0.75, 0, -0.03798 * Third, 2, 1, Pitzer73),
    ];

    /// <summary>
    /// Salts of one charge and potassium sulfate in the cold and the warmth: Pitzer's parameters at 25 °C, their change per kelvin, the last
    /// strength that holds for, mol/kg, and what the fit may miss, %. The change was fitted (SP78n), the values of 25 °C earlier (PM73).
    /// </summary>
    private static readonly (string Name, string Cation, int Cations, string Anion, double[] At25, double[] PerKelvin, double Last, double Within)[] Warmed =
    [
        ("KNO3", "K+", 1, "NO3-", [-0.0816, 0.0494, 0, 0.0066], [2.06e-4, 64.5e-4, 0, 39.7e-5], 2.4, 1),
        ("NaNO3", "Na+", 1, "NO3-", [0.0068, 0.1783, 0, -0.00072], [12.66e-4, 20.6e-4, 0, -23.16e-5], 2, 1.3),
        ("KH2PO4", "K+", 1, "H2PO4-", [-0.0678, -0.1042, 0, 0], [6.045e-4, 28.6e-4, 0, -10.11e-5], 1.5, 1),
        ("K2SO4", "K+", 2, "SO4-2", [0.04995, 0.7793, 0, 0], [1.44e-3, 6.7e-3, 0, 0], 0.5, 1),
    ];

    /// <summary>Sulfuric acid at 25 °C by the parameters of Pitzer, Roy &amp; Silvester 1977 in the USGS database pitzer.dat (read).</summary>
    private static readonly (double Molality, double Osmotic)[] SulfuricAcid =
        [(0.05, 0.7003), (0.1, 0.6785), (0.2, 0.6696), (0.3, 0.6716), (0.5, 0.6841), (0.7, 0.7009), (1, 0.7304), (1.5, 0.7878), (2, 0.8534), (3, 0.9986)];

    [Fact]
    public void FittedOsmoticCoefficientsAreGivenBack()
    {
        var text = new StringBuilder("# Osmotic coefficients: the fit\n\n25 °C. The coefficients named SULf in the constants were fitted to these values, those of MgCl2 (SP78) earlier, that of calcium with nitrate (PM73c) too; they count for no outside fact. Free: share of the metal outside the pair.\n\n");
        text.Append("| salt | mol/kg | fitted to | given | difference, % | free | source |\n|---|---|---|---|---|---|---|\n");
        var faults = new List<string>();
        foreach (var s in Salts)
        {
            foreach (var m in ((double[])[0.03, 0.05, 0.1, 0.2, 0.5, 1, 1.4, 2, 2.5, 3, 3.5, 4, 4.5]).Where(m => m <= s.Last))
            {
                var (given, free) = Given(s, m, 25);
                var published = HandbookSolutionsTests.Pitzer(m, 1, s.Anions, s.B0, s.B1, s.B2, s.C);
                var off = 100 * (given / published - 1);
                text.Append(CultureInfo.InvariantCulture,
                    $"| {s.Name} | {m} | {published:0.0000} | {given:0.0000} | {off:+0.0;-0.0;0.0} | {free:0.00} | {s.Source} |\n");
                if (Math.Abs(off) > s.Within) faults.Add($"{s.Name} {m} mol/kg: {off:0.0} %");
            }
        }

        text.Append(OverTemperature(faults)).Append(OfSulfuricAcid(faults));
        Repository.Golden(Table, text.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static string OverTemperature(List<string> faults)
    {
        var text = new StringBuilder("\nIn the cold and the warmth, the coefficients named SP78n (parameters of Silvester & Pitzer 1978 as in Pitzer 1991, read in a copy; KNO3, NaNO3, KH2PO4 and K2SO4 at 25 °C Pitzer & Mayorga 1973):\n\n| salt | °C | mol/kg | fitted to | given | difference, % |\n|---|---|---|---|---|---|\n");
        foreach (var s in Warmed)
        {
            foreach (var celsius in (double[])[0, 10, 25, 40])
            {
                foreach (var m in ((double[])[0.1, 0.25, 0.5, 1, 1.5, 2, 2.4]).Where(m => m <= s.Last))
                {
                    var p = s.At25.Zip(s.PerKelvin, (a, b) => a + (b * (celsius - 25))).ToArray();
                    var slope = DebyeHueckel.A(celsius) * Math.Log(10) / 3;
                    var published = HandbookSolutionsTests.Pitzer(m, s.Cations, 1, p[0], p[1], p[2], p[3], slope);
                    var given = Osmotic(celsius, (1 + s.Cations) * m, (s.Cation, s.Cations * m), (s.Anion, m));
                    var off = 100 * (given / published - 1);
                    text.Append(CultureInfo.InvariantCulture, $"| {s.Name} | {celsius} | {m} | {published:0.0000} | {given:0.0000} | {off:+0.0;-0.0;0.0} |\n");
                    if (Math.Abs(off) > s.Within) faults.Add($"{s.Name} {m} mol/kg at {celsius} °C: {off:0.0} %");
                }
            }
        }

        return text.ToString();
    }

    private static string OfSulfuricAcid(List<string> faults)
    {
        var text = new StringBuilder("\nSulfuric acid at 25 °C, the coefficient of hydrogen with hydrogen sulfate (PRS77):\n\n| mol/kg | fitted to | given | difference, % |\n|---|---|---|---|\n");
        foreach (var (m, published) in SulfuricAcid)
        {
            var given = Osmotic(25, 3 * m, ("SO4-2", m));
            var off = 100 * (given / published - 1);
            text.Append(CultureInfo.InvariantCulture, $"| {m} | {published:0.0000} | {given:0.0000} | {off:+0.0;-0.0;0.0} |\n");
            if (Math.Abs(off) > 1) faults.Add($"sulfuric acid, {m} mol/kg: {off:0.0} %");
        }

        return text.ToString();
    }

    private static double Osmotic(double celsius, double particles, params (string Name, double MolPerKg)[] totals)
    {
        var state = EquilibriumSolver.Product.Solve(StandardTests.Input(celsius, totals));
        Assert.True(state.Converged, state.Failure);
        return -Math.Log(state.WaterActivity) * 55.50837 / particles;
    }

    /// <summary>Beyond the last measured strength, and cold and warm, water only ever gets less active and the pair neither takes all nor vanishes.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(25)]
    [InlineData(45)]
    public void StrongerSulfatesHoldTheirWaterTighter(double celsius)
    {
        foreach (var s in Salts.Where(s => s.Anion == "SO4-2"))
        {
            var before = 0.0;
            for (var m = 0.25; m <= 2 * s.Last; m += 0.25)
            {
                var (osmotic, free) = Given(s, m, celsius);
                Assert.True(osmotic * m > before, $"{s.Name} {m} mol/kg at {celsius} °C: the water activity turns back");
                Assert.InRange(free, 0.2, 0.85);
                before = osmotic * m;
            }
        }
    }

    private static (double Osmotic, double Free) Given(Salt s, double molality, double celsius)
    {
        var state = EquilibriumSolver.Product.Solve(StandardTests.Input(celsius, (s.Cation, molality), (s.Anion, s.Anions * molality)));
        Assert.True(state.Converged, $"{s.Name} {molality} mol/kg at {celsius} °C: {state.Failure}");
        return (-Math.Log(state.WaterActivity) * 55.50837 / ((1 + s.Anions) * molality),
            state.Species.First(p => p.Name == s.Cation).MolPerKg / molality);
    }
}

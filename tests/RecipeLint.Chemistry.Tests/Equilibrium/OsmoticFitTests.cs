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
    ];

    [Fact]
    public void FittedOsmoticCoefficientsAreGivenBack()
    {
        var text = new StringBuilder("# Osmotic coefficients: the fit\n\n25 °C. The coefficients named SULf in the constants were fitted to these values, those of MgCl2 (SP78) earlier; they count for no outside fact. Free: share of the metal outside the pair.\n\n");
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

        Repository.Golden(Table, text.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
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

using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>The product set against pH standards and handbook solubilities nobody here fitted.</summary>
public sealed class StandardTests
{
    private const string Tables = "tests/RecipeLint.Chemistry.Tests/Tables/";
    private static readonly EquilibriumSolver Product = EquilibriumSolver.Product;

    // NIST/IUPAC primary standards: Buck et al. 2002, Pure Appl. Chem. 74, 2169, table 2 (values from memory; those of phthalate, 1:1 phosphate,
    // borax and carbonate agree within 0.01 with JIS Z 8802; phthalate and citrate at 25 °C with Hetzer et al. 1977 and Staples & Bates 1969).
    private static readonly int[] Temperatures = [0, 5, 10, 15, 20, 25, 30, 35, 40];
    private static readonly (string Name, (string, double)[] Totals, double[] Ph)[] Buffers =
    [
        ("KH2PO4 0.025 + Na2HPO4 0.025", [("K+", 0.025), ("Na+", 0.05), ("H2PO4-", 0.05)], [6.984, 6.951, 6.923, 6.900, 6.881, 6.865, 6.853, 6.844, 6.838]),
        ("KH2PO4 0.008695 + Na2HPO4 0.03043", [("K+", 0.008695), ("Na+", 0.06086), ("H2PO4-", 0.039125)], [7.534, 7.500, 7.472, 7.448, 7.429, 7.413, 7.400, 7.389, 7.380]),
        ("borax 0.01", [("Na+", 0.02), ("B(OH)3", 0.04)], [9.464, 9.395, 9.332, 9.276, 9.225, 9.180, 9.139, 9.102, 9.068]),
        ("NaHCO3 0.025 + Na2CO3 0.025", [("Na+", 0.075), ("CO3-2", 0.05)], [10.317, 10.245, 10.179, 10.118, 10.062, 10.012, 9.966, 9.926, 9.889]),
        ("KH phthalate 0.05", [("K+", 0.05), ("Phthalate-2", 0.05)], [4.000, 3.998, 3.997, 3.998, 4.000, 4.005, 4.011, 4.018, 4.027]),
        ("KH2 citrate 0.05", [("K+", 0.05), ("Citrate-3", 0.05)], [3.863, 3.840, 3.820, 3.802, 3.788, 3.776, 3.766, 3.759, 3.754]),
    ];

    internal static SolutionInput Input(double celsius, params (string Name, double MolPerKg)[] totals) => new()
    {
        Totals = new ComponentTotals(totals.Select(t => new KeyValuePair<string, double>(t.Name, t.MolPerKg))),
        Celsius = celsius,
    };

    [Fact]
    public void BuffersAgreeWithTheStandards()
    {
        var table = new StringBuilder("# pH standards: computed minus published\n\nmol per kg of water; product set, and in brackets the reference set with constant enthalpies.\n\n| buffer |");
        foreach (var t in Temperatures) table.Append(CultureInfo.InvariantCulture, $" {t} °C |");
        table.Append("\n|---|").Append(string.Concat(Temperatures.Select(_ => "---|"))).Append('\n');
        var reference = new EquilibriumSolver(ConstantSet.ReferenceExtended);
        var faults = new List<string>();
        foreach (var (name, totals, ph) in Buffers)
        {
            table.Append(CultureInfo.InvariantCulture, $"| {name} |");
            for (var i = 0; i < ph.Length; i++)
            {
                var input = Input(Temperatures[i], totals);
                double now = Product.Solve(input).Ph - ph[i], before = reference.Solve(input).Ph - ph[i];
                table.Append(CultureInfo.InvariantCulture, $" {now:+0.000;-0.000} ({before:+0.000;-0.000}) |");
                if (Math.Abs(now) > (Temperatures[i] is >= 20 and <= 35 ? 0.03 : 0.05)) faults.Add($"{name} at {Temperatures[i]} °C: {now:0.000}");
            }
            table.Append('\n');
        }
        Repository.Golden(Tables + "ph-standards.md", table.ToString());
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    // Approximate pH of reagent solutions at 25 °C, handbook tables (CRC Handbook of Chemistry and Physics and supplier tables, from memory;
    // the 1, 0.1 and 0.01 mol/L rows of acetic and citric acid also seen in an open copy). mol/L taken as mol/kg: 0.01 pH at most.
    [Theory]
    [InlineData("Acetate-", 1, 2.4)]
    [InlineData("Acetate-", 0.1, 2.88)]
    [InlineData("Acetate-", 0.01, 3.39)]
    [InlineData("Acetate-", 0.001, 3.91)]
    [InlineData("Acetate-", 0.877, 2.4)] // vinegar of 5 % acetic acid: 50 g in 950 g of water
    [InlineData("Citrate-3", 0.1, 2.08)]
    [InlineData("Citrate-3", 0.01, 2.62)]
    [InlineData("H2PO4-", 0.1, 1.63)]
    [InlineData("H2PO4-", 0.01, 2.26)]
    [InlineData("Cl-", 0.1, 1.1)]
    [InlineData("Cl-", 0.01, 2.04)]
    public void AcidsHaveTheirHandbookPh(string acid, double molPerKg, double ph) =>
        Assert.Equal(ph, Product.Solve(Input(25, (acid, molPerKg))).Ph, 0.05);

    /// <summary>What the product set changes against the reference set, for three stocks.</summary>
    [Fact]
    public void ProductAgainstReferenceTable()
    {
        (string, (string, double)[])[] stocks =
        [
            ("A: calcium nitrate, Fe-DTPA", [("Ca+2", 0.45), ("NO3-", 1.15), ("K+", 0.2), ("NH4+", 0.05), ("Fe+3", 0.0025), ("DTPA-5", 0.0025), ("Na+", 0.005)]),
            ("B: sulfates, phosphate, traces", [("K+", 0.35), ("H2PO4-", 0.15), ("Mg+2", 0.2), ("SO4-2", 0.3015), ("Mn+2", 0.001), ("Zn+2", 0.0004), ("Cu+2", 0.000075), ("B(OH)3", 0.003), ("Na+", 0.0001), ("MoO4-2", 0.00005)]),
            ("trace: chelates and boric acid", [("Na+", 0.06), ("Fe+3", 0.03), ("EDTA-4", 0.045), ("Mn+2", 0.01), ("Zn+2", 0.004), ("Cu+2", 0.00075), ("B(OH)3", 0.3), ("SO4-2", 0.0005), ("Benzoate-", 0.005)]),
        ];
        var table = new StringBuilder("# Product set against the reference set\n\nReference: constant enthalpies, two-parameter coefficients. Largest changes of indices of solids that can form.\n\n| stock | °C | pH reference | pH product | water activity | largest changes of saturation index |\n|---|---|---|---|---|---|\n");
        var reference = new EquilibriumSolver(ConstantSet.ReferenceExtended);
        foreach (var (name, totals) in stocks)
            foreach (var celsius in (double[])[5, 25, 35])
            {
                var input = Input(celsius, totals);
                Chemistry.Equilibrium.Equilibrium old = reference.Solve(input), now = Product.Solve(input);
                Assert.True(old.Converged && now.Converged);
                Assert.Equal(old.Ph, now.Ph, 0.1);
                var changes = now.Solids.Where(s => s.Solid.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt && s.Index > -6)
                    .Select(s => (s.Solid.Name, Old: old.SaturationIndex(s.Solid.Name + " (calibrated)") ?? old.SaturationIndex(s.Solid.Name), s.Index))
                    .Where(s => s.Old is not null).OrderByDescending(s => Math.Abs(s.Index - s.Old!.Value)).Take(4)
                    .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} {s.Old:0.00} → {s.Index:0.00}"));
                table.Append(CultureInfo.InvariantCulture, $"| {name} | {celsius:0} | {old.Ph:0.000} | {now.Ph:0.000} | {old.WaterActivity:0.0000} → {now.WaterActivity:0.0000} | {string.Join("; ", changes)} |\n");
            }
        Repository.Golden(Tables + "product-against-reference.md", table.ToString());
    }
}

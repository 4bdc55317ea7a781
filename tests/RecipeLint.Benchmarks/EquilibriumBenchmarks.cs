using BenchmarkDotNet.Attributes;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Benchmarks;

/// <summary>What a solve costs: a stock of 25 components without solids, the same with every solid a finding may rest on, a small stock, a feed.</summary>
[MemoryDiagnoser]
public class EquilibriumBenchmarks
{
    private static readonly SolutionInput Stock25 = Input(20,
        ("Na+", 0.05), ("K+", 0.61), ("NH4+", 0.1), ("Mg+2", 0.2), ("Ca+2", 0.01), ("Fe+2", 0.0001), ("Fe+3", 0.002), ("Mn+2", 0.001),
        ("Zn+2", 0.0004), ("Cu+2", 0.000075), ("Ni+2", 0.00001), ("Co+2", 0.00001), ("Cl-", 0.02), ("NO3-", 0.3), ("SO4-2", 0.35),
        ("H2PO4-", 0.15), ("CO3-2", 0.001), ("B(OH)3", 0.003), ("MoO4-2", 0.00005), ("H4SiO4", 0.0002), ("EDTA-4", 0.002), ("DTPA-5", 0.001),
        ("Citrate-3", 0.005), ("Benzoate-", 0.004), ("Acetate-", 0.002));

    private static readonly SolutionInput PartA = Input(5,
        ("Ca+2", 0.45), ("NO3-", 1.15), ("K+", 0.2), ("NH4+", 0.05), ("Fe+3", 0.0025), ("DTPA-5", 0.0025), ("Na+", 0.005));

    private static readonly SolutionInput Feed = Input(20,
        ("K+", 0.0062), ("NO3-", 0.014), ("Ca+2", 0.004), ("NH4+", 0.001), ("H2PO4-", 0.0012), ("Mg+2", 0.0015), ("SO4-2", 0.0015), ("Mn+2", 0.00001),
        ("Zn+2", 0.000004), ("Cu+2", 0.00000075), ("B(OH)3", 0.00003), ("Na+", 0.00004), ("MoO4-2", 0.0000005), ("Fe+3", 0.00004), ("DTPA-5", 0.00004)) with
    { FixedPh = 5.8 };

    [Benchmark(Description = "stock of 25 components")]
    public double Stock() => EquilibriumSolver.Product.Solve(Stock25).Ph;

    private static readonly Equilibrium Warmer = EquilibriumSolver.Product.Solve(Stock25 with { Celsius = 25 });

    [Benchmark(Description = "stock of 25 components from its state 5 °C warmer")]
    public double StockFromNeighbour() => EquilibriumSolver.Product.Solve(Stock25 with { StartFrom = Warmer }).Ph;

    [Benchmark(Description = "stock of 25 components with solids")]
    public double StockWithSolids() => EquilibriumSolver.Product.Precipitate(Stock25, SolidRole.FormsReadily, SolidRole.SolubleSalt).Final.Ph;

    [Benchmark(Description = "part A, 7 components")]
    public double Small() => EquilibriumSolver.Product.Solve(PartA).Ph;

    [Benchmark(Description = "feed at given pH, 15 components")]
    public double FeedSolution() => EquilibriumSolver.Product.Solve(Feed).Ph;

    [Benchmark(Description = "feed with solids")]
    public double FeedWithSolids() => EquilibriumSolver.Product.Precipitate(Feed, SolidRole.FormsReadily, SolidRole.SolubleSalt).Final.Ph;

    private static SolutionInput Input(double celsius, params (string Name, double MolPerKg)[] totals) => new()
    {
        Totals = new ComponentTotals(totals.Select(t => new KeyValuePair<string, double>(t.Name, t.MolPerKg))),
        Celsius = celsius,
    };
}

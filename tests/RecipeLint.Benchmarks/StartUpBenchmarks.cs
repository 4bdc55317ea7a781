using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Benchmarks;

/// <summary>
/// Having the constants ready and the first solve: each is measured once in each of fifteen new processes, because a second time there is
/// nothing left to do. Just-in-time compilation is in these figures; a native build spends a tenth of them.
/// </summary>
[SimpleJob(RunStrategy.ColdStart, launchCount: 15, warmupCount: 0, iterationCount: 1, invocationCount: 1)]
public class StartUpBenchmarks
{
    private static readonly ComponentTotals Totals = new([new("K+", 0.1), new("NO3-", 0.1)]);

    [Benchmark(Description = "constants ready")]
    public int Constants() => EquilibriumSolver.Product.Constants.Solids.Count;

    [Benchmark(Description = "constants ready and a first solve")]
    public double FirstSolve() => EquilibriumSolver.Product.Solve(new SolutionInput { Totals = Totals }).Ph;
}

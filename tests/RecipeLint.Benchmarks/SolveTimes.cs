using System.Globalization;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Benchmarks;

/// <summary>
/// How long solves take over many solutions, where a mean hides what people wait for: median, 99th of a hundred and the worst, µs. Solutions are made
/// from a seed out of the salts of the trade, so that two builds are asked the same; each is solved several times and the least time counts.
/// </summary>
public static class SolveTimes
{
    private const int Rounds = 7;

    /// <summary>Ions of one mole of a salt, and the most mol/kg that a part or a trace stock holds of it (common practice, no source).</summary>
    private static readonly (double Most, (string Name, double Moles)[] Ions)[] Salts =
    [
        (2, [("K+", 1), ("NO3-", 1)]), (2, [("Ca+2", 1), ("NO3-", 2)]), (1.5, [("Mg+2", 1), ("SO4-2", 1)]), (1.2, [("K+", 1), ("H2PO4-", 1)]),
        (1, [("NH4+", 1), ("NO3-", 1)]), (1, [("NH4+", 1), ("H2PO4-", 1)]), (0.5, [("K+", 2), ("SO4-2", 1)]), (0.1, [("Fe+2", 1), ("SO4-2", 1)]),
        (0.05, [("Fe+3", 1), ("EDTA-4", 1), ("Na+", 1)]), (0.05, [("Fe+3", 1), ("DTPA-5", 1), ("Na+", 2)]), (0.1, [("Mn+2", 1), ("SO4-2", 1)]),
        (0.1, [("Zn+2", 1), ("SO4-2", 1)]), (0.05, [("Cu+2", 1), ("SO4-2", 1)]), (0.3, [("B(OH)3", 1)]), (0.02, [("MoO4-2", 1), ("Na+", 2)]),
        (0.1, [("Citrate-3", 1)]), (0.02, [("Benzoate-", 1), ("Na+", 1)]), (0.5, [("K+", 1), ("Cl-", 1)]), (0.5, [("NO3-", 1)]), (0.05, [("Ni+2", 1), ("SO4-2", 1)]),
    ];

    public static void Print(int count, int seed, TextWriter to)
    {
        foreach (var (name, strength) in new[] { ("feeds, a hundredth of a stock", 0.01), ("stocks", 1.0), ("stocks of six times the strength", 6.0) })
        {
            var solutions = Solutions(count, strength, seed);
            Row(to, name + ": solved without solids", solutions, x => EquilibriumSolver.Product.Solve(x).Converged);
            Row(to, name + ": state with solids", solutions,
                x => EquilibriumSolver.Product.Precipitate(x, SolidRole.FormsReadily, SolidRole.SolubleSalt).Failure is null);
        }
    }

    /// <summary>
    /// A line for each of the same solutions: what is in it, time of its state (least of three, µs), Newton steps, pH, water left, and what fell
    /// out, so that two builds can be held against each other and the slowest are found.
    /// </summary>
    public static void PrintStates(int count, int seed, TextWriter to)
    {
        foreach (var strength in new[] { 0.01, 1.0, 6.0 })
        {
            var solutions = Solutions(count, strength, seed);
            for (var i = 0; i < solutions.Length; i++) State(to, strength, i, solutions[i]);
        }
    }

    private static void State(TextWriter to, double strength, int number, SolutionInput solution)
    {
        var least = double.PositiveInfinity;
        PrecipitationResult? result = null;
        for (var round = 0; round < 3; round++)
        {
            var start = ProcessorTime.Nanoseconds();
            result = EquilibriumSolver.Product.Precipitate(solution, SolidRole.FormsReadily, SolidRole.SolubleSalt);
            least = Math.Min(least, (ProcessorTime.Nanoseconds() - start) / 1000.0);
        }

        var what = string.Join(' ', solution.Totals.Present.Select(t => string.Create(CultureInfo.InvariantCulture, $"{t.Key}={t.Value:R}")));
        var deposits = string.Join(' ', result!.Deposits.Select(
            d => string.Create(CultureInfo.InvariantCulture, $"{d.Solid.Name.Replace(' ', '_')}={d.MolPerKgInitialWater:R}")));
        to.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{strength}\t{number}\t{least:0}\t{result.Final.Iterations}\t{result.Final.Ph:R}\t{result.FinalWaterKg:R}\t{result.Failure}\t{deposits}\t{solution.Celsius:R}\t{what}"));
    }

    private static SolutionInput[] Solutions(int count, double strength, int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => Solution(random, strength))];
    }

    private static SolutionInput Solution(Random random, double strength)
    {
        var totals = new SortedDictionary<string, double>(StringComparer.Ordinal) { ["CO3-2"] = 0.001 };
        for (var salts = random.Next(1, 9); salts > 0; salts--)
        {
            var (most, ions) = Salts[random.Next(Salts.Length)];
            var molPerKg = most * strength * (0.05 + 0.95 * random.NextDouble());
            foreach (var (name, moles) in ions) totals[name] = totals.GetValueOrDefault(name) + moles * molPerKg;
        }

        return new SolutionInput { Totals = new ComponentTotals(totals), Celsius = 45 * random.NextDouble() };
    }

    private static void Row(TextWriter to, string name, SolutionInput[] solutions, Func<SolutionInput, bool> solve)
    {
        var least = new double[solutions.Length];
        Array.Fill(least, double.PositiveInfinity);
        var unsolved = 0;
        for (var round = 0; round < Rounds; round++)
        {
            unsolved = 0;
            for (var i = 0; i < solutions.Length; i++)
            {
                var start = ProcessorTime.Nanoseconds();
                if (!solve(solutions[i])) unsolved++;
                least[i] = Math.Min(least[i], (ProcessorTime.Nanoseconds() - start) / 1000.0);
            }
        }

        Array.Sort(least);
        to.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name}: {least.Length} solutions, {unsolved} unsolved; median {least[least.Length / 2]:0} µs, p99 {least[99 * least.Length / 100]:0} µs, worst {least[^1]:0} µs"));
    }
}

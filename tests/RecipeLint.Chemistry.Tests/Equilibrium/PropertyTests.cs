using System.Globalization;
using CsCheck;
using RecipeLint.Chemistry.Equilibrium;
using Xunit.Abstractions;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>What must hold for any solution. Failing runs print the seed that brings them back.</summary>
public sealed class PropertyTests(ITestOutputHelper output)
{
    private static readonly EquilibriumSolver Solver = EquilibriumSolver.Product;

    [Fact]
    public void RandomSolutionsConvergeOrSayThatTheyDidNot()
    {
        int all = 0, failed = 0, inside = 0, most = 0;
        long iterations = 0;
        var examples = new List<string>();
        RandomSolutions.ForEach(RandomSolutions.Inputs, RandomSolutions.Count(30_000), input =>
        {
            all++;
            var state = Solver.Solve(input);
            if (!state.Converged)
            {
                Assert.NotNull(state.Failure);
                failed++;
                examples.Add(RandomSolutions.Describe(input));
                return;
            }
            if (state.IonicStrength <= 6) inside++;
            iterations += state.Iterations;
            most = Math.Max(most, state.Iterations);
            Assert.True(state.MassResidual < 1e-9, $"mass {state.MassResidual} {RandomSolutions.Describe(input)}");
            Assert.True(Math.Abs(state.ChargeResidual) < 1e-9, $"charge {state.ChargeResidual} {RandomSolutions.Describe(input)}");
            foreach (var s in state.Species) Assert.True(double.IsFinite(s.MolPerKg) && double.IsFinite(s.LogActivity), s.Name);
            foreach (var s in state.Solids) Assert.True(double.IsFinite(s.Index), s.Solid.Name);
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{all} solutions, {failed} without convergence, {inside} converged inside I = 6; {(double)iterations / all:0.0} steps each, at most {most}"));
        foreach (var e in examples.Take(12)) output.WriteLine(e);
        Assert.True(failed <= 1e-4 * (inside + failed), $"{failed} of {inside + failed} solutions did not converge");
    }

    [Fact]
    public void NeitherOrderNorStartNorScaleChangesTheAnswer()
    {
        int all = 0, twofold = 0;
        RandomSolutions.ForEach(Gen.Select(RandomSolutions.Inputs, RandomSolutions.Between(-1, 15), RandomSolutions.Between(0.1, 10)), RandomSolutions.Count(3_000), x =>
        {
            var (input, start, scale) = x;
            var first = Solver.Solve(input);
            if (!first.Converged || first.IonicStrength > 6) return;
            all++;
            var where = RandomSolutions.Describe(input);
            Same(first, Solver.Solve(input with { Totals = new ComponentTotals(input.Totals.Present.Reverse()) }), "order " + where);
            Same(first, Solver.Solve(input with { Totals = input.Totals.Scale(scale).Scale(1 / scale) }), "scale " + where);
            var second = Solver.Solve(input with { StartPh = start });
            Assert.True(second.Converged, where);
            if (Math.Abs(first.Ph - second.Ph) < 1e-6) Same(first, second, "start " + where);
            else
            {
                // Two true states: where ions of charge 4 and more carry the ionic strength, their activity coefficients fall as they form,
                // and the model has one state with them and one without. The library always begins at one place and returns one of them.
                twofold++;
                Assert.True(Math.Max(HighlyCharged(first), HighlyCharged(second)) > 0.2, $"pH {first.Ph} {second.Ph} start {start} {where}");
            }
        });
        output.WriteLine($"{all} solutions, {twofold} with two states of the model");
        Assert.True(twofold < 0.005 * all);
    }

    [Fact]
    public void ANeighbourToStartFromNeverChangesTheAnswer()
    {
        int all = 0;
        long cold = 0, warm = 0;
        RandomSolutions.ForEach(Gen.Select(RandomSolutions.Inputs, RandomSolutions.Inputs, RandomSolutions.Between(0, 45), RandomSolutions.Between(0.3, 3)),
            RandomSolutions.Count(3_000), x =>
        {
            var (input, stranger, celsius, scale) = x;
            var anew = Solver.Solve(input);
            if (!anew.Converged || anew.IonicStrength > 6) return;
            all++;
            var where = RandomSolutions.Describe(input);
            var again = Solver.Solve(input with { StartFrom = Solver.Solve(input with { Celsius = celsius, Totals = input.Totals.Scale(scale) }) });
            Same(anew, again, "neighbour " + where);
            Same(anew, Solver.Solve(input with { StartFrom = Solver.Solve(input with { FixedPh = 7.5 }) }), "pH " + where);
            Same(anew, Solver.Solve(input with { StartFrom = Solver.Solve(stranger) }), "stranger " + where);
            cold += anew.Iterations;
            warm += again.Iterations;
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{all} solutions, {(double)cold / all:0.0} steps anew, {(double)warm / all:0.0} from a neighbour"));
        Assert.True(all > 1000);
    }

    private static double HighlyCharged(Chemistry.Equilibrium.Equilibrium e) =>
        e.Species.Where(s => Math.Abs(s.Charge) >= 4).Sum(s => s.Charge * s.Charge * s.MolPerKg / 2) / e.IonicStrength;

    [Fact]
    public void AddingASolidNeverLowersItsIndex()
    {
        var solids = ConstantSet.Product.Solids;
        var tried = 0;
        RandomSolutions.ForEach(Gen.Select(RandomSolutions.Amounts(-6, -0.7), RandomSolutions.Between(0, 45), Gen.Int[0, solids.Count - 1],
            RandomSolutions.Between(-3, -1)), RandomSolutions.Count(5_000), x =>
        {
            var (amounts, celsius, pick, log) = x;
            var input = new SolutionInput { Totals = new ComponentTotals(amounts), Celsius = celsius };
            var before = Solver.Solve(input);
            if (before.Validity.Trust != Trust.InRange || before.Solids.Count == 0) return;
            var solid = before.Solids[pick % before.Solids.Count].Solid;
            var scarcest = solid.Composition.Where(c => c.Key is not ("H+" or "H2O")).Min(c => input.Totals[c.Key] / c.Value);
            var more = input.Totals;
            foreach (var (name, n) in solid.Composition)
                if (name is not ("H+" or "H2O")) more = more.With(name, more[name] + n * scarcest * Math.Pow(10, log));
            var after = Solver.Solve(input with { Totals = more });
            if (after.Validity.Trust != Trust.InRange) return;
            tried++;
            Assert.True(after.SaturationIndex(solid.Name) >= before.SaturationIndex(solid.Name) - 1e-9,
                $"{solid.Name} {before.SaturationIndex(solid.Name)} -> {after.SaturationIndex(solid.Name)} in {RandomSolutions.Describe(input)}");
        });
        output.WriteLine($"{tried} additions inside the range");
        Assert.True(tried > 1000);
    }

    [Fact]
    public void SolidsObeyPhaseRuleBalanceAndOrder()
    {
        int all = 0, failed = 0, most = 0;
        var examples = new List<string>();
        var allowed = ConstantSet.Product.Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt).ToList();
        RandomSolutions.ForEach(RandomSolutions.Inputs, RandomSolutions.Count(1_500), input =>
        {
            var state = Solver.Solve(input);
            if (!state.Converged || state.IonicStrength > 6) return;
            all++;
            var result = Solver.Precipitate(input, allowed);
            if (!result.Converged)
            {
                failed++;
                examples.Add(RandomSolutions.Describe(input));
                return;
            }
            most = Math.Max(most, result.Deposits.Count);
            var where = RandomSolutions.Describe(input);
            Assert.True(result.Deposits.Count <= input.Totals.Present.Count() + 1, where);
            Assert.True(result.Final.MassResidual < 1e-9, $"mass {result.Final.MassResidual} {where}");
            var left = LeftOver.Indices(input, result);
            foreach (var s in result.Final.Solids)
                if (allowed.Contains(s.Solid)) Assert.True(left[s.Solid.Name] < 1e-7, $"{s.Solid.Name} {left[s.Solid.Name]} {where}");
            foreach (var d in result.Deposits)
            {
                Assert.True(d.MolPerKgInitialWater > 0, where);
                Assert.Equal(0, left[d.Solid.Name], 1e-7);
            }
            var reversed = Solver.Precipitate(input, Enumerable.Reverse(allowed));
            Assert.Equal(result.Deposits.Select(d => d.Solid.Name), reversed.Deposits.Select(d => d.Solid.Name));
            Assert.Equal(result.Final.Ph, reversed.Final.Ph);
        });
        output.WriteLine($"{all} solutions, {failed} without convergence, at most {most} solids together");
        foreach (var e in examples.Take(12)) output.WriteLine(e);
        Assert.True(failed <= 1e-3 * all, $"{failed} of {all} precipitations did not converge");
    }

    private static void Same(Chemistry.Equilibrium.Equilibrium a, Chemistry.Equilibrium.Equilibrium b, string where)
    {
        Assert.True(b.Converged, where);
        Assert.True(Math.Abs(a.Ph - b.Ph) < 1e-6, $"pH {a.Ph} {b.Ph} {where}");
        Assert.True(Math.Abs(a.IonicStrength - b.IonicStrength) < 1e-8 * a.IonicStrength, $"I {a.IonicStrength} {b.IonicStrength} {where}");
        for (var i = 0; i < a.Species.Count; i++)
            if (a.Species[i].MolPerKg > 1e-12)
                Assert.True(Math.Abs(a.Species[i].LogActivity - b.Species[i].LogActivity) < 1e-5, $"{a.Species[i].Name} {where}");
    }
}

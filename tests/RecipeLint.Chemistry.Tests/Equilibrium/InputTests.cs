using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>What bad input gets: a result that names the thing, never a number.</summary>
public sealed class InputTests
{
    private static readonly SolutionInput Nitrate = StandardTests.Input(25, ("K+", 0.1), ("NO3-", 0.1));

    private static void Refused(SolutionInput input, string names)
    {
        var state = EquilibriumSolver.Product.Solve(input);
        Assert.False(state.Converged);
        Assert.Contains(names, state.Failure, StringComparison.Ordinal);
        Assert.Equal(Trust.OutOfRange, state.Validity.Trust);
        var solids = EquilibriumSolver.Product.Precipitate(input, SolidRole.FormsReadily);
        Assert.False(solids.Converged);
        Assert.Contains(names, solids.Failure, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsRefused() => Refused(new SolutionInput { Totals = new ComponentTotals() }, "nothing");

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(5000)]
    public void ImpossibleAmountIsRefused(double amount) => Refused(StandardTests.Input(25, ("K+", amount), ("NO3-", 0.1)), "K+");

    [Theory]
    [InlineData(-0.1)]
    [InlineData(45.1)]
    [InlineData(double.NaN)]
    public void TemperatureOutsideTheRangeIsRefused(double celsius) => Refused(Nitrate with { Celsius = celsius }, "°C");

    [Fact]
    public void ImpossiblePhIsRefused() => Refused(Nitrate with { FixedPh = 17 }, "pH 17");

    [Fact]
    public void AirAtHighPhIsRefused() => Refused(Nitrate with { FixedPh = 13, CarbonDioxideAtm = 4.2e-4 }, "air");

    [Fact]
    public void UnknownComponentIsNamed() =>
        Assert.Contains("Iodide-", Assert.Throws<ArgumentException>(() => StandardTests.Input(25, ("Iodide-", 1))).Message, StringComparison.Ordinal);

    [Fact]
    public void HydrogenIsNotAnAmount() =>
        Assert.Contains("H+", Assert.Throws<ArgumentException>(() => StandardTests.Input(25, ("H+", 1))).Message, StringComparison.Ordinal);

    [Fact]
    public void InertIonsCloseTheChargeAndMakeAnEstimate()
    {
        var plain = EquilibriumSolver.Product.Solve(StandardTests.Input(25, ("K+", 0.1), ("NO3-", 0.09)));
        Assert.True(plain.Ph > 11);
        var closed = EquilibriumSolver.Product.Solve(StandardTests.Input(25, ("K+", 0.1), ("NO3-", 0.09)) with { InertIons = [new InertIon("iodide", -1, 0.01)] });
        Assert.Equal(7, closed.Ph, 0.05);
        Assert.Equal(0.1, closed.IonicStrength, 1e-3);
        Assert.Equal(Trust.Estimate, closed.Validity.Trust);
    }

    [Fact]
    public void StrongSolutionsAreOutOfRange()
    {
        Assert.Equal(Trust.InRange, EquilibriumSolver.Product.Solve(Nitrate).Validity.Trust);
        Assert.Equal(Trust.Estimate, EquilibriumSolver.Product.Solve(StandardTests.Input(25, ("K+", 3.5), ("NO3-", 3.5))).Validity.Trust);
        Assert.Equal(Trust.OutOfRange, EquilibriumSolver.Product.Solve(StandardTests.Input(25, ("NH4+", 20), ("NO3-", 20))).Validity.Trust);
    }

    /// <summary>More inert ions than a choice of what takes part can tell apart, and each with a charge of its own.</summary>
    [Fact]
    public void ManyInertIonsAreSolved()
    {
        var plain = StandardTests.Input(25, ("K+", 0.1), ("NO3-", 0.04));
        InertIon[] many = [.. Enumerable.Range(0, 15).Select(i => new InertIon($"X{i}", i % 2 == 0 ? -1 : -2, 0.0025))];
        var one = EquilibriumSolver.Product.Solve(plain with { InertIons = [new("X", -1, 0.02), new("Y", -2, 0.0175)] });
        var all = EquilibriumSolver.Product.Solve(plain with { InertIons = many });
        Assert.Equal(one.Ph, all.Ph, 1e-9);
        Assert.Equal(one.IonicStrength, all.IonicStrength, 1e-9);
        Assert.Equal(many.Select(i => (i.Name, i.Charge)), all.Species.TakeLast(15).Select(s => (s.Name, s.Charge)));
    }
}

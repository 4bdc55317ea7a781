using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Agreement with the reference solutions: pH and log activities within 0.01, saturation indices within 0.02.</summary>
public sealed class ParityTests
{
    public static TheoryData<string, string> SolutionCases()
    {
        var data = new TheoryData<string, string>();
        foreach (var c in ReferenceCases.Solutions)
        {
            data.Add(c.GetProperty("id").GetString()!, "plain");
            data.Add(c.GetProperty("id").GetString()!, "extended");
        }
        return data;
    }

    internal static EquilibriumSolver Solver(string set) =>
        new(set == "plain" ? ConstantSet.ReferencePlain : ConstantSet.ReferenceExtended);

    [Theory]
    [MemberData(nameof(SolutionCases))]
    public void SolutionAgreesWithReference(string id, string set)
    {
        var c = ReferenceCases.Solutions.Single(e => e.GetProperty("id").GetString() == id);
        var expected = c.GetProperty(set);
        var state = Solver(set).Solve(ReferenceCases.Input(c));
        Assert.True(state.Converged, state.Failure);
        var faults = new List<string>();
        void Check(string what, double reference, double? computed, double tolerance)
        {
            if (computed is not { } v || !(Math.Abs(v - reference) <= tolerance)) faults.Add($"{what}: {reference} expected, {computed} computed");
        }
        Check("pH", expected.GetProperty("pH").GetDouble(), state.Ph, 0.01);
        Check("water activity", expected.GetProperty("aw").GetDouble(), state.WaterActivity, 0.001);
        var strength = expected.GetProperty("I").GetDouble();
        Check("ionic strength", strength, state.IonicStrength, 0.005 * strength);
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("loga"))) Check("log a " + name, value, state.LogActivity(name), 0.01);
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("SI"))) Check("SI " + name, value, state.SaturationIndex(name), 0.02);
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("m"))) Check("m " + name, value, state.Molality(name), 0.03 * value);
        Assert.True(faults.Count == 0, string.Join("\n", faults));
        Assert.True(state.MassResidual < 1e-10, $"mass residual {state.MassResidual}");
        Assert.True(Math.Abs(state.ChargeResidual) < 1e-10, $"charge residual {state.ChargeResidual}");
    }
}

/// <summary>Agreement with the reference precipitations: amounts of solid within 1 %, final pH within 0.01.</summary>
public sealed class PrecipitationParityTests
{
    public static TheoryData<string, string> Cases()
    {
        var data = new TheoryData<string, string>();
        foreach (var c in ReferenceCases.Precipitations)
        {
            data.Add(c.GetProperty("id").GetString()!, "plain");
            data.Add(c.GetProperty("id").GetString()!, "extended");
        }
        return data;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void PrecipitationAgreesWithReference(string id, string set)
    {
        var c = ReferenceCases.Precipitations.Single(e => e.GetProperty("id").GetString() == id);
        var expected = c.GetProperty(set);
        var solver = ParityTests.Solver(set);
        var allowed = c.GetProperty("solids").EnumerateArray().Select(s => solver.Constants.FindSolid(s.GetString()!)!).ToList();
        var result = solver.Precipitate(ReferenceCases.Input(c), allowed);
        Assert.True(result.Converged, result.Failure);
        Assert.Equal(expected.GetProperty("initialPH").GetDouble(), result.Initial.Ph, 0.01);
        Assert.Equal(expected.GetProperty("pH").GetDouble(), result.Final.Ph, 0.01);
        Assert.Equal(expected.GetProperty("water").GetDouble(), result.FinalWaterKg, 2e-5);
        Assert.Equal(expected.GetProperty("I").GetDouble(), result.Final.IonicStrength, 0.005 * expected.GetProperty("I").GetDouble());
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("formed"))) Assert.Equal(value, result.Formed(name), 0.01 * value);
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("left"))) Assert.Equal(value, result.Remaining[name], 0.01 * value);
        foreach (var (name, value) in ReferenceCases.Pairs(expected.GetProperty("SI"))) Assert.Equal(value, result.Initial.SaturationIndex(name)!.Value, 0.02);
        foreach (var solid in allowed)
            if (result.Final.SaturationIndex(solid.Name) is { } index)
                Assert.True(index < 1e-8, $"{solid.Name} is left supersaturated, {index}");
    }
}

using System.Globalization;
using System.Text;
using CsCheck;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Tests.Readings;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// The way the solver takes, beside where it arrives: Newton steps of the clear solution and of the state with solids over seeded stocks, in a file.
/// A change of the solver that arrives at the same answer by more steps costs everybody's time, and no other test would notice. Where the figures
/// changed, the difference of the file says for which stocks and by how much.
/// </summary>
public sealed class StepsTests
{
    [Fact]
    public void StepsAndAnswersAreAsBefore()
    {
        var text = new StringBuilder("# kind, Newton steps clear and with solids, pH clear and after, ionic strength, water activity, kg of water left, what fell out\n");
        foreach (var (kind, input) in Stocks())
        {
            text.Append(Line(kind, EquilibriumSolver.Product.Precipitate(input, SolidRole.FormsReadily, SolidRole.SolubleSalt))).Append('\n');
        }

        if (Hold.IteratedIsHeldHere) Repository.Golden("tests/RecipeLint.Chemistry.Tests/Equilibrium/steps.txt", text.ToString());
    }

    private static IEnumerable<(string Kind, SolutionInput Input)> Stocks()
    {
        var random = new PCG(7, 20261130);
        for (var i = 0; i < 240; i++)
        {
            var (kind, input) = RealisticStocks.Any.Generate(random, null, out _);
            yield return (kind, input);
            if (i % 3 != 0) continue;
            var strong = input with { Totals = input.Totals.Scale(6) };
            yield return ($"{kind}, six times", strong);
            yield return ($"{kind}, held", input with { FixedPh = input.FixedPh ?? 6, HoldPh = true });
            yield return ($"{kind}, beside the last", input with { Celsius = input.Celsius * 0.9, StartFrom = EquilibriumSolver.Product.Solve(input) });
        }

        for (var i = 0; i < 60; i++) yield return ("anything", RandomSolutions.Inputs.Generate(random, null, out _));
    }

    private static string Line(string kind, PrecipitationResult state)
    {
        var line = new StringBuilder(kind);
        void Figure(double value) => line.Append(' ').Append(value.ToString("G7", CultureInfo.InvariantCulture));
        line.Append(": ").Append(state.Initial.Iterations);
        if (!state.Initial.Converged) return line.Append(' ').Append(state.Initial.Failure).ToString();
        Figure(state.Initial.Ph);
        Figure(state.Initial.IonicStrength);
        Figure(state.Initial.WaterActivity);
        if (!state.Converged) return line.Append("; ").Append(state.Failure).ToString();
        line.Append("; ").Append(state.Final.Iterations);
        Figure(state.Final.Ph);
        Figure(state.FinalWaterKg);
        foreach (var deposit in state.Deposits)
        {
            line.Append(", ").Append(deposit.Solid.Name);
            Figure(deposit.MolPerKgInitialWater);
        }

        return line.ToString();
    }
}

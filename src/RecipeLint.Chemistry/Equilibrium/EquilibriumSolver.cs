using System.Globalization;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Computes the aqueous equilibrium of a solution: mass action, mass balance and charge balance, with activities by the specific ion
/// interaction theory. Pure: the same input gives the same answer, and a solution that does not converge gives a result that says so.
/// </summary>
public sealed partial class EquilibriumSolver(ConstantSet constants)
{
    /// <summary>The solver with the constants verdicts rest on.</summary>
    public static EquilibriumSolver Product { get; } = new(ConstantSet.Product);

    /// <summary>The solver for a silicate that stands in its own alkali.</summary>
    public static EquilibriumSolver InSilicateAlkali => WithGrains.Value;

    private static readonly Lazy<EquilibriumSolver> WithGrains = new(() => new(ConstantSet.InSilicateAlkali));

    public ConstantSet Constants { get; } = constants;

    /// <summary>The state of a solution from which nothing precipitates.</summary>
    public Equilibrium Solve(SolutionInput input)
    {
        if (Reject(input) is { } reason) return new Equilibrium(reason, 0);
        using var run = new SolverRun(Constants, input);
        return run.Clear(input)
            ? new ResultWriter(run, input).Result()
            : new Equilibrium(Lost(input, run.Reached), run.Iterations) { Effort = run.Effort };
    }

    private static string Lost(SolutionInput input, double reached) => input is { FixedPh: > 10, CarbonDioxideAtm: not null }
        ? string.Create(CultureInfo.InvariantCulture,
            $"There is no equilibrium with the air at pH {input.FixedPh:0.##}: such a solution takes up carbon dioxide until its pH falls.")
        : reached > 0
        ? string.Create(CultureInfo.InvariantCulture,
            $"The equilibrium of this solution was not found: it is too strong for the model, which goes up to "
                + $"{Math.Floor(100 * reached):0} % of its strength.")
        : $"The equilibrium of this solution was not found: {WithoutEnd(input)}";

    /// <summary>From so much of one component on, mol/kg, its amount is the likely reason why no answer was found.</summary>
    private const double Much = 3;

    /// <summary>Why nothing was found, to end a sentence: what there is most of, or that the search went on without an end.</summary>
    private static string WithoutEnd(SolutionInput input)
    {
        var totals = input.Totals.MolPerKg;
        var most = Components.Hydrogen;
        for (var i = 0; i < totals.Length; i++)
        {
            if (i is not (Components.Hydrogen or Components.Water) && (most == Components.Hydrogen || totals[i] > totals[most])) most = i;
        }

        return most != Components.Hydrogen && totals[most] >= Much
            ? string.Create(CultureInfo.InvariantCulture,
                $"{totals[most]:0.#} mol of {Components.Word(Components.Names[most])} in a kilogram of water are more than "
                    + $"the model was made for, so try it weaker.")
            : "the search for it went on without an end, and a few per cent more or less of anything may find one.";
    }

    /// <summary>Why an input cannot be solved, or null.</summary>
    internal static string? Reject(SolutionInput input)
    {
        if (!(input.Celsius >= SolutionInput.LowestCelsius && input.Celsius <= SolutionInput.HighestCelsius))
            return string.Create(CultureInfo.InvariantCulture,
                $"{input.Celsius:0.##} °C is outside the range of the model, {SolutionInput.LowestCelsius:0} to "
                    + $"{SolutionInput.HighestCelsius:0} °C.");
        if (input.FixedPh is { } ph && !(ph is >= SolutionInput.LowestPh and <= SolutionInput.HighestPh))
            return string.Create(CultureInfo.InvariantCulture,
                $"pH {ph:0.##} is outside {SolutionInput.LowestPh:0} to {SolutionInput.HighestPh:0}.");
        if (input.CarbonDioxideAtm is { } co2 && !(co2 is > 0 and <= 10))
            return string.Create(CultureInfo.InvariantCulture, $"A carbon dioxide pressure of {co2:0.####} atm is outside 0 to 10.");
        var any = false;
        var totals = input.Totals.MolPerKg;
        for (var i = 0; i < totals.Length; i++)
        {
            if (totals[i] == 0) continue;
            any = true;
            if (!(totals[i] is >= 0 and <= 1000))
                return string.Create(CultureInfo.InvariantCulture,
                    $"The amount of {Components.Names[i]}, {totals[i]:0.####} mol/kg, is not an amount that dissolves in water.");
            if (totals[i] < 1e-20)
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"The amount of {Components.Names[i]}, {totals[i]:0.##E+0} mol/kg, is too small to mean anything.");
        }
        foreach (var ion in input.InertIons)
        {
            any |= ion.MolPerKg != 0;
            if (!(ion.MolPerKg is >= 0 and <= 1000) || Math.Abs(ion.Charge) > 10)
                return string.Create(
                    CultureInfo.InvariantCulture, $"The amount or charge of {ion.Name} is not possible: {ion.MolPerKg:0.####} mol/kg.");
        }
        return any || input.CarbonDioxideAtm is not null ? null : "There is nothing in this solution.";
    }
}

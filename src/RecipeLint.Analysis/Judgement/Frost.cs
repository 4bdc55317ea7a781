using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>What comes first in frost: ice, or crystals that are there at 0 °C already.</summary>
/// <param name="IceAt">Where ice forms, of what is left dissolved; null where that lies beyond what the activities of 0 °C tell.</param>
/// <param name="Before">What falls out at 0 °C, before any ice; null when nothing does.</param>
public sealed record Frost(Temperature? IceAt, Solid? Before)
{
    /// <summary>Null where there is no state at 0 °C. A pure function of the mix.</summary>
    public static Frost? Of(SolutionMix mix, DepositLimits limits)
    {
        var state = StateSolver.Solve(mix, SolutionInput.LowestCelsius);
        if (!state.IsSolved)
        {
            return null;
        }

        var fallen = DepositJudgement.Of(state, limits).Deposits
            .Where(d => d.FallsOut && d.Solid.TemperatureKnown)
            .Select(d => d.Solid)
            .FirstOrDefault();
        return new Frost(Osmosis.FreezingPointC(state.WaterActivity) is { } celsius ? new Temperature(celsius) : null, fallen);
    }
}

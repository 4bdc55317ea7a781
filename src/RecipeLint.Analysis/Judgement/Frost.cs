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
    /// <summary>
    /// Share by which the model may hold the freezing point too low: held against Robinson and Stokes, Electrolyte Solutions (recalled),
    /// its osmotic coefficient is 15 % too high in calcium nitrate and 18 % in copper sulfate at 1 mol/kg, 22 % in urea at 8 mol/kg, and 15
    /// to 25 % too low in zinc sulfate, magnesium chloride and sucrose, which errs on the safe side.
    /// </summary>
    private const double Optimism = 0.22;

    /// <summary>The lowest freezing point that the activities of 0 °C tell, °C.</summary>
    private const double Lowest = -20;

    /// <summary>
    /// The warmest at which there may be ice, after the error of the model; where no ice point is told, the warmest that leaves open.
    /// </summary>
    public Temperature IceFrom => new((IceAt?.Celsius ?? Lowest) / (1 + Optimism));

    /// <summary>Null where there is no state at 0 °C. A pure function of the mix.</summary>
    /// <param name="ph">A pH that was set by something that is not named; null where it follows from the mix.</param>
    public static Frost? Of(SolutionMix mix, DepositLimits limits, double? ph = null)
    {
        var state = StateSolver.Solve(
            mix, new StateRequest(StateMoment.Mixing, new Temperature(SolutionInput.LowestCelsius), false, []) { SetPh = ph });
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

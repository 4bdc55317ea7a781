using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>
/// A tank that is held at a pH by dosing a strong acid or alkali that is not named, at 20 °C. Amounts are mmol per litre of solution,
/// positive for acid, negative for alkali.
/// </summary>
/// <param name="Ph">The pH it is held at.</param>
/// <param name="State">Held and at rest with the carbon dioxide of the air.</param>
/// <param name="DosedAtOnce">What sets the pH of the solution as it is poured together, closed to the air.</param>
/// <param name="DosedInAll">What holds it once it is at rest with the air.</param>
/// <param name="DriftsTo">
/// The pH it comes to at rest with the air when only <paramref name="DosedAtOnce"/> was dosed; null when that cannot be computed.
/// </param>
public sealed record HeldTank(double Ph, SolutionState State, double DosedAtOnce, double DosedInAll, double? DriftsTo)
{
    private const double MillimolesPerMole = 1000;

    /// <summary>Share of the ammonium that stands as ammonia, 0 to 1; null where there is none.</summary>
    public double? AmmoniaShare
    {
        get
        {
            double ammonia = State.Solution!.Molality("NH3"), all = ammonia + State.Solution.Molality(Component.Ammonium);
            return all > 0 ? ammonia / all : null;
        }
    }

    /// <summary>Holds a solution at a pH.</summary>
    /// <param name="mix">Before its pH is adjusted.</param>
    /// <param name="ph">0 to 14.</param>
    /// <returns>Null where the solution cannot be computed at that pH.</returns>
    public static HeldTank? Of(SolutionMix mix, double ph)
    {
        var bench = new Temperature(SolutionMix.FilledAtCelsius);
        SolutionState At(StateMoment moment, bool open) =>
            StateSolver.Solve(mix, new StateRequest(moment, bench, open, []) { SetPh = ph, HoldPh = true });
        if (mix.Failure is not null || ph is not (>= 0 and <= 14)
            || At(StateMoment.Tank, false) is not { IsSolved: true } closed
            || At(StateMoment.TankInAir, true) is not { IsSolved: true } held)
        {
            return null;
        }

        var atOnce = Dosed(closed);
        var left = mix.MolesPerLitre.With(
            Component.Hydrogen, mix.MolesPerLitre.GetValueOrDefault(Component.Hydrogen) + (atOnce / MillimolesPerMole));
        var drifted = StateSolver.Solve(SolutionMix.Of(left, new Volume(1)), new StateRequest(StateMoment.TankInAir, bench, true, []));
        return new HeldTank(ph, held, atOnce, Dosed(held), drifted.IsSolved ? drifted.Ph : null);
    }

    private static double Dosed(SolutionState state) =>
        state.Solution!.ChargeGapEquivalentsPerKg * state.KilogramsWaterLeftPerLitre * MillimolesPerMole;
}

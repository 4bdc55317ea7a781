using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>What a rescue does to a stock, tried in the engine before it is advised.</summary>
/// <param name="Helps">True when the deposit goes and nothing else of weight comes.</param>
/// <param name="Instead">What falls out instead; null when nothing does.</param>
/// <param name="Mass">How much of it.</param>
public sealed record RescueTrial(bool Helps, Solid? Instead, MassConcentration Mass)
{
    /// <summary>A pH to which acid is tried where the engine does not name one (common practice, no source).</summary>
    private const double UsualAcid = 5;

    /// <summary>As warm as a water bath for rescues, °C (common practice, no source).</summary>
    private const double BathCelsius = 40;

    /// <summary>
    /// The usual rescue of a cause on this stock; null where it uses neither acid, alkali nor warmth, or nothing can be computed.
    /// </summary>
    /// <param name="nearest">The nearest change at which the deposit stays dissolved; null when the deposit is not the engine's.</param>
    internal static RescueTrial? Of(BottleChemistry chemistry, RankedCause cause, NearestClear? nearest)
    {
        var state = cause.Solid.State ?? chemistry.AtSeen;
        if (!state.IsSolved)
        {
            return null;
        }

        var stock = chemistry.Stock;
        var mix = state.Moment == StateMoment.Aged ? stock.Chemistry.Mix.WithIronOxidised() : stock.Chemistry.Mix;
        var now = state.PhBeforeDeposit;
        return cause.Cause.Rescue switch
        {
            Rescue.Acid when nearest is { Ph: null } => new RescueTrial(false, null, default),
            Rescue.Acid => nearest?.Ph is { } ph
                ? ph < now ? AtPh(mix, state, ph) : new RescueTrial(false, null, default)
                : now > UsualAcid ? AtPh(mix, state, UsualAcid) : null,
            Rescue.Alkali when nearest is not null => nearest.Ph is { } ph && ph > now ? AtPh(mix, state, ph) : new RescueTrial(false,
                null, default),
            Rescue.Warm when nearest is not null => nearest.Temperature is { } clear && clear.Celsius > state.Temperature.Celsius
                ? new RescueTrial(true, null, default)
                : AtTemperature(mix, state, Math.Max(BathCelsius, state.Temperature.Celsius)),
            _ => null,
        };
    }

    /// <summary>With an acid or alkali that is not named, up to a pH.</summary>
    internal static RescueTrial? AtPh(SolutionMix mix, SolutionState before, double ph) =>
        Compare(before, StateSolver.Solve(mix, new StateRequest(before.Moment, before.Temperature, before.OpenToAir, []) { SetPh = ph }));

    private static RescueTrial? AtTemperature(SolutionMix mix, SolutionState before, double celsius) =>
        Compare(before, StateSolver.Solve(mix, new StateRequest(before.Moment, new Temperature(celsius), before.OpenToAir, [])));

    private static RescueTrial? Compare(SolutionState before, SolutionState after)
    {
        if (!after.IsSolved)
        {
            return null;
        }

        // A gel or salt that was not there, or more of one that was.
        var worse = after.Deposits.FirstOrDefault(d => !d.IsTrace
            && d.Mass.GramsPerLitre > 1.1 * (before.Deposit(d.Solid.Name)?.Mass.GramsPerLitre ?? 0));
        var less = after.Deposits.Where(d => !d.IsTrace).Sum(d => d.Mass.GramsPerLitre) < before.Deposits.Where(d => !d.IsTrace)
            .Sum(d => d.Mass.GramsPerLitre)
            || before.Deposits.All(d => d.IsTrace);
        return worse is null && less ? new RescueTrial(true, null, default) : new RescueTrial(false, worse?.Solid, worse?.Mass ?? default);
    }
}

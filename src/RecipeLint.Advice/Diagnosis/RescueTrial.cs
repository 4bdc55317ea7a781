using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
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

        var now = state.PhBeforeDeposit;
        return cause.Cause.Rescue switch
        {
            // Silicate gels as soon as acid takes its alkali away, which the constants do not follow.
            Rescue.Acid when state.Mix.StandsInItsSilicateAlkali => new RescueTrial(false, null, default),
            Rescue.Acid when nearest is { Ph: null } => new RescueTrial(false, null, default),
            Rescue.Acid => nearest?.Ph is { } ph
                ? ph < now ? AtPh(chemistry, state, ph) : new RescueTrial(false, null, default)
                : now > UsualAcid ? AtPh(chemistry, state, UsualAcid) : null,
            Rescue.Alkali when nearest is not null => nearest.Ph is { } ph && ph > now ? AtPh(chemistry, state, ph) : new RescueTrial(false,
                null, default),
            Rescue.Warm when nearest is not null => nearest.Temperature is { } clear && clear.Celsius > state.Temperature.Celsius
                ? new RescueTrial(true, null, default)
                : AtTemperature(chemistry, state, Math.Max(BathCelsius, state.Temperature.Celsius)),
            _ => null,
        };
    }

    /// <summary>With an acid or alkali that is not named, up to a pH.</summary>
    internal static RescueTrial? AtPh(BottleChemistry chemistry, SolutionState before, double ph) =>
        Compare(
            chemistry.Limits,
            before,
            StateSolver.Solve(before.Mix, new StateRequest(before.Moment, before.Temperature, before.OpenToAir, []) { SetPh = ph }));

    private static RescueTrial? AtTemperature(BottleChemistry chemistry, SolutionState before, double celsius) =>
        Compare(
            chemistry.Limits,
            before,
            StateSolver.Solve(before.Mix, new StateRequest(before.Moment, new Temperature(celsius), before.OpenToAir, [])));

    private static RescueTrial? Compare(DepositLimits limits, SolutionState before, SolutionState after)
    {
        if (!after.IsSolved)
        {
            return null;
        }

        // A gel or salt that was not there, or more of one that was.
        var (was, now) = (Counted(before, limits), Counted(after, limits));
        var worse = now.Find(d => d.Mass.GramsPerLitre > 1.1 * (was.Find(w => w.Solid == d.Solid)?.Mass.GramsPerLitre ?? 0));
        var less = was.Count == 0 || now.Sum(d => d.Mass.GramsPerLitre) < was.Sum(d => d.Mass.GramsPerLitre);
        return worse is null && less ? new RescueTrial(true, null, default) : new RescueTrial(false, worse?.Solid, worse?.Mass ?? default);
    }

    private static List<SolidDeposit> Counted(SolutionState state, DepositLimits limits) =>
        [.. DepositJudgement.Of(state, limits).Deposits.SelectMany(d => d.Deposits)];
}

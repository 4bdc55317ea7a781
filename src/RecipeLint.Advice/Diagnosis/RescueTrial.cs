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

    /// <summary>No grower goes below this pH with a stock (common practice, no source).</summary>
    private const double MostAcid = 2;

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

        return cause.Cause.Rescue switch
        {
            Rescue.Acid => WithAcid(chemistry, cause.Cause, state, nearest),
            Rescue.Alkali => WithAlkali(chemistry, cause.Cause, state, nearest),
            Rescue.Warm when nearest?.Temperature is { } clear && clear.Celsius > state.Temperature.Celsius => Works,
            Rescue.Warm => AtTemperature(chemistry, state, Math.Max(BathCelsius, state.Temperature.Celsius)),
            Rescue.Stir when cause.Cause.RescueUses.Contains("heat") => AtTemperature(chemistry, state, BathCelsius),
            _ => null,
        };
    }

    /// <summary>The change of pH that a cause advises for the next batch, on this stock; null where it advises none.</summary>
    internal static RescueTrial? OfChange(BottleChemistry chemistry, Cause cause) =>
        cause.ChangePh is { } ph && chemistry.AtSeen is { IsSolved: true } state && ph < state.PhBeforeDeposit
            ? AtPh(chemistry, state, ph)
            : null;

    private static RescueTrial Works { get; } = new(true, null, default);

    private static RescueTrial Fails { get; } = new(false, null, default);

    private static RescueTrial? WithAcid(BottleChemistry chemistry, Cause cause, SolutionState state, NearestClear? nearest)
    {
        // Silicate gels as soon as acid takes its alkali away, which the constants do not follow.
        if (state.Mix.StandsInItsSilicateAlkali)
        {
            return Fails;
        }

        var now = state.PhBeforeDeposit;
        if (nearest is not null)
        {
            return nearest.Ph is { } clear && clear < now ? AtPh(chemistry, state, clear) : Fails;
        }

        var to = cause.RescuePh ?? UsualAcid;
        return AtPh(chemistry, state, now > to ? to : Math.Max(MostAcid, now - 1));
    }

    private static RescueTrial? WithAlkali(BottleChemistry chemistry, Cause cause, SolutionState state, NearestClear? nearest)
    {
        var now = state.PhBeforeDeposit;
        return nearest is not null
            ? nearest.Ph is { } clear && clear > now ? AtPh(chemistry, state, clear) : Fails
            : cause.RescuePh is { } to ? to > now ? AtPh(chemistry, state, to) : Fails : null;
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

using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>
/// Which rescue of a cause is tried on a stock, and how far; what it does there say <see cref="AcidTrial"/>, <see cref="AlkaliTrial"/>,
/// <see cref="StateTrial"/> and <see cref="WaterTrial"/>.
/// </summary>
internal static class RescueTrial
{
    /// <summary>A pH to which acid is tried where the engine does not name one (common practice, no source).</summary>
    private const double UsualAcid = 5;

    /// <summary>No grower goes below this pH with a stock (common practice, no source).</summary>
    private const double MostAcid = 2;

    /// <summary>
    /// As warm as a water bath for rescues where no temperature is known, and at the most, °C (common practice, no source).
    /// </summary>
    private const double BathCelsius = 40, HottestBath = 45;

    /// <summary>pH units beyond the nearest one at which a deposit goes, tried where it does not go there.</summary>
    private static readonly double[] Further = [0, 0.2, 0.5];

    /// <summary>
    /// The usual rescue of a cause on this stock; null where it uses neither acid, alkali nor warmth, or nothing can be computed.
    /// </summary>
    /// <param name="nearest">The nearest change at which the deposit stays dissolved; null when the deposit is not the engine's.</param>
    public static StateTrial? Of(BottleChemistry chemistry, RankedCause cause, NearestClear? nearest)
    {
        var state = cause.Solid.State ?? chemistry.AtSeen;
        if (!state.IsSolved)
        {
            return null;
        }

        var wanted = Wanted(cause);
        return cause.Cause.Rescue switch
        {
            Rescue.Acid => WithAcid(chemistry, cause.Cause, state, nearest, wanted),
            Rescue.Alkali => WithAlkali(chemistry, cause.Cause, state, nearest, wanted),
            Rescue.Warm => Warmed(chemistry, state, Math.Max(Bath(nearest), state.Temperature.Celsius), wanted),
            Rescue.Stir when cause.Cause.RescueWarm.Length > 0 => Warmed(chemistry, state, BathCelsius, wanted),
            _ => null,
        };
    }

    /// <summary>
    /// The acid of a change that a cause advises for the next batch, on this stock: to the pH that the cause names, else to the nearest at
    /// which the deposit stays dissolved. Null where none is advised, where it is as acid by now, and where nothing can be computed.
    /// </summary>
    /// <param name="nearest">As in <see cref="Of"/>.</param>
    public static StateTrial? OfChange(BottleChemistry chemistry, RankedCause cause, NearestClear? nearest)
    {
        if (cause.Cause.ChangePh is null && cause.Cause.ChangeAcid.Length == 0)
        {
            return null;
        }

        // A pH that the cause names keeps something from happening; what has fallen out need not go by it.
        var (state, wanted) = cause.Cause.ChangePh is null && cause.Solid.State is { } own ? (own, Wanted(cause)) : (chemistry.AtSeen, []);
        var to = cause.Cause.ChangePh ?? (nearest is null ? UsualAcid : nearest.Ph);
        return to is { } ph && state.IsSolved && ph < state.PhBeforeDeposit
            ? AcidTrial.Of(chemistry.Stock, state, ph, wanted, chemistry.Limits) : null;
    }

    /// <summary>How much water takes up what falls out; null where a cause has no use for water, or nothing of it falls out.</summary>
    public static WaterTrial? WithWater(BottleChemistry chemistry, RankedCause cause) =>
        cause.Cause.RescueUses.Contains("water") && chemistry.Stock.IsComplete && UnknownContents.Of(chemistry.Stock) is null
            && Wanted(cause) is { Count: > 0 } wanted
            && cause.Solid.State is { IsSolved: true } state
            ? WaterTrial.Of(chemistry.Stock, state, wanted, chemistry.Limits)
            : null;

    private static List<Solid> Wanted(RankedCause cause) => [.. cause.Solid.Deposits.Select(d => d.Solid)];

    /// <summary>A little more than the nearest temperature at which it stays clear, where the bath reaches it.</summary>
    private static double Bath(NearestClear? nearest) =>
        nearest?.Temperature is { } clear ? Math.Min(HottestBath, Math.Ceiling(clear.Celsius)) : BathCelsius;

    private static StateTrial? Warmed(BottleChemistry chemistry, SolutionState state, double celsius, IReadOnlyList<Solid> wanted) =>
        StateTrial.AtTemperature(state, celsius, wanted, chemistry.Limits);

    private static StateTrial? WithAcid(
        BottleChemistry chemistry, Cause cause, SolutionState state, NearestClear? nearest, IReadOnlyList<Solid> wanted)
    {
        // Silicate gels as soon as acid takes its alkali away, which the constants do not follow.
        if (state.Mix.StandsInItsSilicateAlkali)
        {
            return StateTrial.Fails with { Harm = AcidTrial.To(chemistry.Stock, null) };
        }

        var now = state.PhBeforeDeposit;
        if (nearest is not null)
        {
            return nearest.Ph is { } clear && clear < now && Math.Floor(clear * 10) / 10 >= MostAcid
                ? FirstThatHelps(Further.Select(f => Math.Floor((clear - f) * 10) / 10).Where(ph => ph >= MostAcid), Acid)
                : StateTrial.Fails;
        }

        var to = cause.RescuePh ?? UsualAcid;
        return now > to ? Acid(to) : now > MostAcid ? Acid(Math.Max(MostAcid, now - 1)) : StateTrial.Fails;

        StateTrial? Acid(double ph) => AcidTrial.Of(chemistry.Stock, state, ph, wanted, chemistry.Limits);
    }

    private static StateTrial? WithAlkali(
        BottleChemistry chemistry, Cause cause, SolutionState state, NearestClear? nearest, IReadOnlyList<Solid> wanted)
    {
        var now = state.PhBeforeDeposit;
        return nearest is not null
            ? nearest.Ph is { } clear && clear > now
                ? FirstThatHelps(Further.Select(f => Math.Ceiling((clear + f) * 10) / 10), Alkali) : StateTrial.Fails
            : cause.RescuePh is { } to ? to > now ? Alkali(to) : StateTrial.Fails : null;

        StateTrial? Alkali(double ph) => AlkaliTrial.Of(state, ph, wanted, chemistry.Limits);
    }

    private static StateTrial? FirstThatHelps(IEnumerable<double> phs, Func<double, StateTrial?> tried)
    {
        StateTrial? first = null;
        foreach (var ph in phs)
        {
            var trial = tried(ph);
            if (trial is { Helps: true })
            {
                return trial;
            }

            first ??= trial;
        }

        return first;
    }
}

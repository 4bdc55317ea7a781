using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Readings;

/// <summary>What a meter should show in the tank of a recipe, and how far a sound tank may be from it.</summary>
public static class TankWindow
{
    /// <summary>
    /// What water, doses and model may shift a pH besides the meter; and a conductivity, as a part of it (judgement, no source).
    /// </summary>
    private const double PhSlack = 0.2, ConductivitySlack = 0.05;

    /// <summary>How far a computed pH or EC of a sound tank may be off before any meter: half-width, pH or mS/cm.</summary>
    public static double SlackOf(ReadingKind kind, double computed) =>
        kind == ReadingKind.Ph ? PhSlack : ConductivitySlack * computed;

    /// <summary>Half-width of a reading, pH or mS/cm.</summary>
    /// <param name="stated">With the reading; null for this shop's meter.</param>
    public static double MeterOf(RecipeFacts recipe, ReadingKind kind, double read, double? stated)
    {
        var instruments = new Instruments(recipe.Settings);
        return stated ?? (kind == ReadingKind.Ph ? instruments.PhHalfWidth(read) : instruments.ConductivityHalfWidth(read));
    }

    /// <summary>pH, or mS/cm at 25 °C; null where the engine gives none, or where the pH is none that can be told.</summary>
    public static double? Value(SolutionState state, ReadingKind kind) => !state.IsSolved ? null
        : kind == ReadingKind.Ph ? state.PhIsKnown ? state.Ph : null
        : state.Conductivity.At25?.MillisiemensPerCentimetre;

    /// <summary>
    /// The window of a reading that was taken some time after mixing: between the tank just poured together and the same at rest with the
    /// air, and as far beyond as a sound tank may be. Null where the engine gives none.
    /// </summary>
    public static ReadingWindow? Of(RecipeFacts recipe, ReadingKind kind, double read, double? stated)
    {
        var final = recipe.Chemistry.Final;
        if (Value(final, kind) is not { } rested)
        {
            return null;
        }

        var closed = StateSolver.Solve(
            final.Mix, new StateRequest(StateMoment.Tank, new Temperature(SolutionMix.FilledAtCelsius), false, []));
        var poured = kind == ReadingKind.Ph && Value(closed, kind) is { } fresh ? fresh : rested;
        return new ReadingWindow(
            (rested + poured) / 2,
            (Math.Abs(rested - poured) / 2) + SlackOf(kind, rested) + MeterOf(recipe, kind, read, stated));
    }
}

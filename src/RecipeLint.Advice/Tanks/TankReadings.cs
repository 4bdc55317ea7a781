using System.Globalization;
using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tanks;

/// <summary>Something that makes a tank read otherwise than its recipe says.</summary>
/// <param name="Words">"the acid was left out".</param>
/// <param name="Value">What would then be read: pH or mS/cm; null where the engine gives none.</param>
public sealed record TankSlip(string Words, double? Value);

/// <summary>A reading of a tank beside what the engine computes for it.</summary>
/// <param name="Computed">pH or mS/cm at 25 °C as the plants get it; null where the engine gives none.</param>
/// <param name="HalfWidth">How far a sound tank may be off, in the unit of the reading.</param>
/// <param name="Explaining">What would make it read so, nearest first.</param>
/// <param name="Nearest">Where nothing explains it, what comes nearest on the same side.</param>
public sealed record TankReading(
    Measurement Measurement, double? Computed, double HalfWidth, IReadOnlyList<TankSlip> Explaining, IReadOnlyList<TankSlip> Nearest)
{
    public bool Fits => Computed is { } value && Math.Abs(Measurement.Value - value) <= HalfWidth;
}

/// <summary>Compares what was measured in a tank with what its recipe gives, and tries the usual reasons in the engine.</summary>
public static class TankReadings
{
    /// <summary>meq/L of bicarbonate that the water may hold beyond its report.</summary>
    private static readonly double[] _moreAlkalinity = [0.5, 1, 2, 3, 4, 6];

    /// <summary>Pure; the same input gives the same order.</summary>
    /// <param name="measurement">pH or EC of the tank itself.</param>
    public static TankReading Of(RecipeFacts recipe, Measurement measurement)
    {
        var kind = measurement.Reading.Kind;
        var computed = TankWindow.Value(recipe.Chemistry.Final, kind);
        var half = TankWindow.SlackOf(kind, computed ?? measurement.Value)
            + TankWindow.MeterOf(recipe, kind, measurement.Value, measurement.HalfWidth);
        if (computed is not { } value || Math.Abs(measurement.Value - value) <= half)
        {
            return new TankReading(measurement, computed, half, [], []);
        }

        // Where lime falls out more of it reads the same: then the least amount stands for all.
        var slips = All(recipe, kind)
            .DistinctBy(s => (s.OfAlkalinity ? "" : s.Slip.Words, Math.Round(s.Slip.Value ?? 0, 2)))
            .Select(s => s.Slip)
            .Where(s => s.Value is { } read && Math.Sign(read - value) == Math.Sign(measurement.Value - value)
                && Math.Abs(read - value) > half / 2)
            .OrderBy(s => Rounding.SixDigits(Math.Abs(s.Value!.Value - measurement.Value)))
            .ToList();
        var explaining = slips.Where(s => Math.Abs(s.Value!.Value - measurement.Value) <= half).Take(4).ToList();
        return new TankReading(measurement, computed, half, explaining, explaining.Count > 0 ? [] : [.. slips.Take(2)]);
    }

    /// <summary>The usual reasons with what each would have the meter show, in a fixed order.</summary>
    internal static IEnumerable<TankSlip> Tried(RecipeFacts recipe, ReadingKind kind) =>
        All(recipe, kind).Select(s => s.Slip);

    private static IEnumerable<(TankSlip Slip, bool OfAlkalinity)> All(RecipeFacts recipe, ReadingKind kind) =>
        Slips(recipe).Select(s => (new TankSlip(s.Words, TankWindow.Value(s.State, kind)), s.OfAlkalinity));

    private static IEnumerable<(string Words, SolutionState State, bool OfAlkalinity)> Slips(RecipeFacts recipe)
    {
        var chemistry = recipe.Chemistry;
        if (chemistry.TankAdjusted is not null && recipe.Adjustment is { Reagent: { } reagent } adjustment)
        {
            yield return ($"{reagent.Name} was left out, and the tank has come to rest with the air", chemistry.TankInAir, false);
            yield return ($"{reagent.Name} was left out, and the tank was just poured", chemistry.Tank, false);
            yield return ($"only half of the {reagent.Name} went in", With(recipe, (adjustment.ComponentMoles, -0.5)), false);
            yield return ($"twice the {reagent.Name} went in", With(recipe, (adjustment.ComponentMoles, 1)), false);
            yield return ("the carbon dioxide has not left yet: the tank was just poured", With(recipe, open: false), false);
        }
        else
        {
            yield return ("the carbon dioxide has not left yet: the tank was just poured", chemistry.Tank, false);
        }

        foreach (var dose in recipe.Doses)
        {
            var name = dose.Stock?.Stock.Name ?? dose.Direct?.Substance.Name ?? dose.Id;
            yield return ($"'{name}' was left out", With(recipe, (dose.ComponentMoles, -1)), false);
            yield return ($"'{name}' went in twice", With(recipe, (dose.ComponentMoles, 1)), false);
        }

        foreach (var more in _moreAlkalinity)
        {
            yield return (string.Create(
                CultureInfo.InvariantCulture, $"the water holds {more:0.#} meq/L more alkalinity than it is stated with"),
                With(recipe, (Bicarbonate(recipe.FinalVolume, more), 1)), true);
        }
    }

    /// <summary>Calcium bicarbonate, as hard water brings it.</summary>
    private static ComponentMoles Bicarbonate(Volume volume, double milliequivalents)
    {
        var moles = milliequivalents * volume.Litres / 1000;
        return ComponentMoles.Of(
        [
            KeyValuePair.Create(Component.Calcium, moles / 2), KeyValuePair.Create(Component.Carbonate, moles),
            KeyValuePair.Create(Component.Hydrogen, moles),
        ]);
    }

    private static SolutionState With(RecipeFacts recipe, (ComponentMoles Moles, double Times) more) => With(recipe, open: true, [more]);

    private static SolutionState With(RecipeFacts recipe, bool open, params (ComponentMoles Moles, double Times)[] more)
    {
        var parts = new List<ComponentMoles> { recipe.ComponentMoles };
        foreach (var (moles, times) in more)
        {
            parts.Add(ComponentMoles.Of(moles.Select(m => KeyValuePair.Create(m.Key, m.Value * times))));
        }

        return StateSolver.Solve(
            SolutionMix.Of(ComponentMoles.Sum(parts), recipe.FinalVolume),
            new StateRequest(StateMoment.TankInAir, new Temperature(SolutionMix.FilledAtCelsius), open, []));
    }
}

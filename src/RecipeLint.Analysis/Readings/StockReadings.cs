using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Readings;

/// <summary>What instruments show of a solution.</summary>
public enum ReadingKind
{
    /// <summary>g/mL at 20 °C: a weight over a volume.</summary>
    Density,

    /// <summary>mS/cm at 25 °C of a dilution in distilled water.</summary>
    Conductivity,

    /// <summary>pH of the stock itself, or of a dilution in distilled water.</summary>
    Ph,
}

/// <summary>One reading that can be taken.</summary>
/// <param name="Dilution">N of 1:N in distilled water; 1 for the stock itself.</param>
public readonly record struct Reading(ReadingKind Kind, double Dilution);

/// <summary>What instruments show of one stock, computed when asked for.</summary>
internal sealed class StockReadings
{
    /// <summary>Ends of the scale of a pH meter.</summary>
    private const double LowestRead = 0, HighestRead = 14;

    /// <summary>Pure water: g/mL at 20 °C (CRC Handbook, recalled) and mS/cm at 25 °C (ion product of water, recalled).</summary>
    private const double WaterDensity = 0.9982, WaterConductivity = 0.000055;

    private readonly bool _isWater;
    private readonly SolutionMix _mix;
    private readonly Dictionary<double, SolutionState> _closed = [];
    private readonly Dictionary<double, SolutionState> _open = [];

    private StockReadings(SolutionMix mix, bool isWater) => (_mix, _isWater) = (mix, isWater);

    /// <summary>Readings at 20 °C, fresh from the bench; conductivity as meters show it, at 25 °C.</summary>
    public static StockReadings Of(StockFacts stock) => Of(stock, stock.ComponentMoles, stock.Volume);

    /// <summary>The readings of nearly the same stock.</summary>
    /// <param name="stock">Tells how the silicate was put in.</param>
    /// <param name="moles">Components of the whole batch.</param>
    /// <param name="volume">What it is filled up to at 20 °C.</param>
    public static StockReadings Of(StockFacts stock, ComponentMoles moles, Volume volume) =>
        new(StockChemistry.MixOf(stock, moles, volume), moles.Count == 0 && stock is { IsComplete: true, Additions: [] });

    /// <summary>The value; null when the model gives none: of pure water no pH.</summary>
    public double? Value(Reading reading)
    {
        if (_isWater)
        {
            return reading.Kind switch
            {
                ReadingKind.Density => WaterDensity,
                ReadingKind.Conductivity => WaterConductivity,
                _ => null,
            };
        }

        var state = State(_closed, reading.Dilution, false);
        if (!state.IsSolved)
        {
            return null;
        }

        return reading.Kind switch
        {
            // Before anything settles: what is in the bottle is weighed, whether dissolved or not.
            ReadingKind.Density => LyeDensity.IsStrong(state.Mix) ? LyeDensity.GramsPerMl(state.Mix, state.Temperature.Celsius)
                : state.Clear is { } clear ? MixVolume.Density(clear).GramsPerMl : null,
            ReadingKind.Conductivity => state.Conductivity.At25?.MillisiemensPerCentimetre,
            _ => state.Ph,
        };
    }

    /// <summary>False where a computed pH says nothing, or lies where no meter reads: below 0 or above 14.</summary>
    public bool TellsPh(double dilution) =>
        State(_closed, dilution, false) is { IsSolved: true, PhIsKnown: true, Ph: >= LowestRead and <= HighestRead };

    /// <summary>How far the carbon dioxide of the air can move a pH: half of what lies between a closed and an open vessel.</summary>
    public double PhSpread(double dilution)
    {
        var (closed, open) = (State(_closed, dilution, false), State(_open, dilution, true));
        return closed.IsSolved && open.IsSolved ? Math.Abs(closed.Ph - open.Ph) / 2 : 0;
    }

    /// <summary>Ionic strength, mol/kg; 0 without a state.</summary>
    public double IonicStrength(double dilution) =>
        State(_closed, dilution, false) is { IsSolved: true } state ? state.IonicStrengthMolPerKg : 0;

    private SolutionState State(Dictionary<double, SolutionState> known, double dilution, bool open)
    {
        if (!known.TryGetValue(dilution, out var state))
        {
            var mix = dilution == 1 || _mix.Failure is not null ? _mix : _mix.Times(1 / dilution);
            state = StateSolver.Solve(mix, new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), open, []));
            known[dilution] = state;
        }

        return state;
    }
}

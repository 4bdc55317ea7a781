using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Readings;

/// <summary>What a reading should be and how far it may lie from it when nothing went wrong (k = 2, about 95 %).</summary>
/// <param name="Value">g/mL, mS/cm or pH.</param>
/// <param name="HalfWidth">In the same unit.</param>
public readonly record struct ReadingWindow(double Value, double HalfWidth)
{
    public bool Holds(double reading) => Math.Abs(reading - Value) <= HalfWidth;

    /// <summary>
    /// Half-width of a computed pH: the stronger the solution, the less activities can be trusted (judgement, no source).
    /// </summary>
    /// <param name="ionicStrength">mol/kg.</param>
    public static double OfComputedPh(double ionicStrength) => ionicStrength <= 0.1 ? 0.05 : ionicStrength <= 1 ? 0.1 : 0.3;
}

/// <summary>
/// Windows of the readings of one stock: the meter, the dilution, the weights and volumes of the recipe, and what the models of density,
/// conductivity and pH are worth, added as squares (JCGM 100:2008, equation 10).
/// </summary>
internal sealed class ReadingWindows
{
    /// <summary>Half-width of the density model, relative: 0.5 % (as its description claims).</summary>
    private const double DensityModel = 0.005;

    /// <summary>Half-width of the conductivity model, relative: 3 % (as its description claims).</summary>
    private const double ConductivityModel = 0.03;

    /// <summary>Each addition is changed by this part to see what it does to a reading.</summary>
    private const double Nudge = 0.02;

    private readonly StockFacts _stock;
    private readonly StockReadings _readings;
    private readonly List<(StockReadings Nudged, double Relative)> _nudged;

    public ReadingWindows(StockFacts stock, Instruments instruments)
    {
        _stock = stock;
        Instruments = instruments;
        _readings = StockReadings.Of(stock);
        _nudged = [.. Nudges(stock)];
    }

    public Instruments Instruments { get; }

    /// <summary>The window of a reading; null where the model gives no value, or a pH that no meter reads.</summary>
    /// <param name="meter">Stated half-width of the reading; null for this shop's instrument.</param>
    /// <param name="filled">The volume that was filled for a weight; null for a density read directly.</param>
    public ReadingWindow? Of(Reading reading, double? meter = null, Volume? filled = null)
    {
        if (_readings.Value(reading) is not { } value || (reading.Kind == ReadingKind.Ph && !_readings.TellsPh(reading.Dilution)))
        {
            return null;
        }

        double variance = 0;
        foreach (var (nudged, relative) in _nudged)
        {
            if (nudged.Value(reading) is { } moved)
            {
                var effect = (moved - value) / Nudge * relative;
                variance += effect * effect;
            }
        }

        var own = reading.Kind switch
        {
            ReadingKind.Density => Root(
                StandardUncertainty.Rectangular(DensityModel * value),
                StandardUncertainty.Rectangular(meter ?? 0),
                filled is { } volume ? Instruments.Measured(volume) * value : 0),
            ReadingKind.Conductivity => Root(
                StandardUncertainty.Rectangular(ConductivityModel * value),
                StandardUncertainty.Rectangular(meter ?? Instruments.ConductivityHalfWidth(value)),
                Instruments.Dilution(reading.Dilution) * value),
            _ => Root(
                StandardUncertainty.Rectangular(ReadingWindow.OfComputedPh(_readings.IonicStrength(reading.Dilution))),
                StandardUncertainty.Rectangular(meter ?? Instruments.PhHalfWidth(value)),
                StandardUncertainty.Rectangular(_readings.PhSpread(reading.Dilution))),
        };
        return new ReadingWindow(value, 2 * Math.Sqrt(variance + (own * own)));
    }

    /// <summary>The same width around the value of another stock; relative where the width follows the value.</summary>
    public static ReadingWindow Around(double value, Reading reading, ReadingWindow window) =>
        reading.Kind == ReadingKind.Ph || window.Value == 0
            ? new ReadingWindow(value, window.HalfWidth)
            : new ReadingWindow(value, window.HalfWidth * value / window.Value);

    /// <summary>
    /// Every addition a little larger, with its relative standard uncertainty; and the whole a little stronger, for the filling.
    /// </summary>
    private static IEnumerable<(StockReadings, double)> Nudges(StockFacts stock)
    {
        foreach (var addition in stock.Additions.Where(a => a.ComponentMoles.Count > 0))
        {
            var moles = ComponentMoles.Sum([stock.ComponentMoles,
                ComponentMoles.Of(addition.ComponentMoles.Select(m => KeyValuePair.Create(m.Key, m.Value * Nudge)))]);
            yield return (StockReadings.Of(stock, moles, stock.Volume), Relative(addition));
        }

        yield return (StockReadings.Of(stock, stock.ComponentMoles, stock.Volume * (1 / (1 + Nudge))), Filling(stock));
    }

    private static double Filling(StockFacts stock) => FinishedVolume.Of(stock) is { } finished
        ? finished.Pouring.Standard / stock.Volume
        : StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value);

    private static double Relative(AdditionFacts addition)
    {
        var taken = addition switch
        {
            { Scale: { } scale } when addition.Mass.Grams > 0 => new Weighing(scale, addition.Mass).Standard / addition.Mass,
            { Measure: { } measure, Volume: { Litres: > 0 } volume } => Pouring.Of(measure, volume).Standard / volume,
            { Volume: not null } => StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value),
            _ => StandardUncertainty.Rectangular(EquipmentLimits.UnknownScale.Value),
        };
        var assay = StandardUncertainty.Rectangular(
            addition.AssayDeclared ? EquipmentLimits.DeclaredAssay.Value
            : addition.Substance.NeedsAssay ? EquipmentLimits.UndeclaredTechnicalAssay.Value
            : EquipmentLimits.UndeclaredAssay.Value);
        return Root(taken, assay);
    }

    private static double Root(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (var part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }
}

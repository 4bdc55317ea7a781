using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Readings;

/// <summary>What this shop weighs and measures with, and what was assumed where it does not say.</summary>
public sealed class Instruments
{
    /// <summary>Half-width of an ordinary pH meter calibrated with two buffers.</summary>
    public static Sourced<double> UndeclaredPh { get; } =
        new(0.1, "pen meters are read to 0.1 pH: common practice, no source", Confidence.Memory);

    /// <summary>Half-width of an ordinary conductivity meter, as a part of the reading.</summary>
    public static Sourced<double> UndeclaredConductivity { get; } =
        new(0.02, "pen meters state 2 % of the reading: common practice, no source", Confidence.Memory);

    /// <summary>Display step of an ordinary kitchen or parcel scale.</summary>
    public static Sourced<Mass> UndeclaredScale { get; } =
        new(new Mass(1), "kitchen scales show whole grams: common practice, no source", Confidence.Memory);

    private readonly ShopSettings _shop;
    private readonly Meter? _ph;
    private readonly Meter? _conductivity;

    public Instruments(ShopSettings shop)
    {
        _shop = shop;
        _ph = shop.Meters.Where(m => m.Kind == MeterKind.Ph).MinBy(m => m.Accuracy.HalfWidth(7));
        _conductivity = shop.Meters.Where(m => m.Kind == MeterKind.Conductivity).MinBy(m => m.Accuracy.HalfWidth(2));
    }

    /// <summary>One sentence for each instrument that the shop does not declare.</summary>
    public IReadOnlyList<string> Assumptions
    {
        get
        {
            var list = new List<string>();
            if (_shop.Scales.Count == 0)
            {
                list.Add($"No scale is declared: steps of 1 g are taken ({UndeclaredScale.Source}).");
            }

            if (_conductivity is null)
            {
                list.Add($"No EC meter is declared: ± 2 % is taken ({UndeclaredConductivity.Source}).");
            }

            if (_ph is null)
            {
                list.Add($"No pH meter is declared: ± 0.1 is taken ({UndeclaredPh.Source}).");
            }

            return list;
        }
    }

    /// <summary>True when the shop lists such an instrument, or lists none at all, so that nothing is known of what it has.</summary>
    public bool Owns(ReadingKind kind) => (_shop.Scales.Count == 0 && _shop.Meters.Count == 0) || kind switch
    {
        ReadingKind.Density => _shop.Scales.Count > 0,
        ReadingKind.Conductivity => _conductivity is not null,
        _ => _ph is not null,
    };

    /// <summary>Half-width of a pH reading.</summary>
    public double PhHalfWidth(double ph) => _ph?.Accuracy.HalfWidth(ph) ?? UndeclaredPh.Value;

    /// <summary>Half-width of a conductivity reading, mS/cm.</summary>
    public double ConductivityHalfWidth(double milliSiemensPerCm) =>
        _conductivity?.Accuracy.HalfWidth(milliSiemensPerCm) ?? (milliSiemensPerCm * UndeclaredConductivity.Value);

    /// <summary>The finest scale that carries the load; null when none of the shop's does.</summary>
    public Scale? ScaleFor(Mass load, StockFacts stock) => _shop.Scales.Count == 0
        ? new Scale("scale", stock.Stock.Place, null, UndeclaredScale.Value, null, null)
        : _shop.Scales
            .Where(s => s.Capacity is null || s.Capacity.Value >= load)
            .OrderBy(s => s.Readability.Grams)
            .ThenBy(s => s.Name, StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>Relative standard uncertainty of a dilution 1:N made with this shop's measures.</summary>
    public double Dilution(double dilution)
    {
        if (dilution == 1)
        {
            return 0;
        }

        // A litre of dilution: so many millilitres of stock, made up with what holds a litre.
        var stock = Measured(new Volume(1 / dilution));
        var whole = Measured(new Volume(1));
        return Math.Sqrt((stock * stock) + (whole * whole));
    }

    /// <summary>Relative standard uncertainty of a volume taken with the best of this shop's measures that holds it.</summary>
    public double Measured(Volume volume)
    {
        var best = _shop.Measures
            .Where(m => m.Kind is MeasureKind.Cylinder or MeasureKind.Flask or MeasureKind.Pipette or MeasureKind.Syringe
                && m.Capacity is { } c
                && c.Litres >= volume.Litres * 0.999)
            .Select(m => Pouring.Of(m, volume).Standard / volume)
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();
        return Math.Min(best, StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value));
    }
}

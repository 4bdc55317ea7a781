using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// One volume taken with one measure, in one filling or several. The effect of temperature is neglected (0.05 % for ± 4 °C with the
/// expansion of water of 2.1e-4 per °C: EURACHEM/CITAC QUAM:2012 A1).
/// </summary>
/// <param name="Volume">The whole volume.</param>
/// <param name="Fillings">How often the measure is filled for it (strokes of a syringe), at least 1.</param>
public sealed record Pouring(Measure Measure, Volume Volume, int Fillings)
{
    /// <summary>The volume in as few fillings as the capacity allows, or in the strokes that are stated.</summary>
    public static Pouring Of(Measure measure, Volume volume, int? strokes = null)
    {
        if (strokes is > 0)
        {
            return new Pouring(measure, volume, strokes.Value);
        }

        // An injector measures a flow, not a filling; a drop or spoonful is counted as its own size.
        var needed = measure.Kind is not (MeasureKind.Injector or MeasureKind.Dropper or MeasureKind.Spoon)
            && measure.Capacity is { Litres: > 0 } capacity
                ? Math.Ceiling((volume / capacity) - 1e-9)
                : 1;
        return new Pouring(measure, volume, (int)Math.Clamp(double.IsFinite(needed) ? needed : 1, 1, 1_000_000));
    }

    /// <summary>True when the limit comes from <see cref="EquipmentLimits"/> because the shop states no tolerance.</summary>
    public bool LimitIsAssumed => Measure.Tolerance is null;

    /// <summary>Limit of error of one filling: stated by the shop, else published for the kind and size.</summary>
    public Volume Limit =>
        Measure.Tolerance is { } stated ? Stated(stated) : EquipmentLimits.VolumeError(Measure.Kind, Measure.Capacity, Filling);

    /// <summary>
    /// Standard uncertainty from the measure's calibration, rectangular within its limit; the same error at every filling, so it grows with
    /// their number (JCGM 100:2008, 5.2.2).
    /// </summary>
    public Volume SharedError => new Volume(StandardUncertainty.Rectangular(Limit.Litres)) * Fillings;

    /// <summary>
    /// Standard uncertainty that each volume has of its own: reading to whole graduations, or filling to the single mark of a flask or
    /// pipette; it grows with the root of the number of fillings.
    /// </summary>
    public Volume OwnError
    {
        get
        {
            var once = Measure switch
            {
                { Readability: { } step } => StandardUncertainty.Resolution(step.Litres),
                { Kind: MeasureKind.Flask or MeasureKind.Pipette } => Filling.Litres * EquipmentLimits.Filling.Value,
                _ => 0,
            };
            return new Volume(once * Math.Sqrt(Fillings));
        }
    }

    public Volume Standard =>
        new(Math.Sqrt((OwnError.Litres * OwnError.Litres) + (SharedError.Litres * SharedError.Litres)));

    /// <summary>Expanded uncertainty (k = 2) as a fraction of the volume; null for a volume of zero.</summary>
    public double? RelativeExpanded => Volume.Litres > 0 ? 2 * (Standard / Volume) : null;

    private Volume Filling => Volume / Fillings;

    /// <summary>
    /// What a stated accuracy at full volume means for less. Absolute figures hold at any mark, as ISO 4788 has it. A relative figure of
    /// glassware and jugs is that part of the capacity at any mark; that of a syringe holds from half its capacity on and stays what it is
    /// there below (the shape of ISO 7886-1, table 1); that of anything that measures out drops, spoonfuls or a flow is a part of what is
    /// delivered.
    /// </summary>
    private Volume Stated(Recipes.Quantities.Tolerance stated)
    {
        if (stated.Absolute is { } litres)
        {
            return new Volume(Math.Abs(litres));
        }

        var part = Math.Abs(stated.Relative ?? 0);
        var size = Measure.Capacity is { Litres: > 0 } known ? known : Filling;
        return Measure.Kind switch
        {
            MeasureKind.Cylinder or MeasureKind.Flask or MeasureKind.Pipette or MeasureKind.Jug => size * part,
            MeasureKind.Syringe => new Volume(Math.Max(Filling.Litres, size.Litres / 2) * part),
            _ => Filling * part,
        };
    }
}

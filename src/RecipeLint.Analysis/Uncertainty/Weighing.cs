using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>Whether a scale carries what is put on it.</summary>
public enum ScaleLoad
{
    /// <summary>The shop states no capacity.</summary>
    Unknown,

    Within,

    /// <summary>The substance alone is within the capacity, the vessel with it is not: it has to be weighed in something lighter.</summary>
    OverWithVessel,

    /// <summary>The substance alone is more than the scale carries.</summary>
    Over,
}

/// <summary>
/// One net weight taken on one scale: a tare and a gross reading. Air buoyancy is neglected (at most 0.1 % for salts of 1 to 3 g/mL, and
/// the same sign for all).
/// </summary>
/// <param name="Mass">Net mass.</param>
public sealed record Weighing(Scale Scale, Mass Mass)
{
    /// <summary>Standard deviation of a single weighing: as stated by the shop, else 1.5 steps of the display.</summary>
    public Mass Repeatability => RepeatabilityOf(Scale);

    /// <summary>
    /// Standard uncertainty that each weighing has of its own: repeatability, and the rounding of the display at tare and at gross
    /// (JCGM 100:2008, F.2.2.1).
    /// </summary>
    public Mass OwnError => OwnErrorOf(Scale);

    /// <summary>
    /// Standard uncertainty from calibration and linearity, the same error in every weighing on this scale: rectangular within the limits
    /// of <see cref="EquipmentLimits.ScaleError"/>.
    /// </summary>
    public Mass SharedError => SharedErrorAt(Scale, Mass);

    public Mass Standard => Combined(OwnError, SharedError);

    /// <summary>Expanded uncertainty (k = 2) as a fraction of the mass; null for a mass of zero.</summary>
    public double? RelativeExpanded => Mass.Grams > 0 ? 2 * (Standard / Mass) : null;

    /// <summary>True when the mass is under the minimum weight stated for the scale; false where none is stated.</summary>
    public bool IsBelowStatedMinimum => Scale.MinimumWeight is { } minimum && Mass < minimum;

    /// <summary>The smallest mass whose expanded uncertainty (k = 2) is within this fraction on this scale.</summary>
    /// <param name="relativeExpanded">For example 0.05 for ± 5 %; above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is not a positive number.</exception>
    public static Mass SmallestWithin(Scale scale, double relativeExpanded)
    {
        if (!(relativeExpanded > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(relativeExpanded), relativeExpanded, "The fraction must be above zero.");
        }

        // The limit of the scale grows in steps with the load, so the first step whose answer lies within its own range is the smallest
        // mass.
        var answer = Mass.Zero;
        foreach (var load in new[] { 500.0, 2000.0, 2001.0 })
        {
            answer = Combined(OwnErrorOf(scale), SharedErrorAt(scale, scale.Readability * load)) * (2 / relativeExpanded);
            if (load > 2000 || answer <= scale.Readability * load)
            {
                break;
            }
        }

        return answer;
    }

    /// <summary>Whether the scale carries the mass, alone and in a vessel.</summary>
    /// <param name="tare">Mass of the empty vessel; null where there is none or it is not stated.</param>
    public ScaleLoad Load(Mass? tare) => Scale.Capacity switch
    {
        null => ScaleLoad.Unknown,
        { } capacity when Mass > capacity => ScaleLoad.Over,
        { } capacity when Mass + (tare ?? Mass.Zero) > capacity => ScaleLoad.OverWithVessel,
        _ => ScaleLoad.Within,
    };

    private static Mass RepeatabilityOf(Scale scale) =>
        scale.Repeatability ?? (scale.Readability * EquipmentLimits.RepeatabilitySteps.Value);

    private static Mass OwnErrorOf(Scale scale)
    {
        var rounding = new Mass(StandardUncertainty.Resolution(scale.Readability.Grams)) * Math.Sqrt(2);
        return Combined(RepeatabilityOf(scale), rounding);
    }

    private static Mass SharedErrorAt(Scale scale, Mass load) =>
        new(StandardUncertainty.Rectangular(EquipmentLimits.ScaleError(load, scale.Readability).Grams));

    private static Mass Combined(Mass left, Mass right) => new(Math.Sqrt((left.Grams * left.Grams) + (right.Grams * right.Grams)));
}

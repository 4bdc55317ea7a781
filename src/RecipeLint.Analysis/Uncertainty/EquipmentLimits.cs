using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// How far equipment may be wrong where the shop does not say: published limits by kind and size, and the few assumptions for what is not
/// known at all. Half-widths, each with its source.
/// </summary>
public static class EquipmentLimits
{
    private const string TwiceClassA = "; class B within twice class A (ASTM E288 and E1272, scope)";

    private const string Iso4788 =
        "ISO 4788:2005, measuring cylinders, class B, recalled; never narrower than ASTM E1272-02(2012) table 1, class B, read for 5 to "
            + "500 mL";

    private const string Iso1042 =
        "ISO 1042:1998, one-mark flasks, class A recalled, 100 mL read in EURACHEM/CITAC QUAM:2012 A1" + TwiceClassA;

    private const string Iso648 = "ISO 648:2008, one-mark pipettes, class A recalled" + TwiceClassA;

    /// <summary>Limit of error at any mark, by capacity; class B, because nothing better is stated.</summary>
    private static readonly SortedList<double, double> CylinderMillilitres = new()
    {
        [5] = 0.1,
        [10] = 0.2,
        [25] = 0.5,
        [50] = 1,
        [100] = 1,
        [250] = 2,
        [500] = 5,
        [1000] = 10,
        [2000] = 20,
    };

    private static readonly SortedList<double, double> FlaskMillilitres = new()
    {
        [10] = 0.05,
        [25] = 0.08,
        [50] = 0.12,
        [100] = 0.2,
        [200] = 0.3,
        [250] = 0.3,
        [500] = 0.5,
        [1000] = 0.8,
        [2000] = 1.2,
    };

    private static readonly SortedList<double, double> PipetteMillilitres = new()
    {
        [1] = 0.016,
        [2] = 0.02,
        [5] = 0.03,
        [10] = 0.04,
        [20] = 0.06,
        [25] = 0.06,
        [50] = 0.1,
        [100] = 0.16,
    };

    /// <summary>Part of the capacity by which the marks of a jug, beaker or bucket may be off.</summary>
    public static Sourced<double> JugMarks { get; } =
        new(0.05, "marks of beakers and jugs are good to 5 to 10 %: common practice, no source", Confidence.Memory);

    /// <summary>Part of the delivered volume.</summary>
    public static Sourced<double> Injector { get; } =
        new(0.10, "proportional injectors hold 5 to 10 % over their flow range: greenhouse practice, no source", Confidence.Memory);

    /// <summary>Part of the volume of a drop.</summary>
    public static Sourced<double> Drop { get; } =
        new(0.20, "drops differ by 20 % with dropper and liquid: common practice, no source", Confidence.Memory);

    /// <summary>Part of a spoonful.</summary>
    public static Sourced<double> Spoon { get; } =
        new(0.20, "spoonfuls differ by 10 to 20 %: common practice, no source", Confidence.Memory);

    /// <summary>Part of a volume measured with something nobody named: a class B cylinder filled to half or more.</summary>
    public static Sourced<double> UnknownMeasure { get; } =
        new(0.02, "ISO 4788:2005 class B, 1 % of the capacity, for a cylinder at least half full", Confidence.Derived);

    /// <summary>Part of a weight taken on something nobody named.</summary>
    public static Sourced<double> UnknownScale { get; } =
        new(0.01, "a scale that suits the weight: common practice, no source", Confidence.Memory);

    /// <summary>Part of the final volume of a tank.</summary>
    public static Sourced<double> TankVolume { get; } =
        new(0.02, "water meter of accuracy class 2, OIML R 49-1:2013 and ISO 4064-1:2014, upper flow zone up to 30 °C", Confidence.Found);

    /// <summary>Spread of filling a single-mark vessel to its mark, as a standard deviation and part of the volume.</summary>
    public static Sourced<double> Filling { get; } =
        new(0.0002, "EURACHEM/CITAC QUAM:2012 A1: 0.02 mL in 100 mL", Confidence.Found);

    /// <summary>Half-width of a declared assay in absolute mass fraction, where no tolerance is stated with it.</summary>
    public static Sourced<double> DeclaredAssay { get; } =
        new(0.005, "an assay is printed to half a per cent: common practice, no source", Confidence.Memory);

    /// <summary>Half-width of the assay of a salt that nobody declared, around the 100 % that is used.</summary>
    public static Sourced<double> UndeclaredAssay { get; } =
        new(0.02, "fertiliser and reagent salts hold 98 % or more: common practice, no source", Confidence.Memory);

    /// <summary>The same for technical grades, chelates and products known by label.</summary>
    public static Sourced<double> UndeclaredTechnicalAssay { get; } =
        new(0.05, "technical grades, chelates and label products differ by 5 % between lots: common practice, no "
            + "source", Confidence.Memory);

    /// <summary>Standard deviation of repeated weighings in steps of the display, where the shop does not state it.</summary>
    public static Sourced<double> RepeatabilitySteps { get; } =
        new(1.5, "cheap scales repeat to 1 to 3 steps: common practice, no source", Confidence.Memory);

    /// <summary>
    /// Half-width of the calibration and linearity error of a scale in service at this load: twice the limits of initial verification of
    /// accuracy class III (0.5 e up to 500 e, 1 e up to 2000 e, 1.5 e above), one verification interval e taken as one step of the display;
    /// OIML R 76-1:2006, 3.5.1 and 3.5.2. Above 10 000 e the last step is kept.
    /// </summary>
    public static Mass ScaleError(Mass load, Mass readability)
    {
        var steps = readability.Grams > 0 ? load / readability : 0;
        return readability * (steps <= 500 ? 1 : steps <= 2000 ? 2 : 3);
    }

    /// <summary>
    /// Half-width of the error of one filling of a measure without a stated tolerance. A size between two published ones gets the limit of
    /// the larger; a size above the last keeps its part of the capacity; a measure of unknown size is taken as just large enough.
    /// </summary>
    /// <param name="filling">The volume of this filling.</param>
    public static Volume VolumeError(MeasureKind kind, Volume? capacity, Volume filling)
    {
        var size = capacity is { Litres: > 0 } known ? known : filling;
        return kind switch
        {
            MeasureKind.Cylinder => FromTable(CylinderMillilitres, size),
            MeasureKind.Flask => FromTable(FlaskMillilitres, size),
            MeasureKind.Pipette => FromTable(PipetteMillilitres, size),
            MeasureKind.Syringe => Syringe(size, filling),
            MeasureKind.Jug => size * JugMarks.Value,
            MeasureKind.Injector => filling * Injector.Value,
            MeasureKind.Dropper => filling * Drop.Value,
            MeasureKind.Spoon => filling * Spoon.Value,
            _ => filling * UnknownMeasure.Value,
        };
    }

    /// <summary>Where the figure of <see cref="VolumeError"/> comes from.</summary>
    public static string SourceOf(MeasureKind kind) => kind switch
    {
        MeasureKind.Cylinder => Iso4788,
        MeasureKind.Flask => Iso1042,
        MeasureKind.Pipette => Iso648,
        MeasureKind.Syringe => "ISO 7886-1:1993, table 1, 1 and 10 mL read in a worked document, other sizes recalled",
        MeasureKind.Jug => JugMarks.Source,
        MeasureKind.Injector => Injector.Source,
        MeasureKind.Dropper => Drop.Source,
        MeasureKind.Spoon => Spoon.Source,
        _ => UnknownMeasure.Source,
    };

    /// <summary>
    /// ISO 7886-1:1993, table 1: below half the nominal capacity V, 1.5 % of V plus 2 % (from 5 mL up: 1 %) of what is expelled; from half,
    /// 5 % (from 5 mL up: 4 %) of what is expelled.
    /// </summary>
    private static Volume Syringe(Volume size, Volume expelled)
    {
        var small = size.Millilitres < 5;
        return expelled < size / 2
            ? (size * 0.015) + (expelled * (small ? 0.02 : 0.01))
            : expelled * (small ? 0.05 : 0.04);
    }

    private static Volume FromTable(SortedList<double, double> table, Volume size)
    {
        // A nominal size must find its own row whatever the last bit of its conversion to litres is.
        foreach (var (capacity, limit) in table)
        {
            if (size.Millilitres <= capacity * (1 + 1e-9))
            {
                return Volume.FromMillilitres(limit);
            }
        }

        return size * (table.Values[^1] / table.Keys[^1]);
    }
}

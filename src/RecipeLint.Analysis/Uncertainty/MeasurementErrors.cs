using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// The errors of single measurements: a weight, a poured volume, an assay. What is not stated is taken from <see cref="EquipmentLimits"/>
/// and noted.
/// </summary>
internal sealed partial class MeasurementErrors(UncertaintyNotes notes)
{
    /// <summary>
    /// The errors of how much of a substance was taken: the tolerance the file states, else those of the scale, measure or drop.
    /// </summary>
    /// <param name="file">File of the stock or recipe; with the addition's id it makes the error's identity.</param>
    public IReadOnlyList<RelativeError> OfAmount(AdditionFacts addition, string file, Portion? portion, Tolerance? stated)
    {
        var name = addition.Substance.Name;
        if (stated is { } tolerance && RelativeHalfWidth(tolerance, portion) is { } half)
        {
            var amount = new ErrorSource($"amount:{file}#{addition.Id}", $"the stated tolerance of {name}", addition.Place);
            return [new RelativeError(amount, StandardUncertainty.Rectangular(half), ErrorShape.Rectangular)];
        }

        if (portion is Portion.ByDrops)
        {
            var size = addition.Measure?.Tolerance?.Relative ?? EquipmentLimits.Drop.Value;
            var drop =
                new ErrorSource($"drop:{addition.Measure?.Name}:{addition.Substance.Id}", $"the size of a drop of {name}", addition.Place);
            return [new RelativeError(drop, StandardUncertainty.Rectangular(size), ErrorShape.Rectangular)];
        }

        if (addition.Scale is { } scale)
        {
            return OfWeight(new Weighing(scale, addition.Mass), $"{file}#{addition.Id}", name, addition.Place);
        }

        if (addition.Measure is { } measure)
        {
            // A solid taken with a measure has no volume: one full measure stands for it.
            var volume = addition.Volume ?? measure.Capacity ?? new Volume(1);
            return OfVolume(Pouring.Of(measure, volume), $"{file}#{addition.Id}", name, addition.Place);
        }

        return portion is Portion.ByVolume or Portion.PerLitreVolume
            ? OfUnknownMeasure($"{file}#{addition.Id}", name, addition.Place)
            : OfUnknownScale($"{file}#{addition.Id}", name, addition.Place);
    }

    public IReadOnlyList<RelativeError> OfWeight(Weighing weighing, string id, string what, Place place)
    {
        if (!(weighing.Mass.Grams > 0))
        {
            return [];
        }

        var scale = weighing.Scale;
        var own = new ErrorSource($"weigh:{id}", $"the weight of {what} on '{scale.Name}'", place);
        var shared = new ErrorSource($"scale:{scale.Place.File}#{scale.Name}", $"the calibration of '{scale.Name}'", scale.Place);
        notes.Add(
            "uncertainty-scale",
            "Every scale is taken to keep the in-service limits of accuracy class III in OIML R 76-1 (one step of the display up to 500 "
                + "steps, two up to 2000, then three).",
            scale.Name,
            scale.Place);
        if (scale.Repeatability is null)
        {
            notes.Add(
                "uncertainty-repeatability",
                "No repeatability is stated for {0}: 1.5 steps of the display are taken.",
                $"'{scale.Name}'",
                scale.Place);
        }

        return NonZero(
            new RelativeError(own, weighing.OwnError / weighing.Mass, ErrorShape.Normal),
            new RelativeError(shared, weighing.SharedError / weighing.Mass, ErrorShape.Rectangular));
    }

    /// <param name="assumedUse">
    /// True when the measure was chosen for a finished volume and not stated. All volumes made up so are wrong together, but nothing poured
    /// with the same measure may lean on it: there the error would cancel by an assumption.
    /// </param>
    public IReadOnlyList<RelativeError> OfVolume(Pouring pouring, string id, string what, Place place, bool assumedUse = false)
    {
        if (!(pouring.Volume.Litres > 0))
        {
            return [];
        }

        var measure = pouring.Measure;
        var own = new ErrorSource($"read:{id}", $"reading '{measure.Name}' for {what}", place);
        var shared = assumedUse
            ? new ErrorSource(
                $"made-up:{measure.Place.File}#{measure.Name}", $"the accuracy of '{measure.Name}' for finished volumes", measure.Place)
            : new ErrorSource($"measure:{measure.Place.File}#{measure.Name}", $"the accuracy of '{measure.Name}'", measure.Place);
        if (pouring.LimitIsAssumed)
        {
            var source = EquipmentLimits.SourceOf(measure.Kind);
            notes.Add(
                "uncertainty-measure",
                $"No tolerance is stated for {{0}}: the usual one is taken ({source}).",
                $"'{measure.Name}'",
                measure.Place);
        }

        return NonZero(
            new RelativeError(
                own, pouring.OwnError / pouring.Volume, measure.Readability is null ? ErrorShape.Normal : ErrorShape.Rectangular),
            new RelativeError(shared, pouring.SharedError / pouring.Volume, ErrorShape.Rectangular));
    }

    public IReadOnlyList<RelativeError> OfUnknownScale(string id, string what, Place place)
    {
        notes.Add("uncertainty-scale-unknown", "No scale is known for {0}: the weight is taken as right to ± 1 %.", what, place);
        var source = new ErrorSource($"weigh:{id}", $"the weight of {what} on an unknown scale", place);
        return [new RelativeError(source, StandardUncertainty.Rectangular(EquipmentLimits.UnknownScale.Value), ErrorShape.Rectangular)];
    }

    public IReadOnlyList<RelativeError> OfUnknownMeasure(string id, string what, Place place)
    {
        notes.Add("uncertainty-measure-unknown", "No measure is known for {0}: the volume is taken as right to ± 2 %.", what, place);
        var source = new ErrorSource($"volume:{id}", $"the volume of {what} in an unknown measure", place);
        return [new RelativeError(source, StandardUncertainty.Rectangular(EquipmentLimits.UnknownMeasure.Value), ErrorShape.Rectangular)];
    }

    /// <summary>
    /// The error of the assay: one and the same wherever the substance is used, because it comes out of one bag. Rectangular; a declared
    /// figure ± 0.5 % absolute, else what the catalogue calls typical, else an assumption.
    /// </summary>
    public RelativeError OfAssay(AdditionFacts addition)
    {
        var substance = addition.Substance;
        var half = addition.AssayDeclared && addition.Assay.Value > 0
            ? Math.Min(1, EquipmentLimits.DeclaredAssay.Value / addition.Assay.Value)
            : Undeclared(substance, addition.Place);
        var id = string.Create(CultureInfo.InvariantCulture, $"assay:{substance.Id}@{(addition.AssayDeclared ? addition.Assay.Value : 0)}");
        return new RelativeError(
            new ErrorSource(id, $"the assay of {substance.Name}", addition.Place), StandardUncertainty.Rectangular(half),
            ErrorShape.Rectangular);
    }

    /// <summary>
    /// Half-width around the nominal content, as a fraction of it, from a typical assay as data files print it ("98-99.5 %", "99 % (54 %
    /// Mo)"): the limits are widened to lie evenly around the 100 % that is used. Null for texts that speak of an element ("13 % Fe").
    /// </summary>
    internal static double? TypicalHalfWidth(string text)
    {
        var match = AssayRange().Match(text);
        if (!match.Success)
        {
            return null;
        }

        var low = double.Parse(match.Groups["low"].ValueSpan, CultureInfo.InvariantCulture);
        var high = match.Groups["high"].Success ? double.Parse(match.Groups["high"].ValueSpan, CultureInfo.InvariantCulture) : 100;
        return low is < 80 or > 110 || high < low || high > 110 ? null : Math.Max(Math.Abs(100 - low), Math.Abs(high - 100)) / 100;
    }

    private double Undeclared(Substance substance, Place place)
    {
        if (substance.TypicalAssay is { } typical && substance.Strength.Value >= 1 && TypicalHalfWidth(typical.Value) is { } range and > 0)
        {
            notes.Add(
                "uncertainty-assay", "No assay is declared for {0}: its typical range is taken as the limit.", $"'{substance.Id}'", place);
            return range;
        }

        if (substance.NeedsAssay || substance.Kind is SubstanceKind.Chelate or SubstanceKind.Product)
        {
            notes.Add(
                "uncertainty-assay", "No assay is declared for {0}: ± 5 % of the nominal content is taken.", $"'{substance.Id}'", place);
            return EquipmentLimits.UndeclaredTechnicalAssay.Value;
        }

        if (substance.StatesItsStrength)
        {
            notes.Add(
                "uncertainty-strength", "How true the strength stated for {0} is nobody says: ± 2 % of it is taken.",
                $"'{substance.Id}'", place);
            return EquipmentLimits.UndeclaredAssay.Value;
        }

        notes.Add("uncertainty-assay", "No assay is declared for {0}: ± 2 % of the nominal content is taken.", $"'{substance.Id}'", place);
        return EquipmentLimits.UndeclaredAssay.Value;
    }

    private static double? RelativeHalfWidth(Tolerance tolerance, Portion? portion)
    {
        var value = portion switch
        {
            Portion.ByMass p => p.Mass.Grams,
            Portion.ByVolume p => p.Volume.Litres,
            Portion.ByDrops p => p.Count,
            _ => 1,
        };
        return tolerance.Relative ?? (tolerance.Absolute is { } half && value > 0 ? half / value : null);
    }

    private static RelativeError[] NonZero(params RelativeError[] errors) =>
        Array.TrueForAll(errors, Counts) ? errors : Array.FindAll(errors, Counts);

    private static bool Counts(RelativeError error) => error.Standard > 0 && double.IsFinite(error.Standard);

    [GeneratedRegex(@"^(?<low>\d+(\.\d+)?)(-(?<high>\d+(\.\d+)?))? %($| \()", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex AssayRange();
}

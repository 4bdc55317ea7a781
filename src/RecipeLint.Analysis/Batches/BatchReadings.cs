using System.Globalization;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;

namespace RecipeLint.Analysis.Batches;

/// <summary>A recorded reading with what it should be.</summary>
/// <param name="Name">"pH", "conductivity at 1:100", "density".</param>
/// <param name="Value">pH, mS/cm or g/mL.</param>
/// <param name="Expected">Where it lies with 95 % when everything is as recorded; null where the model gives none.</param>
public sealed record CheckedReading(BatchReading Entry, ReadingKind Kind, string Name, double Value, string Unit, ReadingWindow? Expected);

/// <summary>Holds the readings of a batch against what was weighed.</summary>
public static class BatchReadings
{
    /// <summary>In the order of the record.</summary>
    /// <param name="made">The stock as it was made by the record.</param>
    public static IEnumerable<CheckedReading> Of(BatchDocument batch, StockFacts made)
    {
        var windows = new ReadingWindows(made, new Instruments(made.Settings));
        foreach (var entry in batch.Readings)
        {
            var (kind, value, filled) = entry switch
            {
                PhReading ph => (ReadingKind.Ph, ph.Value, (Volume?)null),
                ConductivityReading ec => (ReadingKind.Conductivity, ec.Value.MillisiemensPerCentimetre, null),
                WeightReading weight => Density(weight, made),
                _ => throw new InvalidOperationException("An unknown kind of reading."),
            };
            var stated = entry.Tolerance switch
            {
                null => (double?)null,
                { } tolerance when entry is WeightReading weight =>
                    tolerance.HalfWidth(weight.Value.Grams) * value / weight.Value.Grams,
                { } tolerance => tolerance.HalfWidth(value),
            };
            var at = entry.Dilution == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" at 1:{entry.Dilution:0.##}");
            var (name, unit) = kind switch
            {
                ReadingKind.Ph => ("pH" + at, ""),
                ReadingKind.Conductivity => ("conductivity" + at, "mS/cm"),
                _ => ("density", "g/mL"),
            };
            var reading = new Reading(kind, kind == ReadingKind.Density ? 1 : entry.Dilution);
            yield return new CheckedReading(entry, kind, name, value, unit, windows.Of(reading, stated, filled));
        }
    }

    private static (ReadingKind Kind, double Value, Volume? Filled) Density(WeightReading weight, StockFacts made)
    {
        var filled = weight.Of ?? made.Volume;
        return (ReadingKind.Density, weight.Value.Grams / filled.Millilitres, filled);
    }
}

using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes;

namespace RecipeLint.Advice.Slips;

/// <summary>A measurement beside what it should be.</summary>
/// <param name="Expected">Null where the model gives no value.</param>
public sealed record MeasuredReading(Measurement Measurement, ReadingWindow? Expected)
{
    public bool Fits => Expected is { } window && window.Holds(Measurement.Value);
}

/// <summary>A slip with what each measurement would be after it.</summary>
/// <param name="Readings">In the order of the measurements.</param>
/// <param name="Miss">Root mean square of the distances in half-widths: below 1 explains well.</param>
public sealed record SlipFit(Slip Slip, IReadOnlyList<double> Readings, double Miss);

/// <summary>Slips that a further test would show alike.</summary>
/// <param name="Value">Middle of what the test would read.</param>
public sealed record SlipGroup(double Value, IReadOnlyList<Slip> Slips);

/// <summary>A further reading that parts the slips that explain the measurement.</summary>
public sealed record SeparatingReading(Reading Reading, double HalfWidth, IReadOnlyList<SlipGroup> Groups);

/// <summary>Works back from measurements to the single slips that explain them.</summary>
/// <param name="Explaining">All of them, best first.</param>
/// <param name="Nearest">The three that come closest where none explains it.</param>
/// <param name="Separating">The cheapest test that parts them best; null where one or none explains it, or no test parts them.</param>
public sealed record SlipSearch(
    IReadOnlyList<MeasuredReading> Measured, IReadOnlyList<SlipFit> Explaining, IReadOnlyList<SlipFit> Nearest,
    SeparatingReading? Separating, IReadOnlyList<string> Assumptions)
{
    /// <summary>Dilution at which a stock without a dose is looked at.</summary>
    public const double UsualDilution = 100;

    /// <summary>True when everything measured is as it should be.</summary>
    public bool IsAsItShouldBe => Measured.All(m => m.Fits);

    /// <summary>Pure; the same input gives the same order.</summary>
    public static SlipSearch Of(Workspace workspace, StockFacts stock, IReadOnlyList<Measurement> measurements)
    {
        var windows = new ReadingWindows(stock, new Instruments(stock.Settings));
        var measured = measurements.Select(m => new MeasuredReading(m, windows.Of(m.Reading, m.HalfWidth, m.Filled))).ToList();
        if (measured.All(m => m.Fits) || measured.Any(m => m.Expected is null))
        {
            return new SlipSearch(measured, [], [], null, windows.Instruments.Assumptions);
        }

        var fits = new List<(SlipFit Fit, bool Explains, StockReadings Readings)>();
        foreach (var slip in SlipList.Of(workspace, stock))
        {
            var readings = StockReadings.Of(slip.Facts);
            var values = measured.Select(m => readings.Value(m.Measurement.Reading)).ToList();
            if (values.Any(v => v is null))
            {
                continue;
            }

            var misses = measured.Select((m, i) => Miss(m, values[i]!.Value)).ToList();
            fits.Add((new SlipFit(
                slip, [.. values.Select(v => v!.Value)], Math.Sqrt(misses.Average(m => m * m))), misses.TrueForAll(m => m <= 1), readings));
        }

        var ordered = fits.OrderBy(f => Rounding.SixDigits(f.Fit.Miss))
            .ThenBy(f => f.Fit.Slip.Kind)
            .ThenBy(f => f.Fit.Slip.Id, StringComparer.Ordinal)
            .ToList();
        var explaining = ordered.Where(f => f.Explains).ToList();
        return new SlipSearch(
            measured,
            [.. explaining.Select(e => e.Fit)],
            explaining.Count > 0 ? [] : [.. ordered.Take(3).Select(o => o.Fit)],
            explaining.Count > 1 ? Separate(stock, windows, measurements, [.. explaining.Select(e => (e.Fit.Slip, e.Readings))]) : null,
            [.. windows.Instruments.Assumptions, .. SlipList.LeftOut(stock)]);
    }

    /// <summary>The readings a shop can take, cheapest first: a weight, the EC and pH of a dilution, the pH of the stock.</summary>
    public static IReadOnlyList<Reading> Cheap(StockFacts stock)
    {
        var dilution = stock.Stock.Dose?.Value is { LitresPerLitre: > 0 and < 0.5 } dose ? Math.Round(dose.Dilution) : UsualDilution;
        return [new(
            ReadingKind.Density, 1), new(ReadingKind.Conductivity, dilution), new(ReadingKind.Ph, dilution), new(ReadingKind.Ph, 1)];
    }

    private static double Miss(MeasuredReading measured, double value)
    {
        var around = ReadingWindows.Around(value, measured.Measurement.Reading, measured.Expected!.Value);
        return around.HalfWidth > 0 ? Math.Abs(measured.Measurement.Value - value) / around.HalfWidth : double.PositiveInfinity;
    }

    private static SeparatingReading? Separate(
        StockFacts stock, ReadingWindows windows, IReadOnlyList<Measurement> done, List<(Slip Slip, StockReadings Readings)> slips)
    {
        SeparatingReading? best = null;
        foreach (var reading in Cheap(stock).Where(r => done.All(d => d.Reading != r)))
        {
            if (windows.Of(reading) is not { } window)
            {
                continue;
            }

            var groups = Group(slips.Select(s => (s.Slip, Value: s.Readings.Value(reading)))
                .Where(s => s.Value is not null)
                .Select(s => (s.Slip, s.Value!.Value)), window.HalfWidth);
            if (groups.Count > (best?.Groups.Count ?? 1))
            {
                best = new SeparatingReading(reading, window.HalfWidth, groups);
            }
        }

        return best;
    }

    /// <summary>Values nearer to each other than the reading is good for stand in one group.</summary>
    private static List<SlipGroup> Group(IEnumerable<(Slip Slip, double Value)> slips, double halfWidth)
    {
        var groups = new List<SlipGroup>();
        var open = new List<(Slip Slip, double Value)>();
        foreach (var slip in slips.OrderBy(s => s.Value).ThenBy(s => s.Slip.Id, StringComparer.Ordinal))
        {
            if (open.Count > 0 && slip.Value - open[^1].Value > halfWidth)
            {
                Close();
            }

            open.Add(slip);
        }

        Close();
        return groups;

        void Close()
        {
            if (open.Count > 0)
            {
                groups.Add(new SlipGroup(open.Average(o => o.Value), [.. open.Select(o => o.Slip)]));
                open = [];
            }
        }
    }
}

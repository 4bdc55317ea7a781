using RecipeLint.Advice.Slips;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>Every slip of a bottle with what it would read, what each check shows of it, and what measurements are traced back to.</summary>
public sealed class ToldSlipsTests
{
    /// <summary>So many of what explains a measurement are written out.</summary>
    private const int Traced = 6;

    /// <summary>Whole lists would be long for these; their like is among the others.</summary>
    private static readonly string[] _left = ["nine", "meet", "rush", "mo", "pyro", "soft", "tight", "slow", "stage", "mended", "full", "liquid", "gypsum", "cleaner", "leach", "fizz", "strange", "colourful", "neutral", "sharp", "baking", "glass", "slowly"];

    public static TheoryData<string> Bottles() => ToldShop.Stocks(_left);

    [Theory]
    [MemberData(nameof(Bottles))]
    public void SlipsAreTheseAndReadSo(string name)
    {
        var text = new ToldText();
        foreach (var slip in SlipList.Of(ToldShop.Around($"{name}.stock.json"), ToldShop.Stock(name)))
        {
            var read = StockReadings.Of(slip.Facts);
            text.Line($"{slip.Id} {slip.Kind}: {slip.Text}; {read.Value(new(ReadingKind.Density, 1)):0.0000} g/mL, {read.Value(new(ReadingKind.Conductivity, 100)):0.0000} mS/cm, {slip.Facts.Volume.Litres:0.####} L");
        }

        text.Hold($"slips-of-{name}");
    }

    [Theory]
    [MemberData(nameof(Bottles))]
    public void SlipsShowInTheseChecks(string name)
    {
        var text = new ToldText();
        var proof = Proof.Of(ToldShop.Around($"{name}.stock.json"), ToldShop.Stock(name)).Checked(ToldShop.Around($"{name}.stock.json"), new DateOnly(2026, 11, 30));
        foreach (var check in proof.Checks)
        {
            text.Line($"check {check.Reading.Kind} 1:{check.Reading.Dilution}: {check.Window.Value:G5} ± {check.Window.HalfWidth:G3}, owned {check.IsOwned}; {check.Weighing?.Volume.Litres} L in {check.Weighing?.With?.Name} on {check.Weighing?.Scale.Name}");
        }

        foreach (var row in proof.Rows)
        {
            text.Line($"{row.Slip.Id}: {row.Shows} (own {proof.ShownByOwn(row)}) {string.Join("; ", row.Cells.Select(c => FormattableString.Invariant($"{c.Change:G3} {c.Shows}")))}");
        }

        text.Line($"assumes {string.Join(" | ", proof.Assumptions)}").Line($"objections {string.Join(", ", proof.Objections.Select(o => o.Rule.Id))}");
        text.Hold($"slips-proof-of-{name}");
    }

    public static TheoryData<string, string[]> Measured() => new()
    {
        { "b", ["pH 4.4"] },
        { "b", ["EC 1.1 mS/cm at 1:100"] },
        { "b", ["EC 0.5 mS/cm at 1:100", "pH 4.4"] },
        { "b", ["1 L weighs 1.06 kg"] },
        { "b", ["1 L weighs 1.03 kg", "EC 0.64 mS/cm at 1:100"] },
        { "b", ["pH 13"] },
        { "trace", ["pH 6.0"] },
        { "trace", ["EC 0.05 mS/cm at 1:1000", "pH 2.5"] },
        { "wet", ["EC 9 mS/cm at 1:2"] },
        { "set", ["pH 8.9"] },
        { "set", ["pH 8.9", "EC 0.7 mS/cm at 1:100"] },
        { "hard", ["EC 0.6 mS/cm at 1:100"] },
        { "rain", ["EC 0.02 mS/cm at 1:100"] },
        { "dry", ["EC 0.3 mS/cm at 1:100"] },
        { "portions", ["100 mL weighs 103 g", "EC 0.3 mS/cm at 1:200"] },
        { "portions", ["weighs 10.1 kg"] },
    };

    [Theory]
    [MemberData(nameof(Measured))]
    public void MeasurementsAreTracedBackToTheseSlips(string name, string[] measured)
    {
        var text = new ToldText();
        var stock = ToldShop.Stock(name);
        var search = SlipSearch.Of(ToldShop.Around($"{name}.stock.json"), stock, [.. measured.Select(m => Read(m, stock.Volume))]);
        foreach (var one in search.Measured)
        {
            text.Line($"{one.Measurement.Text}: {one.Measurement.Value:G5} beside {one.Expected?.Value:G5} ± {one.Expected?.HalfWidth:G3}, fits {one.Fits}");
        }

        text.Line($"as it should be {search.IsAsItShouldBe}; {search.Explaining.Count} explain it");
        foreach (var fit in search.Explaining.Take(Traced).Concat(search.Nearest))
        {
            text.Line($"{fit.Slip.Id} by {fit.Miss:0.000}: {string.Join(", ", fit.Readings.Select(r => r.ToString("G5", System.Globalization.CultureInfo.InvariantCulture)))}");
        }

        if (search.Separating is { } parting)
        {
            text.Line($"parted by {parting.Reading.Kind} 1:{parting.Reading.Dilution} ± {parting.HalfWidth:G3}");
            foreach (var group in parting.Groups)
            {
                text.Line($"  {group.Value:G5}: {string.Join(", ", group.Slips.Select(s => s.Id))}");
            }
        }

        text.Line($"assumes {string.Join(" | ", search.Assumptions)}");
        text.Hold($"slips-traced-{name}-{string.Join('-', measured).Replace(' ', '_').Replace('/', '_').Replace(':', '_')}");
    }

    private static Measurement Read(string text, Volume batch)
    {
        var (measurement, error) = Measurement.Read(text, batch);
        Assert.True(measurement is not null, error);
        return measurement;
    }
}

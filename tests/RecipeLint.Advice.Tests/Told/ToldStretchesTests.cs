using RecipeLint.Advice.Stretching;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>How far each bottle stretches at every temperature, and what stops it on the way.</summary>
public sealed class ToldStretchesTests
{
    public static TheoryData<string> Bottles() => ToldShop.Stocks("nine", "stage", "trace", "mended", "b2", "barrel", "leach", "colourful", "neutral", "baking", "glass", "meet", "rush", "slow", "wet", "set", "rain", "dry");

    [Theory]
    [MemberData(nameof(Bottles))]
    public void StretchingGoesSoFar(string name)
    {
        var stretch = StockStretch.Of(ToldShop.Around($"{name}.stock.json"), ToldShop.Stock(name), new DateOnly(2026, 11, 30));
        var text = new ToldText().Line($"strongest {stretch.Strongest:G4}, weakest {stretch.Weakest:G4}, looked at {stretch.LowestLooked:G4}, at {stretch.Binding?.At.Celsius} °C")
            .Line($"refused {stretch.Refused?.Hazard.Kind}; unknown {stretch.Unknown?.IsAll}; failure {stretch.Failure}; danger {stretch.Danger?.Hazard.Kind} from {stretch.Danger?.Factor:G3}");
        foreach (var row in stretch.Rows)
        {
            text.Line($"{row.At.Celsius} °C{(row.InStorage ? " kept" : "")}{(row.IsJudged ? " judged" : "")}: {row.Highest.Factor:G4} times, 1:{row.Highest.Dilution:G4}, stopped by {string.Join(" and ", row.Highest.StoppedBy.Select(s => s.Name))}, no room {row.NoRoom}");
        }

        foreach (var (way, objections) in new[] { ("up", stretch.Stronger), ("down", stretch.Weaker), ("air", stretch.TakenByTheAir) })
        {
            foreach (var objection in objections)
            {
                text.Line($"{way} {objection.Factor:G4} {objection.Finding.Rule.Id} {objection.Finding.Place.Pointer.Value} {objection.Finding.Level}");
            }
        }

        text.Line($"now {string.Join(", ", stretch.Present.Select(f => f.Rule.Id))}");
        text.Hold($"stretching-of-{name}");
    }

    [Theory]
    [MemberData(nameof(Bottles))]
    public void StretchingIsJudgedAtTheColdestTheWarmestAndTheBench(string name) => Assert.All(
        StockStretch.Judged(ToldShop.Stock(name)).Select((r, i) => (Row: r, Index: i)),
        r => Assert.True(r.Row.IsJudged && (r.Index == 0 || r.Row.At > StockStretch.Judged(ToldShop.Stock(name))[r.Index - 1].At)));
}

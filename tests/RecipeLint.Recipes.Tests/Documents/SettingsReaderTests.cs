using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>What a shop says of its equipment, prices and rules.</summary>
public sealed class SettingsReaderTests
{
    private static InMemoryShop Shop(string members) => InMemoryShop.Of(("recipelint.json", $$"""{ {{members}} }"""));

    private static ShopSettings Read(string members) => Shop(members).Load().SettingsFor("a.stock.json");

    [Fact]
    public void MetersNameWhatTheyMeasure()
    {
        var meters = Read("""
            "meters": [
              {"name": "a", "measures": "pH", "accuracy": "± 0.1"}, {"name": "b", "measures": "EC", "accuracy": "± 0.02 mS/cm"},
              {"name": "c", "measures": "pH"}, {"name": "d", "measures": "salt", "accuracy": "± 0.1"}, {"measures": "pH", "accuracy": "± 0.1"}]
            """).Meters;
        Assert.Equal([("a", MeterKind.Ph, 0.1), ("b", MeterKind.Conductivity, 0.02)],
            meters.Select(m => (m.Name, m.Kind, Math.Round(m.Accuracy.Absolute!.Value, 9))));
        Assert.Equal("/meters/1", meters[1].Place.Pointer.Value);
    }

    [Theory]
    [InlineData("\"accuracy\": «\"± 0.1 mS/cm\"»", "pH", ProblemKind.WrongDimension)]
    [InlineData("\"accuracy\": «\"± 0.1\"»", "EC", ProblemKind.NumberWithoutUnit)]
    public void TheAccuracyOfAMeterIsInItsUnit(string member, string measures, ProblemKind kind) =>
        Shop($$"""  "meters": [{"name": "x", "measures": "{{measures}}", {{member}} }] """).Single(kind);

    [Fact]
    public void APriceIsForAMassOrAVolume()
    {
        var prices = Read("""
            "currency": "EUR",
            "prices": [{"of": "KNO3", "cost": 30.5, "for": "25 kg"}, {"of": "nitric-38", "cost": 0, "for": "10 L"}, {"of": "KCl", "for": "1 kg"},
              {"of": "KCl", "cost": 3}, {"cost": 3, "for": "1 kg"}, {"of": "KCl", "cost": 3, "for": "0 kg"}, {"of": "KCl", "cost": -1, "for": "1 kg"}]
            """);
        Assert.Equal("EUR", prices.Currency);
        Assert.Equal([("KNO3", 30.5, 25000.0, (double?)null), ("nitric-38", 0, null, 10)],
            prices.Prices.Select(p => (p.Of, p.Cost, p.Mass?.Grams, p.Volume?.Litres)));
        Assert.Equal("potassium-nitrate", prices.Prices[0].Substance!.Id);
    }

    [Fact]
    public void ASecondPriceOfOneSubstanceIsNotCounted()
    {
        var shop = Shop("""
            "prices": [{"of": "KNO3", "cost": 30, "for": "25 kg"}, {"of": «"potassium-nitrate"», "cost": 1, "for": "1 kg"}]
            """);
        Assert.Equal("/prices/0/of", Assert.Single(shop.Single(ProblemKind.DuplicateKey).Related).Place.Pointer.Value);
        Assert.Equal(30, Assert.Single(shop.Load().SettingsFor("a.stock.json").Prices).Cost);
    }

    [Theory]
    [InlineData("1000000000", 1)]
    [InlineData("1000000001", 0)]
    public void NoBagCostsMoreThanABillion(string cost, int prices) =>
        Assert.Equal(prices, Read($$"""  "prices": [{"of": "KNO3", "cost": {{cost}}, "for": "25 kg"}] """).Prices.Count);

    /// <summary>By hand: a year is 365.25 days, whole days count; 12 months from 1 March are 365 days.</summary>
    [Theory]
    [InlineData("\"calibrated\": \"2026-03-01\", \"calibrateEvery\": \"10 days\"", "2026-03-11")]
    [InlineData("\"calibrated\": \"2026-03-01\", \"calibrateEvery\": \"12 months\"", "2027-03-01")]
    [InlineData("\"calibrated\": \"9999-12-30\", \"calibrateEvery\": \"10 days\"", "9999-12-31")]
    [InlineData("\"calibrated\": \"2026-03-01\"", null)]
    [InlineData("\"calibrateEvery\": \"10 days\"", null)]
    [InlineData("\"calibrated\": \"2026-03-01\", \"calibrateEvery\": \"100000 days\"", null)]
    [InlineData("\"calibrated\": \"2026-03-01\", \"calibrateEvery\": \"0 days\"", null)]
    public void ACalibrationFallsDue(string members, string? due)
    {
        var settings = Read($$"""
            "scales": [{"name": "s", "readability": "1 g", {{members}} }],
            "meters": [{"name": "m", "measures": "pH", "accuracy": "± 0.1", {{members}} }]
            """);
        Assert.Equal(due is null ? [] : [$"s {due}", $"m {due}"],
            settings.Calibrations.Select(c => $"{c.Name} {c.Due.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}"));
        Assert.All(settings.Calibrations, c => Assert.EndsWith("/calibrated", c.Place.Pointer.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void RulesCanBeSetForSomeFiles()
    {
        var paths = Assert.Single(Read("""
            "paths": [{"files": ["old/*", 3, "x"], "rules": {"unused-stock": "off"}}, {"files": []}, {"rules": {"unused-stock": "off"}}]
            """).Paths);
        Assert.Equal(["old/*", "x"], paths.Patterns);
        Assert.Equal(("unused-stock", "off"), (Assert.Single(paths.Rules).Rule, paths.Rules[0].Level));
        Assert.Equal("/paths/0", paths.Place.Pointer.Value);
    }

    [Fact]
    public void AnOptionKeepsItsLiteral()
    {
        var rules = Read("""
            "rules": {"note": "why", "x": {"level": "off", "note": "n", "a": 1.50, "b": "2 %", "c": true, "d": false, "e": [1]}, "y": "loud", "z": 3}
            """).Rules;
        Assert.Equal(["x", "y"], rules.Select(r => r.Rule));
        Assert.Equal(["a=1.50", "b=2 %", "c=true", "d=false"], rules[0].Options.Select(o => $"{o.Key}={o.Value.Value}"));
        Assert.Equal(("off", null), (rules[0].Level, rules[1].Level));
    }

    [Theory]
    [InlineData("\"baseline\": \"old/base.json\"", "old/base.json")]
    [InlineData("\"baseline\": \"./base.json\"", "base.json")]
    [InlineData("\"baseline\": \"../base.json\"", null)]
    public void ABaselineLiesInTheRepository(string member, string? file)
    {
        var workspace = Shop(member).Load();
        Assert.Equal(file, workspace.SettingsFor("a.stock.json").Baseline);
        Assert.Equal(file is null ? [ProblemKind.ReferenceLeavesRepository] : [], workspace.Problems.Select(p => p.Kind));
    }

    [Theory]
    [InlineData("\"rule\": \"x\", \"file\": \"a\", \"reason\": \"r\"", true)]
    [InlineData("\"rule\": \"x\", \"file\": \"a\", \"reason\": \"r\", \"expires\": \"2027-03-01\"", true)]
    [InlineData("\"rule\": \"x\", \"file\": \"a\", \"reason\": \"r\", \"expires\": \"soon\"", false)]
    [InlineData("\"rule\": \"x\", \"file\": \"a\", \"reason\": \"\\t\"", false)]
    [InlineData("\"rule\": \"x\", \"file\": \"a\"", false)]
    [InlineData("\"rule\": \"x\", \"reason\": \"r\"", false)]
    [InlineData("\"file\": \"a\", \"reason\": \"r\"", false)]
    public void AnExceptionThatLacksSomethingIsNone(string members, bool read) =>
        Assert.Equal(read ? 1 : 0, Read($$"""  "suppressions": [{ {{members}} }] """).Suppressions.Count);

    /// <summary>A step names a scale or a measure by one word, so the two share their names; vessels have their own.</summary>
    [Fact]
    public void ScalesAndMeasuresShareTheirNames()
    {
        var problem = Shop("""
            "scales": [{"name": "x", "readability": "1 g"}], "measures": [{"name": «"x"», "kind": "jug"}], "vessels": [{"name": "x"}]
            """).Single(ProblemKind.DuplicateKey);
        Assert.Equal("/scales/0/name", Assert.Single(problem.Related).Place.Pointer.Value);
        Assert.Contains("'x' is taken", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCouldNotBeReadIsStillANameThatIsKnown()
    {
        var settings = Read("""
            "scales": [{"name": "a", "readability": "1 mL"}, {"name": "b", "readability": "1 g"}], "measures": [{"name": "c", "kind": "bowl"}],
            "sites": [{"name": "d", "at": "warm"}, {"name": "e", "at": "4..8 °C"}]
            """);
        Assert.Equal(["a", "c", "d"], settings.UnreadNames.Order());
        Assert.Equal(("e", 4, 8), (Assert.Single(settings.Sites).Name, settings.Sites[0].At.Low.Celsius, settings.Sites[0].At.High.Celsius));
    }
}

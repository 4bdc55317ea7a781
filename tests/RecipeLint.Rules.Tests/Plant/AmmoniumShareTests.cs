using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Precipitation;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>What is said of ammonium's share of the nitrogen.</summary>
public sealed class AmmoniumShareTests
{
    /// <summary>
    /// 2.142 mmol/L of ammonium nitrate and as much calcium nitrate bring 30 mg/L ammonium nitrogen of 120 mg/L in all: a quarter, where
    /// the profile ends at 0.15 (the row it quotes). 12 mg/L have to change sides.
    /// </summary>
    [Fact]
    public void TooMuchAmmoniumIsAnsweredWithNitrateAndNotWithMoreNitrogen()
    {
        var stock = Lint.Stock("a", "10 mL/L", "15..25 °C", ("ammonium-nitrate", 17.15), ("calcium-nitrate-4h2o", 50.58));
        const string recipe = """
            {"format": 1, "name": "Feed", "final": "100 L", "volume": "made up", "water": "rain", "doses": [{"stock": "a.stock.json", "dose": "10 mL/L"}]}
            """;
        var finding = Lint.Files(stock, ("feed.recipe.json", recipe)).Findings.Single(f => f.Rule.Name == "ratio-out-of-range" && f.IdPath.EndsWith("NH4-N:N", StringComparison.Ordinal));
        Assert.StartsWith("Ammonium is 25 % of the nitrogen; ", finding.Message, StringComparison.Ordinal);
        Assert.Contains("0 to 15 %", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Bring 12 mg/L of the nitrogen as nitrate instead of ammonium", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("aise N", finding.Message, StringComparison.Ordinal);
        Assert.Equal(Level.Warning, finding.Level);
    }
}

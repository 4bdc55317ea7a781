using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Procedure;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>What poisons a well has its key in an analysis, its limit and its line.</summary>
public sealed class PoisonousWaterTests
{
    /// <summary>FAO paper 29: arsenic and chromium 0.1, cadmium 0.01, selenium 0.02, nickel 0.2 mg/L; mercury as in drinking water.</summary>
    [Theory]
    [InlineData("As", "0.5 mg/L", Level.Error)]
    [InlineData("As", "0.15 mg/L", Level.Warning)]
    [InlineData("Hg", "0.1 mg/L", Level.Error)]
    [InlineData("Cd", "0.2 mg/L", Level.Error)]
    [InlineData("Cr", "0.3 mg/L", Level.Error)]
    [InlineData("Ni", "1 mg/L", Level.Error)]
    [InlineData("Pb", "20 mg/L", Level.Error)]
    [InlineData("Se", "0.03 mg/L", Level.Warning)]
    public void PastItsLimitItIsToldAtItsPlace(string key, string value, Level level)
    {
        var finding = Assert.Single(Judge(key, value));

        Assert.Equal(level, finding.Level);
        Assert.Equal($"/ions/{key}", finding.Place.Pointer.Value);
    }

    [Theory]
    [InlineData("As", "0.005 mg/L")]
    [InlineData("Hg", "0.0002 mg/L")]
    [InlineData("Pb", "0.01 mg/L")]
    [InlineData("Ni", "0.02 mg/L")]
    public void BelowItNothingIsSaid(string key, string value) => Assert.Empty(Judge(key, value));

    private static IReadOnlyList<Finding> Judge(string key, string value) => Workbench.JudgeFiles(
        "water-unfit", [("w.water.json", $$"""{"format": 1, "name": "Well", "ions": {"Ca": "20 mg/L", "{{key}}": "{{value}}", "HCO3": "60 mg/L"} }""")]);
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Engine;

public sealed class RuleTuningTests
{
    private static readonly RuleDescriptor _rule = RuleBook.Find("dose-contradicts-dilution")!;

    [Theory]
    [InlineData("5", "5")]
    [InlineData("\"5\"", "5")]
    [InlineData("\"5 %\"", "5")]
    [InlineData("\"0.5 %\"", "0.5")]
    [InlineData("1e1", "1e1")]
    public void AnOptionTakesANumberWithOrWithoutItsUnit(string literal, string value)
    {
        var tuning = RuleTuning.Read(Sample.Shop([Sample.Setting(_rule.Name, null, ("tolerance", literal))]));

        Assert.Empty(tuning.Issues);
        Assert.Equal(value, tuning.OptionsOf(_rule)["tolerance"]);
    }

    [Theory]
    [InlineData("\"five\"")]
    [InlineData("\"5 mg/L\"")]
    [InlineData("\"5,0\"")]
    [InlineData("\"\"")]
    [InlineData("1e400")]
    [InlineData("true")]
    [InlineData("null")]
    [InlineData("[5]")]
    public void AnythingElseIsAnIssueAndTheDefaultHolds(string literal)
    {
        var tuning = RuleTuning.Read(Sample.Shop([Sample.Setting(_rule.Name, null, ("tolerance", literal))]));

        var issue = Assert.Single(tuning.Issues);
        Assert.False(issue.IsUnknownRule);
        Assert.Equal("rules/dose-contradicts-dilution/tolerance", issue.IdPath);
        Assert.Contains("2 %", issue.Message, StringComparison.Ordinal);
        Assert.Equal("2", tuning.OptionsOf(_rule)["tolerance"]);
    }

    [Fact]
    public void AnUnknownOptionIsNamedWithTheNearestOne()
    {
        var issue = Assert.Single(RuleTuning.Read(Sample.Shop([Sample.Setting(_rule.Name, null, ("tolerence", "5"))])).Issues);

        Assert.Equal(["tolerance"], issue.Suggestions);
        Assert.Equal(RecipeLint.Recipes.Text.PlacePart.Key, issue.Place.Part);
    }

    [Theory]
    [InlineData("dupplicate-key", "duplicate-key")]
    [InlineData("RL004", "RL0004")]
    [InlineData("unusedstock", "unused-stock")]
    public void AnUnknownRuleIsNamedWithTheNearestOne(string written, string near)
    {
        var issue = Assert.Single(RuleTuning.Read(Sample.Shop([Sample.Setting(written, "off")])).Issues);

        Assert.True(issue.IsUnknownRule);
        Assert.Equal(near, issue.Suggestions[0]);
        Assert.Contains(near, issue.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ANameFarFromAnyRuleGetsNoSuggestion()
    {
        Assert.Empty(Assert.Single(RuleTuning.Read(Sample.Shop([Sample.Setting("xyzzy-plugh-qwv", "off")])).Issues).Suggestions);
    }

    [Fact]
    public void ARuleSetByNameAndIdIsAnIssue()
    {
        var tuning = RuleTuning.Read(Sample.Shop([Sample.Setting("duplicate-key", "off"), Sample.Setting("RL0004", "note")]));

        Assert.Contains("twice", Assert.Single(tuning.Issues).Message, StringComparison.Ordinal);
        Assert.False(tuning.IsOff(RuleBook.Find("RL0004")!));
        Assert.Equal(Level.Note, tuning.LevelOf(RuleBook.Find("RL0004")!));
    }

    [Fact]
    public void ALevelThatIsNoneKeepsTheRulesOwn()
    {
        var tuning = RuleTuning.Read(Sample.Shop([Sample.Setting("duplicate-key", "warn")]));

        Assert.Equal(["warning"], Assert.Single(tuning.Issues).Suggestions);
        Assert.Null(tuning.LevelOf(RuleBook.Find("duplicate-key")!));
    }

    [Fact]
    public void ASuppressionOfAnUnknownRuleIsAnIssueOfItsOwn()
    {
        var tuning = RuleTuning.Read(Sample.Shop(suppressions: [Sample.Suppress("duplicate-kex", Sample.StockFile)]));

        Assert.True(Assert.Single(tuning.Issues).IsUnknownRule);
    }

    [Fact]
    public void IssuesBecomeFindingsOfTheirRules()
    {
        var shop = Sample.Shop(
            [Sample.Setting("dupplicate-key", "off"), Sample.Setting(_rule.Name, null, ("tolerance", "\"five\""))]);

        var findings = LintEngine.Judge(Sample.All(shop: shop), new EngineOptions { Rules = RuleList.All }).Findings;

        Assert.Equal(["unusable-option", "unknown-rule"], findings.Select(f => f.Rule.Name));
        Assert.All(findings, f => Assert.Equal(Sample.SettingsFile, f.Place.File));
    }
}

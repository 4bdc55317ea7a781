using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Engine;

public sealed class SpellingTests
{
    [Theory]
    [InlineData("duplicat-key", "duplicate-key")]
    [InlineData("Duplicate-Key", "duplicate-key")]
    [InlineData("duplciate-key", "duplicate-key")]
    [InlineData("hydrate", null)]
    public void SuggestsTheNearestRule(string text, string? nearest) =>
        Assert.Equal(nearest, RuleBook.Suggest(text) is [var first, ..] ? first : null);

    [Fact]
    public void RulesAreFoundByNameAndIdInAnyCase()
    {
        Assert.Same(RuleBook.Find("RL0004"), RuleBook.Find("duplicate-key"));
        Assert.Same(RuleBook.Find("rl0004"), RuleBook.Find("Duplicate-Key"));
        Assert.Null(RuleBook.Find("RL9999"));
        Assert.Null(RuleBook.Find(""));
    }

    [Fact]
    public void ASectionOfTheExplanationStandsAlone()
    {
        var rule = RuleBook.Find("duplicate-key")!;
        Assert.StartsWith("An object that carries", rule.Section("What it finds"), StringComparison.Ordinal);
        Assert.DoesNotContain("##", rule.Section("Failing"), StringComparison.Ordinal);
        Assert.Equal("None.", rule.Section("Options"));
        Assert.Equal("", rule.Section("Nowhere"));
    }
}

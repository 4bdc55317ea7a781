using System.Text;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>A rule of a shop's own is read whole, or reported and not used.</summary>
public sealed class HouseRuleReaderTests
{
    private const string Members = """
        "format": 1, "id": "HR0007", "name": "too-strong", "level": "warning", "looksAt": "recipe", "must": {"minProperties": 1},
        "message": "{/name} is strong.", "reason": "Leaves burn."
        """;

    private const string Examples = """
        , "title": "A feed is too strong.", "explanation": "Read on leaves.",
        "failing": [
          {"what": "far too strong", "file": "a.recipe.json", "at": "/doses/0",
            "files": {"a.recipe.json": {"format": 1, "final": "1 L"}, "b.stock.json": {"é": [1, 2]}}},
          {"file": "c.recipe.json", "files": {"c.recipe.json": {}}},
          {"file": "d.recipe.json"}],
        "passing": [{"what": "weak", "file": "e.recipe.json", "files": {"e.recipe.json": {"format": 1}}}]
        """;

    private static InMemoryShop Shop(string members) => InMemoryShop.Of(
        ("recipelint.json", "{}"), ("own.rule.json", $"{{ {members} }}"),
        ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"topUp": "1 L"}]}"""));

    private static IReadOnlyList<HouseRuleDocument> Read(string members) => Shop(members).Load().SettingsFor("a.stock.json").HouseRules;

    [Fact]
    public void ARuleIsReadWithEverythingInIt()
    {
        var rule = Assert.Single(Read(Members + Examples));
        Assert.Equal(("own.rule.json", "HR0007", "too-strong", "warning"), (rule.File, rule.Id.Value, rule.Name.Value, rule.Level));
        Assert.Equal(HouseRuleScope.Recipe, rule.LooksAt);
        Assert.Equal(
            ("A feed is too strong.", "{/name} is strong.", "Leaves burn.", "Read on leaves."), (rule.Title, rule.Message, rule.Reason, rule.Explanation));
        Assert.Equal("/id", rule.Id.Place.Pointer.Value);
    }

    [Fact]
    public void ItsExamplesCarryTheirFilesByteForByte()
    {
        var rule = Assert.Single(Read(Members + Examples));
        Assert.Equal([("far too strong", "a.recipe.json", "/doses/0"), ("c.recipe.json", "c.recipe.json", null)],
            rule.Failing.Select(e => (e.What, e.File, e.At)));
        Assert.Equal("/failing/0", rule.Failing[0].Place.Pointer.Value);
        Assert.Equal(["a.recipe.json", "b.stock.json"], rule.Failing[0].Files.Keys);
        Assert.Equal("""{"format": 1, "final": "1 L"}""", Encoding.UTF8.GetString(rule.Failing[0].Files["a.recipe.json"]));
        Assert.Equal("""{"é": [1, 2]}""", Encoding.UTF8.GetString(rule.Failing[0].Files["b.stock.json"]));
        Assert.Equal(("weak", "e.recipe.json", null), (Assert.Single(rule.Passing).What, rule.Passing[0].File, rule.Passing[0].At));
    }

    [Fact]
    public void WithoutATitleItsReasonIsOne()
    {
        var rule = Assert.Single(Read(Members));
        Assert.Equal(("Leaves burn.", ""), (rule.Title, rule.Explanation));
        Assert.Empty(rule.Failing);
        Assert.Empty(rule.Passing);
    }

    [Theory]
    [InlineData("\"looksAt\": \"stock\"", HouseRuleScope.Stock)]
    [InlineData("\"looksAt\": \"recipe\"", HouseRuleScope.Recipe)]
    public void ItLooksAtStocksOrRecipes(string looksAt, HouseRuleScope scope) =>
        Assert.Equal(scope, Assert.Single(Read(Members.Replace("\"looksAt\": \"recipe\"", looksAt, StringComparison.Ordinal))).LooksAt);

    [Theory]
    [InlineData("\"id\": \"HR0007\", ", "")]
    [InlineData("\"id\": \"HR0007\"", "\"id\": \"RL0007\"")]
    [InlineData("\"id\": \"HR0007\"", "\"id\": \"HR00007\"")]
    [InlineData("\"id\": \"HR0007\"", "\"id\": \"HR000A\"")]
    [InlineData("\"name\": \"too-strong\", ", "")]
    [InlineData("\"level\": \"warning\", ", "")]
    [InlineData("\"looksAt\": \"recipe\", ", "")]
    [InlineData("\"looksAt\": \"recipe\"", "\"looksAt\": \"water\"")]
    [InlineData("\"must\": {\"minProperties\": 1},", "")]
    [InlineData("\"must\": {\"minProperties\": 1}", "\"must\": [1]")]
    [InlineData("\"message\": \"{/name} is strong.\", ", "")]
    [InlineData(", \"reason\": \"Leaves burn.\"", "")]
    public void ARuleThatLacksWhatItNeedsIsReportedAndNotUsed(string what, string instead)
    {
        Assert.Contains(what, Members.ReplaceLineEndings(" "), StringComparison.Ordinal);
        var workspace = Shop(Members.ReplaceLineEndings(" ").Replace(what, instead, StringComparison.Ordinal)).Load();
        Assert.Empty(workspace.SettingsFor("a.stock.json").HouseRules);
        Assert.NotEmpty(workspace.ProblemsOf("own.rule.json"));
    }

    [Theory]
    [InlineData("true")]
    [InlineData("false")]
    public void WhatItAsksMayBeEverythingOrNothing(string must) =>
        Assert.Single(Read(Members.Replace("{\"minProperties\": 1}", must, StringComparison.Ordinal)));

    [Fact]
    public void AnExampleThatNamesNoneOfItsFilesIsReportedAndLeftOut()
    {
        var shop = Shop(Members + """, "failing": [{"file": «"x.stock.json"», "files": {"a.stock.json": {}}}, {"file": "b", "files": {"b": {}}}] """);
        var problem = Assert.Single(shop.Load().ProblemsOf("own.rule.json"));
        Assert.Equal((ProblemKind.MissingReference, "/failing/0/file"), (problem.Kind, problem.Place.Pointer.Value));
        Assert.Contains("'x.stock.json'", problem.Message, StringComparison.Ordinal);
        Assert.Equal("b", Assert.Single(Assert.Single(shop.Load().SettingsFor("a.stock.json").HouseRules).Failing).File);
    }

    /// <summary>A word that no schema knows is a slip: the member that it names is marked, and the word meant is named.</summary>
    [Fact]
    public void AFaultInWhatItAsksStandsAtItsMember()
    {
        var problem = Assert.Single(Shop(Members.Replace("minProperties", "minPropertys", StringComparison.Ordinal)).Load().ProblemsOf("own.rule.json"));
        Assert.Equal(("/must/minPropertys", PlacePart.Key), (problem.Place.Pointer.Value, problem.Place.Part));
        Assert.Contains("minProperties", problem.Suggestions);
    }
}

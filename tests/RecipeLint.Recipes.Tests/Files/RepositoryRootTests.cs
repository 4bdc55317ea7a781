using System.Text.RegularExpressions;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Recipes.Tests.Files;

public sealed class RepositoryRootTests
{
    private const string AsWords = "\"([^\"\\\\:]+\\.(?:stock|water|profile)\\.json)\"";

    private static readonly string[] _pieces =
    [
        "\"", "\\", ":", "a", "../b", ".stock", ".water", ".profile", ".json", ".json\"", ".stock.json\"", "\"x.water.json\"", "\n",
        ".recipe.json",
    ];

    [Theory]
    [InlineData("""{ "from": "../stocks/a.stock.json", "water": "rain.water.json" }""", "../stocks/a.stock.json", "rain.water.json")]
    [InlineData("""{ "profile": "own.profile.json", "name": "b.recipe.json", ".stock.json": 1 }""", "own.profile.json")]
    [InlineData("""{ "url": "http://a.stock.json", "path": "c:\\a.stock.json" }""")]
    public void WhatStandsInQuotesAndEndsLikeAFileIsAReference(string text, params string[] references) =>
        Assert.Equal(references, RepositoryRoot.References(text));

    [Fact]
    public void ReferencesAreThoseOfTheExpression()
    {
        var random = new Random(20261129);
        var found = 0;
        for (var i = 0; i < 20_000; i++)
        {
            var text = string.Concat(Enumerable.Range(0, random.Next(1, 14)).Select(_ => _pieces[random.Next(_pieces.Length)]));
            var expected = Regex.Matches(text, AsWords, RegexOptions.CultureInvariant).Select(m => m.Groups[1].Value).ToList();
            Assert.Equal(expected, RepositoryRoot.References(text).ToList());
            found += expected.Count;
        }

        Assert.True(found > 1000, $"only {found} references in all texts");
    }
}

using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>'explain --for' on the command line.</summary>
public sealed class ExplainTests
{
    [Fact]
    public void TheExplanationIsFilledWithTheNumbersOfTheFile()
    {
        var answer = Cli.Run("explain", "RL0101", "--for", "examples/quillmere-first-draft/stocks/part-b.stock.json");

        Assert.Equal(0, answer.Code);
        Assert.Equal("", answer.Error);
        string[] order = ["What it finds", "Why it matters", "With the numbers of", "Working: gypsum", "ion product =", "it fires.", "What to do", "Cautions"];
        var places = order.Select(o => answer.Out.IndexOf(o, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    /// <summary>A stock is judged with the recipes of its shop, although only the stock was named.</summary>
    [Fact]
    public void TheRestOfTheShopIsKnown()
    {
        var answer = Cli.Run("explain", "dose-contradicts-dilution", "--for", "examples/quillmere/stocks/part-a.stock.json");

        Assert.Equal(0, answer.Code);
        Assert.Contains("dosed in the recipe", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ARuleWithoutANumberSaysPlainlyWhatTriggersIt()
    {
        var answer = Cli.Run("explain", "unknown-key", "--for", "examples/quillmere-first-draft/stocks/basil.stock.json");

        Assert.Equal(0, answer.Code);
        Assert.Contains("basil.stock.json:6:", answer.Out, StringComparison.Ordinal);
        Assert.Contains("nothing to work out", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Constants, limits and hazards stand with their sources, where the data give them.</summary>
    [Theory]
    [InlineData("calcium-with-sulfate", "", "constant of gypsum (calcium sulfate)")]
    [InlineData("calcium-with-sulfate", "examples/quillmere/stocks/part-a.stock.json", "constant of gypsum (calcium sulfate)")]
    [InlineData("element-high", "examples/quillmere/recipes/lettuce.recipe.json", "range of Ca in '")]
    [InlineData("hazardous-substance-without-caution", "examples/quillmere/stocks/trace.stock.json", "hazards of ")]
    public void TheFiguresHaveTheirSources(string rule, string file, string figure)
    {
        var answer = file.Length == 0 ? Cli.Run("explain", rule) : Cli.Run("explain", rule, "--for", file);

        Assert.Equal(0, answer.Code);
        var grounds = answer.Out[answer.Out.IndexOf("What the figures rest on", StringComparison.Ordinal)..];
        Assert.Contains(figure, grounds.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }
}

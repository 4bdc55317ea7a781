using System.Globalization;
using System.Text.Json.Nodes;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Clear in so many mixings: far from a limit all or none, near one some.</summary>
public sealed class MixingsTests
{
    private const string Settings = """
        {"scales": [{"name": "kitchen", "readability": "1 g", "repeatability": "1 g", "capacity": "5 kg"}], "sites": [{"name": "shed", "at": "10..25 °C"}]}
        """;

    /// <summary>About 93 g of potassium sulfate dissolve in 1 kg of water at 10 °C (handbooks; recalled): 2 g in 100 mL are far below that,
    /// 30 g far above, whatever the scale shows.</summary>
    [Theory]
    [InlineData("2 g", 40, 40)]
    [InlineData("30 g", 0, 0)]
    public void FarFromALimitEveryMixingIsAlike(string amount, int low, int high)
    {
        Assert.InRange(Clear(amount, 40), low, high);
    }

    [Fact]
    public void NearALimitTheScaleDecides()
    {
        var shares = Enumerable.Range(0, 15).Select(i => Clear((4 + (0.6 * i)).ToString("0.0", CultureInfo.InvariantCulture) + " g", 40)).ToList();
        Assert.Contains(shares, s => s is > 2 and < 38);
        Assert.Equal(40, shares[0]);
        Assert.True(shares[^1] < 20);
    }

    [Fact]
    public void TheSameSeedGivesTheSameAndShowSaysIt()
    {
        using var scratch = new Scratch();
        Write(scratch, "8 g");
        var one = Cli.RunIn(scratch.Path, null, "show", "a.stock.json", "--mixings", "20");
        var two = Cli.RunIn(scratch.Path, null, "show", "a.stock.json", "--mixings", "20");

        Assert.Equal(one.Out, two.Out);
        Assert.Contains("of 20 mixings with your scales", one.Out, StringComparison.Ordinal);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "report", "a.stock.json", "--mixings", "5", "-o", "a.html").Code);
        Assert.Contains("of 5 mixings", File.ReadAllText(Path.Combine(scratch.Path, "a.html")), StringComparison.Ordinal);
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "show", "a.stock.json", "--mixings", "100000").Code);
        Assert.DoesNotContain("Mixed many", Cli.RunIn(scratch.Path, null, "show", "a.stock.json").Out, StringComparison.Ordinal);
    }

    /// <summary>Asked of a recipe, each of its bottles is mixed, by its name.</summary>
    [Fact]
    public void ARecipeSaysItOfEachOfItsStocks()
    {
        var shown = string.Join(' ', Cli.Run("show", "examples/fennelwick/recipes/tomato.recipe.json", "--mixings", "3").Out.Split('\n', StringSplitOptions.TrimEntries));
        Assert.Contains("'A': Clear in 3 of 3 mixings", shown, StringComparison.Ordinal);
        Assert.Contains("'B': Clear in 3 of 3 mixings", shown, StringComparison.Ordinal);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(shown, "Drawn are the errors"));
    }

    [Fact]
    public void FactsOfARecipeSayWhoseMixingsThereAre()
    {
        var answer = Cli.Run("facts", "examples/fennelwick/recipes/tomato.recipe.json", "--mixings", "3");
        Assert.Equal(2, answer.Code);
        Assert.Contains("Name one of its stocks: examples/fennelwick/stocks/a.stock.json, ", answer.Error, StringComparison.Ordinal);
    }

    private static int Clear(string amount, int count)
    {
        using var scratch = new Scratch();
        Write(scratch, amount);
        var answer = Cli.RunIn(scratch.Path, null, "facts", "a.stock.json", "--mixings", count.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(0, answer.Code);
        var mixings = JsonNode.Parse(answer.Out)!["mixings"]!;
        Assert.Equal(count, (int)mixings["computed"]!);
        return (int)mixings["clear"]!;
    }

    private static void Write(Scratch scratch, string amount)
    {
        scratch.Write("recipelint.json", Settings);
        scratch.Write("a.stock.json", $$"""
            {"format": 1, "makes": "100 mL", "keep": {"at": "shed"}, "steps": [
              {"add": "potassium-sulfate", "amount": "{{amount}}", "with": "kitchen", "assay": "99 %"}, {"topUp": "100 mL", "of": "distilled"}]}
            """);
    }
}

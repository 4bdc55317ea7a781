using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>Faults that fuzzing found, each as it was found and small.</summary>
public sealed class PastFaultTests
{
    /// <summary>Took 9 s: every pair of lines was tried as a slip.</summary>
    [Theory]
    [InlineData("proof")]
    [InlineData("diagnose")]
    public void AStockOfHundredsOfLinesIsLookedAtInPart(string command)
    {
        var lines = string.Join(",", Enumerable.Range(1, 260).Select(i => string.Create(
            CultureInfo.InvariantCulture, $$"""{"add": "potassium-nitrate", "amount": "{{0.1 + (i * 0.01):0.00}} g", "id": "n{{i}}"}""")));
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL"}, {{lines}}, {"topUp": "1 L"}]}""");
        string[] arguments = command == "proof" ? ["proof", "a.stock.json"] : ["diagnose", "a.stock.json", "--measured", "EC 9 mS/cm at 1:100"];
        var answer = Cli.RunOver(tree, arguments);
        Assert.Equal(0, answer.Code);
        Assert.Contains("260 lines", answer.Out, StringComparison.Ordinal);
        Assert.Contains("first 30", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Printing one asked it for every dimension, and threw.</summary>
    [Fact]
    public void AQuantityCanBePrinted()
    {
        Assert.True(QuantityReader.TryRead("24 g", Due.Mass, out var quantity, out _));
        Assert.Contains("24", quantity.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("concentrate-onto-concentrate", """{"format": 1, "makes": "1 L", "steps": []}""")]
    [InlineData("concentrate-onto-concentrate", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}""")]
    [InlineData("topped-up-past-volume", """{"format": 1, "makes": "1 L", "steps": [{"topUp": "2 L"}]}""")]
    [InlineData("topped-up-past-volume", """{"format": 1, "makes": "1e15 L", "steps": [{"add": "potassium-nitrate", "amount": "1e15 kg"}, {"topUp": "1e15 L"}]}""")]
    public void ARuleCanBeExplainedForAStockThatHasNothingToShow(string rule, string stock)
    {
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", stock);
        Assert.InRange(Cli.RunOver(tree, "explain", rule, "--for", "a.stock.json").Code, 0, 2);
        Assert.InRange(Cli.RunOver(tree, "check", ".").Code, 0, 1);
    }
}

using System.Text.Json.Nodes;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>A first result takes a minute.</summary>
public sealed class InitTests
{
    [Fact]
    public void TheStarterShopIsCleanAndComplete()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "init", "shop").Code);
        var answer = Cli.RunIn(scratch.Path, null, "check", "shop", "--fail-on", "note");

        Assert.Empty(answer.Findings);
        Assert.Equal(0, answer.Code);
        var files = Directory.EnumerateFiles(Path.Combine(scratch.Path, "shop"), "*.json", SearchOption.AllDirectories).ToList();
        var own = files.Where(f => !f.EndsWith(".schema.json", StringComparison.Ordinal)).ToList();
        Assert.Equal((6, 9), (own.Count, files.Count - own.Count));

        // Every file leads to the schema that describes it.
        Assert.All(own, file =>
        {
            var way = JsonNode.Parse(File.ReadAllText(file))!["$schema"]!.GetValue<string>();
            Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(file)!, way)), $"{file}: {way}");
        });
    }

    [Fact]
    public void NothingIsOverwrittenAndNothingHalfWritten()
    {
        using var scratch = new Scratch();
        scratch.Write("shop/stocks/trace.stock.json", "mine");
        var answer = Cli.RunIn(scratch.Path, null, "init", "shop");

        Assert.Equal(2, answer.Code);
        Assert.Contains("stocks/trace.stock.json", answer.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(scratch.Path, "shop/stocks/trace.stock.json")));
        Assert.Single(Directory.EnumerateFiles(scratch.Path, "*", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData("Ca(NO3)2.4H2O 200 g, KNO3 100 g in 2 L", "calcium-nitrate-4h2o", "potassium-nitrate")]
    [InlineData("200 g Ca(NO3)2·4H2O + 100 g KNO3 in 2 L", "calcium-nitrate-4h2o", "potassium-nitrate")]
    [InlineData("Epsom salt 50 g; MKP 20 g in 1 L", "magnesium-sulfate-7h2o", "monopotassium-phosphate")]
    public void AStockComesFromOneLine(string line, string first, string second)
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "init", "--from", line).Code);
        var text = File.ReadAllText(Path.Combine(scratch.Path, "first.stock.json"));
        var answer = Cli.RunIn(scratch.Path, null, "check", "first.stock.json");

        Assert.Contains($"\"add\": \"{first}\"", text, StringComparison.Ordinal);
        Assert.Contains($"\"add\": \"{second}\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Findings, f => f.Contains(": error"));
    }

    [Theory]
    [InlineData("zinc sulfate 5 g in 1 L", "zinc-sulfate-7h2o")]
    [InlineData("KNO3 7,5 g in 1 L", "7.5")]
    [InlineData("potasium nitrate 5 g in 1 L", "potassium-nitrate")]
    [InlineData("KNO3 5 g in 1 gal", "US gal")]
    public void WhatIsUnclearIsAskedForInOneLine(string line, string hint)
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, "init", "--from", line);

        Assert.Equal(2, answer.Code);
        Assert.Contains(hint, answer.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Path));
    }
}

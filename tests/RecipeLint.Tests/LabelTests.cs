using System.Security.Cryptography;
using System.Xml.Linq;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Labels;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.People;
using RecipeLint.Tests.Support;
using LoadOptions = RecipeLint.Recipes.Files.LoadOptions;

namespace RecipeLint.Tests;

public sealed class LabelTests
{
    private const string PartB = "examples/quillmere/stocks/part-b.stock.json";

    private static StockFacts Mixed(string substance, double percent)
    {
        var water = 100 - percent;
        var text = FormattableString.Invariant(
            $$"""{ "format": 1, "makes": "100 mL", "dose": "10 mL/L", "steps": [ { "pour": "{{water}} mL", "of": "distilled" }, { "add": "{{substance}}", "amount": "{{percent}} g" } ] }""");
        var tree = new MemoryFileTree("/shop").Add("/shop/a.stock.json", text);
        return Analyzer.Analyse(WorkspaceLoader.Load(tree, ["a.stock.json"], new LoadOptions { Profiles = ProfileLibrary.AllNames })).Stocks.Single();
    }

    /// <summary>
    /// Worked example: a mixture with 4 % of a corrosive ingredient does not count as corrosive under CLP, because the limit is 5 %, but as
    /// irritant; with 7 % it does count as corrosive (H. Krejsová, "Klasifikace žíravosti a dráždivosti", Verlag Dashöfer, 2014; the limits
    /// also in ECHA Helpdesk, "Mixture classification - exercises", 2012: (10 x Skin Corr. 1) + Skin Irrit. 2 at least 10 %).
    /// </summary>
    [Theory]
    [InlineData("potassium-hydroxide", 7, "H314")]
    [InlineData("potassium-hydroxide", 4, "H315")]
    public void ACorrosiveIngredientClassifiesAsInThePublishedExample(string substance, double percent, string code)
    {
        var codes = MixtureStatements.Of(Mixed(substance, percent)).Select(s => s.Code).ToList();
        Assert.Contains(code, codes);
        Assert.Equal(code == "H314", codes.Contains("H314"));
    }

    [Fact]
    public void SignalWordAndPicturesFollowTheGravest()
    {
        MixtureStatement Of(string code) => new(code, "", 10, 1, []);
        Assert.Equal("Danger", GhsWords.Signal([Of("H314"), Of("H302")]));
        Assert.Equal("Warning", GhsWords.Signal([Of("H302")]));
        Assert.Equal("Warning", GhsWords.Signal([Of("H410")]));
        Assert.Null(GhsWords.Signal([Of("H411")]));
        Assert.Null(GhsWords.Signal([]));

        // CLP, Article 26: corrosion makes the mark for skin and eyes superfluous, not that for swallowing; the skull makes that one superfluous.
        Assert.Equal([Pictogram.Corrosion], GhsWords.Pictograms([Of("H318"), Of("H315")]));
        Assert.Equal([Pictogram.Corrosion, Pictogram.Exclamation], GhsWords.Pictograms([Of("H314"), Of("H302")]));
        Assert.Equal([Pictogram.Skull], GhsWords.Pictograms([Of("H301"), Of("H302")]));
        Assert.Equal([Pictogram.Health], GhsWords.Pictograms([Of("H334"), Of("H317"), Of("H319")]));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("105x74")]
    [InlineData("148x105")]
    [InlineData("210x148")]
    public void ALabelIsWholeAtEverySize(string? size)
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples/quillmere/stocks"), "*.stock.json"))
        {
            string[] options = size is null ? [] : ["--size", size];
            var answer = Cli.Run(["label", Path.GetRelativePath(Repository.Root, file), .. options]);
            Assert.True(answer.Code == 0, answer.Error);
            var svg = XDocument.Parse(answer.Out).Root!;
            var box = svg.Attribute("viewBox")!.Value.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
            foreach (var text in svg.Descendants().Where(e => e.Name.LocalName == "text"))
            {
                var y = double.Parse(text.Attribute("y")!.Value, System.Globalization.CultureInfo.InvariantCulture);
                Assert.InRange(y, 0, box[3]);
            }

            var said = string.Join(' ', svg.Descendants().Where(e => e.Name.LocalName == "text").Select(t => t.Value));
            Assert.Contains("safety data sheet", said, StringComparison.Ordinal);

            // A pre-stock states no dose: none is made up for it.
            var hasDose = File.ReadAllText(file).Contains("\"dose\"", StringComparison.Ordinal);
            Assert.Equal(hasDose, said.Contains("US gallon", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void DoseAndDatesAreReckoned()
    {
        var answer = Cli.Run("label", PartB, "--made", "2026-03-01", "--batch", "B-17");
        var said = string.Join(' ', XDocument.Parse(answer.Out).Descendants().Where(e => e.Name.LocalName == "text").Select(t => t.Value));

        // 10 mL/L are 37.9 mL in 3.785 L; three months of 30.4375 days after the first of March end on the last of May.
        Assert.Contains("37.9 mL per US gallon", said, StringComparison.Ordinal);
        Assert.Contains("2026-05-31", said, StringComparison.Ordinal);
        Assert.Contains("B-17", said, StringComparison.Ordinal);
    }

    [Fact]
    public void TheCodeHoldsTheFileAndItsDigest()
    {
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(new DiskFileTree(Repository.Root), [PartB], new LoadOptions { Profiles = ProfileLibrary.AllNames }));
        var label = BottleLabel.Of(facts.FindStock(PartB)!, facts.Workspace.Sources[PartB], new LabelWishes());
        var digest = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(Repository.Root, PartB))));
        Assert.Equal($"{PartB}\nsha256 {digest}", label.Identity);
    }

    [Fact]
    public void TooSmallALabelNamesOneThatFits()
    {
        var answer = Cli.Run("label", "examples/quillmere/stocks/trace.stock.json", "--size", "40x30");
        Assert.Equal(2, answer.Code);
        Assert.Contains("it fits on", Assert.Single(answer.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--size", "A4")]
    [InlineData("--made", "1.3.2026")]
    [InlineData("--copies", "0")]
    [InlineData("-o", "/dev/null")]
    [InlineData("-o", "examples")]
    public void WhatCannotBeDoneIsSaidInOneLine(string option, string value)
    {
        var answer = Cli.Run("label", PartB, option, value);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void AHostileNameStaysText()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "name": "<script>x</script>\"'&\u202E", "makes": "1 L", "dose": "10 mL/L", "label": { "colour": "red\"/><script>" },
              "steps": [ { "pour": "0.9 L", "of": "distilled" }, { "add": "potassium-nitrate", "amount": "10 g" }, { "topUp": "1 L" } ] }
            """);
        foreach (var options in new[] { Array.Empty<string>(), ["--format", "html", "--copies", "3"] })
        {
            var answer = Cli.RunIn(folder.Path, null, ["label", "a.stock.json", .. options]);
            Assert.True(answer.Code == 0, answer.Error);
            Assert.DoesNotContain('\u202E', answer.Out);
            var page = XDocument.Parse(answer.Out.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
            Assert.DoesNotContain(page.Descendants(), e => e.Name.LocalName == "script");
        }
    }
}

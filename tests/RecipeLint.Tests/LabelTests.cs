using System.Security.Cryptography;
using System.Xml.Linq;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Substances;
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

    /// <summary>A bottle with a dose and a last day on it looks as if it could be used: of bleach with ammonium none is drawn.</summary>
    [Fact]
    public void NoLabelIsDrawnForWhatMustNotBeMixed()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [ { "pour": "700 mL" }, { "add": "sodium-hypochlorite-5", "amount": "100 mL" },
              { "add": "ammonium-sulfate", "amount": "20 g" }, { "topUp": "1 L" } ] }
            """);

        var answer = Cli.RunIn(folder.Path, null, "label", "a.stock.json", "-o", "a.svg");

        Assert.Equal((1, ""), (answer.Code, answer.Out));
        Assert.False(File.Exists(Path.Combine(folder.Path, "a.svg")));
        Assert.Contains("chloramines", answer.Error, StringComparison.Ordinal);
        Assert.All(answer.Error.TrimEnd('\n').Split('\n'), line => Assert.StartsWith("recipelint: ", line, StringComparison.Ordinal));
    }

    private static StockFacts Mixed(string substance, double percent)
    {
        var water = 100 - percent;

        // Acid is heavier than water: the stock must not be larger than what goes in, or water would fill it up.
        var makes = 0.95 * (water + (percent / (SubstanceCatalogue.BuiltIn.ById(substance)!.Density?.Value.GramsPerMillilitre ?? 2)));
        var text = FormattableString.Invariant(
            $$"""{ "format": 1, "makes": "{{makes}} mL", "dose": "10 mL/L", "steps": [ { "pour": "{{water}} mL", "of": "distilled" }, { "add": "{{substance}}", "amount": "{{percent}} g" } ] }""");
        var tree = new MemoryFileTree("/shop").Add("/shop/a.stock.json", text);
        return Analyzer.Analyse(WorkspaceLoader.Load(tree, ["a.stock.json"], new LoadOptions { Profiles = ProfileLibrary.AllNames })).Stocks.Single();
    }

    /// <summary>
    /// Worked example: a mixture with 4 % of a corrosive ingredient does not count as corrosive under CLP, because the limit is 5 %, but as
    /// irritant; with 7 % it does count as corrosive (H. Krejsová, "Klasifikace žíravosti a dráždivosti", Verlag Dashöfer, 2014; the limits
    /// also in ECHA Helpdesk, "Mixture classification - exercises", 2012: (10 x Skin Corr. 1) + Skin Irrit. 2 at least 10 %). It holds for
    /// a substance without limits of its own, such as zinc chloride.
    /// </summary>
    [Theory]
    [InlineData("zinc-chloride", 7, "H314")]
    [InlineData("zinc-chloride", 4, "H315")]
    public void ACorrosiveIngredientClassifiesAsInThePublishedExample(string substance, double percent, string code)
    {
        var codes = MixtureStatements.Of(Mixed(substance, percent)).Select(s => s.Code).ToList();
        Assert.Contains(code, codes);
        Assert.Equal(code == "H314", codes.Contains("H314"));
    }

    /// <summary>
    /// Specific concentration limits win over the generic ones (CLP, Article 10; Annex VI, table 3, recalled): the codes for skin, eyes, water
    /// life and gas at both sides of each limit. The percentage is that of what is bought, the share of the pure substance beside it.
    /// </summary>
    [Theory]
    [InlineData("phosphoric-85", 30.6, "H314 H290")] // 26.0 %
    [InlineData("phosphoric-85", 28.2, "H315 H319 H290")] // 24.0 %
    [InlineData("phosphoric-85", 12.9, "H315 H319 H290")] // 11.0 %
    [InlineData("phosphoric-85", 10.6, "H290")] // 9.0 %
    [InlineData("nitric-60", 8.5, "H314 H290")] // 5.1 %
    [InlineData("nitric-60", 8.2, "H318 H315 H290")] // 4.9 %, where only the limit for burns is specific
    [InlineData("nitric-60", 50, "H314 H331 EUH071 H290")] // 30 %, by 2.65 mg/L of vapour
    [InlineData("nitric-60", 25, "H314 H332 EUH071 H290")] // 15 %
    [InlineData("sulfuric-96", 15.8, "H314 H290")] // 15.2 %
    [InlineData("sulfuric-96", 15.4, "H315 H319 H290")] // 14.8 %
    [InlineData("sulfuric-96", 5.1, "H290")] // 4.9 %
    [InlineData("hydrochloric-37", 68, "H314 H335 H290")] // 25.2 %
    [InlineData("hydrochloric-37", 67, "H315 H319 H335 H290")] // 24.8 %
    [InlineData("hydrochloric-37", 26, "H290")] // 9.6 %
    [InlineData("potassium-hydroxide", 2.1, "H314 H290")]
    [InlineData("potassium-hydroxide", 1.9, "H315 H319 H290")]
    [InlineData("koh-50", 0.9, "")] // 0.45 %
    [InlineData("sodium-hydroxide", 2.1, "H314 H290")]
    [InlineData("hydrogen-peroxide-35", 50, "H318")] // 17.5 %
    [InlineData("hydrogen-peroxide-35", 22, "H319")] // 7.7 %
    [InlineData("hydrogen-peroxide-35", 14, "")] // 4.9 %
    [InlineData("sodium-hypochlorite-12.5", 22, "H315 H319 H400 H411")] // 2.75 % active chlorine
    [InlineData("sodium-hypochlorite-12.5", 18, "H315 H319")] // 2.25 %, short of 2.5 for water life
    [InlineData("sodium-hypochlorite-12.5", 44, "H314 H400 H411 EUH031")] // 5.5 % active chlorine
    [InlineData("sodium-hypochlorite-12.5", 38, "H318 H315 H400 H411")] // 4.75 % active chlorine
    public void LimitsOfASubstanceWinOverGenericOnes(string substance, double percent, string codes) =>
        Assert.Equal(codes, string.Join(' ', MixtureStatements.Of(Mixed(substance, percent)).Select(s => s.Code)));

    /// <summary>
    /// What fills part of its own limit and what fills the rest count together: 15 of 25 parts of phosphoric and 2.5 of 5 parts of nitric
    /// acid burn, though neither does alone.
    /// </summary>
    [Fact]
    public void PartsOfLimitsAddUp()
    {
        const string Text = """
            { "format": 1, "makes": "88 mL", "dose": "10 mL/L", "steps": [ { "pour": "78.18 mL", "of": "distilled" },
              { "add": "phosphoric-85", "amount": "17.65 g" }, { "add": "nitric-60", "amount": "4.17 g" } ] }
            """;
        var tree = new MemoryFileTree("/shop").Add("/shop/a.stock.json", Text);
        var stock = Analyzer.Analyse(
            WorkspaceLoader.Load(tree, ["a.stock.json"], new LoadOptions { Profiles = ProfileLibrary.AllNames })).Stocks.Single();
        var found = MixtureStatements.Of(stock);
        Assert.Equal(["H314", "H290"], found.Select(f => f.Code));
        Assert.Equal(5 * ((15.0 / 25) + (2.5 / 5)), found[0].Percent, 0.1);
    }

    /// <summary>Who keeps it from all acids keeps it from the strong ones.</summary>
    [Fact]
    public void WhatIsKeptApartIsNamedOnce()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            { "format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [ { "pour": "0.7 L", "of": "distilled" },
              { "add": "calcium-nitrate-fertiliser", "amount": "200 g" }, { "add": "fe-edta-na-3h2o", "amount": "4 g" }, { "topUp": "1 L" } ] }
            """);
        var answer = Cli.RunIn(folder.Path, null, ["label", "a.stock.json"]);
        var said = string.Join(' ', XDocument.Parse(answer.Out).Descendants().Where(e => e.Name.LocalName == "text").Select(t => t.Value));
        Assert.Contains("Keep apart from acids, alkali, hypochlorite", said, StringComparison.Ordinal);
        Assert.Contains("those of single substances in Annex VI before the generic ones", said, StringComparison.Ordinal);
    }

    [Fact]
    public void SignalWordAndPicturesFollowTheGravest()
    {
        MixtureStatement Of(string code) => new(code, "", 10, 1, []);
        Assert.Equal("Danger", GhsWords.Signal([Of("H314"), Of("H302")]));
        Assert.Equal("Warning", GhsWords.Signal([Of("H302")]));
        Assert.Equal("Warning", GhsWords.Signal([Of("H410")]));
        Assert.Equal("Warning", GhsWords.Signal([Of("H400")]));
        Assert.Null(GhsWords.Signal([Of("H411"), Of("EUH031")]));
        Assert.Null(GhsWords.Signal([]));

        // CLP, Article 26: corrosion makes the mark for skin and eyes superfluous, not that for swallowing; the skull makes that one superfluous.
        Assert.Equal([Pictogram.Corrosion], GhsWords.Pictograms([Of("H318"), Of("H315")]));
        Assert.Equal([Pictogram.Corrosion, Pictogram.Exclamation], GhsWords.Pictograms([Of("H314"), Of("H302")]));
        Assert.Equal([Pictogram.Skull], GhsWords.Pictograms([Of("H301"), Of("H302")]));
        Assert.Equal([Pictogram.Skull], GhsWords.Pictograms([Of("H331"), Of("H335"), Of("EUH071")]));
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

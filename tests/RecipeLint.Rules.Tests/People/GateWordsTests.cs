using System.Text;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.People;

/// <summary>What the gate says of a stock in words: true, and in whole sentences.</summary>
public sealed class GateWordsTests
{
    /// <summary>
    /// At the pH of an acid phosphate some per cent of the nitrite stand as nitrous acid (pKa 3.15 to 3.3, recalled) and fall apart slowly:
    /// a warning that says so. A real acid is an error, and a neutral salt nothing.
    /// </summary>
    [Theory]
    [InlineData("sodium-nitrite 10 g, monopotassium-phosphate 40 g", Level.Warning, "slowly")]
    [InlineData("sodium-nitrite 10 g, citric-acid-h2o 40 g", Level.Error, "brown nitrogen oxides")]
    [InlineData("sodium-nitrite 10 g, potassium-nitrate 40 g", null, "")]
    [InlineData("sodium-nitrite 0.1 g, monopotassium-phosphate 40 g", null, "")]
    public void NitriteIsJudgedByItsAcid(string held, Level? level, string words)
    {
        var found = Judge(held).Result.Findings.Where(f => f.Rule.Name == "gas-or-heat-in-stock").ToList();

        Assert.Equal(level, found.FirstOrDefault()?.Level);
        Assert.All(found, f => Assert.Contains(words, f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void TheShareOfNitrousAcidIsComputed()
    {
        var stock = Assert.Single(Judge("sodium-nitrite 10 g, monopotassium-phosphate 40 g").Facts.Stocks);
        var hazard = HazardGate.Of(stock).Find(HazardKind.NitrousAcid);

        Assert.NotNull(hazard);
        var ph = stock.Chemistry.Mixing.Ph;
        var byHand = 1 / (1 + Math.Pow(10, ph - 3.15));
        Assert.InRange(hazard.Share!.Value, byHand / 1.6, byHand * 1.6);
    }

    [Theory]
    [InlineData("potassium-bromide 20 g, sodium-hypochlorite-12.5 100 mL", "bromine")]
    [InlineData("sodium-hypochlorite-12.5 100 mL, sodium bromide 20 g", "bromine")]
    [InlineData("quicklime 3 kg", "hot enough to scald")]
    [InlineData("ammonium-nitrate 200 g, diesel 20 mL", "burn fiercely")]
    [InlineData("ammonium-nitrate 200 g, mineral oil 20 mL", "burn fiercely")]
    public void WhatItsNameTellsIsHeard(string held, string words)
    {
        var found = Judge(held).Result.Findings.Where(f => f.Rule.Name == "gas-or-heat-in-stock").ToList();

        Assert.Contains(found, f => f.Level == Level.Error && f.Message.Contains(words, StringComparison.Ordinal));
    }

    /// <summary>A thin feed with a spray oil, a nitrate without ammonium and slaked lime are none of it.</summary>
    [Theory]
    [InlineData("ammonium-nitrate 1 g, neem oil 5 mL")]
    [InlineData("potassium-nitrate 100 g, neem oil 5 mL")]
    [InlineData("potassium-bromide 1 g, potassium-nitrate 10 g")]
    public void OtherwiseItIsSilent(string held) => Assert.DoesNotContain(
        Judge(held).Result.Findings,
        f => f.Rule.Name == "gas-or-heat-in-stock" && (f.Message.Contains("burn fiercely", StringComparison.Ordinal) || f.Message.Contains("bromine", StringComparison.Ordinal)));

    [Fact]
    public void WaterOntoLyeIsSaid()
    {
        var wrong = Judged.Of(
            Tree("""{"add": "potassium-hydroxide", "amount": "300 g"}, {"pour": "600 mL", "of": "distilled"}"""), ["."], ExampleRun.Load, ExampleRun.Engine);
        var finding = Assert.Single(wrong.Result.Findings, f => f.Rule.Name == "gas-or-heat-in-stock");

        Assert.Equal(Level.Error, finding.Level);
        Assert.Contains("lye when water comes onto it", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>In its own alkali a silicate is a lye to skin, eyes and light metals.</summary>
    [Theory]
    [InlineData("potassium-silicate-29be 100 mL", true)]
    [InlineData("potassium-silicate-29be 5 mL", true)]
    [InlineData("potassium-nitrate 100 g", false)]
    public void ASilicateStockIsCautioned(string held, bool said)
    {
        var hazard = HazardGate.Of(Assert.Single(Judge(held).Facts.Stocks)).Find(HazardKind.SilicateLye);

        Assert.Equal(said, hazard is { Grade: HazardGrade.Possible });
    }

    /// <summary>A name with a comma in it does not break its sentence, and one in the plural does not quarrel with its verb.</summary>
    [Theory]
    [InlineData("potassium-hydroxide 300 g", "Potassium hydroxide (solid) in 'X': this gets hot")]
    [InlineData("sodium-nitrite 10 g, citric-acid-anhydrous 40 g", "Sodium nitrite with citric acid (anhydrous) in 'X': this sets")]
    public void TheSentenceIsWhole(string held, string words) => Assert.Contains(
        words, Assert.Single(Judge(held).Result.Findings, f => f.Rule.Name == "gas-or-heat-in-stock").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("humic-acid 100 mL, calcium-nitrate-4h2o 100 g", "comes out as brown flocs, which can block filters and drippers and take trace metals along")]
    [InlineData("seaweed-extract 100 mL, calcium-nitrate-4h2o 100 g", "comes out as slimy jelly, which can block filters and drippers and take trace metals along")]
    public void FlocsBlockAndAJellyBlocks(string held, string words) => Assert.Contains(
        words, Assert.Single(Judge(held).Result.Findings, f => f.Rule.Name == "extract-falls-out").Message, StringComparison.Ordinal);

    private static Judged Judge(string held) => Judged.Of(
        Tree("""{"pour": "600 mL", "of": "distilled"}, """ + string.Join(", ", held.Split(", ").Select(Step))), ["."], ExampleRun.Load, ExampleRun.Engine);

    private static string Step(string part)
    {
        var words = part.Split(' ');
        return $$"""{"add": "{{string.Join(' ', words[..^2])}}", "amount": "{{words[^2]}} {{words[^1]}}"}""";
    }

    private static MemoryFileTree Tree(string steps) => new MemoryFileTree("/shop").AddFolder("/shop/.git").Add(
        "x.stock.json",
        Encoding.UTF8.GetBytes(
            $$"""{"format": 1, "name": "X", "makes": "1 L", "dose": "5 mL/L", "keep": {"at": "8..25 °C", "for": "3 months", "light": "dark"}, "steps": [{{steps}}, {"topUp": "1 L", "of": "distilled"}]}"""));
}

using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>Acid, warmth and water that a message advises were tried on this stock, and the figure of a message is that of its repair.</summary>
public sealed class TriedAdviceTests
{
    /// <summary>No temperature up to 45 °C clears them, and "keep it warmer" stood there all the same.</summary>
    [Theory]
    [InlineData("monopotassium-phosphate 300 g", "4..10 °C", "salt-past-its-solubility")]
    [InlineData("magnesium-nitrate-6h2o 900 g, ammonium-nitrate 100 g", "2..10 °C", "salt-past-its-solubility")]
    public void WarmthThatDoesNotClearItIsNotAdvised(string held, string kept, string rule) =>
        Assert.DoesNotContain("warmer", Message(held, kept, rule), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void WarmthThatClearsItStillIs() =>
        Assert.Contains("keep it warmer", Message("potassium-sulfate 110 g", "5..25 °C", "salt-past-its-solubility"), StringComparison.OrdinalIgnoreCase);

    /// <summary>No pH was found at which the rust stays away, and the stock was to be acidified.</summary>
    [Fact]
    public void AcidThatDoesNotClearItIsNotAdvised() => Assert.DoesNotContain(
        "acidify",
        Message("fe-eddha-na 20 g, copper-sulfate-5h2o 2 g, potassium-hydroxide 2 g", "5..25 °C", "metal-hydroxide"),
        StringComparison.OrdinalIgnoreCase);

    /// <summary>Where acid clears it the message still says so.</summary>
    [Theory]
    [InlineData("monoammonium-phosphate 60 g, magnesium-sulfate-7h2o 100 g, potassium-hydroxide 10 g", "magnesium-ammonium-phosphate")]
    [InlineData("copper-sulfate-5h2o 5 g, sodium-benzoate 3 g, potassium-carbonate 2 g", "metal-hydroxide")]
    [InlineData("zinc-sulfate-7h2o 5 g, copper-sulfate-5h2o 2 g, phosphoric-75 5 mL, potassium-hydroxide 4 g", "phosphate-in-trace-stock")]
    public void AcidThatClearsItStillIs(string held, string rule) =>
        Assert.Contains("acidify", Message(held, "5..25 °C", rule), StringComparison.OrdinalIgnoreCase);

    /// <summary>At pH 4, to which sugar beside EDTA in lye was to be brought, the disodium salt crystallises.</summary>
    [Fact]
    public void AcidThatThrowsSomethingElseOutIsNotAdvised()
    {
        var message = Message("disodium-edta-2h2o 200 g, sodium-hydroxide 60 g, sucrose 5 g", "5..25 °C", "carbon-without-preservative");

        Assert.DoesNotContain("acidify", message, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("falls out by it", message, StringComparison.Ordinal);
    }

    /// <summary>"Clear at 1:64" above "make it for 1:60", and "at most 0.72 g/L" above "take 0.7 g".</summary>
    [Theory]
    [InlineData("potassium-sulfate 110 g", "5..25 °C", "salt-past-its-solubility", "weaker", "1:(\\d+) instead")]
    [InlineData("calcium-nitrate-4h2o 300 g, potassium-nitrate 250 g", "5..25 °C", "salt-past-its-solubility", "weaker", "1:(\\d+) instead")]
    [InlineData("boric-acid 60 g", "5..25 °C", "trace", "weaker", "1:(\\d+) instead")]
    [InlineData("monopotassium-phosphate 300 g", "4..10 °C", "salt-past-its-solubility", "weaker", "1:(\\d+) instead")]
    [InlineData("sodium-benzoate 2 g, citric-acid-h2o 3 g", "5..25 °C", "preservative-too-strong", "less-sodium-benzoate", "([\\d.]+) g")]
    public void TheAmountOfTheMessageIsThatOfItsRepair(string held, string kept, string rule, string key, string figure)
    {
        var (tree, judged) = Judge(held, kept);
        var finding = judged.Result.Findings.First(f => f.Rule.Name == rule || (rule.StartsWith("trace", StringComparison.Ordinal) && f.Rule.Family == "precipitation"));
        var repair = Assert.Single(new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged).For(finding), r => r.Repair.Key == key);

        Assert.Equal(Regex.Match(finding.Message, figure).Groups[1].Value, Regex.Match(repair.Repair.Title, figure).Groups[1].Value);
    }

    /// <summary>A preservative that does not work, which is an error, works even less after: no way of mending anything.</summary>
    [Fact]
    public void LessOfWhatIsTooWeakAlreadyIsNotOffered()
    {
        var (tree, judged) = Judge("sodium-benzoate 4 g, glycine 5 g", "5..25 °C");
        Assert.Contains(judged.Result.Findings, f => f.Rule.Name == "preservative-too-weak" && f.Level == Level.Error);
        var finding = judged.Result.Findings.Single(f => f.Rule.Name == "preservative-too-strong");

        Assert.DoesNotContain(
            new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged).For(finding), r => r.Repair.Key == "less-sodium-benzoate");
    }

    /// <summary>"Warm the first water to 30 °C" stood below acid with bicarbonate and hypochlorite with a lactate (found in 2026).</summary>
    [Theory]
    [InlineData("citric-acid-anhydrous", "sodium-bicarbonate")]
    [InlineData("malic-acid", "sodium-bicarbonate")]
    [InlineData("benzoic-acid", "sodium-bicarbonate")]
    [InlineData("disodium-edta-2h2o", "sodium-bicarbonate")]
    [InlineData("dtpa-acid", "sodium-bicarbonate")]
    [InlineData("edta-acid", "sodium-bicarbonate")]
    [InlineData("molybdenum-trioxide", "sodium-bicarbonate")]
    [InlineData("calcium-hypochlorite", "calcium-lactate-5h2o")]
    [InlineData("sodium-hypochlorite-12.5", "calcium-lactate-5h2o")]
    public void NoRepairWarmsWhatTheGateForbidsToHeat(string one, string other)
    {
        var (tree, judged) = Judge($"{one} 50 g, {other} 50 g", "5..25 °C");
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);

        Assert.NotEmpty(judged.Result.Findings);
        Assert.DoesNotContain(judged.Result.Findings.SelectMany(f => desk.For(f)), r => r.Repair.Key.StartsWith("warm-", StringComparison.Ordinal));
    }

    /// <summary>Where nothing is dangerous the water may be warmed.</summary>
    [Fact]
    public void WaterThatChillsIsStillWarmed()
    {
        var (tree, judged) = Judge("urea 250 g", "5..25 °C");
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);

        Assert.Contains(judged.Result.Findings.SelectMany(f => desk.For(f)), r => r.Repair.Key.StartsWith("warm-", StringComparison.Ordinal));
    }

    /// <summary>Warmth was said of every one of them, whether or not a bath of any use does it.</summary>
    [Theory]
    [InlineData("sodium-benzoate 2.2 g, citric-acid-h2o 6 g, potassium-nitrate 20 g", "5..20 °C", "preservative-too-strong", "°C or warmer")]
    [InlineData("sodium-benzoate 2.2 g, citric-acid-h2o 6 g, potassium-nitrate 20 g", "5..5.5 °C", "preservative-too-strong", null)]
    [InlineData("urea 250 g", "5..25 °C", "cools-on-dissolving", "start with water at")]
    [InlineData("ammonium-nitrate 600 g", "5..25 °C", "cools-on-dissolving", null)]
    [InlineData("potassium-nitrate 200 g", "20..25 °C", "too-little-water-to-dissolve", "warm it to 30 °C")]
    [InlineData("potassium-sulfate 95 g", "20..25 °C", "too-little-water-to-dissolve", null)]
    public void WarmthIsSaidOnlyWhereItDoesIt(string held, string kept, string rule, string? said)
    {
        var message = string.Join('\n', Judge(held, kept).Judged.Result.Findings.Where(f => f.Rule.Name == rule).Select(f => f.Message));

        Assert.NotEmpty(message);
        if (said is null)
        {
            Assert.DoesNotMatch("(?i)warmer|warm it|start with water", message);
        }
        else
        {
            Assert.Contains(said, message, StringComparison.OrdinalIgnoreCase);
        }
    }

    /// <summary>Another acid brings its own ions: sulfate to calcium, which is no way of keeping a stock clear.</summary>
    [Theory]
    [InlineData("citric-acid-h2o 10 g, potassium-nitrate 20 g", "carbon-without-preservative", "use a mineral acid instead", true)]
    [InlineData("phosphoric-75 20 mL, ferrous-sulfate-7h2o 5 g", "unprotected-ferrous-iron", "instead of phosphoric acid", true)]
    [InlineData("nitric-38 20 mL, monopotassium-phosphate 30 g, ferrous-sulfate-7h2o 5 g", "unprotected-ferrous-iron", "instead of phosphoric acid", false)]
    public void AnotherAcidIsSaidOnlyWhereItBringsNothingElse(string held, string rule, string said, bool isSaid) =>
        Assert.Equal(isSaid, Message(held, "5..25 °C", rule).Contains(said, StringComparison.Ordinal));

    /// <summary>Ten times as much of a thinner one has to fit into the vessel.</summary>
    [Theory]
    [InlineData("1 L", "700 mL", "potassium-nitrate 5 g", true)]
    [InlineData("25 mL", "15 mL", "potassium-nitrate 1 g", false)]
    public void WhatIsDilutedFirstHasToFit(string makes, string poured, string held, bool fits)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("recipelint.json", Encoding.UTF8.GetBytes("""{"measures": [{"name": "jug", "kind": "jug", "capacity": "1 L", "readability": "10 mL"}]}"""))
            .Add("pre.stock.json", Encoding.UTF8.GetBytes("""
                {"format": 1, "name": "Pre", "makes": "1 L", "steps": [{"pour": "600 mL", "of": "distilled"},
                 {"add": "sodium-molybdate-2h2o", "amount": "10 g"}, {"topUp": "1 L", "of": "distilled"}]}
                """))
            .Add("x.stock.json", Encoding.UTF8.GetBytes($$"""
                {"format": 1, "name": "X", "makes": "{{makes}}", "steps": [{"pour": "{{poured}}", "of": "distilled"},
                 {"add": "{{held.Split(' ', 2)[0]}}", "amount": "{{held.Split(' ', 2)[1]}}"}, {"add": "pre.stock.json", "amount": "3 mL", "with": "jug"},
                 {"topUp": "{{makes}}", "of": "distilled"}]}
                """));
        var message = Assert.Single(
            Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine).Result.Findings, f => f.Rule.Name == "measure-too-coarse").Message;

        Assert.Equal(fits, message.Contains("dilute it first", StringComparison.OrdinalIgnoreCase));
        Assert.Equal(!fits, message.Contains("weigh it", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The message says nitrate, and a repair gave more of the ammonium salt.</summary>
    [Fact]
    public void NitrogenIsRaisedAsNitrateInARepairToo()
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("x.recipe.json", Encoding.UTF8.GetBytes("""
            {"format": 1, "name": "X", "crop": "lettuce", "water": "reverse-osmosis", "final": "100 L", "volume": "made up", "doses": [
             {"add": "ammonium-sulfate", "amount": "18 g"}, {"add": "potassium-nitrate", "amount": "20 g"}]}
            """));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var finding = Assert.Single(judged.Result.Findings, f => f.Rule.Name == "element-low" && f.Message.Contains(" mg/L N;", StringComparison.Ordinal));
        var repairs = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged).For(finding);

        Assert.Contains("as calcium, potassium or magnesium nitrate", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(repairs, r => r.Repair.Title.Contains("ammonium", StringComparison.OrdinalIgnoreCase));
    }

    private static string Message(string held, string kept, string rule) =>
        Judge(held, kept).Judged.Result.Findings.First(f => f.Rule.Name == rule).Message;

    private static (MemoryFileTree Tree, Judged Judged) Judge(string held, string kept)
    {
        var steps = held.Split(", ").Select(h => h.Split(' ', 2)).Select(h => $$"""{"add": "{{h[0]}}", "amount": "{{h[1]}}"}""");
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("x.stock.json", Encoding.UTF8.GetBytes($$"""
            {"format": 1, "name": "X", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "{{kept}}", "for": "3 months", "light": "dark"},
             "steps": [{"pour": "600 mL", "of": "distilled"}, {{string.Join(", ", steps)}}, {"topUp": "1 L", "of": "distilled"}]}
            """));
        return (tree, Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine));
    }
}

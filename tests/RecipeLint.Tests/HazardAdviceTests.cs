using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>No command says anything that can hurt somebody: each danger that was once advised, and the words on it.</summary>
public sealed class HazardAdviceTests
{
    private const string BleachWithAmmonium = """
        {"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL"}, {"add": "ammonium-sulfate", "amount": "20 g", "assay": "99 %"},
          {"add": "sodium-hypochlorite-5", "amount": "50 mL", "assay": "5 %"}, {"topUp": "1 L"}]}
        """;

    private const string Bleach = """
        {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "sodium-hypochlorite-5", "amount": "100 mL", "assay": "5 %"},
          {"add": "calcium-nitrate-4h2o", "amount": "20 g", "assay": "99 %"}, {"topUp": "1 L"}]}
        """;

    private const string NitricWithAcetic = """
        {"format": 1, "makes": "1 L", "dose": "1 mL/L", "steps": [{"pour": "300 mL"}, {"add": "acetic-acid-80", "amount": "300 mL", "assay": "80 %"},
          {"add": "nitric-65", "amount": "300 mL", "assay": "65 %"}, {"topUp": "1 L"}]}
        """;

    private const string Peroxide = """
        {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "hydrogen-peroxide-3", "amount": "100 mL", "assay": "3 %"},
          {"add": "potassium-nitrate", "amount": "20 g", "assay": "99 %"}, {"topUp": "1 L"}]}
        """;

    private const string PeroxideWithCopper = """
        {"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL"}, {"add": "hydrogen-peroxide-3", "amount": "100 mL", "assay": "3 %"},
          {"add": "copper-sulfate-5h2o", "amount": "2 g", "assay": "99 %"}, {"topUp": "1 L"}]}
        """;

    private const string Silicate = """
        {"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL"}, {"add": "potassium-silicate-40be", "amount": "60 g", "assay": "100 %"},
          {"add": "magnesium-sulfate-7h2o", "amount": "1 g", "assay": "99 %"}, {"topUp": "1 L"}]}
        """;

    [Fact]
    public void BleachWithAmmoniumIsDangerFirstWhateverIsSeen()
    {
        foreach (var seen in new[] { "swimming pool smell, my eyes water", "clear, nothing wrong", "white powder" })
        {
            var answer = Diagnose(BleachWithAmmonium, seen);

            Assert.Equal(1, answer.Code);
            var flowing = Flowing(answer.Out);
            Assert.Contains("danger", flowing, StringComparison.Ordinal);
            Assert.Contains("chloramines, poisonous gases", flowing, StringComparison.Ordinal);
            Assert.Contains("go out into fresh air", flowing, StringComparison.Ordinal);
            Assert.Contains("poison centre", flowing, StringComparison.Ordinal);
            Assert.Contains("Safety data sheets and your local codes decide", flowing, StringComparison.Ordinal);
            Assert.True(answer.Out.IndexOf("danger", StringComparison.Ordinal) < answer.Out.IndexOf("1  ", StringComparison.Ordinal));
            NothingIsTried(answer.Out);
        }
    }

    [Fact]
    public void ADepositInBleachIsNotTriedWithAcid()
    {
        var answer = Diagnose(Bleach, "white powder at the bottom");

        var flowing = Flowing(answer.Out);
        Assert.Contains("Sodium hypochlorite", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("drops of vinegar on", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("hydrochloric acid on", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("Any acid dissolves", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("Acidify", flowing, StringComparison.Ordinal);
        Assert.Contains("must not go into it", flowing, StringComparison.Ordinal);
    }

    [Fact]
    public void ABottleWithSulfideGetsNoAcidTest()
    {
        using var scratch = new Scratch();
        scratch.Write("shop.substances.json", """{"format": 1, "substances": [{"id": "potassium-sulfide", "name": "potassium sulfide", "kind": "salt", "formula": "K2S"}]}""");
        scratch.Write("a.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [{"pour": "900 mL"}, {"add": "potassium-sulfide", "amount": "5 g", "assay": "99 %"},
              {"add": "calcium-chloride-2h2o", "amount": "2 g", "assay": "99 %"}, {"topUp": "1 L"}]}
            """);
        var answer = Cli.RunIn(scratch.Path, null, "diagnose", "a.stock.json", "--seen", "white powder");

        Assert.Equal(0, answer.Code);
        var flowing = Flowing(answer.Out);
        Assert.Contains("hydrogen sulfide", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("drops of vinegar on", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("hydrochloric acid on", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("Any acid", flowing, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(NitricWithAcetic, "nitric acid")]
    [InlineData(BleachWithAmmonium, "chloramines")]
    [InlineData(PeroxideWithCopper, "oxygen")]
    public void OrderSplitAndStretchSayNoAndWhy(string stock, string why)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", stock);
        foreach (var command in new[] { "order", "stretch" })
        {
            var answer = Cli.RunIn(scratch.Path, null, command, "a.stock.json");

            Assert.Equal(1, answer.Code);
            var flowing = Flowing(answer.Out);
            Assert.Contains("somebody could be hurt", flowing, StringComparison.Ordinal);
            Assert.Contains(why, flowing, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("best there is", flowing, StringComparison.Ordinal);
            Assert.DoesNotContain("Highest:", flowing, StringComparison.Ordinal);
            Assert.All(answer.Out.Split('\n'), l => Assert.True(l.Length <= 100, l));
        }

        var split = Cli.RunIn(scratch.Path, null, "split", "a.stock.json");
        Assert.DoesNotContain(": 1 part ", split.Out, StringComparison.Ordinal);
        Assert.InRange(split.Code, 0, 1);
    }

    [Theory]
    [InlineData("50 g/L sodium-hypochlorite-5 + 20 g/L ammonium-sulfate")]
    [InlineData("50 g/L sodium-hypochlorite-5 + 20 g/L citric-acid-h2o")]
    [InlineData("300 g/L nitric-65 + 300 g/L acetic-acid-80")]
    public void DissolveSaysNo(string mix)
    {
        var answer = Cli.Run("dissolve", mix);

        Assert.Equal(1, answer.Code);
        Assert.Contains("Do not mix this", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("pH", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>One bottle has one figure, whichever command speaks of it.</summary>
    [Theory]
    [InlineData("sodium-hypochlorite-12.5", "80 mL", "ammonium-sulfate", "5 g", @"(\d+) mg/L available chlorine")]
    [InlineData("lime sulfur", "50 mL", "monopotassium-phosphate", "20 g", @"(\d+) mg/L sulfide")]
    public void EveryCommandPrintsTheSameFigure(string one, string much, string other, string amount, string figure)
    {
        using var scratch = new Scratch();
        scratch.Write("a.substances.json", """{"format": 1, "substances": [{"id": "lime sulfur", "name": "Lime sulfur", "form": "liquid", "density": "1.28 g/mL", "unknownComposition": true}]}""");
        scratch.Write("a.stock.json", $$"""{"format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "700 mL", "of": "distilled"}, {"add": "{{one}}", "amount": "{{much}}"}, {"add": "{{other}}", "amount": "{{amount}}"}, {"topUp": "1 L", "of": "distilled"}]}""");
        var figures = new[] { "order", "stretch", "split", "proof", "diagnose" }.SelectMany(c => System.Text.RegularExpressions.Regex.Matches(
            string.Join(' ', Cli.RunIn(scratch.Path, null, c == "diagnose" ? [c, "a.stock.json", "--seen", "clear"] : [c, "a.stock.json"]).Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)),
            figure).Select(m => m.Groups[1].Value)).ToList();

        Assert.InRange(figures.Count, 5, 20);
        Assert.Single(figures.Distinct());
    }

    [Fact]
    public void ABulgingPeroxideBottleIsNotTurnedOver()
    {
        var answer = Diagnose(Peroxide, "the bottle is bulging and hisses");

        var flowing = Flowing(answer.Out);
        Assert.Contains("oxygen", flowing, StringComparison.Ordinal);
        Assert.Contains("Do not tighten the cap, shake, warm or move it", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("urn the bottle over", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("1 Yeast", flowing, StringComparison.Ordinal);
    }

    [Fact]
    public void ASilicateStockIsNotSavedByAcid()
    {
        var answer = Diagnose(Silicate, "white flocs");

        var flowing = Flowing(answer.Out);
        Assert.DoesNotContain("bring the pH below 8", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("It stays dissolved at pH", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("or below", flowing, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("brown fumes come out", "nitrogen oxide")]
    [InlineData("it smells of rotten eggs", "hydrogen sulfide")]
    [InlineData("smells of swimming pool", "chlorine")]
    [InlineData("biting smell of ammonia", "ammonia")]
    [InlineData("the bottle bulges", "pressure from fermentation")]
    [InlineData("the bottle got hot", "hot")]
    [InlineData("it makes me cough", "chlorine")]
    public void ASignOfDangerCountsWhateverTheRecipeSays(string seen, string danger)
    {
        var answer = Cli.Run("diagnose", "examples/quillmere/stocks/part-b.stock.json", "--seen", seen);

        var flowing = Flowing(answer.Out);
        Assert.Equal(1, answer.Code);
        Assert.Contains("danger", flowing, StringComparison.Ordinal);
        Assert.Contains(danger, flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing looks wrong", flowing, StringComparison.Ordinal);
        Assert.DoesNotContain("urn the bottle over", flowing, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void NobodyIsAskedToSmellAtABottleWithBleachAndAmmonium()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", BleachWithAmmonium);
        var answer = Cli.RunIn(scratch.Path, "1\n1\n1\n1\n"u8.ToArray(), "diagnose", "a.stock.json", "--ask");

        Assert.DoesNotContain("smell of?", answer.Out, StringComparison.Ordinal);
        Assert.Contains("danger", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NitricWithAceticIsRepairedOnlyByTakingOneOut()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", NitricWithAcetic);
        var answer = Cli.RunIn(scratch.Path, null, "check", "a.stock.json", "--repairs");

        Assert.DoesNotContain("of water first instead of", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("pour-more", answer.Out, StringComparison.Ordinal);
    }

    private static void NothingIsTried(string text)
    {
        Assert.DoesNotContain("   test", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   save it", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   change", text, StringComparison.Ordinal);
        Assert.DoesNotContain("What would tell more", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing looks wrong", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Use it.", text, StringComparison.Ordinal);
    }

    private static Answer Diagnose(string stock, string seen)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", stock);
        return Cli.RunIn(scratch.Path, null, "diagnose", "a.stock.json", "--seen", seen);
    }

    private static string Flowing(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>"It is what the recipe gives" was all that a reading of these brought, with exit code 0.</summary>
    [Theory]
    [InlineData("potassium-bicarbonate", "citric-acid-h2o")]
    [InlineData("malic-acid", "sodium-bicarbonate")]
    [InlineData("hydrogen-peroxide-35", "copper-sulfate-5h2o")]
    public void AReadingOfADangerousBottleIsNoReasonToLookForSlips(string one, string other)
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", $$"""
            {"format": 1, "makes": "1 L", "steps": [{"pour": "700 mL"}, {"add": "{{one}}", "amount": "50 g"}, {"add": "{{other}}", "amount": "50 g"}, {"topUp": "1 L"}]}
            """);

        var answer = Cli.RunIn(folder.Path, null, "diagnose", "a.stock.json", "--measured", "pH 5.0");

        Assert.Equal(1, answer.Code);
        Assert.Contains("   danger ", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("what the recipe gives", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("single slip", answer.Out, StringComparison.Ordinal);
        Assert.Contains("compared with nothing", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Burnt lime was "contents nobody can name": it is known well, boils in lumps and leaves lye.</summary>
    [Theory]
    [InlineData("check")]
    [InlineData("order")]
    [InlineData("bench-sheet")]
    [InlineData("proof")]
    public void BurntLimeHasATextOfItsOwn(string command)
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """
            {"format": 1, "makes": "10 L", "steps": [{"pour": "8 L", "of": "distilled"}, {"add": "burnt lime", "amount": "500 g"}, {"topUp": "10 L"}]}
            """);

        var answer = Cli.RunIn(folder.Path, null, command, "a.stock.json");
        var text = string.Join(' ', answer.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal(1, answer.Code);
        Assert.Contains("slakes with water: lumps boil and spit", text, StringComparison.Ordinal);
        Assert.DoesNotContain("urnt lime with burnt lime", text, StringComparison.Ordinal);
        if (command != "check")
        {
            Assert.Contains("brushed off before any water", text, StringComparison.Ordinal);
        }
    }
}

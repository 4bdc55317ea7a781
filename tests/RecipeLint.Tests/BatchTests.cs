using System.Text.Json.Nodes;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What happened afterwards, against what was foretold.</summary>
public sealed class BatchTests
{
    private const string Clear = """{"format": 1, "name": "MKP", "makes": "1 L", "keep": {"at": "15..25 °C"}, "steps": [{"add": "monopotassium-phosphate", "amount": "40 g", "assay": "99 %", "id": "mkp"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private const string Gypsum = """{"format": 1, "name": "Mix", "makes": "1 L", "keep": {"at": "15..25 °C"}, "steps": [{"add": "calcium-nitrate-4h2o", "amount": "60 g", "assay": "99 %", "id": "cn"}, {"add": "magnesium-sulfate-7h2o", "amount": "60 g", "assay": "99 %", "id": "epsom"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private static readonly global::Json.Schema.JsonSchema _schema = global::Json.Schema.JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Reports.Tests.Support.Repository.Root, "schema", "score.schema.json")));

    [Theory]
    [InlineData("""[{"step": "mkp", "amount": "40.1 g"}]""", "[]", "[]", "")]
    [InlineData("""[{"step": "mkp", "amount": "44 g"}]""", "[]", "[]", "RL0615 batch-weighed-off")]
    [InlineData("""[{"step": "mkp", "amount": "0 g"}]""", "[]", "[]", "RL0615 batch-weighed-off")]
    [InlineData("[]", """[{"pH": 6.9}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("[]", """[{"pH": 4.3}]""", "[]", "")]
    [InlineData("[]", """[{"weight": "2 kg"}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("[]", """[{"EC": "9 mS/cm", "dilution": "1:100"}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("[]", "[]", """[{"what": "white flocs", "at": "20 °C"}]""", "RL0617 batch-deposit-not-foreseen")]
    [InlineData("[]", "[]", """[{"what": "Clear, nothing at the bottom"}]""", "")]
    [InlineData("[]", "[]", """[{"what": "no deposit, no smell"}]""", "")]
    [InlineData("[]", "[]", """[{"what": "looks as it should"}]""", "")]
    [InlineData("[]", "[]", """[{"what": "clear, but the bottle is swollen"}]""", "RL0712 batch-danger-noticed")]
    [InlineData("[]", "[]", """[{"what": "smells of swimming pool"}]""", "RL0712 batch-danger-noticed")]
    [InlineData("[]", "[]", """[{"what": "it hisses when opened and my eyes water"}]""", "RL0712 batch-danger-noticed")]
    public void TheRecordIsHeldAgainstTheStock(string steps, string readings, string seen, string expected)
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("1.batch.json", Batch("mkp", steps, readings, seen));
        var found = Cli.RunIn(scratch.Path, null, "check", ".").Findings.Where(f => f.StartsWith("1.batch.json", StringComparison.Ordinal)).ToList();

        Assert.Equal(expected.Length > 0 ? 1 : 0, found.Count);
        Assert.All(found, f => Assert.Contains(expected, f, StringComparison.Ordinal));
    }

    /// <summary>A hit, a false alarm, a miss and a rightly quiet one, counted by hand.</summary>
    [Fact]
    public void ScoreCountsWhatWasForetoldAndSeen()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("mix.stock.json", Gypsum);
        scratch.Write("1.batch.json", Batch("mix", "[]", "[]", """[{"what": "white needles at the bottom", "at": "20 °C"}]"""));
        scratch.Write("2.batch.json", Batch("mix", "[]", "[]", """[{"what": "clear", "at": "20 °C"}]"""));
        scratch.Write("3.batch.json", Batch("mkp", "[]", """[{"pH": 4.3}, {"pH": 6.9}]""", """[{"what": "white flocs", "at": "20 °C"}]"""));
        scratch.Write("4.batch.json", Batch("mkp", "[]", "[]", """[{"what": "clear"}]"""));
        var score = Score(scratch.Path);
        var gypsum = score["rules"]!.AsArray().Single(r => (string?)r!["rule"] == "calcium-with-sulfate")!;

        Assert.Equal((4, 4, 1), ((int)score["batches"]!, (int)score["looked"]!, (int)score["rightlyQuiet"]!));
        Assert.Equal((1, 1), ((int)gypsum["hits"]!, (int)gypsum["falseAlarms"]!));
        Assert.Equal(1, (int)score["missedByAll"]! + score["rules"]!.AsArray().Sum(r => (int)r!["misses"]!));
        Assert.Equal((1, 2), ((int)score["readings"]![0]!["inside"]!["hits"]!, (int)score["readings"]![0]!["inside"]!["of"]!));
        Assert.Contains("calcium-with-sulfate", Cli.RunIn(scratch.Path, null, "score", ".").Out, StringComparison.Ordinal);
    }

    /// <summary>
    /// By hand: the phosphate comes to pH 4.3, over the 4.2 that this shop allows. A pH of 4.35 says the same, one of 3.9 does not; of a stock that the
    /// rule keeps quiet about, a pH over the limit is a miss.
    /// </summary>
    [Fact]
    public void RulesOnPhAreHeldAgainstThePhThatWasRead()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{"rules": {"stock-ph-outside-range": {"highest": 4.2}}}""");
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("acid.stock.json", Clear.Replace("{\"topUp\"", "{\"add\": \"phosphoric-85\", \"amount\": \"4 g\"}, {\"topUp\"", StringComparison.Ordinal));
        scratch.Write("1.batch.json", Batch("mkp", "[]", """[{"pH": 4.35}]""", "[]"));
        scratch.Write("2.batch.json", Batch("mkp", "[]", """[{"pH": 3.9}]""", "[]"));
        scratch.Write("3.batch.json", Batch("acid", "[]", """[{"pH": 4.6}, {"pH": 6.1, "dilution": "1:100"}]""", "[]"));
        var score = Score(scratch.Path);
        var rule = score["phRules"]!.AsArray().Single(r => (string?)r!["rule"] == "stock-ph-outside-range")!;
        Assert.Equal((1, 1, 1), ((int)rule["hits"]!, (int)rule["misses"]!, (int)rule["falseAlarms"]!));
        Assert.Equal((1, 2), ((int)rule["rightWhenItSpeaks"]!["hits"]!, (int)rule["rightWhenItSpeaks"]!["of"]!));
        Assert.Contains("stock-ph-outside-range", Cli.RunIn(scratch.Path, null, "score", ".").Out, StringComparison.Ordinal);
    }

    /// <summary>Bleach and acid: foretold, and somebody smelt it. Bleach and acid that nobody smelt is a false alarm; a smell of chlorine from phosphate a miss.</summary>
    [Fact]
    public void DangersAndWeightsAreGradedToo()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("bleach.stock.json", """{"format": 1, "name": "Bleach", "makes": "1 L", "steps": [{"pour": "0.7 L", "of": "distilled"}, {"add": "sodium-hypochlorite-5", "amount": "20 mL", "id": "bleach"}, {"add": "nitric-38", "amount": "20 mL", "id": "acid"}, {"topUp": "1 L", "of": "distilled"}]}""");
        scratch.Write("1.batch.json", Batch("bleach", "[]", "[]", """[{"what": "smells of chlorine"}]"""));
        scratch.Write("2.batch.json", Batch("bleach", "[]", "[]", """[{"what": "clear, no smell"}]"""));
        scratch.Write("3.batch.json", Batch("mkp", """[{"step": "mkp", "amount": "40.1 g"}]""", "[]", """[{"what": "smells of chlorine"}]"""));
        scratch.Write("4.batch.json", Batch("mkp", """[{"step": "mkp", "amount": "50 g"}]""", "[]", "[]"));
        var score = Score(scratch.Path);
        var chlorine = score["hazards"]!.AsArray().Single(r => (string?)r!["rule"] == "chlorine gas")!;
        Assert.Equal((1, 1, 1), ((int)chlorine["hits"]!, (int)chlorine["misses"]!, (int)chlorine["falseAlarms"]!));
        Assert.Equal((1, 2), ((int)score["weights"]!["hits"]!, (int)score["weights"]!["of"]!));
        Assert.Contains("no leave to mix it", Cli.RunIn(scratch.Path, null, "score", ".", "--width", "300").Out, StringComparison.Ordinal);
    }

    private const string Feed = """{"format": 1, "name": "Feed", "final": "10 L", "volume": "made up", "water": "distilled", "doses": [{"stock": "mkp.stock.json", "dose": "10 mL/L"}, {"add": "calcium-nitrate-4h2o", "amount": "8 g", "id": "cn"}], "targets": {"EC": "1 mS/cm ± 20 %"}}""";

    /// <summary>100 mL of 40 g/L and 8 g of calcium nitrate in 10 L: pH 4.8 (potassium dihydrogen phosphate), 1.1 mS/cm (1.21 by limiting conductivities, a tenth less for the ions on each other), clear.</summary>
    [Theory]
    [InlineData("""[{"step": "mkp", "amount": "101 mL"}, {"step": "cn", "amount": "8.1 g"}]""", "[]", "[]", "")]
    [InlineData("""[{"step": "mkp", "amount": "0.12 L"}]""", "[]", "[]", "RL0615 batch-weighed-off")]
    [InlineData("""[{"step": "cn", "amount": "0 g"}]""", "[]", "[]", "RL0615 batch-weighed-off")]
    [InlineData("""[{"step": "cn", "add": "potassium-nitrate", "amount": "8 g"}]""", "[]", "[]", "RL0615 batch-weighed-off")]
    [InlineData("[]", """[{"pH": 4.9}, {"EC": "1.1 mS/cm"}]""", "[]", "")]
    [InlineData("[]", """[{"pH": 8.4}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("[]", """[{"EC": "2.2 mS/cm"}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("""[{"add": "koh-10", "amount": "30 mL"}]""", """[{"pH": 4.9}]""", "[]", "RL0616 batch-reading-off")]
    [InlineData("[]", "[]", """[{"what": "clear", "after": "2 days", "at": "20 °C"}]""", "")]
    [InlineData("[]", "[]", """[{"what": "white flocs", "after": "2 days", "at": "18..22 °C"}]""", "RL0617 batch-deposit-not-foreseen")]
    [InlineData("[]", "[]", """[{"what": "smells of swimming pool"}]""", "RL0712 batch-danger-noticed")]
    [InlineData("[]", """[{"weight": "1 kg"}]""", "[]", "A tank is not weighed")]
    [InlineData("[]", """[{"pH": 5.2, "dilution": "1:10"}]""", "[]", "A tank is read as it is")]
    [InlineData("""[{"step": "mkp", "amount": "40 g"}]""", "[]", "[]", "takes a stock: record a volume")]
    [InlineData("""[{"step": "cn", "amount": "40 mL"}]""", "[]", "[]", "takes a solid")]
    [InlineData("""[{"step": "mkp", "add": "potassium-nitrate", "amount": "4 g"}]""", "[]", "[]", "no substance goes in its place")]
    [InlineData("""[{"step": "adjust", "amount": "4 mL"}]""", "[]", "[]", "has no dose 'adjust'")]
    [InlineData("""[{"step": "calcium-nitrate-4h2o", "amount": "8 g"}]""", "[]", "[]", "Did you mean 'cn'?")]
    public void TheRecordOfATankIsHeldAgainstTheRecipe(string steps, string readings, string seen, string expected)
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("feed.recipe.json", Feed);
        scratch.Write("1.batch.json", Tank(steps, readings, seen));
        var answer = Cli.RunIn(scratch.Path, null, "check", "1.batch.json", "--width", "1000");
        var found = answer.Findings.Where(f => f.StartsWith("1.batch.json", StringComparison.Ordinal)).ToList();

        Assert.Equal(expected.Length > 0 ? 1 : 0, found.Count);
        var told = string.Join('\n', answer.Out.Split("\n\n").Where(b => b.StartsWith("1.batch.json", StringComparison.Ordinal)));
        Assert.Contains(expected, told, StringComparison.Ordinal);
        Assert.DoesNotContain("bottle", told, StringComparison.Ordinal);
    }

    /// <summary>In a tank of another size what is stated for each litre grows with it, and a weight in proportion.</summary>
    [Fact]
    public void ATankOfAnotherSizeTakesAsMuchMore()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("feed.recipe.json", Feed);
        scratch.Write("1.batch.json", Tank("""[{"step": "mkp", "amount": "2 L"}, {"step": "cn", "amount": "160 g"}]""", "[]", "[]").Replace("\"made\"", "\"batch\": \"200 L\", \"made\"", StringComparison.Ordinal));
        Assert.Empty(OfRecord(scratch));
        var shown = Cli.RunIn(scratch.Path, null, "show", "1.batch.json");
        Assert.Equal(0, shown.Code);
        Assert.Contains("Feed, 200 L, mixed 2026-03-02", shown.Out, StringComparison.Ordinal);
        Assert.Matches("cn|calcium nitrate tetrahydrate +160 g +160 g +0 %", shown.Out);
    }

    /// <summary>
    /// By hand: hard water with phosphate and 8 pH clouds (a hit, and a false alarm where it stayed clear), the plain feed is rightly quiet. The feed
    /// comes to 1.1 mS/cm, inside its target; a tank read at 1.6 is a miss of the rule on EC.
    /// </summary>
    [Fact]
    public void RulesOnRecipesAreGradedByTanks()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("feed.recipe.json", Feed);
        scratch.Write("cloudy.recipe.json", Feed.Replace("{\"add\": \"calcium", "{\"add\": \"koh-10\", \"amount\": \"30 mL\"}, {\"add\": \"calcium", StringComparison.Ordinal));
        scratch.Write("1.batch.json", Tank("[]", "[]", """[{"what": "white flocs at the bottom", "at": "20 °C"}]""").Replace("feed.", "cloudy.", StringComparison.Ordinal));
        scratch.Write("2.batch.json", Tank("[]", "[]", """[{"what": "clear", "at": "20 °C"}]""").Replace("feed.", "cloudy.", StringComparison.Ordinal));
        scratch.Write("3.batch.json", Tank("[]", """[{"EC": "1.1 mS/cm"}, {"EC": "1.6 mS/cm"}]""", """[{"what": "clear", "at": "20 °C"}]"""));
        var score = Score(scratch.Path);
        JsonNode Rule(string name) => score["tankRules"]!.AsArray().Single(r => (string?)r!["rule"] == name)!;
        var (fallen, ec) = (Rule("tank-precipitate"), Rule("ec-outside-window"));

        Assert.Equal((3, 3, 1), ((int)score["batches"]!, (int)score["looked"]!, (int)score["rightlyQuiet"]!));
        Assert.Equal((1, 1, 0), ((int)fallen["hits"]!, (int)fallen["falseAlarms"]!, (int)fallen["misses"]!));
        Assert.Equal((0, 0, 1), ((int)ec["hits"]!, (int)ec["falseAlarms"]!, (int)ec["misses"]!));
        Assert.Equal((1, 2), ((int)score["tankReadings"]![0]!["inside"]!["hits"]!, (int)score["tankReadings"]![0]!["inside"]!["of"]!));
        Assert.Empty(score["readings"]!.AsArray());
        var text = Cli.RunIn(scratch.Path, null, "score", ".").Out;
        Assert.Contains("tank-precipitate", text, StringComparison.Ordinal);
        Assert.DoesNotContain("rules on recipes", text, StringComparison.Ordinal);
    }

    /// <summary>A begun record names the edition; a note in the file keeps it, another weight does not, and then nothing is held against it.</summary>
    [Fact]
    public void ABatchOfAnEarlierEditionIsNotHeldAgainstTheFile()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "bench-sheet", "mkp.stock.json", "--record", "1.batch.json").Code);
        var begun = File.ReadAllText(Path.Combine(scratch.Path, "1.batch.json"));
        Assert.Equal("mkp", (string?)JsonNode.Parse(begun)!["steps"]![0]!["step"]);
        Assert.Matches("^[0-9a-f]{12}$", (string?)JsonNode.Parse(begun)!["edition"]);
        scratch.Write("1.batch.json", begun.Replace("\"mkp\" }", "\"mkp\", \"amount\": \"40.2 g\" }", StringComparison.Ordinal));
        Assert.Empty(OfRecord(scratch));

        scratch.Write("mkp.stock.json", Clear.Replace("\"makes\"", "\"note\": \"the new bag\",\r\n \"makes\"", StringComparison.Ordinal));
        Assert.Empty(OfRecord(scratch));

        scratch.Write("mkp.stock.json", Clear.Replace("40 g", "60 g", StringComparison.Ordinal));
        Assert.Contains("RL0618 batch-of-earlier-edition", Assert.Single(OfRecord(scratch)), StringComparison.Ordinal);
        Assert.Equal("1.batch.json", (string?)Score(scratch.Path)["leftOut"]![0]);
        var sheet = Cli.RunIn(scratch.Path, null, "bench-sheet", "mkp.stock.json", "--actual", "1.batch.json");
        Assert.Equal(2, sheet.Code);
        Assert.Contains("an earlier edition of 'mkp.stock.json'", sheet.Error, StringComparison.Ordinal);
    }

    /// <summary>A change of a stock that a tank was dosed from is a change of what was mixed.</summary>
    [Fact]
    public void TheEditionOfATankIsThatOfItsStocksToo()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("feed.recipe.json", Feed);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "bench-sheet", "feed.recipe.json", "--record", "1.batch.json", "--batch", "20 L").Code);
        Assert.Contains("\"batch\": \"20 L\"", File.ReadAllText(Path.Combine(scratch.Path, "1.batch.json")), StringComparison.Ordinal);
        Assert.Empty(OfRecord(scratch));
        scratch.Write("mkp.stock.json", Clear.Replace("40 g", "60 g", StringComparison.Ordinal));
        Assert.Contains("RL0618", Assert.Single(OfRecord(scratch)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mkp.stock.json", "1.json", "ends in .batch.json")]
    [InlineData("mkp.stock.json", "there.batch.json", "is there already")]
    [InlineData("missing.stock.json", "1.batch.json", "does not exist")]
    [InlineData("broken.stock.json", "1.batch.json", "volume can be read")]
    [InlineData("mkp.stock.json", "no/such/1.batch.json", "")]
    public void ARecordIsBegunOnlyWhereItCanBe(string file, string record, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("broken.stock.json", """{"format": 1, "makes": "a lot", "steps": []}""");
        scratch.Write("there.batch.json", Batch("mkp", "[]", "[]", "[]"));
        var answer = Cli.RunIn(scratch.Path, null, "bench-sheet", file, "--record", record);
        Assert.Equal(said.Length > 0 ? 2 : 0, answer.Code);
        Assert.Contains(said, answer.Error, StringComparison.Ordinal);
    }

    private static List<string> OfRecord(Scratch scratch) =>
        [.. Cli.RunIn(scratch.Path, null, "check", "1.batch.json").Findings.Where(f => f.StartsWith("1.batch.json", StringComparison.Ordinal))];

    /// <summary>A sound record of the same stock was not mixed from what the wrong one holds.</summary>
    [Fact]
    public void OtherRecordsSayNothingOfABatch()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{}");
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("1.batch.json", Batch("mkp", """[{"step": "mkp", "amount": "60 g"}]""", "[]", "[]"));
        scratch.Write("2.batch.json", Batch("mkp", """[{"step": "mkp", "amount": "40.1 g"}]""", """[{"EC": "0.6 mS/cm", "dilution": "1:100"}, {"weight": "1.03 kg"}]""", "[]"));
        var sheet = Cli.RunIn(scratch.Path, null, "bench-sheet", "mkp.stock.json", "--actual", "1.batch.json", "--width", "1000");
        Assert.Equal(1, sheet.Code);
        Assert.DoesNotContain("RL061", sheet.Out, StringComparison.Ordinal);
    }

    private static string Tank(string steps, string readings, string seen) =>
        $$"""{"format": 1, "recipe": "feed.recipe.json", "made": "2026-03-02", "steps": {{steps}}, "readings": {{readings}}, "seen": {{seen}}}""";

    private static JsonNode Score(string folder)
    {
        var text = Cli.RunIn(folder, null, "score", ".", "--format", "json").Out;
        using var document = System.Text.Json.JsonDocument.Parse(text);
        Assert.True(_schema.Evaluate(document.RootElement).IsValid);
        return JsonNode.Parse(text)!;
    }

    /// <summary>Whoever copies the name of a salt out of the stock file is told the id of its step.</summary>
    [Fact]
    public void ASaltInTheNameOfAStepIsAnsweredWithTheStep()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("1.batch.json", Batch("monopotassium-phosphate", """[{"step": "monopotassium-phosphate", "amount": "40.1 g"}]""", "[]", "[]").Replace("monopotassium-phosphate.stock", "mkp.stock", StringComparison.Ordinal));
        Assert.Contains("Did you mean 'mkp'?", Cli.RunIn(scratch.Path, null, "check", "1.batch.json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutRecordsThereIsNothingToGrade()
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        var answer = Cli.RunIn(scratch.Path, null, "score", ".");
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    /// <summary>Records that mean harm: a finding, never a fault.</summary>
    [Theory]
    [InlineData("""[{"step": "mkp", "amount": "1e300 kg"}]""", "[]", "[]")]
    [InlineData("""[{"step": "mkp", "add": "KNO3", "amount": "5 g"}, {"add": "no-such-salt", "amount": "1 g"}]""", "[]", "[]")]
    [InlineData("[]", """[{"pH": 4.3, "dilution": "1:1000000"}, {"weight": "1e-300 g", "of": "1e300 L"}]""", "[]")]
    [InlineData("[]", "[]", """[{"what": "ice", "at": "-200..900 °C"}, {"what": "\u001b[2J", "at": "no-site"}, {"what": "x", "after": "1e300 years"}]""")]
    public void RecordsThatMeanHarmNeverEndInAFault(string steps, string readings, string seen)
    {
        using var scratch = new Scratch();
        scratch.Write("mkp.stock.json", Clear);
        scratch.Write("1.batch.json", Batch("mkp", steps, readings, seen));
        foreach (var command in (string[])["check", "score"])
        {
            var answer = Cli.RunIn(scratch.Path, null, command, ".");
            Assert.True(answer.Code is 0 or 1 or 2, answer.Error);
            Assert.DoesNotContain('\u001b', answer.Out);
        }
    }

    private static string Batch(string stock, string steps, string readings, string seen) =>
        $$"""{"format": 1, "stock": "{{stock}}.stock.json", "made": "2026-02-10", "steps": {{steps}}, "readings": {{readings}}, "seen": {{seen}}}""";
}

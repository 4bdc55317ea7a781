using System.Text.Json.Nodes;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The examples of the README do what the README says.</summary>
public sealed class ExampleTests
{
    private const string Draft = "examples/quillmere-first-draft/";

    private const string Garden = "examples/fennelwick/";

    /// <summary>Every mistake planted in the first draft: file, line, rule, and the words that name the cause.</summary>
    public static TheoryData<string, int, string, string> Planted => new()
    {
        { "stocks/part-a.stock.json", 13, "duplicate-substance", "twice" },
        { "stocks/part-b.stock.json", 12, "calcium-with-sulfate", "gypsum" },
        { "recipes/lettuce.recipe.json", 18, "target-missed", "mixed-up hydrate" },
        { "recipes/lettuce.recipe.json", 16, "target-missed", "factor of P in P2O5" },
        { "recipes/spinach.recipe.json", 17, "target-missed", "factor of N in nitrate" },
        { "recipes/seedlings.recipe.json", 11, "dose-contradicts-dilution", "1:1000" },
        { "recipes/basil.recipe.json", 10, "missing-reference", "basil-calcium.stock.json" },
        { "stocks/trace.stock.json", 14, "phosphate-in-trace-stock", "zinc" },
        { "stocks/trace.stock.json", 9, "carbon-without-preservative", "vinegar" },
        { "stocks/trace.stock.json", 15, "below-scale-resolution", "2 display steps" },
        { "stocks/trace.stock.json", 7, "undeclared-assay", "vinegar" },
        { "stocks/bloom.stock.json", 1, "unused-stock", "Bloom" },
        { "stocks/basil.stock.json", 4, "ambiguous-unit", "gal" },
        { "stocks/basil.stock.json", 6, "unknown-key", "fro" },
        { "stocks/basil.stock.json", 9, "unknown-substance", "potassium-nitrate" },
        { "stocks/basil.stock.json", 10, "ambiguous-substance", "1.602" },
        { "stocks/basil.stock.json", 10, "ambiguous-number", "7.5" },
        { "stocks/basil.stock.json", 11, "ambiguous-unit", "ppm" },
        { "stocks/basil.stock.json", 12, "number-without-unit", "unit" },
    };

    [Fact]
    public void TheCleanExampleIsClean()
    {
        var answer = Cli.Run("check", "examples/quillmere", "--fail-on", "note");

        Assert.Equal(0, answer.Code);
        Assert.Empty(answer.Findings);
        Assert.Contains("7 files checked, and no rule objects.", answer.Out);
    }

    /// <summary>Labels as bags and bottles print them, all of them invented.</summary>
    [Fact]
    public void TheInventedProductsAreClean()
    {
        var answer = Cli.Run("check", "examples/orlinghythe", "--fail-on", "warning");

        Assert.Equal(0, answer.Code);
        Assert.Contains("The label names EDTA: Fe, Mn, Zn and Cu", answer.Out.ReplaceLineEndings(" ").Replace("  ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    /// <summary>The shop of tables, prices, batches and rules of its own: one record tells of the wrong bag, and that is all there is to say.</summary>
    [Fact]
    public void TheSharedGardenHasTheOneFindingThatItsRecordsTellOf()
    {
        var answer = Cli.Run("check", Garden, "--fail-on", "error");

        Assert.Equal(0, answer.Code);
        var finding = Assert.Single(answer.Findings);
        Assert.StartsWith($"{Garden}batches/b-2026-04-13.batch.json:8:", finding, StringComparison.Ordinal);
        Assert.Contains("RL0615 batch-weighed-off", finding, StringComparison.Ordinal);
        Assert.Equal(0, Cli.Run("rules", "--test", Garden).Code);
        Assert.Contains("EUR a litre", Cli.Run("show", Garden + "recipes/tomato.recipe.json").Out, StringComparison.Ordinal);
    }

    /// <summary>What was brought in is what stands in the files: the same salts with the same weights, scales and assays, the same water.</summary>
    [Fact]
    public void TheTablesOfTheGardenAreWhatItsFilesWereMadeOf()
    {
        using var scratch = new Scratch();
        var into = scratch.Path;
        Assert.Equal(0, Cli.Run("import", Garden + "tables/shed.csv", "--mapping", Garden + "tables/shed-columns.json", "--makes", "5 L", "--dose", "10 mL/L", "--into", into).Code);
        Assert.Equal(0, Cli.Run("import", Garden + "tables/well.xlsx", "--into", into).Code);
        foreach (var name in new[] { "a.stock.json", "b.stock.json" })
        {
            Assert.Equal(Additions(Read(Path.Combine(into, name))), Additions(Read(Path.Combine(Repository.Root, Garden, "stocks", name))));
        }

        Assert.Equal(
            Read(Path.Combine(into, "well.water.json"))["ions"]!.ToJsonString(),
            Read(Path.Combine(Repository.Root, Garden, "water/well.water.json"))["ions"]!.ToJsonString());

        static JsonNode Read(string path) => JsonNode.Parse(File.ReadAllText(path))!;

        static List<string> Additions(JsonNode stock) => [.. stock["steps"]!.AsArray().Where(s => s!["add"] is not null).Select(s => s!.ToJsonString())];
    }

    [Fact]
    public void TheRecordsOfTheGardenGradeTheRules()
    {
        var score = JsonNode.Parse(Cli.Run("score", Garden, "--format", "json").Out)!;
        var gypsum = score["rules"]!.AsArray().Single(r => (string?)r!["rule"] == "calcium-with-sulfate")!;
        Assert.Equal((6, 5, 1), ((int)score["batches"]!, (int)score["rightlyQuiet"]!, (int)gypsum["hits"]!));
        Assert.All(score["readings"]!.AsArray().Concat(score["tankReadings"]!.AsArray()), r => Assert.Equal((int)r!["inside"]!["of"]!, (int)r["inside"]!["hits"]!));
    }

    [Fact]
    public void AllExamplesTogetherFail() => Assert.Equal(1, Cli.Run("check", "examples").Code);

    [Theory]
    [MemberData(nameof(Planted))]
    public void EveryPlantedMistakeIsNamedByItsOwnCause(string file, int line, string rule, string cause)
    {
        var lines = Cli.Run("check", Draft).Out.Split('\n');
        var starts = Enumerable.Range(0, lines.Length)
            .Where(i => lines[i].StartsWith($"{Draft}{file}:{line}:", StringComparison.Ordinal) && lines[i].Contains(' ' + rule));
        var messages = starts.Select(i => string.Join(' ', lines.Skip(i + 1).TakeWhile(l => l.Length > 0).Select(l => l.Trim()))).ToList();

        Assert.Contains(messages, m => m.Contains(cause, StringComparison.Ordinal));
    }

    [Fact]
    public void TheReadmeShowsRealOutput()
    {
        var readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        var shown = readme.Split("## What it looks like")[1].Split("```")[1].Trim('\n').Split('\n');
        var printed = Cli.Run("check", Draft).Out.Split('\n').ToHashSet(StringComparer.Ordinal);

        Assert.True(shown.Length > 20, "the README shows no screen of output");
        Assert.All(shown, line => Assert.Contains(line, printed));
    }

    [Fact]
    public void TextKeepsToAHundredColumns()
    {
        var tooLong = Cli.Run("check", "examples").Out.Split('\n')
            .Where(l => l.Length > 100 && !l.Contains(".json:", StringComparison.Ordinal));

        Assert.Empty(tooLong);
    }

    [Theory]
    [InlineData("examples/quillmere")]
    [InlineData("examples/quillmere-first-draft")]
    [InlineData("examples")]
    public void SarifOfAnExampleFitsTheOasisSchema(string path)
    {
        var answer = Cli.Run("check", path, "--format", "sarif");

        Assert.Empty(SarifSchema.Problems(answer.Out));
        Assert.Equal('{', answer.Out[0]);
    }

    [Fact]
    public void TheFormatNeverChangesTheExitCode()
    {
        foreach (var failOn in new[] { "error", "warning", "note", "never" })
        {
            Assert.Equal(
                Cli.Run("check", "examples", "--fail-on", failOn).Code,
                Cli.Run("check", "examples", "--fail-on", failOn, "--format", "sarif").Code);
        }
    }

    [Fact]
    public void TwoRunsGiveTheSameBytes()
    {
        Assert.Equal(Cli.Run("check", "examples").Out, Cli.Run("check", "examples").Out);
        Assert.Equal(Cli.Run("check", "examples", "--format", "sarif").Out, Cli.Run("check", "examples", "--format", "sarif").Out);
    }

    /// <summary>Of two labels in one stock only the first was said to be read as chelated.</summary>
    [Fact]
    public void EachLabelIsToldWhatIsAssumedOfIt()
    {
        using var folder = new Scratch();
        folder.Write("p.substances.json", """
            {"format": 1, "substances": [
              {"id": "iron", "name": "Iron (invented)", "label": {"basis": "element", "Fe": "0.3 %", "chelatedWith": "EDTA"}},
              {"id": "traces", "name": "Traces (invented)", "label": {"basis": "element", "Fe": "3 %", "Mn": "2 %", "chelatedWith": "DTPA"}}]}
            """);
        folder.Write("t.stock.json", """
            {"format": 1, "name": "T", "makes": "1 L", "steps": [{"pour": "600 mL", "of": "distilled"}, {"add": "iron", "amount": "20 g"},
             {"add": "traces", "amount": "10 g"}, {"topUp": "1 L", "of": "distilled"}]}
            """);

        var said = string.Join(' ', Cli.RunIn(folder.Path, null, "check", ".").Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("The label names EDTA: Fe, given as one figure", said, StringComparison.Ordinal);
        Assert.Contains("The label names DTPA: Fe and Mn, given as one figure", said, StringComparison.Ordinal);
    }
}

using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The examples of the README do what the README says.</summary>
public sealed class ExampleTests
{
    private const string Draft = "examples/quillmere-first-draft/";

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
}

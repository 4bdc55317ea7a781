using System.Text;
using System.Text.Json;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Exit codes, streams and options of the command line.</summary>
public sealed class UsageTests
{
    private const string Stock = """
        {
          "format": 1,
          "makes": "1 L",
          "steps": [
            { "pour": "700 mL" },
            { "add": "calcium-nitrate-4h2o", "amount": "90 g", "assay": "99 %" },
            { "topUp": "1 L" }
          ]
        }
        """;

    public static TheoryData<string[]> WrongUsage => new()
    {
        Array.Empty<string>(),
        new[] { "check" },
        new[] { "check", "no-such-file.stock.json" },
        new[] { "check", "no-such-folder" },
        new[] { "check", "nothing-*.stock.json" },
        new[] { "check", "README.md" },
        new[] { "check", "schema" },
        new[] { "check", "examples", "--format", "xml" },
        new[] { "check", "examples", "--fail-on", "fatal" },
        new[] { "check", "examples", "--color", "sometimes" },
        new[] { "check", "examples", "--config", "a.json", "--no-config" },
        new[] { "check", "examples", "--config", "no-such.json" },
        new[] { "check", "-" },
        new[] { "check", "examples", "--stdin-name", "a.stock.json" },
        new[] { "check", "examples", "--output", "no-such-folder/report.txt" },
        new[] { "check", "examples", "--no-such-option" },
        new[] { "check", "@examples" },
        new[] { "explain" },
        new[] { "explain", "no-such-rule" },
        new[] { "explain", "calcium-with-sulfate", "--for", "no-such.stock.json" },
        new[] { "explain", "calcium-with-sulfate", "--for", "examples/quillmere" },
        new[] { "facts" },
        new[] { "facts", "examples/quillmere" },
        new[] { "facts", "examples/quillmere/water/rain.water.json" },
        new[] { "init", "--from", "sand 3 g in 1 L" },
        new[] { "init", "--from", "KNO3 in 1 L" },
        new[] { "init", "--from", "KNO3 100 g" },
        new[] { "init", "--from", "" },
        new[] { "check", "examples", "--threads", "many" },
        new[] { "completion", "tcsh" },
        new[] { "no-such-command" },
    };

    /// <summary>A folder, an amount or a file in the place of something else: the line says where it belongs.</summary>
    [Theory]
    [InlineData("there are examples/quillmere/stocks/molybdate-pre.stock.json, ", "proof", "examples/quillmere/stocks")]
    [InlineData("there are examples/quillmere/recipes/lettuce.recipe.json, ", "facts", "examples/quillmere")]
    [InlineData("behind '--batch', such as '--batch \"2 L\"'", "bench-sheet", "2 L", "examples/quillmere/stocks/part-b.stock.json")]
    [InlineData("explain RL0101 --for examples/a.stock.json", "explain", "examples/a.stock.json")]
    [InlineData("Did you mean 'RL0101'?", "explain", "101")]
    [InlineData("here stands a mix in one line", "dissolve", "examples/quillmere/stocks/part-b.stock.json")]
    [InlineData("'examples' is a folder; name a file in it.", "import", "examples")]
    [InlineData("is no SARIF log; 'merge' takes those that 'check --shard", "merge", "examples/quillmere/recipelint.json")]
    [InlineData("or a paper size, A8 to A5", "label", "examples/quillmere/stocks/part-b.stock.json", "--size", "big")]
    [InlineData("'--size 105x74 --copies 8' lays eight on one", "label", "examples/quillmere/stocks/part-b.stock.json", "--size", "A4")]
    [InlineData("bench-sheet examples/fennelwick/stocks/a.stock.json --actual", "show", "examples/fennelwick/batches/a-2026-03-02.batch.json")]
    public void WhatStandsInTheWrongPlaceIsToldItsOwn(string told, params string[] arguments)
    {
        var answer = Cli.Run(arguments);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(told, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ALabelTakesAPaperSize()
    {
        // ISO 216: A6 is 105 by 148 mm.
        var label = Cli.Run("label", "examples/quillmere/stocks/part-b.stock.json", "--size", "a6");
        Assert.Contains("width=\"148mm\" height=\"105mm\"", label.Out, StringComparison.Ordinal);
    }

    /// <summary>Somebody who types a word for a number, or a name that is nearly one, is told in the words of the trade.</summary>
    [Theory]
    [InlineData("'--copies' takes a whole number, not 'x'.", "label", "examples/quillmere/stocks/part-b.stock.json", "--copies", "x")]
    [InlineData("'--parts' takes a whole number, not '1.5'.", "split", "examples/quillmere/recipes/lettuce.recipe.json", "--parts", "1.5")]
    [InlineData("no substances fit 'kallium'. Did you mean", "list", "substances", "kallium")]
    [InlineData("Did you mean 'potassium-nitrate'", "list", "substances", "potasium nitrate")]
    [InlineData("Did you mean 'lettuce'?", "list", "profiles", "letuce")]
    [InlineData("'KN03' is not in the catalogue; did you mean 'potassium-nitrate'?", "init", "--from", "KN03 100 g in 2 L")]
    [InlineData("cannot write to '': a folder needs a name.", "handbook", "-o", "")]
    [InlineData("cannot write to '/dev/null': it is a device.", "handbook", "-o", "/dev/null")]
    [InlineData("its name is that of a file that is read", "handbook", "-o", "a.stock.json")]
    public void ASlipOnTheCommandLineIsAnsweredWithWhatWasMeant(string says, params string[] arguments)
    {
        var answer = Cli.Run(arguments);
        Assert.Equal(2, answer.Code);
        Assert.Contains(says, answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd().Split('\n'));
        Assert.DoesNotContain("System.", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(WrongUsage))]
    public void WrongUsageIsOneLineOnStderrAndExitCodeTwo(string[] arguments)
    {
        var answer = Cli.Run(arguments);

        Assert.Equal(2, answer.Code);
        Assert.Equal("", answer.Out);
        Assert.StartsWith("recipelint: ", answer.Error, StringComparison.Ordinal);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.DoesNotContain("   at ", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check --help")]
    [InlineData("init --help")]
    [InlineData("--version")]
    [InlineData("rules")]
    [InlineData("explain RL0101")]
    [InlineData("explain calcium-with-sulfate")]
    [InlineData("facts examples/quillmere/stocks/part-a.stock.json")]
    public void QuestionsAreAnsweredOnStdout(string line)
    {
        var answer = Cli.Run(line.Split(' '));

        Assert.Equal(0, answer.Code);
        Assert.NotEqual("", answer.Out);
        Assert.Equal("", answer.Error);
    }

    [Fact]
    public void TheVersionIsThatOfTheBuild() => Assert.Matches(@"^\d+\.\d+\.\d+", Cli.Run("--version").Out);

    [Theory]
    [InlineData("never", 0)]
    [InlineData("error", 0)]
    [InlineData("warning", 1)]
    [InlineData("note", 1)]
    public void FailOnIsInclusive(string failOn, int code)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock.Replace("\"assay\": \"99 %\"", "\"assay\": \"99 %\" },\n    { \"add\": \"magnesium-sulfate-7h2o\", \"amount\": \"2.2 g\", \"assay\": \"99 %\"", StringComparison.Ordinal));
        var answer = Cli.RunIn(scratch.Path, null, "check", ".", "--fail-on", failOn);

        Assert.Equal(code, answer.Code);
        Assert.NotEmpty(answer.Findings);
    }

    [Fact]
    public void StandardInputStandsForTheNamedFile()
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, Encoding.UTF8.GetBytes(Stock.Replace("90 g", "90")), "check", "-", "--stdin-name", "stocks/a.stock.json");

        Assert.Equal(1, answer.Code);

        // Nothing marks a shop here: the folder of the file is the root that places are written from.
        Assert.Contains("a.stock.json:6:", answer.Out, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Path));
    }

    [Fact]
    public void AFileNameThatStartsWithAtIsAFileName()
    {
        using var scratch = new Scratch();
        scratch.Write("@a.stock.json", Stock);

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "check", "@a.stock.json").Code);
    }

    [Fact]
    public void TheReportGoesToTheFileAskedForAndNowhereElse()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock.Replace("90 g", "90"));
        var answer = Cli.RunIn(scratch.Path, null, "check", ".", "--format", "sarif", "--output", "out.sarif");

        Assert.Equal(1, answer.Code);
        Assert.Equal("", answer.Out);
        Assert.Equal(["a.stock.json", "out.sarif"], Directory.EnumerateFiles(scratch.Path).Select(Path.GetFileName).Order());
        var bytes = File.ReadAllBytes(Path.Combine(scratch.Path, "out.sarif"));
        Assert.Equal((byte)'{', bytes[0]);
        using var log = JsonDocument.Parse(bytes);
        Assert.NotEqual(0, log.RootElement.GetProperty("runs")[0].GetProperty("results").GetArrayLength());
    }

    [Fact]
    public void OneBadFileHidesNothingOfTheOthers()
    {
        using var scratch = new Scratch();
        scratch.Write("bad.stock.json", "{ \"format\": 1, ");
        scratch.Write("other.stock.json", Stock.Replace("90 g", "90"));
        var answer = Cli.RunIn(scratch.Path, null, "check", ".");

        Assert.Contains(answer.Findings, f => f.StartsWith("bad.stock.json", StringComparison.Ordinal) && f.Contains("malformed-file"));
        Assert.Contains(answer.Findings, f => f.StartsWith("other.stock.json", StringComparison.Ordinal) && f.Contains("number-without-unit"));
    }

    [Theory]
    [InlineData("always", "", "", false, true)]
    [InlineData("never", "", "1", true, false)]
    [InlineData("auto", "", "", true, true)]
    [InlineData("auto", "", "", false, false)]
    [InlineData("auto", "1", "", true, false)]
    [InlineData("auto", "", "1", false, true)]
    [InlineData("auto", "1", "1", true, false)]
    public void ColourFollowsTheOptionThenTheVariablesThenTheTerminal(string option, string noColor, string force, bool terminal, bool coloured)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock.Replace("90 g", "90"));
        var variables = new Dictionary<string, string> { ["NO_COLOR"] = noColor, ["FORCE_COLOR"] = force };
        var answer = Cli.RunWith(scratch.Path, null, variables, terminal, ["check", ".", "--color", option]);

        Assert.Equal(coloured, answer.Out.Contains('\u001b'));
    }

    [Fact]
    public void TheNearestSettingsHoldUnlessToldOtherwise()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "rules": { "number-without-unit": "off" } }""");
        scratch.Write("stocks/a.stock.json", Stock.Replace("90 g", "90"));
        scratch.Write("strict.json", """{ "rules": { "number-without-unit": "note" } }""");
        string[] Levels(params string[] more) => [.. Cli.RunIn(scratch.Path, null, ["check", "stocks", .. more]).Findings.Select(f => f.Split(' ')[1])];

        Assert.DoesNotContain("error", Levels());
        Assert.Contains("note", Levels("--config", "strict.json"));
        Assert.Contains("error", Levels("--no-config"));
    }
}

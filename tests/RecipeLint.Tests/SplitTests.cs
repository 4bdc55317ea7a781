using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Splitting from outside: what it prints, what it writes, and that the check has nothing against it.</summary>
public sealed class SplitTests
{
    private const string AllInOne = """
        {
          "format": 1,
          "name": "All in one",
          "makes": "1 L",
          "dose": "1:50",
          "steps": [
            { "pour": "700 mL", "of": "distilled" },
            { "add": "calcium-nitrate-4h2o", "amount": "50 g", "assay": "99 %" },
            { "add": "magnesium-sulfate-7h2o", "amount": "25 g", "assay": "99 %" },
            { "add": "monopotassium-phosphate", "amount": "12 g", "assay": "99 %" },
            { "topUp": "1 L", "of": "distilled" }
          ]
        }
        """;

    /// <summary>Families whose findings a split could be to blame for; what the plants get is the recipe's own matter.</summary>
    private static readonly string[] _ours = ["RL00", "RL01", "RL02", "RL03", "RL04", "RL06", "RL0701", "RL0703"];

    private static readonly string _published = Path.Combine(Repository.Root, "tests", "RecipeLint.Analysis.Tests", "Published");

    public static TheoryData<string> Published =>
    [
        .. Directory.GetFiles(_published, "*.recipe.json")
            .Where(f => File.ReadAllText(f).Split("\"add\"").Length > 5)
            .Select(f => Path.GetFileName(f)!)
            .Order(StringComparer.Ordinal),
    ];

    public static TheoryData<string[], string> BadInput => new()
    {
        { ["no-such-file.recipe.json"], "does not exist" },
        { ["examples/quillmere"], "takes one recipe or stock" },
        { ["examples/quillmere/water/rain.water.json"], "neither a recipe nor a stock" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--parts", "0"], "1 to 5 parts" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--parts", "two"], "two" },
        { ["examples/quillmere/water/rain.water.json", "--parts", "2"], "neither a recipe nor a stock" },
        { ["examples/quillmere/stocks/molybdate-pre.stock.json", "--parts", "2"], "fewer than the 2 parts" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--strength", "strong"], "strong" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--strength", "1:1"], "1:2 to 1:5000" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--at", "cold"], "cold" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--at", "-5..30 °C"], "0 to 45" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--batch", "10 g"], "10 g" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--batch", "0 L"], "no volume" },
        { ["examples/quillmere/recipes/lettuce.recipe.json", "--write", "README.md"], "is a file" },
    };

    [Theory]
    [MemberData(nameof(BadInput))]
    public void BadInputGetsOneLineAndExitCode2(string[] arguments, string says)
    {
        var answer = Cli.Run(["split", .. arguments]);

        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(says, answer.Error, StringComparison.Ordinal);
    }

    /// <summary>Below 0 and above 45 °C nothing is computed: what is kept there is no promise to stay clear.</summary>
    [Fact]
    public void BeyondTheModelNothingIsPromisedToStayClear()
    {
        var answer = Cli.Run("split", "tests/RecipeLint.Tests/Spoken/osierbeck/alone.recipe.json");

        Assert.Contains("Clear from 0 to 45 °C (kept at -5 to 50 °C, which the model does not reach)", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("at -5 °C", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>"Silicate solution 29 Be (8.3 % K2O, 20.8 % SiO2)" has its comma inside brackets, and no grade behind it.</summary>
    [Fact]
    public void ANameIsNotCutInsideItsBrackets()
    {
        var answer = Cli.Run("split", "tests/RecipeLint.Tests/Spoken/osierbeck/alone.recipe.json");

        Assert.DoesNotContain("K2O)", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("(8.3 % K2O ", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.Contains("(8.3 % K2O, 20.8 % SiO2)", Flowing(answer.Out), StringComparison.Ordinal);
    }

    private static string Flowing(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    [Fact]
    public void TheExampleShopGetsItsThreeStocksBack()
    {
        var answer = Cli.Run("split", "examples/quillmere/recipes/lettuce.recipe.json");

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.All(answer.Out.Split('\n'), l => Assert.InRange(l.Length, 0, 100));
        var parts = answer.Out.Split("\nPart A,")[1].Split("\nPart B,");
        Assert.Contains("calcium nitrate", parts[0], StringComparison.Ordinal);
        Assert.Contains("DTPA", parts[0], StringComparison.Ordinal);
        Assert.Contains("magnesium sulfate", parts[1].Split("\nTrace,")[0], StringComparison.Ordinal);
        Assert.Contains("Why not fewer parts", answer.Out, StringComparison.Ordinal);
        Assert.Contains("gypsum (calcium sulfate) falls out at 8 °C", answer.Out, StringComparison.Ordinal);
        Assert.Equal(answer.Out, Cli.Run("split", "examples/quillmere/recipes/lettuce.recipe.json").Out);
    }

    [Fact]
    public void WrittenPartsOfTheExamplePassItsOwnCheckAndNothingIsOverwritten()
    {
        using var scratch = new Scratch();
        var shop = Path.Combine(Repository.Root, "examples", "quillmere");
        foreach (var file in Directory.GetFiles(shop, "*.json", SearchOption.AllDirectories))
        {
            scratch.Write(Path.GetRelativePath(shop, file), File.ReadAllText(file));
        }

        var first = Cli.RunIn(scratch.Path, null, "split", "recipes/lettuce.recipe.json", "--write", "new");
        var check = Cli.RunIn(scratch.Path, null, "check", "new", "--fail-on", "warning");
        var names = Directory.GetFiles(Path.Combine(scratch.Path, "new")).Select(Path.GetFileName).Order(StringComparer.Ordinal);
        var before = File.ReadAllText(Path.Combine(scratch.Path, "new", "part-a.stock.json"));
        var second = Cli.RunIn(scratch.Path, null, "split", "recipes/lettuce.recipe.json", "--write", "new");

        Assert.Equal((0, ""), (first.Code, first.Error));
        Assert.Equal(["lettuce.recipe.json", "part-a.stock.json", "part-b.stock.json", "trace.stock.json"], names);
        Assert.True(check.Code == 0, check.Out);
        Assert.Equal(2, second.Code);
        Assert.Contains("is there already", second.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(scratch.Path, "new", "part-a.stock.json")));
        Assert.Contains("\"targets\"", File.ReadAllText(Path.Combine(scratch.Path, "new", "lettuce.recipe.json")), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Published))]
    public void WrittenPartsOfPublishedSolutionsRaiseNoWarningThatASplitCouldCause(string recipe)
    {
        using var scratch = new Scratch();
        // What marks the root: the parts in a folder below it see the products above them.
        scratch.Write("recipelint.json", "{}");
        scratch.Write("published.substances.json", File.ReadAllText(Path.Combine(_published, "published.substances.json")));
        scratch.Write(recipe, File.ReadAllText(Path.Combine(_published, recipe)));

        var split = Cli.RunIn(scratch.Path, null, "split", recipe, "--write", "parts");
        var check = Cli.RunIn(scratch.Path, null, "check", "parts", "--quiet", "--fail-on", "never");

        Assert.Equal((0, ""), (split.Code, split.Error));
        Assert.Equal("", check.Error);
        Assert.DoesNotContain(
            check.Out.Split('\n'),
            l => (l.Contains(": error ", StringComparison.Ordinal) || l.Contains(": warning ", StringComparison.Ordinal))
                && _ours.Any(o => l.Contains(" " + o, StringComparison.Ordinal)));
    }

    [Fact]
    public void OneStockWithEverythingInItIsSplitToo()
    {
        using var scratch = new Scratch();
        scratch.Write("all.stock.json", AllInOne);

        var answer = Cli.RunIn(scratch.Path, null, "split", "all.stock.json", "--strength", "1:100", "--write", "parts");
        var check = Cli.RunIn(scratch.Path, null, "facts", "parts/all.recipe.json");

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Contains("2 parts", answer.Out, StringComparison.Ordinal);
        Assert.Equal(0, check.Code);
    }

    [Fact]
    public void OnePartThatCannotBeSaysWhatFallsOutOfIt()
    {
        using var scratch = new Scratch();
        scratch.Write("all.stock.json", AllInOne);

        var answer = Cli.RunIn(scratch.Path, null, "split", "all.stock.json", "--parts", "1");

        Assert.Equal(1, answer.Code);
        Assert.Contains("in one, 1:10", answer.Out, StringComparison.Ordinal);
        Assert.Contains("gypsum (calcium sulfate) falls out", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBeSplitSaysWhichSolidAndIonsForbidIt()
    {
        using var scratch = new Scratch();
        scratch.Write("chalk.recipe.json", """
            { "format": 1, "final": "100 L", "volume": "made up", "doses": [
              { "add": "calcium-sulfate-2h2o", "amount": "50 g" }, { "add": "potassium-nitrate", "amount": "50 g" } ] }
            """);

        var answer = Cli.RunIn(scratch.Path, null, "split", "chalk.recipe.json");

        Assert.Equal(1, answer.Code);
        Assert.Contains("cannot be split", answer.Out, StringComparison.Ordinal);
        Assert.Contains("gypsum (calcium sulfate)", answer.Out, StringComparison.Ordinal);
        Assert.Contains("calcium and sulfate from calcium sulfate", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>"What it sets free in water is not known here" tells nobody what to do with the bottle.</summary>
    [Fact]
    public void AnExtractByItselfIsToldHowItIsGivenAndWhy()
    {
        using var scratch = new Scratch();
        scratch.Write("all.stock.json", """
            { "format": 1, "name": "All", "makes": "1 L", "dose": "10 mL/L", "keep": { "at": "8..25 °C", "for": "3 months" },
              "steps": [ { "pour": "700 mL", "of": "distilled" }, { "add": "seaweed-extract", "amount": "50 g" },
                { "add": "phosphoric-75", "amount": "20 mL" }, { "add": "magnesium-sulfate-7h2o", "amount": "40 g" },
                { "topUp": "1 L", "of": "distilled" } ] }
            """);

        var answer = Cli.RunIn(scratch.Path, null, "split", "all.stock.json", "--rejected");
        var text = string.Join(' ', answer.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.DoesNotContain("sets free", text, StringComparison.Ordinal);
        Assert.Contains("dose it from the bottle it came in, last, into the finished, thinned solution", text, StringComparison.Ordinal);
    }
}

using System.Diagnostics;
using System.Text.Json;
using RecipeLint.Reports;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class CompareTests
{
    private const string Stock = """
        {
          "format": 1,
          "name": "Part A",
          "makes": "2 L",
          "dose": "10 mL/L",
          "steps": [
            { "pour": "1.5 L", "of": "distilled" },
            { "add": "calcium-nitrate-4h2o", "amount": "200 g" },
            { "add": "potassium-nitrate", "amount": "50 g" },
            { "topUp": "2 L", "of": "distilled" }
          ]
        }
        """;

    private static readonly string Other = Stock.Replace("Part A", "Part B", StringComparison.Ordinal);

    private const string Recipe = """
        { "format": 1, "name": "Tank", "crop": "lettuce", "water": "distilled", "final": "100 L", "volume": "made up",
          "doses": [ { "stock": "a.stock.json", "dose": "10 mL/L" } ] }
        """;

    private static JsonElement Json(Scratch folder, params string[] sides)
    {
        var answer = Cli.RunIn(folder.Path, null, ["compare", .. sides, "--format", "json"]);
        Assert.True(answer.Code == 0, answer.Error);
        return JsonDocument.Parse(answer.Out).RootElement;
    }

    [Fact]
    public void AChangedWeightIsSaidInGramsAndInWhatThePlantsGet()
    {
        using var folder = new Scratch();
        folder.Write("old/a.stock.json", Stock);
        folder.Write("old/t.recipe.json", Recipe);
        folder.Write("new/a.stock.json", Stock.Replace("200 g", "220 g", StringComparison.Ordinal));
        folder.Write("new/t.recipe.json", Recipe);
        var json = Json(folder, "old", "new");
        var amount = Assert.Single(json.GetProperty("amounts").EnumerateArray());
        Assert.Equal(200, amount.GetProperty("old_g").GetDouble());
        Assert.Equal(220, amount.GetProperty("new_g").GetDouble());

        // 20 g of the tetrahydrate (236.15 g/mol) hold 3.394 g of calcium (40.078); 1 L of 2 L in 100 L: 17.0 mg/L more.
        var calcium = json.GetProperty("figures").EnumerateArray()
            .Single(f => f.GetProperty("kind").GetString() == "recipe" && f.GetProperty("figure").GetString() == "Ca");
        Assert.Equal(20 * 40.078 / 236.15 / 2 / 100 * 1000, calcium.GetProperty("new").GetDouble() - calcium.GetProperty("old").GetDouble(), 1);
        Assert.Equal("t.recipe.json", Assert.Single(json.GetProperty("recipesMovedByOthers").EnumerateArray()).GetString());
        Assert.Equal("changed", Assert.Single(json.GetProperty("files").EnumerateArray()).GetProperty("change").GetString());

        // An uncertainty is known to two digits (JCGM 100:2008, 7.2.6): one that moves in the third is no row.
        static double TwoDigits(JsonElement figure, string key) => figure.GetProperty(key).GetDouble() is var v and > 0
            ? Math.Round(v / Math.Pow(10, Math.Floor(Math.Log10(v)) - 1)) * Math.Pow(10, Math.Floor(Math.Log10(v)) - 1)
            : 0;
        Assert.All(
            json.GetProperty("figures").EnumerateArray().Where(f => f.GetProperty("figure").GetString()!.StartsWith("uncertainty", StringComparison.Ordinal)),
            f => Assert.NotEqual(TwoDigits(f, "old"), TwoDigits(f, "new")));
        Assert.DoesNotContain(json.GetProperty("figures").EnumerateArray(), f => f.GetProperty("figure").GetString() == "uncertainty of NO3-N");
    }

    [Fact]
    public void APhIsComparedByItsDifferenceAndAsAMeterShowsIt()
    {
        const string Acid = "{ \"format\": 1, \"name\": \"Acid\", \"makes\": \"1 L\", \"steps\": [ { \"add\": \"citric-acid-h2o\", \"amount\": \"2 g\" },"
            + " { \"topUp\": \"1 L\", \"of\": \"distilled\" } ] }";
        using var folder = new Scratch();
        folder.Write("old/a.stock.json", Acid);
        folder.Write("new/a.stock.json", Acid.Replace("2 g", "2.004 g", StringComparison.Ordinal));
        folder.Write("far/a.stock.json", Acid.Replace("2 g", "8 g", StringComparison.Ordinal));
        Assert.NotEmpty(Json(folder, "old", "new").GetProperty("amounts").EnumerateArray());
        Assert.DoesNotContain(Json(folder, "old", "new").GetProperty("figures").EnumerateArray(), f => f.GetProperty("figure").GetString() == "pH");
        var text = Cli.RunIn(folder.Path, null, "compare", "old", "far").Out;
        Assert.Matches(@"(?m)a\.stock\.json +pH +2\.\d+ +2\.\d+ +-0\.\d+ *$", text);
    }

    [Fact]
    public void ARenameIsNoDeletion()
    {
        using var folder = new Scratch();
        var cloudy = Stock.Replace("\"potassium-nitrate\", \"amount\": \"50 g\"", "\"magnesium-sulfate-7h2o\", \"amount\": \"100 g\"", StringComparison.Ordinal);
        folder.Write("old/a.stock.json", cloudy);
        folder.Write("old/other.stock.json", Other);
        folder.Write("new/renamed/part-a.stock.json", cloudy);
        folder.Write("new/other.stock.json", Other);
        var json = Json(folder, "old", "new");
        var file = Assert.Single(json.GetProperty("files").EnumerateArray());
        Assert.Equal("renamed", file.GetProperty("change").GetString());
        Assert.Empty(json.GetProperty("findingsNew").EnumerateArray());
        Assert.Empty(json.GetProperty("findingsGone").EnumerateArray());
        Assert.Empty(json.GetProperty("amounts").EnumerateArray());
    }

    [Fact]
    public void TheJsonFitsItsSchema()
    {
        var schema = global::Json.Schema.JsonSchema.FromText(File.ReadAllText(Path.Combine(Repository.Root, "schema", "comparison.schema.json")));
        using var folder = new Scratch();
        folder.Write("old/a.stock.json", Stock);
        folder.Write("old/t.recipe.json", Recipe);
        folder.Write("new/a.stock.json", Stock.Replace("\"potassium-nitrate\", \"amount\": \"50 g\"", "\"magnesium-sulfate-7h2o\", \"amount\": \"100 g\"", StringComparison.Ordinal));
        folder.Write("new/t.recipe.json", Recipe);
        folder.Write("new/more.recipe.json", Recipe);
        foreach (var (old, now) in new[] { ("old", "new"), ("new", "old"), ("old", "old") })
        {
            var result = schema.Evaluate(Json(folder, old, now), new global::Json.Schema.EvaluationOptions { OutputFormat = global::Json.Schema.OutputFormat.List });
            Assert.True(result.IsValid, string.Join('\n', result.Details?.Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Values) ?? []));
        }
    }

    /// <summary>As a comment on a pull request: under its size, with what is new first and the gravest of that first.</summary>
    [Fact]
    public void MarkdownStaysUnderTheSizeOfACommentAndTellsTheWorstFirst()
    {
        using var folder = new Scratch();
        for (var i = 0; i < 150; i++)
        {
            folder.Write($"old/s{i}.stock.json", Stock);
            folder.Write($"new/s{i}.stock.json", Stock.Replace("\"potassium-nitrate\", \"amount\": \"50 g\"", "\"magnesium-sulfate-7h2o\", \"amount\": \"100 g\"", StringComparison.Ordinal));
        }

        var text = Cli.RunIn(folder.Path, null, "compare", "old", "new", "--format", "markdown").Out;
        Assert.True(text.Length < 65_536, $"{text.Length} characters");
        Assert.Contains("more rows are left out", text, StringComparison.Ordinal);
        var levels = text.Split('\n').Select(l => l.Split(" | ")[0].TrimStart('|', ' ')).Where(l => l is "error" or "warning" or "note").ToList();
        Assert.Equal("error", levels[0]);
        Assert.Equal(levels.OrderBy(l => l switch { "error" => 0, "warning" => 1, _ => 2 }), levels);
        Assert.True(text.IndexOf("### New findings", StringComparison.Ordinal) < text.IndexOf("### Amounts", StringComparison.Ordinal));
    }

    [Fact]
    public void APathFromTheRootOfTheDiskSaysNothingOfTheMachine()
    {
        using var folder = new Scratch();
        var old = folder.Write("old.stock.json", Stock);
        var now = folder.Write("new.stock.json", Stock.Replace("200 g", "220 g", StringComparison.Ordinal));
        foreach (var format in new[] { "text", "markdown", "html", "json" })
        {
            Assert.DoesNotContain(folder.Path, Cli.RunIn("/", null, "compare", old, now, "--format", format).Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void FindingsThatComeAndGoAreTold()
    {
        using var folder = new Scratch();
        folder.Write("old.stock.json", Stock);
        folder.Write("new.stock.json", Stock.Replace("\"potassium-nitrate\", \"amount\": \"50 g\"", "\"magnesium-sulfate-7h2o\", \"amount\": \"100 g\"", StringComparison.Ordinal));
        var forth = Json(folder, "old.stock.json", "new.stock.json");
        Assert.Contains(forth.GetProperty("findingsNew").EnumerateArray(), f => f.GetProperty("rule").GetString() == "RL0101");
        var back = Json(folder, "new.stock.json", "old.stock.json");
        Assert.Contains(back.GetProperty("findingsGone").EnumerateArray(), f => f.GetProperty("rule").GetString() == "RL0101");
        var text = Cli.RunIn(folder.Path, null, "compare", "old.stock.json", "new.stock.json", "--width", "80").Out;
        Assert.Contains("RL0101", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), l => Assert.True(DisplayWidth.Of(l) <= 80, l));
    }

    [Fact]
    public void RevisionsOfARepositoryAreCompared()
    {
        using var folder = new Scratch();
        folder.Write("shop/a.stock.json", Stock);
        Git(folder, "init", "-q");
        Git(folder, "add", ".");
        Git(folder, "-c", "user.name=t", "-c", "user.email=t@example.org", "commit", "-q", "-m", "one");
        folder.Write("shop/a.stock.json", Stock.Replace("200 g", "100 g", StringComparison.Ordinal));
        Assert.Equal(100, Assert.Single(Json(folder, "HEAD", "shop").GetProperty("amounts").EnumerateArray()).GetProperty("new_g").GetDouble());
        Git(folder, "-c", "user.name=t", "-c", "user.email=t@example.org", "commit", "-q", "-a", "-m", "two");
        var json = Json(folder, "HEAD~1", "HEAD");
        Assert.Equal("shop/a.stock.json", Assert.Single(json.GetProperty("amounts").EnumerateArray()).GetProperty("file").GetString());
        Assert.Equal("Nothing differs.", Cli.RunIn(folder.Path, null, "compare", "HEAD", "HEAD").Out.Split(": ")[1].Trim());
    }

    [Theory]
    [InlineData("nowhere", "a.stock.json")]
    [InlineData("a.stock.json", "--upload-pack=x")]
    [InlineData("", "a.stock.json")]
    public void WhatIsNeitherPathNorRevisionIsRefusedInOneLine(string old, string now)
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", Stock);
        var answer = Cli.RunIn(folder.Path, null, "compare", old, now);
        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void HostileNamesStayTextInEveryForm()
    {
        using var folder = new Scratch();
        var hostile = Stock.Replace("Part A", "<script>@x | `y`\\n::error::z \\u202E", StringComparison.Ordinal);
        folder.Write("old/<b>|a.stock.json", hostile);
        folder.Write("new/<b>|a.stock.json", hostile.Replace("200 g", "900 g", StringComparison.Ordinal));
        foreach (var format in new[] { "text", "markdown", "html", "json" })
        {
            var answer = Cli.RunIn(folder.Path, null, "compare", "old", "new", "--format", format);
            Assert.Equal(0, answer.Code);
            Assert.DoesNotContain('\u202E', answer.Out);
            Assert.DoesNotContain(answer.Out.Split('\n'), l => l.TrimStart().StartsWith("::", StringComparison.Ordinal));
            if (format is "markdown" or "html")
            {
                Assert.DoesNotContain("<script>@", answer.Out, StringComparison.Ordinal);
                Assert.DoesNotContain("<b>|", answer.Out, StringComparison.Ordinal);
            }
        }
    }

    private static void Git(Scratch folder, params string[] arguments)
    {
        using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = folder.Path })!;
        git.WaitForExit();
        Assert.Equal(0, git.ExitCode);
    }
}

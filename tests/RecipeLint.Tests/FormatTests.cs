using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;
using RecipeLint.Reports.Formats;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class FormatTests
{
    private const string Draft = "examples/quillmere-first-draft";

    public static TheoryData<string> Names => [.. ReportFormats.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void TheFormatNeverChangesTheExitCode(string format)
    {
        Assert.Equal(1, Cli.Run("check", Draft, "--format", format).Code);
        Assert.Equal(0, Cli.Run("check", "examples/quillmere", "--format", format).Code);
        Assert.Equal(0, Cli.Run("check", Draft, "--format", format, "--fail-on", "never").Code);
    }

    [Fact]
    public void SeveralFormatsAreWrittenAtOnceAndEqualThoseWrittenAlone()
    {
        using var folder = new Scratch();
        var also = ReportFormats.Names.Where(f => f != "text").SelectMany(f => new[] { "--also", $"{f}:{Path.Combine(folder.Path, "out." + f)}" });
        var together = Cli.Run(["check", Draft, .. also]);
        Assert.Equal(Cli.Run("check", Draft).Out, together.Out);
        foreach (var format in ReportFormats.Names.Where(f => f != "text"))
        {
            Assert.Equal(Cli.Run("check", Draft, "--format", format).Out, File.ReadAllText(Path.Combine(folder.Path, "out." + format)));
        }
    }

    [Fact]
    public void CsvFiguresAreThoseOfTheFacts()
    {
        const string Lettuce = "examples/quillmere/recipes/lettuce.recipe.json";
        using var facts = JsonDocument.Parse(Cli.Run("facts", Lettuce).Out);
        var rows = Cli.Run("check", Lettuce, "--format", "csv").Out.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(r => r.Split(',')[^5..]).ToList();
        foreach (var element in facts.RootElement.GetProperty("elements").EnumerateObject())
        {
            var row = Assert.Single(rows, r => r[0] == "concentration" && r[1] == element.Name);
            Assert.Equal(element.Value.GetProperty("concentration_mg_per_L").GetDouble(), double.Parse(row[2], CultureInfo.InvariantCulture));
            Assert.Equal("mg/L", row[3]);
        }
    }

    [Fact]
    public void HostileNamesInRealFilesStayTextInEveryFormat()
    {
        using var folder = new Scratch();
        folder.Write("=cmd.stock.json", """
            { "format": 1, "name": "<script>alert(1)</script>\n::error::x \u202E=cmd|' /C calc'!A0", "makes": "1 L", "steps": [
              { "pour": "0.9 L", "of": "distilled" }, { "add": "calcium-nitrate-4h2o", "amount": "90 g" },
              { "add": "magnesium-sulfate-7h2o", "amount": "90 g" }, { "topUp": "1 L" } ] }
            """);
        foreach (var format in ReportFormats.Names)
        {
            var answer = Cli.RunIn(folder.Path, null, "check", ".", "--format", format);
            Assert.Equal(1, answer.Code);
            Assert.DoesNotContain('\u202E', answer.Out);
            Assert.DoesNotContain(answer.Out.Split('\n'), l => l.TrimStart().StartsWith("::error::x", StringComparison.Ordinal));
            if (format is "markdown" or "junit")
            {
                Assert.DoesNotContain("<script>", answer.Out, StringComparison.Ordinal);
            }
        }

        Assert.Contains("'=cmd.stock.json,stock,", Cli.RunIn(folder.Path, null, "check", ".", "--format", "csv").Out, StringComparison.Ordinal);
        Assert.NotNull(XDocument.Parse(Cli.RunIn(folder.Path, null, "check", ".", "--format", "junit").Out).Root);
    }

    [Theory]
    [InlineData("a.stock.json", "it is one of the files read")]
    [InlineData("linked", "it is one of the files read")]
    [InlineData("new.stock.json", "its name is that of a file that is read")]
    [InlineData("folder", "it is a folder")]
    [InlineData("nowhere/", "it is a folder")]
    [InlineData("nowhere/out.txt", "its folder does not exist")]
    public void AReportNeverGoesWhereItDoesHarm(string target, string reason)
    {
        using var folder = new Scratch();
        var stock = folder.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "add": "potassium-nitrate", "amount": "10 g" } ] }""");
        Directory.CreateDirectory(Path.Combine(folder.Path, "folder"));
        File.CreateSymbolicLink(Path.Combine(folder.Path, "linked"), stock);
        var before = File.ReadAllText(stock);
        foreach (var options in new[] { new[] { "-o", target }, ["--also", "json:" + target] })
        {
            var answer = Cli.RunIn(folder.Path, null, ["check", "a.stock.json", .. options]);
            Assert.Equal(2, answer.Code);
            Assert.Contains(reason, Assert.Single(answer.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllText(stock));
        }
    }

    [Theory]
    [InlineData("sarif")]
    [InlineData("sarif:")]
    [InlineData("pdf:out.pdf")]
    public void WhatIsNoFormatAndFileIsRefused(string also) =>
        Assert.Equal(2, Cli.Run("check", "examples/quillmere", "--also", also).Code);

    [Fact]
    public void StatisticsCountEachRuleAndStayOutOfMachineFormats()
    {
        var text = Cli.Run("check", Draft, "--statistics");
        Assert.Matches("""RL0101 +calcium-with-sulfate +1 +error +1""", text.Out);
        Assert.Contains("'--fix' would mend", text.Out, StringComparison.Ordinal);
        var json = Cli.Run("check", Draft, "--statistics", "--format", "json");
        Assert.Equal(Cli.Run("check", Draft, "--format", "json").Out, json.Out);
        Assert.Contains("calcium-with-sulfate", json.Error, StringComparison.Ordinal);
    }

    /// <summary>What a plain check may not pay for: pages, pictures, labels, SARIF.</summary>
    [Fact]
    public void APlainCheckLoadsNothingOfTheReports()
    {
        using var folder = new Scratch();
        var list = Path.Combine(folder.Path, "assemblies.txt");
        var program = Path.Combine(AppContext.BaseDirectory, "recipelint.dll");
        var start = new ProcessStartInfo("dotnet", [program, "check", "examples/quillmere"]) { WorkingDirectory = Repository.Root, RedirectStandardOutput = true };
        start.Environment["DOTNET_STARTUP_HOOKS"] = typeof(FormatTests).Assembly.Location;
        start.Environment[StartupHook.ListVariable] = list;
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        var loaded = File.ReadAllLines(list);
        Assert.Contains("RecipeLint.Reports", loaded);
        Assert.DoesNotContain(loaded, name => name is "Sarif" or "Newtonsoft.Json" or "QRCoder" or "System.Private.Xml"
            || name.StartsWith("OxyPlot", StringComparison.Ordinal));
    }

    /// <summary>Whoever reads the facts has to know whether they are of a feed or of a spray: what roots bear says nothing of leaves.</summary>
    [Theory]
    [InlineData("", "roots")]
    [InlineData("\"givenTo\": \"roots\", ", "roots")]
    [InlineData("\"givenTo\": \"leaves\", ", "leaves")]
    public void FactsOfARecipeSayWhatItIsGivenTo(string stated, string expected)
    {
        using var scratch = new Scratch();
        scratch.Write("tank.recipe.json", $$"""{"format": 1, "name": "Tank", {{stated}}"water": "distilled", "final": "10 L", "volume": "made up", "doses": [{"add": "magnesium-sulfate-7h2o", "amount": "5 g"}]}""");

        using var facts = System.Text.Json.JsonDocument.Parse(Cli.RunIn(scratch.Path, null, "facts", "tank.recipe.json").Out);

        Assert.Equal(expected, facts.RootElement.GetProperty("givenTo").GetString());
    }
}

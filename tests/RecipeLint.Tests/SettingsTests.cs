using System.Text.Json;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What the settings of a shop can say, and living with findings: acceptance and baseline.</summary>
public sealed class SettingsTests
{
    private const string Careless = """{ "format": 1, "name": "N", "makes": "1 L", "steps": [ { "add": "KNO3", "amount": "30 g" }, { "add": "KNO3", "amount": "AMOUNT", "id": "again" }, { "topUp": "1 L" } ] }""";

    private static string Stock(string amount = "30 g") => Careless.Replace("AMOUNT", amount, StringComparison.Ordinal);

    [Fact]
    public void IgnoredFilesAreLeftOutUnlessTheyAreNamed()
    {
        using var scratch = new Scratch();
        scratch.Write(".gitignore", "build/\n");
        scratch.Write("recipelint.json", """{ "ignore": ["drafts/"] }""");
        scratch.Write("a.stock.json", Stock());
        scratch.Write("build/b.stock.json", Stock());
        scratch.Write("drafts/c.stock.json", Stock());

        Assert.All(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => Assert.StartsWith("a.stock.json", f, StringComparison.Ordinal));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", "drafts/c.stock.json").Findings, f => f.StartsWith("drafts/c.stock.json", StringComparison.Ordinal));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", "build").Findings, f => f.StartsWith("build/b.stock.json", StringComparison.Ordinal));
    }

    [Fact]
    public void RulesHoldForPaths()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "rules": { "RL0026": "error" }, "paths": [ { "files": ["trials/", "!trials/late/"], "rules": { "duplicate-substance": "off" } }, { "files": ["*.note.stock.json"], "rules": { "RL0026": "note" } } ] }""");
        scratch.Write("a.stock.json", Stock());
        scratch.Write("trials/b.stock.json", Stock());
        scratch.Write("trials/late/c.stock.json", Stock());
        scratch.Write("x.note.stock.json", Stock());
        var found = Cli.RunIn(scratch.Path, null, "check", ".").Findings.Where(f => f.Contains("RL0026")).Select(f => string.Join(' ', f.Split(' ').Take(2)));

        Assert.Equal(["a.stock.json:1:93: error", "trials/late/c.stock.json:1:93: error", "x.note.stock.json:1:93: note"], found);
        Assert.DoesNotContain("RL0042", Cli.RunIn(scratch.Path, null, "check", ".").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void SettingsExtendOthersAndOwnOnesGoBefore()
    {
        using var scratch = new Scratch();
        scratch.Write(".git/HEAD", "");
        scratch.Write("house.json", """{ "scales": [ { "name": "fine", "readability": "0.01 g" }, { "name": "bench", "readability": "1 g" } ], "rules": { "RL0026": "error", "RL0025": "off" } }""");
        scratch.Write("shop/recipelint.json", """{ "extends": "../house.json", "scales": [ { "name": "bench", "readability": "0.1 g" } ], "rules": { "duplicate-substance": "note" } }""");
        scratch.Write("shop/a.stock.json", Stock());
        var text = Cli.RunIn(scratch.Path, null, "settings", "shop/a.stock.json").Out;

        Assert.Matches(@"scale bench: 0.1 g +shop/recipelint\.json:1", text);
        Assert.Matches(@"scale fine: 10 mg +house\.json:1", text);
        Assert.Matches(@"RL0026 duplicate-substance: note +shop/recipelint\.json:1", text);
        Assert.Matches(@"RL0025 undeclared-assay: off +house\.json:1", text);
        var answer = Cli.RunIn(scratch.Path, null, "check", "shop");
        Assert.Contains(answer.Findings, f => f.Contains("note RL0026"));
        Assert.DoesNotContain(answer.Findings, f => f.Contains("RL0025"));
    }

    [Theory]
    [InlineData("../../elsewhere.json", "leads out of the repository")]
    [InlineData("missing.json", "does not exist")]
    [InlineData("recipelint.json", "extends this file in turn")]
    public void WhatCannotBeExtendedIsSaid(string other, string said)
    {
        using var scratch = new Scratch();
        scratch.Write(".git/HEAD", "");
        scratch.Write("recipelint.json", $$"""{ "extends": "{{other}}" }""");
        scratch.Write("a.stock.json", Stock());

        Assert.Contains(said, string.Join(' ', Cli.RunIn(scratch.Path, null, "check", ".").Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void TheDayCanBeChosen()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "scales": [ { "name": "s", "readability": "0.1 g", "capacity": "2 kg", "calibrated": "2026-01-01", "calibrateEvery": "6 months" } ] }""");
        scratch.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");

        Assert.DoesNotContain(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0412"));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".", "--as-of", "2026-08-01").Findings, f => f.Contains("RL0412"));
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "check", ".", "--as-of", "tomorrow").Code);
    }

    [Fact]
    public void AFindingIsAcceptedUntilItGetsWorseOrItsDayComes()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{\n  \"note\": \"kept as it is\"\n}\n");
        scratch.Write("s.stock.json", """{ "format": 1, "name": "S", "makes": "1 L", "steps": [ { "add": "KNO3", "amount": "400 g", "assay": "99 %" }, { "topUp": "1 L" } ] }""");
        var before = Cli.RunIn(scratch.Path, null, "check", ".").Findings.Single(f => f.Contains("RL0111"));

        var accepted = Cli.RunIn(scratch.Path, null, ["accept", .. before.Split(' '), "--because", "Kept warm: \"always\".", "--until", "2026-06-01"]);
        Assert.Equal(0, accepted.Code);
        var settings = File.ReadAllText(Path.Combine(scratch.Path, "recipelint.json"));
        Assert.StartsWith("{\n  \"note\": \"kept as it is\",", settings, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(settings);
        Assert.Equal("Kept warm: \"always\".", document.RootElement.GetProperty("suppressions")[0].GetProperty("reason").GetString());

        Assert.DoesNotContain(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0111"));
        var shown = Cli.RunIn(scratch.Path, null, "check", ".", "--with-suppressed").Out;
        Assert.Contains("accepted RL0111", shown, StringComparison.Ordinal);
        Assert.Contains("Kept warm: \"always\".", string.Join(' ', shown.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".", "--as-of", "2026-05-25").Findings, f => f.Contains("note RL0044"));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".", "--as-of", "2026-06-02").Findings, f => f.Contains("RL0111"));

        scratch.Write("s.stock.json", File.ReadAllText(Path.Combine(scratch.Path, "s.stock.json")).Replace("400 g", "450 g", StringComparison.Ordinal));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0111"));
    }

    [Fact]
    public void AcceptanceNeedsAFindingAReasonAndADayToCome()
    {
        using var scratch = new Scratch();
        scratch.Write("s.stock.json", Stock());
        foreach (var (arguments, said) in new (string[], string)[]
        {
            (["accept", "s.stock.json", "RL0101", "--because", "x"], "has no finding of RL0101"),
            (["accept", "s.stock.json", "RL0026"], "needs '--because'"),
            (["accept", "s.stock.json", "RL0026", "--because", " "], "is blank"),
            (["accept", "s.stock.json", "RL0026", "--because", "x", "--until", "2020-01-01"], "lies in the past"),
            (["accept", "s.stock.json:7", "RL0026", "--because", "x"], "not found on line 7 of 's.stock.json', but on 1"),
            (["accept", "s.stock.json", "--because", "x"], "names no rule"),
        })
        {
            var answer = Cli.RunIn(scratch.Path, null, arguments);
            Assert.Equal(2, answer.Code);
            Assert.Contains(said, answer.Error, StringComparison.Ordinal);
        }

        Assert.Equal(["s.stock.json"], Directory.GetFiles(scratch.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void ABaselineSurvivesMovedLinesAndLetsThroughWhatIsNewOrWorse()
    {
        using var scratch = new Scratch();
        var text = """{ "format": 1, "name": "S", "makes": "1 L", "steps": [ { "add": "KNO3", "amount": "400 g", "assay": "99 %" }, { "topUp": "1 L" } ] }""";
        scratch.Write("recipelint.json", """{ "baseline": "recipelint.baseline.json" }""");
        scratch.Write("recipelint.baseline.json", """{ "format": 1, "findings": [] }""");
        scratch.Write("s.stock.json", text);
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0111"));

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "update", ".").Code);
        Assert.Empty(Cli.RunIn(scratch.Path, null, "check", ".").Findings);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "compare", ".").Code);

        scratch.Write("s.stock.json", text.Replace("\"steps\": [", "\n\n\"steps\": [ { \"pour\": \"500 mL\" },", StringComparison.Ordinal));
        Assert.DoesNotContain(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0111"));

        scratch.Write("s.stock.json", text.Replace("400 g", "450 g", StringComparison.Ordinal));
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("RL0111"));
        Assert.Contains("worse s.stock.json: RL0111", Cli.RunIn(scratch.Path, null, "baseline", "compare", ".").Out, StringComparison.Ordinal);

        scratch.Write("s.stock.json", text.Replace("400 g", "40 g", StringComparison.Ordinal));
        Assert.Contains("baseline prune", Cli.RunIn(scratch.Path, null, "check", ".").Error, StringComparison.Ordinal);
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "prune", ".").Code);
        Assert.DoesNotContain("RL0111", File.ReadAllText(Path.Combine(scratch.Path, "recipelint.baseline.json")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("""{ "format": 2, "findings": [] }""")]
    [InlineData("""{ "format": 1, "findings": [ 3 ] }""")]
    [InlineData("""{ "format": 1, "findings": [ { "rule": "RL0101", "file": "a", "value": "x" } ] }""")]
    public void ABaselineThatCannotBeReadIsOneLine(string text)
    {
        using var scratch = new Scratch();
        scratch.Write("b.json", text);
        scratch.Write("s.stock.json", Stock());
        var answer = Cli.RunIn(scratch.Path, null, "check", ".", "--baseline", "b.json");

        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void SettingsForPathsAndABaselineHoldInARunOfManyFilesAsInOneOfFew()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "rules": { "RL0026": "error" }, "baseline": "known.json", "paths": [ { "files": ["trials/"], "rules": { "duplicate-substance": "note" } } ] }""");
        for (var i = 0; i < 80; i++)
        {
            scratch.Write($"{(i % 4 == 0 ? "trials" : "stocks")}/s{i}.stock.json", Stock(i % 2 == 0 ? "30 g" : "31 g").Replace("\"N\"", $"\"N{i}\"", StringComparison.Ordinal));
        }

        scratch.Write("known.json", """{"format": 1, "findings": [{"rule": "RL0026", "file": "stocks/s1.stock.json", "at": "steps/again"}]}""");
        var inPieces = Cli.RunIn(scratch.Path, null, "check", ".");
        var together = Cli.RunIn(scratch.Path, null, "check", ".", "--statistics");

        Assert.Equal(together.Findings, inPieces.Findings);
        Assert.Equal(20, inPieces.Findings.Count(f => f.StartsWith("trials/", StringComparison.Ordinal) && f.Contains("note RL0026")));
        Assert.Equal(59, inPieces.Findings.Count(f => f.StartsWith("stocks/", StringComparison.Ordinal) && f.Contains("error RL0026")));
        Assert.DoesNotContain(inPieces.Findings, f => f.StartsWith("stocks/s1.stock.json", StringComparison.Ordinal) && f.Contains("RL0026"));
    }

    [Fact]
    public void OtherDataThanPinnedIsSaidAndAnUpgradeListsTheVerdictsItChanges()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "data": "0123456789ab" }""");
        scratch.Write("a.stock.json", Stock());
        Assert.Contains("'recipelint baseline compare' lists the verdicts", Cli.RunIn(scratch.Path, null, "check", ".").Error, StringComparison.Ordinal);

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "baseline", "update").Code);
        var file = Path.Combine(scratch.Path, "recipelint.baseline.json");
        var text = File.ReadAllText(file);
        var at = text.IndexOf("\"data\": \"", StringComparison.Ordinal) + 9;
        File.WriteAllText(file, text[..at] + "0123456789ab" + text[(at + 12)..].Replace("RL0026", "RL0025", StringComparison.Ordinal));
        var compared = Cli.RunIn(scratch.Path, null, "baseline", "compare");
        Assert.Equal(1, compared.Code);
        Assert.StartsWith("data  0123456789ab then, ", compared.Out, StringComparison.Ordinal);
        Assert.Contains("new   a.stock.json: RL0026", compared.Out, StringComparison.Ordinal);
        Assert.Contains("gone  a.stock.json: RL0025", compared.Out, StringComparison.Ordinal);
    }

    /// <summary>What 'check' reads as the baseline is what 'baseline' writes, prunes and compares, from whatever folder.</summary>
    [Fact]
    public void TheBaselineOfTheSettingsIsTheOneThatIsWritten()
    {
        using var scratch = new Scratch();
        scratch.Write("shop/recipelint.json", """{"baseline": "known/today.baseline.json"}""");
        scratch.Write("shop/known/note.md", "Findings that were there from the start.");
        scratch.Write("shop/stocks/a.stock.json", """{"format": 1, "name": "A", "makes": "1 L", "steps": [{"pour": "700 mL", "of": "distilled"}, {"add": "calcium-nitrate-4h2o", "amount": "100 g"}, {"add": "potassium-sulfate", "amount": "60 g"}, {"topUp": "1 L", "of": "distilled"}]}""");

        var answer = Cli.RunIn(Path.Combine(scratch.Path, "shop/stocks"), null, "baseline", "update", ".");

        Assert.Equal(0, answer.Code);
        Assert.Contains("../known/today.baseline.json, which the settings name", answer.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(scratch.Path, "shop/known/today.baseline.json")));
        Assert.False(File.Exists(Path.Combine(scratch.Path, "shop/stocks/recipelint.baseline.json")));
        Assert.Equal(0, Cli.RunIn(Path.Combine(scratch.Path, "shop"), null, "check", ".").Code);
        Assert.Equal(0, Cli.RunIn(Path.Combine(scratch.Path, "shop"), null, "baseline", "compare", ".").Code);
    }
}

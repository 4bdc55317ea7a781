using System.Diagnostics;
using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>Faults that fuzzing found, each as it was found and small.</summary>
public sealed class PastFaultTests
{
    /// <summary>Took 9 s: every pair of lines was tried as a slip.</summary>
    [Theory]
    [InlineData("proof")]
    [InlineData("diagnose")]
    public void AStockOfHundredsOfLinesIsLookedAtInPart(string command)
    {
        var lines = string.Join(",", Enumerable.Range(1, 260).Select(i => string.Create(
            CultureInfo.InvariantCulture, $$"""{"add": "potassium-nitrate", "amount": "{{0.1 + (i * 0.01):0.00}} g", "id": "n{{i}}"}""")));
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL"}, {{lines}}, {"topUp": "1 L"}]}""");
        string[] arguments = command == "proof" ? ["proof", "a.stock.json"] : ["diagnose", "a.stock.json", "--measured", "EC 9 mS/cm at 1:100"];
        var answer = Cli.RunOver(tree, arguments);
        Assert.InRange(answer.Code, 0, 1);
        Assert.Contains("260 lines", answer.Out, StringComparison.Ordinal);
        Assert.Contains("first 30", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Took 44 s and 7 s: at each step what the vessel holds was put together anew, and every reagent looked for among all steps.</summary>
    [Theory]
    [InlineData("""{"adjust": "pH 3.0", "using": "koh-10"}""", 1000)]
    [InlineData("""{"adjust": "pH 5.5", "using": "nitric-38"}, {"adjust": "pH 6.0", "using": "koh-10"}""", 500)]
    [InlineData("""{"add": "magnesium-sulfate-7h2o", "amount": "1 g"}, {"add": "calcium-nitrate-4h2o", "amount": "1 g"}""", 500)]
    public void AStockOfAThousandStepsIsJudgedInTime(string steps, int times)
    {
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{{string.Join(',', Enumerable.Repeat(steps, times))}}]}""");

        // Of processor time, which other tests use too, and of the clock, which a busy machine stretches: only both tell of one that is slow.
        var (watch, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        Assert.InRange(Cli.RunOver(tree, "check", ".").Code, 0, 1);
        var (took, used) = (watch.Elapsed, Environment.CpuUsage.TotalTime - processor);
        Assert.True(took < TimeSpan.FromSeconds(20) || used < TimeSpan.FromSeconds(20), $"took {took}, {used} of processor time.");
    }

    /// <summary>Said "a pH of Infinity": the largest number there is was rounded up.</summary>
    [Theory]
    [InlineData("1.7976931348623157e308")]
    [InlineData("-1.7976931348623157e308")]
    [InlineData("5e-324")]
    public void ANumberAtTheEndOfNumbersIsSaidAsOne(string number)
    {
        var tree = new MemoryFileTree("/shop")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "1 L"}]}""")
            .Add("b.batch.json", $$"""{"format": 1, "stock": "a.stock.json", "made": "2026-03-16", "batch": "{{number}} L", "readings": [{"pH": {{number}}}, {"EC": "{{number}} mS/cm"}]}""");
        var said = Cli.RunOver(tree, "check", ".").Out;
        Assert.DoesNotContain("Infinity", said, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", said, StringComparison.Ordinal);
    }

    /// <summary>A price of 1e308 made a batch cost "Infinity EUR".</summary>
    [Theory]
    [InlineData("1e308")]
    [InlineData("1.7976931348623157e308")]
    [InlineData("1e10")]
    public void APriceThatNothingHasIsAFindingAndCountsForNothing(string cost)
    {
        var tree = new MemoryFileTree("/shop")
            .Add("recipelint.json", $$"""{"currency": "EUR", "prices": [{"of": "KNO3", "cost": {{cost}}, "for": "1 ug"}]}""")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "0.5 L"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""");
        var answer = Cli.RunOver(tree, "check", ".");
        Assert.Contains(answer.Findings, f => f.StartsWith("recipelint.json", StringComparison.Ordinal) && f.Contains("RL0016", StringComparison.Ordinal));
        Assert.DoesNotContain("Infinity", Cli.RunOver(tree, "show", "a.stock.json").Out, StringComparison.Ordinal);
    }

    /// <summary>A rule whose id had another form was reported and yet spoke, also as a built-in one; '$' let a line break stand behind an id.</summary>
    [Theory]
    [InlineData("RL0101")]
    [InlineData("HR0001\\n")]
    [InlineData("HR00001")]
    public void AHouseRuleOfAnotherIdIsReportedAndJudgesNothing(string id)
    {
        var tree = new MemoryFileTree("/shop")
            .Add("recipelint.json", "{}")
            .Add("x.rule.json", $$"""{"format": 1, "id": "{{id}}", "name": "never", "level": "error", "looksAt": "stock", "must": false, "message": "x", "reason": "y"}""")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "0.5 L"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""");
        var answer = Cli.RunOver(tree, "check", ".");
        Assert.Contains(answer.Findings, f => f.StartsWith("x.rule.json", StringComparison.Ordinal) && f.Contains("RL0007", StringComparison.Ordinal));
        Assert.DoesNotContain("never", answer.Out.Replace("\"never\"", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("never", Cli.RunOver(tree, "rules").Out, StringComparison.Ordinal);
    }

    /// <summary>400 rules took 4 s and 1,000 half a minute: each piece of the shop read them all, and each asked the schema library by reflection.</summary>
    [Fact]
    public void AShopOfAThousandRulesIsJudgedInTime()
    {
        var tree = new MemoryFileTree("/shop").Add("recipelint.json", "{}")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "0.5 L"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""");
        for (var i = 0; i < 1000; i++)
        {
            tree.Add($"r{i:D4}.rule.json", $$"""{"format": 1, "id": "HR{{i:D4}}", "name": "r{{i}}", "level": "note", "looksAt": "stock", "must": {"type": "object"}, "message": "x", "reason": "y"}""");
        }

        var (watch, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        Assert.Equal(0, Cli.RunOver(tree, "check", ".").Code);
        var (took, used) = (watch.Elapsed, Environment.CpuUsage.TotalTime - processor);
        Assert.True(took < TimeSpan.FromSeconds(20) || used < TimeSpan.FromSeconds(20), $"took {took}, {used} of processor time.");
    }

    /// <summary>Printing one asked it for every dimension, and threw.</summary>
    [Fact]
    public void AQuantityCanBePrinted()
    {
        Assert.True(QuantityReader.TryRead("24 g", Due.Mass, out var quantity, out _));
        Assert.Contains("24", quantity.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("concentrate-onto-concentrate", """{"format": 1, "makes": "1 L", "steps": []}""")]
    [InlineData("concentrate-onto-concentrate", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}""")]
    [InlineData("topped-up-past-volume", """{"format": 1, "makes": "1 L", "steps": [{"topUp": "2 L"}]}""")]
    [InlineData("topped-up-past-volume", """{"format": 1, "makes": "1e15 L", "steps": [{"add": "potassium-nitrate", "amount": "1e15 kg"}, {"topUp": "1e15 L"}]}""")]
    public void ARuleCanBeExplainedForAStockThatHasNothingToShow(string rule, string stock)
    {
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", stock);
        Assert.InRange(Cli.RunOver(tree, "explain", rule, "--for", "a.stock.json").Code, 0, 2);
        Assert.InRange(Cli.RunOver(tree, "check", ".").Code, 0, 1);
    }

    /// <summary>Half a character among the arguments, as a Windows console can send it, was an internal fault while the settings were written.</summary>
    [Fact]
    public void HalfACharacterInAnArgumentIsWrittenAsAWholeOne()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "1e9 g"}]}""");
        Directory.CreateDirectory(Path.Combine(scratch.Path, ".git"));
        var finding = Cli.RunIn(scratch.Path, null, "check", ".", "--quiet").Findings[0];
        Assert.Equal((0, ""), Cli.RunIn(scratch.Path, null, "accept", finding, "--because", "a \ud800 b") is var answer ? (answer.Code, answer.Error) : default);
        Assert.Contains("a \ufffd b", File.ReadAllText(Path.Combine(scratch.Path, "recipelint.json")), StringComparison.Ordinal);
    }

    /// <summary>A pipe was waited for, and a device without an end was read until the memory was full.</summary>
    [Theory]
    [InlineData("check", ".", "--baseline", "{0}")]
    [InlineData("baseline", "compare", ".", "--file", "{0}")]
    [InlineData("merge", "{0}")]
    [InlineData("import", "{0}")]
    [InlineData("learn", "week", "--score")]
    public void PipesAndDevicesAreRefusedAndNeverWaitedFor(params string[] arguments)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "1 L"}]}""");
        Directory.CreateDirectory(Path.Combine(scratch.Path, "week"));
        var pipe = Path.Combine(scratch.Path, "week", "score.json");
        using (var make = Process.Start("mkfifo", [pipe]))
        {
            make.WaitForExit();
        }

        foreach (var odd in arguments[0] == "learn" ? [pipe] : (string[])[pipe, "/dev/zero"])
        {
            var answer = Cli.RunIn(scratch.Path, null, [.. arguments.Select(a => a == "{0}" ? odd : a)]);
            Assert.Equal((2, 1), (answer.Code, answer.Error.Count(c => c == '\n')));
            Assert.Contains("no regular file", answer.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>Each was an internal fault: the library reads logs that lack what they are put together by.</summary>
    [Theory]
    [InlineData("""[{"id": "RL0001"}, null]""", "[]", "[]")]
    [InlineData("""[{"name": "x"}]""", "[]", "[]")]
    [InlineData("[]", """[{"ruleId": "RL9999", "message": {"text": "x"}}]""", "[]")]
    [InlineData("""[{"id": "RL0001"}]""", """[{"ruleId": "RL0001"}]""", "[]")]
    [InlineData("""[{"id": "RL0001"}]""", "[null]", "[]")]
    [InlineData("[]", "[]", "[null]")]
    [InlineData("[]", "[]", """[{"toolExecutionNotifications": [{}]}]""")]
    [InlineData("[]", "[]", "[{\"toolExecutionNotifications\": 7}]")]
    public void ALogThatLacksItsPartsIsOneLine(string rules, string results, string invocations)
    {
        var tree = new MemoryFileTree("/shop").Add("a.sarif", $$$"""{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "RecipeLint", "rules": {{{rules}}}}}, "results": {{{results}}}, "invocations": {{{invocations}}}}]}""");
        var answer = Cli.RunOver(tree, "merge", "a.sarif");
        Assert.Equal((2, 1), (answer.Code, answer.Error.Count(c => c == '\n')));
    }

    [Theory]
    [InlineData("""[{"ruleId": "RL0001", "message": {"text": "x"}, "locations": []}]""", "[]")]
    [InlineData("[]", """[{"toolExecutionNotifications": [{"message": {"text": "99999999999999999999 more results are left out; the 5000 gravest are here."}}]}]""")]
    [InlineData("[]", """[{"toolExecutionNotifications": [{"message": {"text": "2147483647 more results are left out; x"}}, {"message": {"text": "2147483647 more results are left out; x"}}]}]""")]
    public void AnOddLogIsMerged(string results, string invocations)
    {
        var tree = new MemoryFileTree("/shop").Add("a.sarif", $$$"""{"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "RecipeLint", "rules": [{"id": "RL0001"}]}}, "results": {{{results}}}, "invocations": {{{invocations}}}}]}""");
        var answer = Cli.RunOver(tree, "merge", "a.sarif", "--fail-on", "never");
        Assert.InRange(answer.Code, 0, 3);
        Assert.DoesNotContain("internal fault", answer.Error, StringComparison.Ordinal);
    }

    /// <summary>'stretch' tells the findings of a stock, and one of them names the water that nobody knows.</summary>
    [Theory]
    [InlineData("stretch")]
    [InlineData("order")]
    public void WhatANameHoldsSteersNoTerminal(string command)
    {
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL", "of": "\u202e\u001b[2J"}, {"add": "potassium-nitrate", "amount": "60 g"}, {"topUp": "1 L", "of": "distilled"}]}
            """);
        var answer = Cli.RunOver(tree, command, "a.stock.json");
        Assert.DoesNotContain(answer.Out, c => c is '\u202e' or '\u001b');
        Assert.NotEqual("", answer.Out);
    }

    /// <summary>'proof' printed what the check says of a key as the file has it.</summary>
    [Theory]
    [InlineData("proof")]
    [InlineData("split")]
    [InlineData("order")]
    [InlineData("stretch")]
    [InlineData("bench-sheet")]
    [InlineData("show")]
    [InlineData("check")]
    public void WhatAKeyHoldsSteersNoTerminal(string command)
    {
        var tree = new MemoryFileTree("/shop").Add("a.stock.json", """
            {"format": 1, "name": "a\u009b", "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL", "of": "distilled", "to\tp\u202e\r\u001b": "1"}, {"add": "potassium-nitrate", "amount": "60 g"}, {"topUp": "1 L", "of": "distilled"}]}
            """);
        var answer = Cli.RunOver(tree, command, "a.stock.json");
        Assert.DoesNotContain((answer.Out + answer.Error).EnumerateRunes(), r => r.Value != '\n' && Printable.IsHazard(r));
        Assert.NotEqual("", answer.Out);
    }

    /// <summary>The error of a volume taken with it was no number, and the rule on coarse measures failed.</summary>
    [Theory]
    [InlineData("± 1e308 mL")]
    [InlineData("± 1e15 L")]
    public void AToleranceWithoutAnEndIsOneFinding(string tolerance)
    {
        var tree = new MemoryFileTree("/shop")
            .Add("recipelint.json", $$"""{"measures": [{"name": "jug", "kind": "jug", "capacity": "2 L", "readability": "20 mL", "tolerance": "{{tolerance}}"}]}""")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "500 mL"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""")
            .Add("r.recipe.json", """{"format": 1, "final": "1e9 L", "doses": [{"stock": "a.stock.json", "dose": "1:100", "with": "jug"}]}""");
        var answer = Cli.RunOver(tree, "check", ".");
        Assert.Equal((1, ""), (answer.Code, answer.Error));
    }
}

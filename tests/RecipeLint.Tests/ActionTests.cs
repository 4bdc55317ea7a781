using System.Diagnostics;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>The action, run as its runner would run it: everything comes from the environment.</summary>
public sealed class ActionTests
{
    private const string Twice = """{ "format": 1, "name": "N", "makes": "1 L", "steps": [ { "add": "KNO3", "amount": "30 g" }, { "add": "KNO3", "amount": "AMOUNT", "id": "again" }, { "topUp": "1 L" } ] }""";

    /// <summary>Findings of the tool and of a shop's own rules, estimates too: the matcher takes place, level, rule and words out of each line.</summary>
    [Fact]
    public void TheMatcherReadsEveryFindingOfAQuietRun()
    {
        using var scratch = new Scratch();
        scratch.Write("n.stock.json", Twice.Replace("AMOUNT", "30 g", StringComparison.Ordinal));
        scratch.Write("own.rule.json", """
            {"format": 1, "id": "HR0001", "name": "too-much", "level": "warning", "looksAt": "stock", "must": {"properties": {"volume_L": {"minimum": 5}}},
             "message": "'{/name}' is small.", "reason": "Make more of it."}
            """);
        scratch.Write("n.batch.json", """{"format": 1, "stock": "n.stock.json", "made": "2026-01-02", "readings": [{"pH": 12.5}]}""");
        scratch.Write("recipelint.json", "{}");
        var matcher = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, ".github", "problem-matcher.json")))!["problemMatcher"]![0]!["pattern"]![0]!;
        var pattern = new System.Text.RegularExpressions.Regex((string)matcher["regexp"]!);
        var lines = Cli.RunIn(scratch.Path, null, "check", ".", "--quiet").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(lines, l => l.Contains("HR0001", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("(estimate)", StringComparison.Ordinal));
        Assert.All(lines, line =>
        {
            var match = pattern.Match(line);
            Assert.True(match.Success, line);
            Assert.Matches("^(own|n)\\.(rule|stock|batch)\\.json$", match.Groups[(int)matcher["file"]!].Value);
            Assert.Matches("^(error|warning|note)$", match.Groups[(int)matcher["severity"]!].Value);
            Assert.Matches("^(RL|HR)[0-9]{4} ", match.Groups[(int)matcher["code"]!].Value);
            Assert.NotEmpty(match.Groups[(int)matcher["message"]!].Value);
        });
    }

    [Theory]
    [InlineData("30 g", "warning", 1)]
    [InlineData("30 g", "never", 0)]
    public void TheLogTheSummaryAndTheOutputsAreWrittenWhateverTheExitCode(string amount, string failOn, int code)
    {
        using var scratch = new Scratch();
        scratch.Write("a b/n.stock.json", Twice.Replace("AMOUNT", amount, StringComparison.Ordinal));
        scratch.Write("$(touch evil)/n.stock.json", Twice.Replace("AMOUNT", amount, StringComparison.Ordinal));
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var (exit, log) = RunAction(scratch, ("CHECK_PATHS", "a b\n$(touch evil)\n"), ("FAIL_ON", failOn));

        Assert.Equal(code, exit);
        Assert.Contains("a b/n.stock.json:1:93: warning RL0026 duplicate-substance", log, StringComparison.Ordinal);
        Assert.Contains("\"RL0026\"", File.ReadAllText(Path.Combine(scratch.Path, "out.sarif")), StringComparison.Ordinal);
        Assert.Contains("## RecipeLint: ", File.ReadAllText(Path.Combine(scratch.Path, "summary.md")), StringComparison.Ordinal);
        Assert.Matches("findings=[1-9][0-9]*\nsarif=out.sarif\n", File.ReadAllText(Path.Combine(scratch.Path, "output.txt")));
        Assert.False(File.Exists(Path.Combine(scratch.Path, "evil")));
    }

    [Fact]
    public void AShopWithoutFindingsIsSummedUpInOneLine()
    {
        using var scratch = new Scratch();
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "init", "shop").Code);
        var (exit, log) = RunAction(scratch, ("CHECK_PATHS", "shop"), ("GITHUB_ACTIONS", "true"), ("GITHUB_WORKSPACE", scratch.Path));

        Assert.Equal(0, exit);
        Assert.Empty(log);
        Assert.Equal("## RecipeLint: no rule objects\n", File.ReadAllText(Path.Combine(scratch.Path, "summary.md")));
        Assert.StartsWith("findings=0\nsarif=out.sarif\n", File.ReadAllText(Path.Combine(scratch.Path, "output.txt")), StringComparison.Ordinal);
    }

    /// <summary>The log is uploaded by the action itself, whatever its check came to, and by nothing that is not pinned.</summary>
    [Fact]
    public void TheLogIsUploadedAlsoWhenTheCheckFails()
    {
        var action = File.ReadAllText(Path.Combine(Repository.Root, ".github", "action.yml"));
        var upload = action[action.IndexOf("- name: Upload", StringComparison.Ordinal)..];
        Assert.Contains("if: always() && inputs.upload == 'true' && steps.check.outputs.sarif != ''", upload, StringComparison.Ordinal);
        Assert.Matches("uses: github/codeql-action/upload-sarif@[0-9a-f]{40} # v", upload);
        Assert.Contains("sarif_file: ${{ steps.check.outputs.sarif }}", upload, StringComparison.Ordinal);

        // What comes from outside reaches a shell by its environment only.
        var run = false;
        Assert.DoesNotContain(action.Split('\n'), line =>
        {
            run = line.TrimStart().StartsWith("run:", StringComparison.Ordinal) || (run && line.StartsWith("        ", StringComparison.Ordinal));
            return run && line.Contains("${{", StringComparison.Ordinal);
        });
    }

    /// <summary>The action's script as its runner starts it; log, summary and outputs are written into the folder.</summary>
    [System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
    private static (int Exit, string Log) RunAction(Scratch scratch, params (string Name, string Value)[] environment)
    {
        var program = scratch.Write("program", $"#!/usr/bin/env bash\nexec dotnet '{typeof(CommandLine).Assembly.Location}' \"$@\"\n");
        File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo("bash", [Path.Combine(Repository.Root, ".github", "check.sh")]) { WorkingDirectory = scratch.Path, RedirectStandardOutput = true };
        foreach (var (name, value) in environment.Concat(
        [
            ("RECIPELINT", program), ("SARIF_FILE", "out.sarif"),
            ("GITHUB_STEP_SUMMARY", Path.Combine(scratch.Path, "summary.md")), ("GITHUB_OUTPUT", Path.Combine(scratch.Path, "output.txt")),
        ]))
        {
            start.Environment[name] = value;
        }

        using var run = Process.Start(start)!;
        var log = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return (run.ExitCode, log);
    }
}

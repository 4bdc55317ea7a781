using System.Diagnostics;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What a shell, a manual and a first look at an installed program give.</summary>
public sealed class InstallTests
{
    [Fact]
    public void EveryCommandAndOptionIsInEveryScriptAndInTheManual()
    {
        var commands = Cli.Run("--help").Out.Split('\n').SkipWhile(l => !l.StartsWith("Commands:", StringComparison.Ordinal)).Skip(1)
            .Where(l => l.StartsWith("  ", StringComparison.Ordinal) && l.Length > 3 && l[2] != ' ').Select(l => l.Trim().Split(' ')[0]).ToList();
        Assert.Contains("check", commands);
        foreach (var text in new[] { Cli.Run("completion", "bash").Out, Cli.Run("completion", "zsh").Out, Cli.Run("completion", "fish").Out, Cli.Run("completion", "powershell").Out })
        {
            Assert.All(commands, c => Assert.Contains(c, text, StringComparison.Ordinal));
            Assert.Contains("fail-on", text, StringComparison.Ordinal);
            Assert.Contains("calcium-with-sulfate", text, StringComparison.Ordinal);
        }

        var manual = Cli.Run("man").Out;
        Assert.All(commands, c => Assert.Contains($".SS recipelint {c.Replace("-", "\\-", StringComparison.Ordinal)}", manual, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("chec", "check")]
    [InlineData("check --fail-on w", "warning")]
    [InlineData("check --form", "--format")]
    [InlineData("check --fail-on =", "warning")]
    [InlineData("check --fail-on = w", "warning")]
    [InlineData("explain calcium-with-su", "calcium-with-sulfate")]
    public void BashCompletes(string typed, string offered)
    {
        using var scratch = new Scratch();
        var script = scratch.Write("recipelint.bash", Cli.Run("completion", "bash").Out);
        var words = typed.Split(' ');
        var ask = $"source '{script}'; COMP_WORDS=(recipelint {typed}); COMP_CWORD={words.Length}; _recipelint; printf '%s\\n' \"${{COMPREPLY[@]}}\"";
        try
        {
            using var bash = Process.Start(new ProcessStartInfo("bash", ["-c", ask]) { RedirectStandardOutput = true })!;
            var answer = bash.StandardOutput.ReadToEnd();
            bash.WaitForExit();
            Assert.Contains(offered, answer.Split('\n'));
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // No bash on this machine.
        }
    }

    /// <summary>
    /// What zsh, fish and PowerShell would say of a quote or bracket that is left open, and of a line that is none of theirs; their own reader is asked as
    /// well where the shell is there.
    /// </summary>
    [Theory]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("powershell")]
    public void TheScriptIsWhatItsShellReads(string shell)
    {
        var script = Cli.Run("completion", shell).Out;
        var bare = ShellText.WithoutQuotes(script, shell);
        Assert.DoesNotContain('\'', bare);
        Assert.DoesNotContain('"', bare);
        Assert.Empty(ShellText.Unbalanced(bare, shell == "zsh"));
        switch (shell)
        {
            case "fish":
                Assert.All(
                    script.Split('\n').Where(l => l.Length > 0 && l[0] != '#'),
                    l => Assert.Matches("^complete -c recipelint( -f| -r| -F| -x| -n (\\w+|'[^']*')| -[als] (\\S+|'[^']*')| -d '(?:[^'\\\\]|\\\\.)*')+$", l));
                break;
            case "zsh":
                Assert.StartsWith("#compdef recipelint\n", script, StringComparison.Ordinal);
                Assert.Equal(script.Split("\n      _arguments").Length - 1, script.Split(" ;;\n").Length - 1);
                Assert.All(
                    ShellText.Quoted(script).Where(q => q[0] is '-' or '*'),
                    q => Assert.Matches(@"^(\*:\w+:(_files|\(.*\))|--?[\w-]+=?\[(?:[^\[\]\\]|\\.)*\](:(?:[^:\\]|\\.)*:(_files|\(.*\)| )?)?)$", q));
                break;
            default:
                Assert.Contains("Register-ArgumentCompleter -Native -CommandName recipelint", script, StringComparison.Ordinal);
                break;
        }

        ShellText.AskTheShell(shell, script);
    }

    [Fact]
    public void DoctorNamesTheDataTheSettingsAndWhatIsMissing()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "data": "000000000000", "scales": [ { "name": "s", "readability": "0.1 g", "calibrated": "2024-01-01", "calibrateEvery": "6 months" } ] }""");
        scratch.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "topUp": "1 L" } ] }""");
        var answer = Cli.RunIn(scratch.Path, null, "doctor");

        Assert.Equal(0, answer.Code);
        Assert.Matches("(?m)^data       [0-9a-f]{12}: ", answer.Out);
        foreach (var said in new[] { "settings   recipelint.json", "the capacity of the scale 's'", "the calibration of 's', due since 2024-07-01", "a pH meter", "written for the data 000000000000" })
        {
            Assert.Contains(said, answer.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void DoctorSaysSoWhereThereIsNothing()
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, "doctor");

        Assert.Equal(0, answer.Code);
        Assert.Contains("recipelint init my-shop", answer.Out, StringComparison.Ordinal);
    }
}

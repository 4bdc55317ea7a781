using System.Text.RegularExpressions;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What the README prints can be copied: its samples are files that exist, its commands are understood.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string _readme = File.ReadAllText(Path.Combine(Repository.Root, "README.md")).ReplaceLineEndings("\n");

    [Fact]
    public void EverySampleIsAFileOfTheShopThatInitWritesAndPassesTheCheck()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "init", "my-shop").Code);
        var written = Directory.GetFiles(Path.Combine(scratch.Path, "my-shop"), "*.json", SearchOption.AllDirectories)
            .Select(f => SchemaLine().Replace(File.ReadAllText(f).ReplaceLineEndings("\n"), "")).ToList();
        var samples = Sample().Matches(_readme).Select(m => m.Groups[1].Value).ToList();

        Assert.NotEmpty(samples);
        Assert.All(samples, s => Assert.Contains(s, written));
        Assert.Equal(0, Cli.RunIn(scratch.Path, null, "check", "my-shop").Code);
    }

    [Fact]
    public void EveryCommandNamedIsOne()
    {
        var commands = Named().Matches(_readme).Select(m => m.Groups[1].Value).Distinct().ToList();

        Assert.True(commands.Count > 10);
        Assert.All(commands, c => Assert.Equal(0, Cli.Run(c, "--help").Code));
    }

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Sample();

    /// <summary>For editors; the README leaves it out.</summary>
    [GeneratedRegex("""^ *"\$schema": "[^"]*",\n""", RegexOptions.Multiline)]
    private static partial Regex SchemaLine();

    [GeneratedRegex("`recipelint ([a-z-]+)")]
    private static partial Regex Named();
}

using RecipeLint.Rules.Engine;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What schema/PROMISES.md says is what the program does.</summary>
public sealed class PromiseTests
{
    private static readonly string _promises = File.ReadAllText(Path.Combine(Repository.Root, "schema", "PROMISES.md"));

    [Fact]
    public void ExitCodesAreThoseWrittenDown()
    {
        foreach (var (code, words) in new[]
        {
            (ExitCodes.Clean, "nothing at or above"), (ExitCodes.Findings, "findings at or above"), (ExitCodes.Usage, "wrong usage"), (ExitCodes.Fault, "a fault of RecipeLint"),
        })
        {
            Assert.Contains($"| {code} | {words}", _promises, StringComparison.Ordinal);
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "1"}, {"topUp": "1 L"}]}""");
        Assert.All(new[] { "text", "sarif", "json", "markdown", "github", "junit", "csv" }, f => Assert.Equal(1, Cli.RunIn(scratch.Path, null, "check", ".", "--format", f).Code));
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "check", "nowhere").Code);
    }

    [Fact]
    public void FormatsHaveTheVersionsWrittenDown()
    {
        Assert.Contains($"| `--format json` | {Reports.Formats.JsonReport.FormatVersion} |", _promises, StringComparison.Ordinal);
        Assert.Contains($"| `facts` | {Reports.ComputedFacts.FactsWriter.FormatVersion} |", _promises, StringComparison.Ordinal);
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """{"format": 2, "makes": "1 L", "steps": [{"topUp": "1 L"}]}""");
        Assert.Contains("RL0007", Cli.RunIn(scratch.Path, null, "check", ".").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ARuleOnTrialIsANoteUnlessTheShopSaysOtherwise()
    {
        var trial = RuleBook.Descriptors.Where(r => r.IsPreview).ToList();
        Assert.NotEmpty(trial);
        Assert.Contains("(on trial)", Cli.Run("rules").Out, StringComparison.Ordinal);
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{}");
        foreach (var name in new[] { "one", "other" })
        {
            scratch.Write($"{name}.stock.json", """{"format": 1, "name": "Same", "makes": "1 L", "steps": [{"topUp": "1 L"}]}""");
        }

        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("note RL0052", StringComparison.Ordinal));
        scratch.Write("recipelint.json", """{"rules": {"two-stocks-of-one-name": "error"}}""");
        Assert.Contains(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains("error RL0052", StringComparison.Ordinal));
    }
}

using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Whatever bytes a file holds, the real entry point answers with findings, never with an exception.</summary>
public sealed class HostileInputTests
{
    private static readonly string[] _endings = [".stock.json", ".recipe.json", ".water.json", ".substances.json"];

    /// <summary>The parsing inputs of JSONTestSuite (N. Seriot, MIT licence, kept beside the reader's tests).</summary>
    [Fact]
    public void EveryJsonTestSuiteInputIsAFindingAndNeverAFault()
    {
        var folder = Path.Combine(Repository.Root, "tests", "RecipeLint.Recipes.Tests", "hostile", "json-test-suite", "test_parsing");
        var files = Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal).ToList();
        Assert.True(files.Count >= 300, $"only {files.Count} inputs are there");
        using var scratch = new Scratch();
        foreach (var (file, index) in files.Select((f, i) => (f, i)))
        {
            var name = "input" + _endings[index % _endings.Length];
            var answer = Cli.RunIn(scratch.Path, File.ReadAllBytes(file), "check", "-", "--stdin-name", name);

            // No input of the suite is one of our documents, so each one gets a finding whether or not it is JSON.
            Assert.True(answer.Code == 1 && answer.Findings.Count > 0, $"{Path.GetFileName(file)}: exit code {answer.Code} {answer.Error}");
            Assert.Equal("", answer.Error);
            Assert.DoesNotContain(answer.Out, c => char.IsControl(c) && c != '\n');
        }
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{\"steps\":[")]
    public void DeepNestingIsAFinding(string unit)
    {
        using var scratch = new Scratch();
        var bytes = System.Text.Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(unit, 100_000)));
        var answer = Cli.RunIn(scratch.Path, bytes[..Math.Min(bytes.Length, 900_000)], "check", "-", "--stdin-name", "a.stock.json");

        Assert.Equal(1, answer.Code);
        Assert.Contains(answer.Findings, f => f.Contains("malformed-file"));
    }

    [Fact]
    public void AFileLargerThanTheLimitIsAFinding()
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, new byte[2_000_000], "check", "-", "--stdin-name", "a.stock.json");

        Assert.Equal(1, answer.Code);
        Assert.NotEmpty(answer.Findings);
    }

    [Fact]
    public void NamesCannotSteerATerminal()
    {
        using var scratch = new Scratch();
        const string Evil = "{\"format\":1,\"name\":\"\\u001b[2J\\u202eevil\\u009b\",\"makes\":\"1 L\",\"steps\":[{\"add\":\"\\u001b]0;x\\u0007\",\"amount\":\"1 g\"}]}";
        var answer = Cli.RunIn(scratch.Path, System.Text.Encoding.UTF8.GetBytes(Evil), "check", "-", "--stdin-name", "a.stock.json");

        Assert.DoesNotContain(answer.Out, c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u009b');
    }
}

using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Files by questions: what comes out is read and found in order.</summary>
public sealed class InitFormTests
{
    [Fact]
    public void AProductComesFromItsLabel()
    {
        using var scratch = new Scratch();
        var answer = Ask(
            scratch, "--product",
            "Invented bag 4-18-38", "", "oxid", "oxide", "4", "4 %", "", "", "18 %", "38 %", "", "0.8 %", "12 %",
            "0.4 %", "", "", "", "0.1 %", "", "EDTA", "label", "h319");

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Contains("'oxid' is none of oxide, element.", answer.Out, StringComparison.Ordinal);
        Assert.Contains("has no unit", answer.Out, StringComparison.Ordinal);
        var text = File.ReadAllText(Path.Combine(scratch.Path, "invented-bag-4-18-38.substances.json"));
        Assert.Contains("\"P2O5\": \"18 %\"", text, StringComparison.Ordinal);
        scratch.Write("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "invented-bag-4-18-38", "amount": "50 g"}, {"topUp": "1 L"}]}""");
        Assert.DoesNotContain(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains(": error") && f.Contains("RL00"));
    }

    [Fact]
    public void AWaterComesFromItsAnalysis()
    {
        using var scratch = new Scratch();
        var answer = Ask(scratch, "--water", "Well 2", "2026-02-01", "", "0.55 mS/cm", "7.4", "180 mg/L as CaCO3", "", "82 mg/L", "11 mg/L");

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Contains("\"Ca\": \"82 mg/L\"", File.ReadAllText(Path.Combine(scratch.Path, "well-2.water.json")), StringComparison.Ordinal);
        Assert.DoesNotContain(Cli.RunIn(scratch.Path, null, "check", ".").Findings, f => f.Contains(": error"));
    }

    [Fact]
    public void AProfileStandsOverABuiltInOne()
    {
        using var scratch = new Scratch();
        var answer = Ask(scratch, "--profile", "Winter lettuce", "leafy-greens", "own trials", "1.2..1.8 mS/cm", "5.6..6.2", "120..180 mg/L");

        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Contains(
            "\"N\": { \"range\": \"120..180 mg/L\" }",
            File.ReadAllText(Path.Combine(scratch.Path, "winter-lettuce.profile.json")),
            StringComparison.Ordinal);
        Assert.Empty(Cli.RunIn(scratch.Path, null, "check", ".").Findings);
    }

    [Theory]
    [InlineData("--product", "")]
    [InlineData("--product", "Bag\n\n\n")]
    [InlineData("--water", "Well\n")]
    [InlineData("--profile", "tomato\n")]
    [InlineData("--profile", "...\n")]
    public void TooLittleIsOneLineAndNoFile(string form, string answers)
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, System.Text.Encoding.UTF8.GetBytes(answers), "init", form);

        Assert.Equal(2, answer.Code);
        Assert.Single(answer.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(Directory.GetFileSystemEntries(scratch.Path));
    }

    [Fact]
    public void OneFormAtATime()
    {
        using var scratch = new Scratch();
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "init", "--product", "--water").Code);
    }

    private static Answer Ask(Scratch scratch, string form, params string[] answers) =>
        Cli.RunIn(scratch.Path, System.Text.Encoding.UTF8.GetBytes(string.Join('\n', answers) + "\n"), "init", form);
}

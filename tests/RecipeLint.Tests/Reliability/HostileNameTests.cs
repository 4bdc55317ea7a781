using RecipeLint.Reports;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>Names that a person or a script gives a command to write to, with an escape sequence and a bidirectional control in them.</summary>
public sealed class HostileNameTests
{
    private const string Name = "a\u001b[2J\u202e";

    private const string Stock = """{"format": 1, "makes": "1 L", "dose": "1:100", "steps": [{"pour": "500 mL"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""";

    /// <summary>The first eight printed the name as it is.</summary>
    [Theory]
    [InlineData("split", "r.recipe.json", "--write", Name)]
    [InlineData("init", Name)]
    [InlineData("init", Name, "--from", "KNO3 1 g in 1 L")]
    [InlineData("import", "t.csv", "--makes", "1 L", "--into", Name)]
    [InlineData("handbook", "--output", Name)]
    [InlineData("handbook", "--exercises", Name)]
    [InlineData("bench-sheet", "a.stock.json", "--record", Name + ".batch.json")]
    [InlineData("learn", Name)]
    [InlineData("import", "t.csv", "--makes", "1 L", "--into", "out", "--remember", Name)]
    [InlineData("report", ".", "--output", Name + ".html")]
    [InlineData("bench-sheet", "a.stock.json", "--output", Name + ".html")]
    [InlineData("baseline", "update", ".", "--file", Name)]
    [InlineData("label", "a.stock.json", "--output", Name)]
    [InlineData("editor", Name, "--for", "vscode")]
    [InlineData("check", ".", "--output", Name)]
    public void AreShownWithTheirEscapes(params string[] arguments)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock);
        scratch.Write("r.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"stock": "a.stock.json", "dose": "1:100"}]}""");
        scratch.Write("t.csv", "substance,amount,unit,part\nKNO3,10,g,A\n");
        if (arguments[0] == "editor")
        {
            Directory.CreateDirectory(Path.Combine(scratch.Path, Name));
        }

        var answer = Cli.RunIn(scratch.Path, null, arguments);
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.DoesNotContain(answer.Out.EnumerateRunes(), r => r.Value != '\n' && Printable.IsHazard(r));
    }

    /// <summary>The JSON of facts kept bidirectional controls as they are; it is often looked at on a terminal.</summary>
    [Fact]
    public void AreEscapedInFacts()
    {
        using var scratch = new Scratch();
        scratch.Write("a\u202eb.stock.json", Stock);
        var answer = Cli.RunIn(scratch.Path, null, "facts", "a\u202eb.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("a\\u202eb.stock.json", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Out.EnumerateRunes(), r => r.Value != '\n' && Printable.IsHazard(r));
    }

    /// <summary>What the disk refuses is said of the file that was asked for, not of a hidden one beside it.</summary>
    [Theory]
    [InlineData("check", "a.stock.json", "--output", "/proc/self/o")]
    [InlineData("baseline", "update", ".", "--file", "/proc/self/b.json")]
    public void ARefusalNamesTheFileThatWasAskedFor(params string[] arguments)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock);
        var answer = Cli.RunIn(scratch.Path, null, arguments);
        Assert.Equal((2, 1), (answer.Code, answer.Error.Count(c => c == '\n')));
        Assert.Contains($"'{Path.GetFileName(arguments[^1])}' cannot be written: ", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("partial", answer.Error, StringComparison.Ordinal);
    }
}

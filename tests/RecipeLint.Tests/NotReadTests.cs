using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>A file of ours under a name that is none is told of, once and in one line; what is plainly something else is not.</summary>
public sealed class NotReadTests
{
    private const string Stock = """{"format": 1, "name": "A", "makes": "1 L", "keep": {"at": "15..25 °C"}, "steps": [{"add": "monopotassium-phosphate", "amount": "40 g", "assay": "99 %"}, {"topUp": "1 L", "of": "distilled"}]}""";

    [Theory]
    [InlineData("part-a.json", Stock, "'part-a.json' holds a stock, call it 'part-a.stock.json'")]
    [InlineData("sub/feed.JSON", """{"final": "10 L", "doses": []}""", "'sub/feed.JSON' holds a recipe, call it 'feed.recipe.json'")]
    [InlineData("run.json", """{"format": 1, "recipe": "x.recipe.json", "made": "2026-03-02"}""", "the record of a batch")]
    [InlineData("well.json", """{"format": 1, "ions": {}}""", "holds a water")]
    [InlineData("package.json", """{"name": "x", "scripts": {"steps": "none"}}""", "")]
    [InlineData("steps.json", """{"steps": []}""", "")]
    [InlineData("list.json", """[{"makes": "1 L", "steps": []}]""", "")]
    [InlineData("broken.json", """{"makes": "1 L", "steps": """, "")]
    [InlineData("node_modules/part-a.json", Stock, "")]
    [InlineData(".part-a.json", Stock, "")]
    [InlineData("ignored/part-a.json", Stock, "")]
    public void OneLineSaysWhatWasNotRead(string name, string text, string said)
    {
        using var scratch = new Scratch();
        scratch.Write(".gitignore", "ignored/\n");
        scratch.Write("b.stock.json", Stock);
        scratch.Write(name, text);
        var answer = Cli.RunIn(scratch.Path, null, "check", ".");
        var lines = answer.Error.Split('\n').Where(l => l.Contains("not read", StringComparison.Ordinal)).ToList();
        Assert.Equal(said.Length > 0 ? 1 : 0, lines.Count);
        Assert.All(lines, l => Assert.Contains(said, l, StringComparison.Ordinal));

        // A file that is named, and an answer for a machine, are not spoilt by it.
        Assert.DoesNotContain("not read", Cli.RunIn(scratch.Path, null, "check", "b.stock.json").Error, StringComparison.Ordinal);
        Assert.DoesNotContain("not read", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ManyAreCountedAndAFolderWithNothingElseSaysWhatIsThere()
    {
        using var scratch = new Scratch();
        for (var i = 0; i < 250; i++)
        {
            scratch.Write(FormattableString.Invariant($"n{i:000}.json"), Stock);
        }

        var answer = Cli.RunIn(scratch.Path, null, "check", ".");
        Assert.Equal(2, answer.Code);
        Assert.Contains("'n000.json' holds a stock, call it 'n000.stock.json'", answer.Error, StringComparison.Ordinal);
        Assert.Contains("and at least 197 more", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("n003.json", answer.Error, StringComparison.Ordinal);
    }
}

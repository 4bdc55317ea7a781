using System.Text.RegularExpressions;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>What people hold in their hands, as stored: comparisons, bench sheets, batch records and labels of the invented shops.</summary>
public sealed partial class GoldenPageTests
{
    private const string PartA = "examples/quillmere/stocks/part-a.stock.json";

    [Theory]
    [InlineData("text", "txt")]
    [InlineData("markdown", "md")]
    [InlineData("html", "html")]
    [InlineData("json", "json")]
    public void AComparisonLooksAsStored(string format, string ending) => AsStored(
        $"pages/compare.{ending}", Cli.Run("compare", "examples/quillmere-first-draft/stocks/part-a.stock.json", PartA, "--format", format, "--width", "100"));

    [Fact]
    public void ALabelLooksAsStored() =>
        AsStored("pages/label.svg", Cli.Run("label", PartA, "--made", "2026-03-01", "--batch", "B-17", "--size", "105x74"));

    [Theory]
    [InlineData("examples/quillmere/stocks/part-a.stock.json", "part-a")]
    [InlineData("examples/quillmere/stocks/trace.stock.json", "trace")]
    public void ABenchSheetLooksAsStored(string stock, string name)
    {
        AsStored($"pages/bench-sheet-{name}.txt", Cli.Run("bench-sheet", stock, "--batch", "500 mL", "--width", "100"));
        AsStored($"pages/bench-sheet-{name}.html", Page("bench-sheet", stock, "--batch", "500 mL"));
    }

    /// <summary>A batch as planned and one with the wrong bag, which is not to be used.</summary>
    [Theory]
    [InlineData("b-2026-03-02", 0)]
    [InlineData("b-2026-04-13", 1)]
    public void ABatchSheetLooksAsStored(string batch, int code)
    {
        var arguments = new[] { "bench-sheet", "examples/fennelwick/stocks/b.stock.json", "--actual", $"examples/fennelwick/batches/{batch}.batch.json" };
        AsStored($"pages/batch-{batch}.txt", Cli.Run([.. arguments, "--width", "100"]), code);
        AsStored($"pages/batch-{batch}.html", Page(arguments), code);
    }

    /// <summary>The lesson of each family, with the picture computed from its file.</summary>
    [Fact]
    public void TheLessonsLookAsStored()
    {
        var lessons = RuleHandbook.Make("0.1.0").Where(f => f.Path.StartsWith("lessons/", StringComparison.Ordinal)).ToList();
        Assert.Equal(8, lessons.Count);
        lessons.ForEach(f => AsStored("pages/" + f.Path, new Answer(0, f.Text, "")));
    }

    private static Answer Page(params string[] arguments)
    {
        using var folder = new Scratch();
        var target = Path.Combine(folder.Path, "page.html");
        var answer = Cli.Run([.. arguments, "-o", target]);
        return answer with { Out = File.ReadAllText(target) };
    }

    /// <summary>Style, policy and scripts are the same on every page and stand in files of their own.</summary>
    private static void AsStored(string name, Answer answer, int code = 0)
    {
        Assert.Equal((code, ""), (answer.Code, answer.Error));
        Repository.AssertGolden(name, Policy().Replace(Sheet().Replace(answer.Out, "<style/>"), "content=\"\""));
    }

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline)]
    private static partial Regex Sheet();

    [GeneratedRegex("content=\"default-src[^\"]*\"")]
    private static partial Regex Policy();
}

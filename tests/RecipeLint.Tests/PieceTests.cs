using RecipeLint.Analysis.Profiles;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Files judged piece by piece give what they give together, however small the pieces and however many threads.</summary>
public sealed class PieceTests
{
    private static readonly EngineOptions _engine = new() { Rules = RuleList.All, Today = Cli.Today };

    [Theory]
    [InlineData("examples", 1, 1)]
    [InlineData("examples", 8, 7)]
    [InlineData("rules/precipitation", 2, 1)]
    [InlineData("rules/weighing", 2, 3)]
    [InlineData("rules/documents", 2, 1)]
    public void InPiecesAsTogether(string folder, int threads, int size) =>
        AssertSame(new Input(new DiskFileTree(Repository.Root), [folder], Load, null), threads, size);

    [Fact]
    public void CausesThatRecipesOfSeveralPiecesShareAreToldOnce()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{ "measures": [{ "name": "cup", "kind": "jug", "capacity": "1 L", "readability": "50 mL", "tolerance": "± 100 mL" }], "suppressions": [{ "rule": "unused-stock", "file": "x9.stock.json", "reason": "kept" }] }""");
        scratch.Write("well.water.json", """{ "format": 1, "name": "Well", "Ca": "20..180 mg/L", "Mg": "2..50 mg/L", "HCO3": "100..500 mg/L" }""");
        for (var i = 0; i < 12; i++)
        {
            scratch.Write($"a{i}.stock.json", $$"""{ "format": 1, "name": "A{{i}}", "makes": "1 L", "dose": "10 mL/L", "steps": [{ "add": "calcium-nitrate-4h2o", "amount": "{{50 + i}} g" }, { "topUp": "1 L", "of": "well.water.json" }] }""");
            scratch.Write($"r{i}.recipe.json", $$"""{ "format": 1, "name": "R{{i}}", "final": "100 L", "volume": "made up", "water": "well.water.json", "doses": [{ "stock": "{{(i % 3 == 0 ? "\\u0061" : "a")}}{{i}}.stock.json", "with": "cup" }] }""");
            scratch.Write($"x{i}.stock.json", $$"""{ "format": 1, "name": "X{{i}}", "makes": "1 L", "steps": [{ "add": "a{{(i + 1) % 12}}.stock.json", "amount": "5 mL" }] }""");
        }

        foreach (var (threads, size) in new[] { (1, 1), (2, 1), (8, 5), (3, 100) })
        {
            AssertSame(new Input(new DiskFileTree(scratch.Path), ["."], Load, null), threads, size);
        }
    }

    [Fact]
    public void NoThreadsAreWrongUsage() =>
        Assert.Equal(2, Cli.Run("check", "examples", "--threads", "0").Code);

    private static LoadOptions Load => new() { Profiles = ProfileLibrary.AllNames };

    private static void AssertSame(Input input, int threads, int size)
    {
        var together = Judged.Of(input.Files, input.Asked, input.Load, _engine);
        var inPieces = PieceRun.Check(input, _engine, threads, new Progress(null), least: 1, size);
        Assert.NotNull(inPieces);
        Assert.Equal(together.Result.Findings.Select(Text), inPieces.Result.Findings.Select(Text));
        Assert.Equal(together.Result.Suppressed.Select(s => Text(s.Finding)), inPieces.Result.Suppressed.Select(s => Text(s.Finding)));
        Assert.Empty(inPieces.Result.Faults);
        Assert.Equal(together.Workspace.Asked.Count, inPieces.FilesChecked);
        Assert.Equal(Assumed.Of(together.Facts).Lines(), inPieces.Assumptions);
        Assert.NotEmpty(inPieces.Result.Findings);
        Assert.All(inPieces.Result.Findings.SelectMany(f => f.Related.Select(r => r.Place.File).Append(f.Place.File)).Where(together.Workspace.Sources.ContainsKey),
            file => Assert.True(inPieces.Sources.ContainsKey(file), file));
    }

    private static string Text(Finding finding) =>
        $"{finding.Place} {finding.Level} {finding.Rule.Id} {finding.IdPath} {finding.Message} {finding.Measured} "
        + string.Join(" ", finding.Values) + string.Join(" ", finding.Related) + string.Join(" ", finding.Suggestions);
}

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
        scratch.Write("well.water.json", """{ "format": 1, "name": "Well", "ions": { "Ca": "20..180 mg/L", "Mg": "2..50 mg/L", "HCO3": "100..500 mg/L" } }""");
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

    [Theory]
    [InlineData("rules/precipitation")]
    [InlineData("rules/preservation")]
    [InlineData("rules/people")]
    [InlineData("rules/chelation")]
    public void CopiesAreJudgedAsTheirOriginals(string folder)
    {
        using var scratch = new Scratch();
        var from = System.IO.Path.Combine(Repository.Root, folder);
        foreach (var file in Directory.EnumerateFiles(from, "*.json", SearchOption.AllDirectories))
        {
            foreach (var copy in new[] { "a", "b", "deeper/c" })
            {
                scratch.Write($"{copy}/{System.IO.Path.GetRelativePath(from, file)}", File.ReadAllText(file));
            }
        }

        var silent = new SilentRules();
        AssertSame(new Input(new DiskFileTree(scratch.Path), ["."], Load, null), 2, 1, _engine with { Silent = silent });
        Assert.True(silent.Met > 0, "No copy was known.");
    }

    [Fact]
    public void WhatLiesAroundACopyCounts()
    {
        using var scratch = new Scratch();
        const string stock = """{ "format": 1, "name": "B", "makes": "1 L", "dose": "10 mL/L", "vessel": "jug", "keep": { "at": "8..25 °C", "for": "3 months", "light": "dark" }, "steps": [{ "pour": "0.8 L", "of": "tap.water.json" }, { "add": "monopotassium-phosphate", "amount": "20 g" }, { "add": "potassium-sorbate", "amount": "0.3 g" }, { "add": "citric-acid-h2o", "amount": "3 g" }, { "stir": "until clear" }, { "topUp": "1 L", "of": "tap.water.json" }] }""";
        const string shop = """{ "vessels": [{ "name": "jug", "capacity": "2 L" }] }""";
        const string rain = """{ "format": 1, "name": "Rain", "ions": { "Ca": "1 mg/L", "HCO3": "3 mg/L" } }""";
        const string hard = """{ "format": 1, "name": "Hard", "ions": { "Ca": "900 mg/L", "HCO3": "2700 mg/L" } }""";
        Write("1", shop, rain);
        Write("2", shop, rain);
        Write("small", """{ "vessels": [{ "name": "jug", "capacity": "0.9 L" }] }""", rain);
        Write("hard", shop, hard);
        Write("off", """{ "vessels": [{ "name": "jug", "capacity": "0.9 L" }], "rules": { "vessel-too-small": "off" } }""", rain);
        Write("paths", """{ "vessels": [{ "name": "jug", "capacity": "0.9 L" }], "paths": [{ "files": ["below"], "rules": { "vessel-too-small": "off" } }] }""", rain);
        Write("paths/below", null, rain);
        Write("base", """{ "extends": "../2/recipelint.json" }""", rain);
        Write("dosed", shop, rain);
        scratch.Write("dosed/r.recipe.json", """{ "format": 1, "name": "R", "final": "10 L", "volume": "made up", "water": "tap.water.json", "doses": [{ "stock": "b.stock.json", "dose": "400 mL/L" }] }""");
        Write("last", shop, rain);

        var silent = new SilentRules();
        var input = new Input(new DiskFileTree(scratch.Path), ["."], Load, null);
        AssertSame(input, 1, 1, _engine with { Silent = silent });
        Assert.Equal(3, silent.Met);
        var found = PieceRun.Check(input, _engine, 1, new Progress(null), least: 1, size: 1)!.Result.Findings
            .Where(f => f.Place.File.EndsWith("b.stock.json", StringComparison.Ordinal))
            .ToLookup(f => System.IO.Path.GetDirectoryName(f.Place.File), f => f.Rule.Name);
        Assert.Equal(found["1"], found["2"]);
        Assert.Equal(found["1"], found["last"]);
        Assert.Contains("vessel-too-small", found["small"].Except(found["1"]));
        Assert.Contains("vessel-too-small", found["paths"]);
        Assert.DoesNotContain("vessel-too-small", found["off"].Concat(found["paths/below"]));
        Assert.Contains("preservative-too-strong", found["dosed"].Except(found["1"]));
        Assert.NotEmpty(found["hard"].Except(found["1"]));

        void Write(string folder, string? settings, string water)
        {
            scratch.Write($"{folder}/b.stock.json", stock);
            scratch.Write($"{folder}/tap.water.json", water);
            if (settings is not null)
            {
                scratch.Write($"{folder}/recipelint.json", settings);
            }
        }
    }

    [Fact]
    public void WhatARecipeWasReadWithCounts()
    {
        using var scratch = new Scratch();
        const string mild = """{ "format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "steps": [{ "pour": "0.8 L" }, { "add": "calcium-nitrate-tetrahydrate", "amount": "90 g" }, { "topUp": "1 L" }] }""";
        const string recipe = """{ "format": 1, "name": "R", "crop": "lettuce", "final": "10 L", "volume": "made up", "water": "tap.water.json", "doses": [{ "stock": "a.stock.json", "dose": "10 mL/L" }] }""";
        const string rain = """{ "format": 1, "name": "Rain", "ions": { "Ca": "1 mg/L", "HCO3": "3 mg/L" } }""";
        const string salty = """{ "format": 1, "name": "Salty", "ions": { "Na": "460 mg/L", "Cl": "709 mg/L" } }""";
        var strong = mild.Replace("90 g", "690 g", StringComparison.Ordinal);
        Write("1", mild, rain, "{}");
        Write("2", mild, rain, "{}");
        Write("strong", strong, rain, "{}");
        Write("salty", mild, salty, "{}");
        Write("off", strong, rain, """{ "rules": { "ec-outside-window": "off" } }""");
        Write("last", mild, rain, "{}");

        var silent = new SilentRules();
        var input = new Input(new DiskFileTree(scratch.Path), ["."], Load, null);
        AssertSame(input, 1, 1, _engine with { Silent = silent });
        Assert.Equal(5, silent.Met);
        var found = PieceRun.Check(input, _engine, 1, new Progress(null), least: 1, size: 1)!.Result.Findings
            .Where(f => f.Place.File.EndsWith("r.recipe.json", StringComparison.Ordinal))
            .ToLookup(f => System.IO.Path.GetDirectoryName(f.Place.File), f => f.Rule.Name);
        Assert.Equal(found["1"], found["2"]);
        Assert.Equal(found["1"], found["last"]);
        Assert.NotEmpty(found["strong"].Except(found["1"]));
        Assert.NotEmpty(found["salty"].Except(found["1"]));
        Assert.Contains("ec-outside-window", found["strong"]);
        Assert.DoesNotContain("ec-outside-window", found["off"]);

        void Write(string folder, string stock, string water, string settings)
        {
            scratch.Write($"{folder}/a.stock.json", stock);
            scratch.Write($"{folder}/r.recipe.json", recipe);
            scratch.Write($"{folder}/tap.water.json", water);
            scratch.Write($"{folder}/recipelint.json", settings);
        }
    }

    private static LoadOptions Load => new() { Profiles = ProfileLibrary.AllNames };

    private static void AssertSame(Input input, int threads, int size, EngineOptions? engine = null)
    {
        var together = Judged.Of(input.Files, input.Asked, input.Load, _engine);
        var inPieces = PieceRun.Check(input, engine ?? _engine, threads, new Progress(null), least: 1, size);
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

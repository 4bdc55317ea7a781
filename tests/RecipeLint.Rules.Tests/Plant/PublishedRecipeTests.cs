using System.Globalization;
using System.Text;
using System.Text.Json;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>
/// What every rule says of published nutrient solutions, as a table with the reason why it is right to say so. The recipes and their
/// citations stand with the tests of the analysis; the reasons are written by hand in published-recipes.reasons.json.
/// With RECIPELINT_UPDATE=1 the table is rewritten; a finding without a reason fails in any case.
/// </summary>
public sealed class PublishedRecipeTests
{
    private static readonly string _tests = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "tests"));
    private static readonly string _folder = Path.Combine(_tests, "RecipeLint.Analysis.Tests", "Published");
    private static readonly string _table = Path.Combine(_tests, "RecipeLint.Rules.Tests", "Tables", "published-recipes.md");
    private static readonly string _reasons = Path.Combine(_tests, "RecipeLint.Rules.Tests", "Plant", "published-recipes.reasons.json");

    private static readonly Lazy<List<Row>> _rows = new(ReadRows);

    [Fact]
    public void EveryFindingOnAPublishedSolutionIsArgued()
    {
        var reasons = Reasons();
        var keys = _rows.Value.Select(r => r.Key).ToList();
        Assert.Equal(keys.Count, keys.Distinct().Count());
        Assert.True(!keys.Except(reasons.Keys).Any(), "No reason for:\n" + string.Join('\n', keys.Except(reasons.Keys)));
        Assert.True(!reasons.Keys.Except(keys).Any(), "Not raised any more:\n" + string.Join('\n', reasons.Keys.Except(keys)));
        Assert.All(reasons, r => Assert.True(r.Value.Length > 15 && r.Value.EndsWith('.'), $"'{r.Key}' is not argued: {r.Value}"));
    }

    [Fact]
    public void TheTableIsUpToDate()
    {
        var text = Table();
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(_table, text);
        }

        Assert.Equal(text, File.ReadAllText(_table).ReplaceLineEndings("\n"));
    }

    /// <summary>A published solution that crops were grown in holds nothing that is sure to fail or to hurt.</summary>
    [Fact]
    public void NoPublishedSolutionRaisesAnError() => Assert.Empty(_rows.Value.Where(r => r.Finding.Level == Level.Error).Select(r => r.Key));

    [Fact]
    public void AllPublishedSolutionsAreJudged() => Assert.Equal(18, Directory.GetFiles(_folder, "*.recipe.json").Length);

    private static List<Row> ReadRows()
    {
        var rows = new List<Row>();
        foreach (var path in Directory.GetFiles(_folder, "*.recipe.json").Order(StringComparer.Ordinal))
        {
            var files = new MemoryFileTree("/published").AddFolder("/published")
                .Add("published.substances.json", File.ReadAllBytes(Path.Combine(_folder, "published.substances.json")))
                .Add(Path.GetFileName(path), File.ReadAllBytes(path));
            var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
            var result = LintEngine.Judge(Analyzer.Analyse(workspace), new EngineOptions { Today = new DateOnly(2026, 11, 25), Rules = RuleList.All });
            Assert.Empty(result.Faults);
            rows.AddRange(result.Findings.Select(f => new Row(Path.GetFileName(path).Replace(".recipe.json", "", StringComparison.Ordinal), f)));
        }

        return rows;
    }

    private static Dictionary<string, string> Reasons()
    {
        using var json = JsonDocument.Parse(File.ReadAllBytes(_reasons));
        return json.RootElement.GetProperty("findings").EnumerateObject()
            .SelectMany(r => r.Value.EnumerateObject().Select(f => KeyValuePair.Create($"{r.Name} {f.Name}", f.Value.GetString()!)))
            .ToDictionary();
    }

    private static string Table()
    {
        var reasons = Reasons();
        var text = new StringBuilder();
        text.Append("# What the rules say of published nutrient solutions\n\n")
            .Append("Written by a test from tests/RecipeLint.Analysis.Tests/Published; the last column by hand.\n")
            .Append("The solutions are entered as printed: no crop (generic profile), pure water, assays as far as printed.\n\n")
            .Append(CultureInfo.InvariantCulture, $"{_rows.Value.Count} findings: ")
            .Append(string.Join(", ", Enum.GetValues<Level>().Reverse().Select(l => $"{_rows.Value.Count(r => r.Finding.Level == l)} {Words.Of(l)}")))
            .Append(".\n\n| solution | level | rule | of | found | limit | why that is right, or known to be strict |\n|---|---|---|---|---|---|---|\n");
        foreach (var row in _rows.Value)
        {
            var measured = row.Finding.Measured;
            var unit = measured is { Unit.Length: > 0 } ? " " + measured.Unit : "";
            text.Append(CultureInfo.InvariantCulture, $"| {row.Recipe} | {Words.Of(row.Finding.Level)} | {row.Finding.Rule.Name} | {row.Of} | ")
                .Append(measured is null ? "" : Say.Number(measured.Value) + unit)
                .Append(" | ")
                .Append(measured is null ? "" : Say.Number(measured.Limit) + unit)
                .Append(CultureInfo.InvariantCulture, $" | {reasons.GetValueOrDefault(row.Key, "")} |\n");
        }

        return text.ToString();
    }

    private sealed record Row(string Recipe, Finding Finding)
    {
        /// <summary>The element or ratio, else the path of ids.</summary>
        public string Of => Finding.IdPath.Contains('#', StringComparison.Ordinal) ? Finding.IdPath[(Finding.IdPath.IndexOf('#', StringComparison.Ordinal) + 1)..] : Finding.IdPath;

        public string Key => $"{Recipe} {Finding.Rule.Name} {Of}";
    }
}

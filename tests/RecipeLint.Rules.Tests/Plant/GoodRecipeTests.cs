using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>
/// No false alarm on recipes a grower would call good. They are invented and follow published ones, each of which its note names: several
/// crops, strengths, waters, dilutions and ways of writing.
/// </summary>
public sealed class GoodRecipeTests
{
    private static readonly string _folder =
        Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "tests", "RecipeLint.Rules.Tests", "GoodRecipes"));

    /// <summary>Warnings and errors that are right on these files all the same: file, rule, reason. None so far.</summary>
    private static readonly (string File, string Rule, string Reason)[] _exceptions = [];

    private static readonly Lazy<(Workspace Workspace, Facts Facts, LintResult Result)> _run = new(() =>
    {
        var files = new MemoryFileTree("/good").AddFolder("/good");
        foreach (var path in Directory.GetFiles(_folder, "*.json", SearchOption.AllDirectories))
        {
            files.Add(Path.GetRelativePath(_folder, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        var facts = Analyzer.Analyse(workspace);
        return (workspace, facts, LintEngine.Judge(facts, new EngineOptions { Today = new DateOnly(2026, 11, 25), Rules = RuleList.All }));
    });

    [Fact]
    public void NoGoodRecipeRaisesAWarningOrAnError()
    {
        var (_, _, result) = _run.Value;
        Assert.Empty(result.Faults);
        var alarms = result.Findings.Where(f => f.Level >= Level.Warning).ToList();
        var unlisted = alarms.Where(f => !_exceptions.Any(e => e.File == f.Place.File && e.Rule == f.Rule.Name));
        Assert.True(!unlisted.Any(), string.Join('\n', unlisted.Select(f => $"{f.Place.File} {f.Rule.Name}: {f.Message}")));
        Assert.All(_exceptions, e => Assert.True(alarms.Any(f => e.File == f.Place.File && e.Rule == f.Rule.Name), $"{e.File}: {e.Rule} is not raised any more."));
    }

    /// <summary>
    /// Stocks as people mix from: bench sheets with water first, an order of steps, a top-up last and a label, of kinds that shops keep apart
    /// (trace with vinegar, citric acid or borax, all chelates, iron of three kinds, silicate, acid, calcium and magnesium, potassium and
    /// phosphate). Each note says what it follows.
    /// </summary>
    [Fact]
    public void BenchSheetsAreWhole()
    {
        var sheets = _run.Value.Facts.Stocks.Where(s => s.Stock.ForBench).ToList();
        Assert.InRange(sheets.Count, 13, 30);
        Assert.All(sheets, s =>
        {
            var text = System.Text.Encoding.UTF8.GetString(_run.Value.Workspace.Sources[s.Stock.File].Bytes);
            Assert.Matches("common practice, no source|19[0-9][0-9]|recalled", text);
            Assert.IsType<Recipes.Documents.PourStep>(s.Stock.Steps[0]);
            Assert.IsType<Recipes.Documents.TopUpStep>(s.Stock.Steps[^1]);
            Assert.True(s.Stock.Label is { Contents: true, Dilution: true, Date: true } && s.Additions.All(a => a.AssayDeclared), s.Stock.File);
        });
        string[] kinds = ["Acetate-", "Citrate-3", "Sorbate-", "Benzoate-", "DTPA-5", "EDDHA-4", "EDTA-4", "H4SiO4", "MoO4-2"];
        Assert.All(kinds, k => Assert.Contains(sheets, s => s.Concentration(k).MolesPerLitre > 0));
    }

    /// <summary>Notes are worth knowing and no alarm; the plant rules raise few of them here.</summary>
    [Fact]
    public void NotesAreFew()
    {
        var notes = _run.Value.Result.Findings.Where(f => f.Rule.Family == "plant").ToList();
        Assert.InRange(notes.Count, 0, _run.Value.Facts.Recipes.Count / 2);
    }

    [Fact]
    public void TheyAreVariedAndComplete()
    {
        var (workspace, facts, _) = _run.Value;
        Assert.InRange(facts.Recipes.Count, 30, 60);
        Assert.All(facts.Recipes, r => Assert.True(r.IsComplete && r.Chemistry is { IsComplete: true, Final.IsSolved: true }, r.Recipe.File));
        Assert.InRange(facts.Recipes.Select(r => r.Profile.Name).Distinct().Count(), 9, 20);
        Assert.InRange(facts.Recipes.Select(r => r.Water?.Name).Distinct().Count(), 7, 20);
        Assert.InRange(facts.Stocks.Count, 22, 60);
        Assert.Contains(facts.Recipes, r => r.Recipe.VolumeMeaning?.Value == Recipes.Documents.FinalVolumeMeaning.AddedTo);
        Assert.InRange(facts.Recipes.Count(r => r.Adjustment is { Amount: not null }), 5, 30);
        Assert.All(facts.Recipes, r => Assert.Contains("Invented. ", System.Text.Encoding.UTF8.GetString(workspace.Sources[r.Recipe.File].Bytes), StringComparison.Ordinal));
    }
}

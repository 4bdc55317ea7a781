using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Chelation;

/// <summary>Stocks and recipes written in a test or standing in the repository, and what the chelation and preservation families say of them.</summary>
internal static class Bottles
{
    internal static string Repository { get; } = RuleFolder.Repository;

    /// <summary>Reads a folder of the repository, its sub-folders included.</summary>
    internal static (Facts Facts, LintResult Result) Folder(string relative)
    {
        var folder = Path.Combine(Repository, relative);
        var files = new MemoryFileTree("/example").AddFolder("/example");
        foreach (var path in Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories)
            .Where(p => !p.EndsWith(".published.json", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal))
        {
            files.Add(Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        return Judge(files);
    }

    /// <summary>Reads documents by file name.</summary>
    internal static (Facts Facts, LintResult Result) Written(params (string File, string Json)[] documents)
    {
        var files = new MemoryFileTree("/example").AddFolder("/example");
        foreach (var (file, json) in documents)
        {
            files.Add(file, System.Text.Encoding.UTF8.GetBytes(json));
        }

        return Judge(files);
    }

    /// <summary>One litre in distilled water, kept at 10 to 25 °C in the dark for half a year unless told otherwise.</summary>
    internal static (string File, string Json) Stock(string name, string steps, string dose = "1 mL/L", string keep = "\"at\": \"10..25 °C\", \"for\": \"6 months\", \"light\": \"dark\"") =>
        ($"{name}.stock.json",
            $$"""
            {"format": 1, "name": "{{name}}", "makes": "1 L", "dose": "{{dose}}", "keep": { {{keep}} },
             "steps": [{"pour": "700 mL", "of": "distilled"}, {{steps}}, {"topUp": "1 L", "of": "distilled"}]}
            """);

    /// <summary>Addition steps from "substance amount" pairs, assay 99 %.</summary>
    internal static string Add(params string[] additions) => string.Join(", ", additions.Select(a =>
    {
        var space = a.IndexOf(' ', StringComparison.Ordinal);
        return $$"""{"add": "{{a[..space]}}", "amount": "{{a[(space + 1)..]}}", "assay": "99 %"}""";
    }));

    /// <summary>Level, rule, file and path of each finding of the two families, in order. Everything must have been read and solved.</summary>
    internal static IReadOnlyList<string> Said((Facts Facts, LintResult Result) run)
    {
        Assert.Empty(run.Result.Faults.Select(f => f.Message));
        Assert.All(run.Facts.Stocks, s => Assert.True(s.IsComplete && s.Chemistry.States.All(t => t.IsSolved), s.Stock.File));
        Assert.All(run.Facts.Recipes, r => Assert.True(r.IsComplete && r.Chemistry.States.All(t => t.IsSolved), r.Recipe.File));
        Assert.True(run.Facts.Stocks.Count + run.Facts.Recipes.Count > 0);
        return
        [
            .. run.Result.Findings
                .Where(f => f.Rule.Family is "chelation" or "preservation")
                .Select(f => $"{Words.Of(f.Level)} {f.Rule.Name} {f.Place.File} {f.IdPath}"),
        ];
    }

    private static (Facts Facts, LintResult Result) Judge(MemoryFileTree files)
    {
        var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        var facts = Analyzer.Analyse(workspace);
        return (facts, LintEngine.Judge(facts, new EngineOptions { Today = new DateOnly(2026, 11, 25), Rules = RuleList.All }));
    }
}

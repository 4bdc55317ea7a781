using System.Text;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Rules.Tests.Procedure;

/// <summary>A stock written as steps, read and judged the way the program does it.</summary>
internal static class Workbench
{
    internal static IReadOnlyList<Finding> Judge(string rule, string steps, string makes = "1 L", string more = "")
    {
        var result = LintEngine.Judge(
            Analyzer.Analyse(Load(Text(steps, makes, more))),
            new EngineOptions { Rules = [RuleList.All.Single(r => r.Name == rule)] });
        Assert.Empty(result.Faults);
        return result.Findings;
    }

    /// <summary>How one rule comes to what it says of a stock.</summary>
    internal static RuleOnFile Explain(string rule, string steps, string makes = "1 L", string more = "") =>
        RuleOnFile.Of(Analyzer.Analyse(Load(Text(steps, makes, more))), RuleList.All.Single(r => r.Name == rule), "a.stock.json");

    /// <summary>What one rule says of several files.</summary>
    internal static IReadOnlyList<Finding> JudgeFiles(string rule, IReadOnlyList<(string Name, string Text)> texts)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop");
        foreach (var (name, text) in texts)
        {
            files.Add(name, Encoding.UTF8.GetBytes(text));
        }

        var facts = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames }));
        var result = LintEngine.Judge(facts, new EngineOptions { Rules = [RuleList.All.Single(r => r.Name == rule)] });
        Assert.Empty(result.Faults);
        return result.Findings;
    }

    /// <summary>Everything the two families say of a stock.</summary>
    internal static IReadOnlyList<Finding> JudgeAll(string steps, string makes = "1 L", string more = "") => Judge(Load(Text(steps, makes, more)));

    /// <summary>Everything the two families say of a folder of the repository.</summary>
    internal static IReadOnlyList<Finding> JudgeExample(string folder)
    {
        var root = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "examples", folder));
        var files = new MemoryFileTree("/shop").AddFolder("/shop");
        foreach (var path in Directory.GetFiles(root, "*.json", SearchOption.AllDirectories))
        {
            files.Add(Path.GetRelativePath(root, path).Replace('\\', '/'), File.ReadAllBytes(path));
        }

        var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        Assert.NotEmpty(workspace.Stocks);
        return Judge(workspace);
    }

    private static IReadOnlyList<Finding> Judge(RecipeLint.Recipes.Workspace workspace)
    {
        var result = LintEngine.Judge(
            Analyzer.Analyse(workspace),
            new EngineOptions { Rules = [.. RuleList.All.Where(r => RuleBook.Of(r).Family is "procedure" or "people")] });
        Assert.Empty(result.Faults);
        return result.Findings;
    }

    private static string Text(string steps, string makes, string more) =>
        $$"""{"format": 1, "makes": "{{makes}}", {{more}} "steps": [{{steps}}]}""";

    private static RecipeLint.Recipes.Workspace Load(string text)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop");
        files.Add("a.stock.json", Encoding.UTF8.GetBytes(text));
        return WorkspaceLoader.Load(files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
    }
}

using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Weighing;

/// <summary>A small shop in memory, judged by the rules on weighing and dosing alone.</summary>
internal sealed class Shop
{
    private readonly MemoryFileTree _files = new MemoryFileTree("/shop").AddFolder("/shop");

    internal Shop With(string settings) => File("recipelint.json", settings);

    internal Shop Stock(string file, string makes, string steps, string rest = "") =>
        File($"{file}.stock.json", $$"""{ "format": 1, "name": "{{file}}", "makes": "{{makes}}", {{rest}} "steps": [ { "pour": "{{makes}}" }, {{steps}} ] }""");

    internal Shop Recipe(string final, string doses, string rest = "\"volume\": \"made up\",") =>
        File("tank.recipe.json", $$"""{ "format": 1, "name": "tank", "water": "distilled", "final": "{{final}}", {{rest}} "doses": [ {{doses}} ] }""");

    internal Shop File(string path, string text)
    {
        _files.Add(path, Encoding.UTF8.GetBytes(text));
        return this;
    }

    internal Facts Facts() =>
        Analyzer.Analyse(WorkspaceLoader.Load(_files, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames }));

    internal IReadOnlyList<Finding> Judge()
    {
        var result = LintEngine.Judge(Facts(), new EngineOptions { Rules = RuleList.All });
        Assert.Empty(result.Faults.Select(f => f.Message));
        var unread = result.Findings.Where(f => f.Level == Level.Error && f.Rule.Family == "documents").Select(f => f.Message);
        Assert.Empty(unread);
        return [.. result.Findings.Where(f => f.Rule.Family == "weighing")];
    }

    internal IReadOnlyList<Finding> Judge(string rule) => [.. Judge().Where(f => f.Rule.Name == rule)];
}

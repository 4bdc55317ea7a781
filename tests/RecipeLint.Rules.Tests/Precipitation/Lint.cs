using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>Runs the rules over files written in a test.</summary>
internal static class Lint
{
    public static LintResult Files(params (string Name, string Text)[] files) =>
        LintEngine.Judge(FactsOf(files), new EngineOptions { Rules = RuleList.All });

    public static Facts FactsOf(params (string Name, string Text)[] files)
    {
        var tree = new MemoryFileTree("/test").AddFolder("/test");
        foreach (var (name, text) in files)
        {
            tree.Add(name, Encoding.UTF8.GetBytes(text));
        }

        return Analyzer.Analyse(WorkspaceLoader.Load(tree, ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames }));
    }

    /// <summary>A stock of one litre.</summary>
    public static (string Name, string Text) Stock(string name, string dose, string keep, params (string Substance, double Grams)[] additions)
    {
        var steps = additions.Select(a => FormattableString.Invariant($"{{\"add\": \"{a.Substance}\", \"amount\": \"{a.Grams:0.########} g\", \"assay\": \"100 %\"}}"));
        return (
            $"{name}.stock.json",
            $$"""{"format": 1, "name": "{{name}}", "makes": "1 L", "dose": "{{dose}}", "keep": {"at": "{{keep}}", "for": "3 months"}, "steps": [{"pour": "700 mL"}, {{string.Join(", ", steps)}}, {"topUp": "1 L"}]}""");
    }

    public static IReadOnlyList<Finding> OfTheFamily(this LintResult result)
    {
        Assert.Empty(result.Faults.Select(f => f.Message));
        Assert.Empty(result.Findings.Where(f => f.Rule.ProblemKinds.Count > 0 && f.Level == Level.Error).Select(f => f.Message));
        return [.. result.Findings.Where(f => f.Rule.Family == "precipitation")];
    }
}

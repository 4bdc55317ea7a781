using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Documents;

/// <summary>A bare number in the settings is offered the units in which scales, measures and vessels are stated.</summary>
public sealed class NumberWithoutUnitTests
{
    [Theory]
    [InlineData("scales", """{ "name": "a", "capacity": "3 kg", "readability": 0.5 }""", "0.5 g", "0.5 mg")]
    [InlineData("scales", """{ "name": "a", "readability": "0.1 g", "capacity": 3000 }""", "3000 g", "3000 mg")]
    [InlineData("scales", """{ "name": "a", "readability": "0.1 g", "repeatability": 0.2 }""", "0.2 g", "0.2 mg")]
    [InlineData("scales", """{ "name": "a", "readability": "0.1 g", "minimumWeight": 5 }""", "5 g", "5 mg")]
    [InlineData("measures", """{ "name": "a", "kind": "cylinder", "capacity": 100 }""", "100 mL", "100 L")]
    [InlineData("measures", """{ "name": "a", "kind": "cylinder", "capacity": "100 mL", "readability": 1 }""", "1 mL", "1 L")]
    [InlineData("vessels", """{ "name": "a", "capacity": 3 }""", "3 mL", "3 L")]
    [InlineData("vessels", """{ "name": "a", "capacity": "3 L", "tare": 200 }""", "200 g", "200 mg")]
    public void ABareNumberOfAnInstrumentIsOfferedItsUnits(string list, string entry, params string[] offered)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("recipelint.json", $$"""{ "{{list}}": [ {{entry}} ] }""");
        var workspace = WorkspaceLoader.Load(files, ["."], ExampleRun.Load);
        var facts = Analyzer.Analyse(workspace);
        var result = LintEngine.Judge(facts, ExampleRun.Engine);
        var finding = Assert.Single(result.Findings, f => f.Rule.Name == "number-without-unit");
        var repairs = new RepairDesk(files, ExampleRun.Load, ExampleRun.Engine, new Judged(workspace, facts, result)).For(finding);

        Assert.All(offered, o => Assert.Contains(repairs, r => r.Repair.Title.StartsWith($"Write '{o}' instead", StringComparison.Ordinal)));
    }
}

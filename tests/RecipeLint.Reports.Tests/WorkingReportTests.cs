using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Explain;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Reports.Tests;

/// <summary>The working of every rule on every file of the example shops, as it is printed.</summary>
public sealed class WorkingReportTests
{
    private static readonly Lazy<Facts> _examples = new(() => Analyzer.Analyse(WorkspaceLoader.Load(
        new DiskFileTree(Repository.Root), ["examples"], new LoadOptions { Profiles = ProfileLibrary.AllNames })));

    public static TheoryData<string> Rules() => [.. RuleList.All.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void EveryRuleIsToldOnEveryFileWithinAHundredColumns(string rule)
    {
        foreach (var file in _examples.Value.Workspace.Asked)
        {
            var text = Text(rule, file);
            Assert.All(
                text.Split('\n'),
                line => Assert.True(DisplayWidth.Of(line) <= 100 || line.Contains(".json", StringComparison.Ordinal), $"{rule} on {file}: {line}"));
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", text, StringComparison.Ordinal);
            Assert.True(text.Split('\n').Length > 4, $"{rule} says nothing of {file}");
        }
    }

    [Fact]
    public void AFindingIsFollowedByItsWorking() =>
        Repository.AssertGolden("working-fires.txt", Text("below-minimum-weight", "examples/quillmere-first-draft/stocks/trace.stock.json"));

    [Fact]
    public void SilenceIsFollowedByItsMargin() =>
        Repository.AssertGolden("working-silent.txt", Text("element-high", "examples/quillmere/recipes/lettuce.recipe.json"));

    [Fact]
    public void ARuleForRecipesAsksForOneWhenAStockStandsAlone()
    {
        var workspace = WorkspaceLoader.Load(
            new DiskFileTree(Repository.Root), ["examples/quillmere/stocks/part-a.stock.json"], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        var facts = Analyzer.Analyse(workspace);
        var explained = RuleOnFile.Of(facts, RuleList.All.Single(r => r.Name == "target-missed"), "examples/quillmere/stocks/part-a.stock.json");

        Assert.Empty(explained.Workings);
        Assert.Contains("Ask for a recipe", explained.Elsewhere, StringComparison.Ordinal);
    }

    private static string Text(string rule, string file)
    {
        var writer = new StringWriter { NewLine = "\n" };
        var facts = _examples.Value;
        WorkingReport.Write(writer, RuleOnFile.Of(facts, RuleList.All.Single(r => r.Name == rule), file), facts.Workspace.Sources, color: false);
        return writer.ToString();
    }
}

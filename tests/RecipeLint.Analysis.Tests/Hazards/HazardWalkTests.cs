using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Analysis.Tests.Hazards;

/// <summary>What stands in the vessel after each step, with what set the pH of a stock that is drawn on.</summary>
public sealed class HazardWalkTests
{
    [Fact]
    public void TheAcidOfAStockThatIsDrawnOnMeetsTheBleach()
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("pre.stock.json", """{"format": 1, "name": "Pre", "makes": "1 L", "steps": [{"pour": "900 mL"}, {"add": "boric-acid", "amount": "1 g"}, {"adjust": "pH 2", "using": "nitric-38"}, {"topUp": "1 L"}]}""")
            .Add("x.stock.json", """{"format": 1, "name": "X", "makes": "1 L", "steps": [{"pour": "500 mL"}, {"add": "pre.stock.json", "amount": "100 mL"}, {"add": "potassium-nitrate", "amount": "1 g"}, {"adjust": "pH 3", "using": "phosphoric-59"}, {"topUp": "1 L"}]}""");
        var stock = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], new LoadOptions())).FindStock("x.stock.json")!;

        Assert.Contains(stock.Adjustments, a => a.ThroughAliquot);
        var after = Holding.AfterEach(stock).Select(h => h.Items.Select(i => i.Substance.Id).ToHashSet()).ToList();
        Assert.All(after.Skip(1), held => Assert.Contains("nitric-38", held));
        Assert.DoesNotContain("phosphoric-59", after[2]);
        Assert.Contains("phosphoric-59", after[3]);
    }
}

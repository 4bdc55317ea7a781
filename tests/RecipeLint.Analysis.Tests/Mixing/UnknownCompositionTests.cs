using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Analysis.Tests.Mixing;

/// <summary>A product of unknown composition takes up its own volume, once.</summary>
public sealed class UnknownCompositionTests
{
    [Fact]
    public void HalfALitreOfItIsHalfALitre()
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("colour.substances.json", """{"format": 1, "substances": [{"id": "seaweed-brew", "form": "liquid", "density": "1.1 g/mL", "unknownComposition": true}]}""")
            .Add("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": "400 mL"}, {"add": "seaweed-brew", "amount": "500 mL"}, {"topUp": "1 L"}]}""");
        var stock = Analyzer.Analyse(WorkspaceLoader.Load(files, ["a.stock.json"], new LoadOptions())).Stocks.Single();
        var steps = stock.Mixing.Steps;
        Assert.Equal(0.9, steps[1].After.Litres, 2);
        Assert.Equal(1.0, steps[^1].After.Litres, 2);
    }
}

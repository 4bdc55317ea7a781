using RecipeLint.Recipes.Files;

namespace RecipeLint.Recipes.Tests.Files;

/// <summary>The same shop on a disk that does not tell names apart by case.</summary>
public sealed class CaseInsensitiveTests
{
    private const string Stock = """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}""";

    [Fact]
    public void AShopIsReadAsOnAnyOtherDisk()
    {
        var recipe = """{"format": 1, "final": "1 L", "doses": [{"stock": "stocks/a.stock.json", "dose": "1:100"}]}""";
        var there = WorkspaceLoader.Load(new CaseInsensitiveTree("/shop").Add("stocks/a.stock.json", Stock).Add("r.recipe.json", recipe), ["."], new LoadOptions());
        var here = WorkspaceLoader.Load(new MemoryFileTree("/shop").Add("stocks/a.stock.json", Stock).Add("r.recipe.json", recipe), ["."], new LoadOptions());
        Assert.Equal(here.Sources.Keys, there.Sources.Keys);
        Assert.Equal(here.Problems, there.Problems);
    }

    /// <summary>It works on the writer's machine and fails on the next: the reference must be told apart from the file everywhere.</summary>
    [Fact]
    public void AReferenceInAnotherCaseIsFoundOnceAndWithoutAFault()
    {
        var recipe = """{"format": 1, "final": "1 L", "doses": [{"stock": "Stocks/A.stock.json", "dose": "1:100"}]}""";
        var there = WorkspaceLoader.Load(new CaseInsensitiveTree("/shop").Add("stocks/a.stock.json", Stock).Add("r.recipe.json", recipe), ["."], new LoadOptions());
        var here = WorkspaceLoader.Load(new MemoryFileTree("/shop").Add("stocks/a.stock.json", Stock).Add("r.recipe.json", recipe), ["."], new LoadOptions());
        Assert.Single(here.Problems);
        Assert.Equal(here.Problems.Select(p => p.Kind), there.Problems.Select(p => p.Kind));
        Assert.Equal(["stocks/a.stock.json"], there.Problems[0].Suggestions);
        Assert.Single(there.Stocks);
    }

    [Fact]
    public void WindowsLineEndsChangeNoValue()
    {
        var text = Stock.ReplaceLineEndings("\n").Replace("\n", "\r\n", StringComparison.Ordinal);
        var workspace = WorkspaceLoader.Load(new CaseInsensitiveTree("/shop").Add("A.stock.json", text), ["."], new LoadOptions());
        Assert.Empty(workspace.Problems);
    }
}

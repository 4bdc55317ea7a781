using System.Text;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Analysis.Tests.Workspaces;

/// <summary>What a change in thought does not touch is neither parsed nor computed again, and what was known before stays known.</summary>
public sealed class FactsMemoryTests
{
    private const string Stock = """{"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "500 mL"}, {"add": "KNO3", "amount": "GRAMS g"}, {"topUp": "1 L"}]}""";

    private const string Recipe = """{"format": 1, "water": "distilled", "final": "10 L", "doses": [{"stock": "a.stock.json", "dose": "10 mL/L"}, {"stock": "b.stock.json", "dose": "10 mL/L"}]}""";

    [Fact]
    public void AChangeInThoughtComputesWhatItTouchesAlone()
    {
        var tree = new MemoryFileTree("/shop")
            .Add("a.stock.json", Stock.Replace("GRAMS", "5", StringComparison.Ordinal))
            .Add("b.stock.json", Stock.Replace("GRAMS", "6", StringComparison.Ordinal))
            .Add("r.recipe.json", Recipe);
        var (parsed, memory) = (new ParsedFiles(), new FactsMemory());
        var before = Of(tree, parsed, memory);
        Assert.Equal(3, memory.Computed);

        var (trialParsed, trial) = (new ParsedFiles(parsed), new FactsMemory(memory));
        var changed = Encoding.UTF8.GetBytes(Stock.Replace("GRAMS", "7", StringComparison.Ordinal));
        var after = Of(new OverlayFileTree(tree, "/shop/b.stock.json", changed), trialParsed, trial);
        Assert.Equal(2, trial.Computed);
        Assert.Same(before.FindStock("a.stock.json"), after.FindStock("a.stock.json"));
        Assert.NotSame(before.FindStock("b.stock.json"), after.FindStock("b.stock.json"));
        Assert.NotSame(before.FindRecipe("r.recipe.json"), after.FindRecipe("r.recipe.json"));
        Assert.Equal(
            Analyzer.Analyse(after.Workspace).FindRecipe("r.recipe.json")!.Elements["K"].Concentration,
            after.FindRecipe("r.recipe.json")!.Elements["K"].Concentration);

        // The files as they stand are known as before, whatever was tried out meanwhile.
        var again = Of(tree, parsed, memory);
        Assert.Equal(3, memory.Computed);
        Assert.Same(before.FindRecipe("r.recipe.json"), again.FindRecipe("r.recipe.json"));
    }

    private static Facts Of(IFileTree files, ParsedFiles parsed, FactsMemory memory) =>
        Analyzer.Analyse(WorkspaceLoader.Load(files, ["/shop"], new LoadOptions { Root = "/shop", Parsed = parsed }), memory);
}

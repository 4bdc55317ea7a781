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

    /// <summary>
    /// A dose of a recipe that cannot be read is as unknown to whoever acts on the tank as a step of a stock: its name, its amount, its stock,
    /// the reagent of the pH, and a step of a stock that is dosed.
    /// </summary>
    [Theory]
    [InlineData("""{"add": "never-heard-of", "amount": "10 mL"}""", "", true)]
    [InlineData("""{"add": "sodium-hypochlorite-5", "amount": "some"}""", "", true)]
    [InlineData("""{"stock": "gone.stock.json", "dose": "10 mL/L"}""", "", true)]
    [InlineData("""{"stock": "lost.stock.json", "dose": "10 mL/L"}""", "", true)]
    [InlineData("""{"stock": "whole.stock.json"}""", "", true)]
    [InlineData("""{"stock": "whole.stock.json", "dose": "10 mL/L"}""", ""","adjust": {"pH": 5.8, "using": "never-heard-of"}""", true)]
    [InlineData("""{"stock": "whole.stock.json", "dose": "10 mL/L"}""", "", false)]
    [InlineData("""{"add": "potassium-nitrate", "amount": "some"}""", "", false)]
    public void WhatCannotBeReadOfARecipeIsUnknownContents(string dose, string adjust, bool isUnknown)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("whole.stock.json", """{"format": 1, "name": "Whole", "makes": "1 L", "steps": [{"pour": "900 mL"}, {"add": "potassium-nitrate", "amount": "1 g"}, {"topUp": "1 L"}]}""")
            .Add("lost.stock.json", """{"format": 1, "name": "Lost", "makes": "1 L", "steps": [{"pour": "900 mL"}, {"add": "never-heard-of", "amount": "1 g"}, {"topUp": "1 L"}]}""")
            .Add("tank.recipe.json", $$"""{"format": 1, "name": "Tank", "water": "distilled", "final": "10 L", "volume": "made up", "doses": [{"add": "magnesium-sulfate-7h2o", "amount": "5 g"}, {{dose}}]{{adjust}}}""");
        var recipe = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], new LoadOptions())).FindRecipe("tank.recipe.json")!;

        Assert.Equal(isUnknown, HazardGate.Of(recipe).Find(HazardKind.UnknownContents) is not null);
        Assert.Equal(isUnknown, HazardGate.Of(recipe).Forbids(VesselAction.Heat) is not null);
    }

    /// <summary>A gram stands for an amount nobody can read, to the gate; what the plants get is not made up.</summary>
    [Fact]
    public void AnAmountThatCannotBeReadIsNoFigureOfTheFeed()
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("tank.recipe.json", """{"format": 1, "name": "Tank", "water": "distilled", "final": "1 L", "volume": "made up", "doses": [{"add": "sodium-hypochlorite-5", "amount": "some"}]}""");
        var recipe = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], new LoadOptions())).FindRecipe("tank.recipe.json")!;

        Assert.Equal(0, ChlorineInTank.MilligramsPerLitre(recipe));
        Assert.True(Holding.Of(recipe).Has(HazardRole.Hypochlorite));
    }
}

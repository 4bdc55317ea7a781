using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>What no repair may do: make another recipe of it unsaid, or dilute what hurts people.</summary>
public sealed class RepairPolicyTests
{
    private const string Bag = """
        {"format": 1, "substances": [{"id": "bag", "name": "Bag", "label": {"basis": "oxide", "nitrogen": {"nitrate": "5 %"}, "P2O5": "18 %", "K2O": "38 %", "MgO": "0.5 %", "S": "0.6 %", "Fe": "0.4 %",
          "chelatedWith": "EDTA", "Mn": "0.2 %", "Zn": "0.05 %", "Cu": "0.05 %", "B": "0.2 %", "Mo": "0.01 %"}}]}
        """;

    [Fact]
    public void ABagOfTenNutrientsIsNotSwappedForAChelate()
    {
        var tree = Tree(
            ("bag.substances.json", Bag),
            ("bag.stock.json", """{"format": 1, "name": "Bag", "makes": "10 L", "dose": "10 mL/L", "keep": {"at": "5..30 °C", "for": "6 months", "light": "bright"}, "steps": [{"pour": "8 L"}, {"add": "bag", "amount": "1 kg"}, {"topUp": "10 L"}]}"""),
            ("tank.recipe.json", """{"format": 1, "name": "Tank", "final": "100 L", "volume": "made up", "doses": [{"stock": "bag.stock.json"}], "adjust": {"pH": "7.6", "using": "koh-10"}}"""));
        var repairs = All(tree);
        Assert.NotEmpty(repairs);
        Assert.All(repairs, r => Assert.DoesNotContain(r.Shifts, s => s.Key is "K" or "P" && s.After < 0.1 * s.Before));
        Assert.All(repairs, r => Assert.DoesNotContain(r.Patches.Values, p => !Encoding.UTF8.GetString(p.Bytes!).Contains("bag", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void WhatHurtsPeopleIsTakenAwayAndNotDiluted()
    {
        var tree = Tree(("ph-down.stock.json", """{"format": 1, "name": "pH down", "makes": "1 L", "keep": {"for": "3 days"}, "steps": [{"add": "acetic-acid-80", "amount": "100 mL"}, {"add": "nitric-60", "amount": "100 mL"}, {"topUp": "1 L", "of": "distilled"}]}"""));
        var people = All(tree).Where(r => r.Finding.Rule.Family == "people" && r.Finding.Related.Count > 0 && r.Finding.Rule.Name.StartsWith("nitric", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(people);
        Assert.All(people, r =>
        {
            var text = Encoding.UTF8.GetString(r.Patches["ph-down.stock.json"].Bytes!);
            Assert.False(text.Contains("nitric-60", StringComparison.Ordinal) && text.Contains("acetic-acid-80", StringComparison.Ordinal), r.Repair.Title);
        });
    }

    /// <summary>Ammonia comes off of ammonium with lye: weaker or less of it is no way out while it still does.</summary>
    [Fact]
    public void ADangerIsTakenAwayBeforeAnythingElseIsMended()
    {
        var tree = Tree(("ams.stock.json", """{"format": 1, "name": "Ams", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months"}, "steps": [{"pour": "700 mL", "of": "distilled"}, {"add": "ammonium-sulfate", "amount": "200 g"}, {"add": "potassium-hydroxide", "amount": "100 g"}, {"topUp": "1 L", "of": "distilled"}]}"""));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        Assert.Contains(judged.Result.Findings, f => f.Rule.Name == "salt-past-its-solubility");
        var others = All(tree).Where(r => r.Finding.Rule.Family != "people").ToList();
        Assert.NotEmpty(others);
        Assert.All(others, r => Assert.Matches("^own-bottle", r.Repair.Key));
    }

    [Fact]
    public void NoRepairFillsAVesselPastItsVolume()
    {
        var tree = Tree(("acid.stock.json", """{"format": 1, "name": "Acid", "makes": "1 L", "steps": [{"add": "hydrochloric-31", "amount": "400 mL"}, {"topUp": "1 L", "of": "distilled"}]}"""));
        var repairs = All(tree);
        Assert.NotEmpty(repairs);
        foreach (var repair in repairs)
        {
            // 400 mL of acid leave no room for the usual 700 mL of water.
            var after = Judged.Of(new OverlayFileTree(tree, "/shop/acid.stock.json", repair.Patches["acid.stock.json"].Bytes!), ["."], ExampleRun.Load, ExampleRun.Engine);
            var poured = after.Workspace.Stocks.Single().Steps.OfType<Recipes.Documents.PourStep>().Sum(p => p.Volume!.Value.Litres);
            Assert.True(poured + after.Facts.Stocks.Single().Additions.Sum(a => a.Volume?.Litres ?? 0) <= 1.001, repair.Repair.Title);
        }
    }

    [Fact]
    public void RepairsThatMakeAnotherRecipeStandLastAndAreTakenByNameOnly()
    {
        var tree = Tree(
            ("a.stock.json", """{"format": 1, "name": "A", "makes": "2 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months"}, "steps": [{"pour": "1.5 L"}, {"add": "calcium-nitrate-4h2o", "amount": "180 g", "assay": "99 %"}, {"add": "magnesium-sulfate-7h2o", "amount": "60 g", "assay": "99 %"}, {"topUp": "2 L"}]}"""),
            ("tank.recipe.json", """{"format": 1, "name": "Tank", "final": "100 L", "volume": "made up", "doses": [{"stock": "a.stock.json"}, {"add": "potassium-sulfate", "amount": "20 g", "assay": "99 %"}]}"""));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        var repairs = desk.For(judged.Result.Findings.Single(f => f.Rule.Name == "calcium-with-sulfate"));
        var swap = Assert.Single(repairs, r => r.Repair.Key == "use-magnesium-nitrate-6h2o");
        Assert.Contains(swap.Shifts, s => s.Key == "S" && s.After < 0.6 * s.Before);
        Assert.Equal(repairs.OrderBy(r => r.Shifts.Count > 0), repairs);
        Assert.Contains("Makes another recipe of it", RepairText.Lines(swap)[1], StringComparison.Ordinal);
        var session = new RepairSession(tree, ["."], ExampleRun.Load, ExampleRun.Engine, judged);
        session.Apply("RL0101", null);
        Assert.All(session.Applied, r => Assert.Empty(r.Shifts));
    }

    /// <summary>
    /// Each trial read, computed and judged every stock of the recipe anew: an example shop took 6 s of processor time, one of five stocks
    /// of twenty salts a minute and a half.
    /// </summary>
    [Fact]
    public void ATrialComputesOnlyWhatItTouches()
    {
        const string Other = """{"format": 1, "makes": "1 L", "dose": "1 mL/L", "steps": [{"pour": "700 mL"}, {"add": "KNO3", "amount": "50 g", "assay": "99 %"}, {"topUp": "1 L"}]}""";
        var tree = Tree(
            ("a.stock.json", """{"format": 1, "makes": "2 L", "dose": "10 mL/L", "steps": [{"pour": "1.5 L"}, {"add": "calcium-nitrate-4h2o", "amount": "180 g", "assay": "99 %"}, {"add": "magnesium-sulfate-7h2o", "amount": "60 g", "assay": "99 %"}, {"topUp": "2 L"}]}"""),
            ("b.stock.json", Other), ("c.stock.json", Other), ("d.stock.json", Other),
            ("tank.recipe.json", """{"format": 1, "final": "100 L", "volume": "made up", "doses": [{"stock": "a.stock.json"}, {"stock": "b.stock.json"}, {"stock": "c.stock.json"}, {"stock": "d.stock.json"}]}"""));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        Assert.NotEmpty(desk.For(judged.Result.Findings.Single(f => f.Rule.Name == "calcium-with-sulfate")));

        // What is changed, what it is moved to, the recipe; three stocks stay as they are.
        Assert.InRange(desk.Trials, 1, 1000);
        Assert.InRange(desk.Computed, desk.Trials, 3 * desk.Trials);
    }

    /// <summary>Less ammonium takes half of all nitrogen with it: a finding about one form of it is not about the sum.</summary>
    [Fact]
    public void LessOfOneFormOfNitrogenIsToldAsLessNitrogen()
    {
        var tree = Tree(
            ("tank.recipe.json", """{"format": 1, "name": "Tank", "final": "100 L", "volume": "made up", "doses": [{"add": "calcium-nitrate-4h2o", "amount": "86 g", "assay": "99 %"}, {"add": "ammonium-chloride", "amount": "33 g", "assay": "99 %"}]}"""));
        var less = All(tree).First(r => r.Repair.Key == "less-ammonium-chloride" && r.Finding.IdPath.EndsWith("NH4-N", StringComparison.Ordinal));
        var nitrogen = Assert.Single(less.Shifts, s => s.Key == "N");
        Assert.Equal(188, nitrogen.Before, 3.0);
        // The nitrate alone is 101 mg/L: 860 mg/L × 0.99 × 28.014 / 236.15.
        Assert.InRange(nitrogen.After, 101, 150);
        Assert.DoesNotContain(less.Shifts, s => s.Key == "NH4-N");
    }

    [Fact]
    public void WhateverServesARecipeIsKnownToServeIt()
    {
        var tree = Tree(
            ("recipelint.json", """{"format": 1}"""),
            ("bag.substances.json", Bag),
            ("profiles/mine.profile.json", """{"format": 1, "name": "mine", "base": "lettuce"}"""),
            ("well.water.json", """{"format": 1, "EC": "0.5 mS/cm"}"""),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "dose": "1:100", "steps": [{"add": "bag", "amount": "10 g"}]}"""),
            ("tank.recipe.json", """{"format": 1, "final": "100 L", "volume": "made up", "crop": "mine", "water": "well.water.json", "doses": [{"stock": "a.stock.json"}]}"""));
        var workspace = WorkspaceLoader.Load(tree, ["."], ExampleRun.Load);
        foreach (var file in workspace.Sources.Keys)
        {
            Assert.Contains("tank.recipe.json", workspace.WithUsersOf([file]));
        }
    }

    /// <summary>A chelate that no constants are known for still brings its metal.</summary>
    [Fact]
    public void ALabelThatNamesTheIronOfAnUnusualChelateIsRight()
    {
        var tree = Tree(
            ("iron.substances.json", """{"format": 1, "substances": [{"id": "special-iron", "label": {"basis": "element", "Fe": "7 %", "chelatedWith": "HBED"}}]}"""),
            ("iron.stock.json", """{"format": 1, "name": "Iron", "makes": "1 L", "dose": "1 mL/L", "use": "bench", "label": {"contents": "iron HBED"}, "steps": [{"pour": "0.8 L"}, {"add": "special-iron", "amount": "20 g"}, {"topUp": "1 L"}]}"""));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        Assert.True(judged.Facts.Stocks.Single().IsComplete);
        Assert.DoesNotContain(judged.Result.Findings, f => f.Rule.Name == "label-contradicts-contents");
    }

    private static List<VerifiedRepair> All(MemoryFileTree tree)
    {
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        return [.. judged.Result.Findings.SelectMany(f => desk.For(f))];
    }

    private static MemoryFileTree Tree(params (string Name, string Text)[] files)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git");
        foreach (var (name, text) in files)
        {
            tree.Add(name, Encoding.UTF8.GetBytes(text));
        }

        return tree;
    }
}

using System.Globalization;
using System.Text;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>A repair of an element that is off lands inside the range of the crop, never between what is high and what poisons.</summary>
public sealed class ElementAimTests
{
    [Theory]
    [InlineData("copper-sulfate-5h2o", "1.2 g", "Cu", "element-toxic")]
    [InlineData("boric-acid", "3 g", "B", "element-toxic")]
    [InlineData("zinc-sulfate-7h2o", "6 g", "Zn", "element-toxic")]
    public void ARepairOfAToxicElementLandsInItsRange(string salt, string amount, string key, string rule)
    {
        var tree = Tree(salt, amount);
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        var finding = Assert.Single(judged.Result.Findings, f => f.Rule.Name == rule && f.Measured!.Name == key);
        var repairs = desk.For(finding);
        Assert.NotEmpty(repairs);
        Assert.All(repairs.Where(r => !r.Repair.Key.StartsWith("leave-out", StringComparison.Ordinal)), r =>
        {
            var (found, range) = After(tree, r, key);
            Assert.True(
                found >= range.SufficientLow * 0.99 && found <= range.SufficientHigh * 1.01,
                string.Create(CultureInfo.InvariantCulture, $"{r.Repair.Title} {found} mg/L, {range.SufficientLow} to {range.SufficientHigh}"));
        });
    }

    [Fact]
    public void NoRepairOfAnyRuleWritesAToxicAmount()
    {
        var tree = Tree("copper-sulfate-5h2o", "1.2 g");
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        var before = judged.Facts.Recipes.Single().MilligramsPerLitre("Cu");
        Assert.All(judged.Result.Findings.SelectMany(f => desk.For(f)).Where(r => r.Patches.ContainsKey("r.recipe.json")), r =>
        {
            var (found, range) = After(tree, r, "Cu");
            Assert.True(found <= range.ToxicAbove || Math.Abs(found - before) < 0.002 * before, $"{r.Name}: {r.Repair.Title}");
        });
    }

    private static (double Found, Analysis.Profiles.ElementRange Range) After(MemoryFileTree tree, VerifiedRepair repair, string key)
    {
        var files = repair.Patches.Aggregate((IFileTree)tree, (t, p) => new OverlayFileTree(t, $"/shop/{p.Key}", p.Value.Bytes!));
        var recipe = Judged.Of(files, ["."], ExampleRun.Load, ExampleRun.Engine).Facts.Recipes.Single();
        return (recipe.MilligramsPerLitre(key), recipe.Profile.Find(key)!);
    }

    private static MemoryFileTree Tree(string salt, string amount) => new MemoryFileTree("/shop").AddFolder("/shop/.git")
        .Add("r.recipe.json", Encoding.UTF8.GetBytes($$"""{"format": 1, "name": "R", "final": "100 L", "volume": "made up", "water": "reverse-osmosis", "crop": "lettuce", "doses": [{"add": "calcium-nitrate-4h2o", "amount": "80 g"}, {"add": "potassium-nitrate", "amount": "40 g"}, {"add": "fe-dtpa-hna", "amount": "2 g"}, {"add": "{{salt}}", "amount": "{{amount}}"}]}"""));
}

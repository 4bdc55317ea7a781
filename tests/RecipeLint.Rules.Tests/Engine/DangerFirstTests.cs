using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>
/// Where a bottle can hurt somebody no rule but those on people says what to put in, and none repairs it by that: an acid to chlorate and
/// sugar sets chlorine dioxide free, an acid to peroxide and iron makes the mixture that burns organic matter best.
/// </summary>
public sealed partial class DangerFirstTests
{
    private const string Shop = """
        {"format": 1, "substances": [
          {"id": "shop-chlorate", "name": "Potassium chlorate", "formula": "KClO3", "form": "solid"},
          {"id": "shop-dichlor", "name": "Sodium dichloroisocyanurate", "formula": "C3Cl2N3NaO3", "form": "solid"},
          {"id": "shop-sulfide", "name": "Sodium sulfide", "formula": "Na2S·9H2O", "form": "solid"},
          {"id": "shop-cyanide", "name": "Potassium cyanide", "formula": "KCN", "form": "solid"}]}
        """;

    /// <summary>What is put into 700 mL of water, topped up to a litre and kept for three months.</summary>
    public static TheoryData<string> Dangers() => new(
        "shop-chlorate 50 g, glucose 20 g",
        "shop-dichlor 20 g, urea 50 g",
        "hydrogen-peroxide-35 300 mL, glucose 100 g",
        "hydrogen-peroxide-12 300 mL, ferrous-sulfate-7h2o 5 g",
        "shop-sulfide 30 g, citric-acid-anhydrous 50 g",
        "shop-cyanide 5 g, citric-acid-h2o 20 g",
        "ammonium-sulfate 200 g, potassium-hydroxide 100 g",
        "sodium-hypochlorite-5 200 mL, ferrous-sulfate-7h2o 5 g, citric-acid-h2o 5 g",
        "potassium-carbonate 100 g, nitric-38 100 mL, copper-sulfate-5h2o 5 g");

    [Theory]
    [MemberData(nameof(Dangers))]
    public void NoOtherRulePutsAnythingIntoADanger(string held)
    {
        var tree = Tree(held);
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var stock = Assert.Single(judged.Facts.Stocks);
        Assert.NotEmpty(VesselAdvice.Dangers(HazardGate.Of(stock)));
        var others = judged.Result.Findings.Where(f => f.Rule.Family != "people" && f.Place.File == stock.Stock.File).ToList();
        Assert.All(others, f => Assert.DoesNotMatch(Adds(), f.Message));
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        foreach (var repair in others.SelectMany(f => desk.For(f)).Where(r => r.Patches.ContainsKey(stock.Stock.File)))
        {
            Assert.DoesNotMatch("^(Add|Keep '|Put|Warm)", repair.Repair.Title);
            var after = Judged.Of(
                new OverlayFileTree(tree, "/shop/x.stock.json", repair.Patches[stock.Stock.File].Bytes!), ["."], ExampleRun.Load, ExampleRun.Engine);
            var now = after.Facts.Stocks.Single(s => s.Stock.File == stock.Stock.File);
            var left = VesselAdvice.Dangers(HazardGate.Of(now)).Select(h => h.Kind).ToHashSet();
            Assert.True(
                left.Count == 0 || VesselAdvice.Dangers(HazardGate.Of(stock)).Any(h => !left.Contains(h.Kind)), $"{repair.Name}: {repair.Repair.Title}");
            Assert.All(now.Additions, a => Assert.True(
                left.Count == 0 || a.Mass.Grams <= 1.001 * stock.Additions.Where(b => b.Substance.Id == a.Substance.Id).Sum(b => b.Mass.Grams),
                $"{repair.Name}: {repair.Repair.Title}"));
        }
    }

    [Theory]
    [InlineData("shop-chlorate 50 g, glucose 20 g", "carbon-without-preservative", "runaway")]
    [InlineData("hydrogen-peroxide-12 300 mL, ferrous-sulfate-7h2o 5 g", "unprotected-ferrous-iron", "oxygen pressure")]
    [InlineData("ammonium-sulfate 200 g, potassium-hydroxide 100 g", "stock-ph-outside-range", "ammonia gas")]
    public void ItEndsWithTheDanger(string held, string rule, string danger)
    {
        var finding = Assert.Single(Findings(held), f => f.Rule.Name == rule);
        Assert.Contains($"the danger comes first: take away what makes {danger}", finding.Message, StringComparison.OrdinalIgnoreCase);
        Assert.EndsWith("here before anything else.", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>A litre with 50 g of chalk gives off 11 L of carbon dioxide; 24.06 L of gas are a mole at 20 °C (ideal gas).</summary>
    [Theory]
    [InlineData("calcium-carbonate 50 g, magnesium-nitrate-6h2o 50 g", "carbonate-in-stock", false)]
    [InlineData("copper-sulfate-5h2o 5 g, potassium-carbonate 20 g", "metal-hydroxide", false)]
    [InlineData("copper-sulfate-5h2o 5 g, potassium-carbonate 4 g", "metal-hydroxide", true)]
    public void AcidToCarbonateNamesItsGasOrIsNotAdvised(string held, string rule, bool isAdvised)
    {
        var message = Assert.Single(Findings(held), f => f.Rule.Name == rule).Message;
        Assert.Equal(isAdvised, message.Contains("cidify", StringComparison.Ordinal));
        Assert.Equal(isAdvised, message.Contains("litres of carbon dioxide leave each litre", StringComparison.Ordinal));
        Assert.True(isAdvised || !message.Contains("stay clear at pH", StringComparison.Ordinal), message);
    }

    [Fact]
    public void IronLostThroughPhosphoricAcidIsAnError()
    {
        var finding = Assert.Single(
            Findings("ferrous-sulfate-7h2o 5 g, manganese-sulfate-h2o 2 g, phosphoric-75 20 mL"),
            f => f.Rule.Name == "unprotected-ferrous-iron");
        Assert.True(finding.Measured!.Value > 50);
        Assert.Equal(Level.Error, finding.Level);
    }

    [Fact]
    public void AChelatedMetalIsNotToBeChelatedNorKeptWhereItIsKept()
    {
        const string Held = "fe-edta-na-3h2o 10 g, potassium-hydroxide 10 g";
        var judged = Judged.Of(Tree(Held), ["."], ExampleRun.Load, ExampleRun.Engine);
        var finding = Assert.Single(judged.Result.Findings, f => f.Rule.Name == "metal-hydroxide");
        Assert.DoesNotContain("chelate", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("8 °C or colder", finding.Message, StringComparison.Ordinal);

        // Fe-EDTA loses its iron above pH 6.5 by every published window: a repair that stops at pH 10 saves nothing.
        var repairs = new RepairDesk(Tree(Held), ExampleRun.Load, ExampleRun.Engine, judged).For(finding);
        Assert.NotEmpty(repairs);
        Assert.All(repairs, r => Assert.Contains(r.AlsoRemoved, f => f.Rule.Name == "chelate-outside-its-ph"));
    }

    [GeneratedRegex("[Aa]cidify|[Nn]eutralise|\\b[Aa]dd [0-9a-z]|[Ww]armer|[Ww]arm it|preserve with|[Cc]helate the|^Use a|or use Fe|[Dd]issolve [0-9]|clear kept at|stay clear at pH|up within|fresh within")]
    private static partial Regex Adds();

    private static IReadOnlyList<Finding> Findings(string held) => Judged.Of(Tree(held), ["."], ExampleRun.Load, ExampleRun.Engine).Result.Findings;

    private static MemoryFileTree Tree(string held)
    {
        var steps = held.Split(", ").Select(h => h.Split(' ', 2)).Select(h => $$"""{"add": "{{h[0]}}", "amount": "{{h[1]}}"}""");
        return new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("shop.substances.json", Encoding.UTF8.GetBytes(Shop))
            .Add("x.stock.json", Encoding.UTF8.GetBytes($$"""{"format": 1, "name": "X", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months", "light": "dark"}, "steps": [{"pour": "600 mL", "of": "distilled"}, {{string.Join(", ", steps)}}, {"topUp": "1 L", "of": "distilled"}]}"""));
    }
}

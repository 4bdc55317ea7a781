using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>
/// Acid is no way out where it gels silicate or throws an extract out, and nothing is advised to be put to, or done with heat to, what
/// nobody can name.
/// </summary>
public sealed partial class AcidAdviceTests
{
    private const string Shop = """
        {"format": 1, "substances": [
          {"id": "shop-brew", "name": "Compost brew", "form": "liquid", "density": "1.05 g/mL", "unknownComposition": true},
          {"id": "shop-kelp", "name": "Kelp tea", "form": "liquid", "density": "1.05 g/mL", "unknownComposition": true}]}
        """;

    private const string Hard = """{"format": 1, "name": "Invented hard well", "ions": {"Ca": "80 mg/L", "HCO3": "244 mg/L"}}""";

    private const string Silicate = "potassium-silicate-29be 50 mL, glycine 3 g";

    [Theory]
    [InlineData("distilled", Silicate, "carbon-without-preservative", "gels the silicate")]
    [InlineData("distilled", Silicate + ", potassium-sorbate 0.5 g", "preservative-too-weak", "gels the silicate")]
    [InlineData("hard.water.json", "humic-acid 100 mL", "carbon-without-preservative", "falls out below about pH 4")]
    [InlineData("hard.water.json", "humic-acid 100 mL, potassium-sorbate 0.2 g", "preservative-too-weak", "falls out below about pH 4")]
    public void NoAcidWhereItGelsOrDrops(string water, string held, string rule, string because)
    {
        var finding = Assert.Single(Judge(water, held).Result.Findings, f => f.Rule.Name == rule);
        Assert.DoesNotMatch(PutsAcid(), finding.Message);
        Assert.Contains(because, finding.Message, StringComparison.Ordinal);
        Assert.Matches("days|a week", finding.Message);
        Assert.Matches("in a part of its own|ready preserved", finding.Message);
    }

    /// <summary>Where nothing gels and nothing drops the acid is still the way out.</summary>
    [Theory]
    [InlineData("glycine 3 g, potassium-bicarbonate 1 g", "carbon-without-preservative")]
    [InlineData("glycine 3 g, potassium-bicarbonate 1 g, potassium-sorbate 0.5 g", "preservative-too-weak")]
    [InlineData("potassium-silicate-29be 0.1 mL, glycine 3 g, potassium-sorbate 0.5 g", "preservative-too-weak")]
    public void AcidIsStillAdvisedElsewhere(string held, string rule) =>
        Assert.Contains("cidify", Assert.Single(Judge("distilled", held).Result.Findings, f => f.Rule.Name == rule).Message, StringComparison.Ordinal);

    /// <summary>There is no acid in it, and its pH is not known.</summary>
    [Theory]
    [InlineData("seaweed-extract 100 mL")]
    [InlineData("fish-hydrolysate 100 mL")]
    [InlineData("amino-acid-extract 100 mL")]
    [InlineData("shop-brew 100 mL")]
    [InlineData("shop-kelp 100 mL")]
    public void AnExtractGetsNoAcidThatNobodyCanReckon(string held)
    {
        var message = Assert.Single(Judge("distilled", held).Result.Findings, f => f.Rule.Name == "carbon-without-preservative").Message;
        Assert.DoesNotContain("the acid,", message, StringComparison.Ordinal);
        Assert.DoesNotMatch(PutsAcid(), message);
        Assert.Contains("mix it fresh within 7 days", message, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>A word of its name says what such products mostly are, not what is in this one.</summary>
    [Theory]
    [InlineData("shop-brew 100 mL, potassium-hydroxide 5 g, glycine 3 g")]
    [InlineData("shop-kelp 100 mL, copper-sulfate-5h2o 5 g, potassium-carbonate 4 g")]
    [InlineData("shop-kelp 100 mL, calcium-nitrate-4h2o 300 g, magnesium-sulfate-7h2o 300 g")]
    [InlineData("shop-brew 100 mL, ferrous-sulfate-7h2o 5 g")]
    [InlineData("shop-brew 100 mL, monoammonium-phosphate 50 g, magnesium-sulfate-7h2o 100 g")]
    public void ANameIsNoComposition(string held)
    {
        var judged = Judge("distilled", held);
        var others = judged.Result.Findings.Where(f => f.Rule.Family != "people" && f.Place.File.EndsWith("x.stock.json", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(others);
        Assert.All(others, f => Assert.DoesNotMatch(PutsAcid(), f.Message));
        Assert.All(others, f => Assert.DoesNotMatch("[Ww]armer|[Ww]arm it|alkali to|pH [0-9.]+ or above", f.Message));
    }

    /// <summary>No repair does it either.</summary>
    [Theory]
    [InlineData("distilled", Silicate + ", potassium-sorbate 0.5 g")]
    [InlineData("distilled", "shop-brew 100 mL, copper-sulfate-5h2o 5 g, potassium-carbonate 4 g")]
    public void NoRepairPutsTheAcidIn(string water, string held)
    {
        var judged = Judge(water, held);
        var desk = new RepairDesk(Tree(water, held), ExampleRun.Load, ExampleRun.Engine, judged);
        Assert.All(
            judged.Result.Findings.Where(f => f.Rule.Family != "people").SelectMany(f => desk.For(f)),
            r => Assert.DoesNotMatch("Add .*(acid|alkali|hydroxide)|brings it to pH", r.Repair.Title));
    }

    [GeneratedRegex("[Aa]cidify|mineral acid|an acid\\b|before the acid|[Nn]eutralise|pH [0-9.]+ or below")]
    private static partial Regex PutsAcid();

    private static Judged Judge(string water, string held) => Judged.Of(Tree(water, held), ["."], ExampleRun.Load, ExampleRun.Engine);

    private static MemoryFileTree Tree(string water, string held)
    {
        var steps = held.Split(", ").Select(h => h.Split(' ', 2)).Select(h => $$"""{"add": "{{h[0]}}", "amount": "{{h[1]}}"}""");
        return new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("shop.substances.json", Encoding.UTF8.GetBytes(Shop))
            .Add("hard.water.json", Encoding.UTF8.GetBytes(Hard))
            .Add("x.stock.json", Encoding.UTF8.GetBytes($$"""{"format": 1, "name": "X", "makes": "1 L", "dose": "5 mL/L", "keep": {"at": "8..25 °C", "for": "3 months", "light": "dark"}, "steps": [{"pour": "600 mL", "of": "{{water}}"}, {{string.Join(", ", steps)}}, {"topUp": "1 L", "of": "{{water}}"}]}"""));
    }
}

using System.Text;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>A pH that hangs on ions nobody has stated is no figure: no rule prints it, none judges by it as if it were one.</summary>
public sealed class UnreadIonsTests
{
    [Theory]
    [InlineData("seaweed-extract 200 mL, potassium-hydroxide 1 g, potassium-nitrate 20 g", "stock-ph-outside-range")]
    [InlineData("seaweed-extract 200 mL, fe-eddha-na 5 g, nitric-38 5 mL", "chelate-outside-its-ph")]
    [InlineData("humic-acid 200 mL, zinc-sulfate-7h2o 5 g, copper-sulfate-5h2o 2 g", "no-acid-in-trace-stock")]
    public void NoRuleJudgesByIt(string held, string rule) =>
        Assert.DoesNotContain(Judge(held).Result.Findings, f => f.Rule.Name == rule);

    /// <summary>Nothing else is silenced by a little of it, nor by drops of a dye.</summary>
    [Theory]
    [InlineData("seaweed-extract 0.1 mL, potassium-hydroxide 10 g, potassium-nitrate 20 g")]
    [InlineData("food-colour 1 mL, potassium-hydroxide 10 g, potassium-nitrate 20 g")]
    public void ATraceOfItDoesNotCount(string held) =>
        Assert.Contains(Judge(held).Result.Findings, f => f.Rule.Name == "stock-ph-outside-range");

    /// <summary>A pH that is measured and set stands whatever else is in it.</summary>
    [Fact]
    public void WhatIsSetIsKnown()
    {
        var stock = Assert.Single(Judge("seaweed-extract 200 mL", """, {"adjust": "pH 4.5", "using": "citric-acid-h2o"}""").Facts.Stocks);

        Assert.True(stock.Chemistry.Mixing.TellsPh);
    }

    [Fact]
    public void APreservativeAtAnUnknownPhIsSaidToBeUntold()
    {
        var finding = Assert.Single(
            Judge("seaweed-extract 200 mL, potassium-sorbate 1 g").Result.Findings, f => f.Rule.Name == "preservative-too-weak");

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Contains("cannot be told", finding.Message, StringComparison.Ordinal);
        Assert.Contains("which ions seaweed extract sets free is not known here", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(finding.Values, v => v.Name == "pH");
    }

    /// <summary>Deposits are told all the same, without a pH that is none.</summary>
    [Theory]
    [InlineData("seaweed-extract 100 mL, calcium-nitrate-4h2o 200 g, monopotassium-phosphate 40 g", "calcium-with-phosphate")]
    [InlineData("seaweed-extract 100 mL, ferrous-sulfate-7h2o 5 g", "unprotected-ferrous-iron")]
    public void WhatFallsOutIsToldWithoutIt(string held, string rule)
    {
        var finding = Assert.Single(Judge(held).Result.Findings, f => f.Rule.Name == rule);

        Assert.DoesNotContain(finding.Values, v => v.Name == "pH");
        Assert.DoesNotMatch("(at|comes to) pH [0-9]", finding.Message);
    }

    /// <summary>Where there is more acid than all its ions could take up, it is acid.</summary>
    [Theory]
    [InlineData("humic-acid 50 mL, citric-acid-h2o 40 g", true)]
    [InlineData("humic-acid 300 mL, citric-acid-h2o 1 g", false)]
    public void OnlySureAcidThrowsAnExtractOut(string held, bool falls) =>
        Assert.Equal(falls, Judge(held).Result.Findings.Any(f => f.Rule.Name == "extract-falls-out" && f.Message.Contains("pH", StringComparison.Ordinal)));

    [Fact]
    public void WhyItIsNotKnownAgreesWithItsSubject()
    {
        var one = Assert.Single(Judge("seaweed-extract 200 mL").Facts.Stocks);
        var two = Assert.Single(Judge("seaweed-extract 200 mL, amino-acid-extract 50 mL").Facts.Stocks);

        Assert.Equal("not known: which ions seaweed extract sets free is not known here", PhDoubt.Of(one.Chemistry.Mixing));
        Assert.Contains(" set free is not known here", PhDoubt.Of(two.Chemistry.Mixing), StringComparison.Ordinal);
    }

    private static Judged Judge(string held, string more = "") => Judged.Of(Tree(held, more), ["."], ExampleRun.Load, ExampleRun.Engine);

    private static MemoryFileTree Tree(string held, string more)
    {
        var steps = held.Split(", ").Select(h => h.Split(' ', 2)).Select(h => $$"""{"add": "{{h[0]}}", "amount": "{{h[1]}}"}""");
        return new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("x.stock.json", Encoding.UTF8.GetBytes(
            $$"""{"format": 1, "name": "X", "makes": "1 L", "dose": "5 mL/L", "keep": {"at": "8..25 °C", "for": "3 months", "light": "dark"}, "steps": [{"pour": "600 mL", "of": "distilled"}, {{string.Join(", ", steps)}}{{more}}, {"topUp": "1 L", "of": "distilled"}]}"""));
    }
}

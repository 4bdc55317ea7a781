using RecipeLint.Analysis;
using RecipeLint.Analysis.Preservation;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;
using RecipeLint.Rules.Tests.Precipitation;

namespace RecipeLint.Rules.Tests.Preservation;

/// <summary>What keeps a stock is judged once: rule, message, repair and advice say one figure.</summary>
public sealed class PreservationTests
{
    [Fact]
    public void ALittleBenzoateDoesNotGuardMuchCitricAcid()
    {
        var finding = Assert.Single(Of("preservative-too-weak", ("sodium-benzoate", 0.26), ("citric-acid-h2o", 30)));
        Assert.Equal(Level.Warning, finding.Level);
        Assert.Empty(Of("preservative-too-weak", ("sodium-benzoate", 0.8), ("citric-acid-h2o", 30)));
    }

    /// <summary>The very bottle on which check was silent and diagnosis said "weak": 403 mg/L of undissociated sorbic acid.</summary>
    [Fact]
    public void TheRuleAndTheJudgementSayOneThingOfABottle()
    {
        foreach (var (sorbate, acid) in new[] { (0.3, 0.5), (0.56, 1.0), (0.56, 30), (0.56, 4), (1.0, 4), (0.2, 30), (2.0, 30) })
        {
            var facts = Facts(("potassium-sorbate", sorbate), ("citric-acid-h2o", acid));
            var stock = facts.Stocks.Single();
            var standing = PreservativeJudgement.Of(stock, PreservationNeeds.Of(stock.Settings)).Standing;
            var fires = LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings.Any(f => f.Rule.Name == "preservative-too-weak");
            Assert.Equal(fires, standing == PreservativeStanding.Weak);
        }
    }

    /// <summary>
    /// Food preservation handbooks (recalled): 0.05 to 0.1 % of benzoate and 0.05 to 0.2 % of sorbate in acid media. What is advised for a rich
    /// stock lies there, and with it the stock is guarded.
    /// </summary>
    [Theory]
    [InlineData(30)]
    [InlineData(10)]
    [InlineData(3)]
    public void TheDoseThatIsAdvisedIsUsualAndEnough(double citric)
    {
        var stock = Facts(("citric-acid-h2o", citric)).Stocks.Single();
        var judged = PreservativeJudgement.Of(stock, new PreservativeNeeds());
        Assert.Equal(PreservativeStanding.Missing, judged.Standing);
        foreach (var id in new[] { "potassium-sorbate", "sodium-benzoate" })
        {
            var preservative = Facts(("citric-acid-h2o", citric)).Workspace.Catalogue.ById(id)!;
            var grams = judged.DoseOf(preservative)!.Value;
            Assert.InRange(grams, 0.3, 1.0);
            Assert.Empty(Of("preservative-too-weak", (id, grams), ("citric-acid-h2o", citric)));
            Assert.NotEmpty(Of("preservative-too-weak", (id, grams * 0.8), ("citric-acid-h2o", citric)));
        }
    }

    [Fact]
    public void TheMessageNamesTheDoseThatWorks()
    {
        var finding = Assert.Single(Of("carbon-without-preservative", ("citric-acid-h2o", 30)));
        var stock = Facts(("citric-acid-h2o", 30)).Stocks.Single();
        var sorbate = Facts(("citric-acid-h2o", 30)).Workspace.Catalogue.ById("potassium-sorbate")!;
        var grams = PreservativeJudgement.Of(stock, new PreservativeNeeds()).DoseOf(sorbate)!.Value;
        Assert.Contains($"{Say.Number(grams)} g/L of potassium sorbate", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A liquid extract is nine tenths water: its weight is that of extract, and nobody says how much organic matter is in it. A dried one is
    /// organic matter, and so is what a label's carbon makes of a liquid: 6 % carbon are 15 % of dry matter with two fifths of carbon.
    /// </summary>
    [Theory]
    [InlineData("seaweed-extract", "holds 50 g/L of extract as sold (seaweed extract)", "50 g/L of extract as sold")]
    [InlineData("citric-acid-h2o", "g/L of organic matter (citric acid monohydrate)", "g/L of organic matter")]
    public void WhatIsCountedOfFoodIsCalledWhatItIs(string food, string without, string weak)
    {
        Assert.Contains(without, Assert.Single(Of("carbon-without-preservative", (food, 50))).Message, StringComparison.Ordinal);
        Assert.Contains(weak, Assert.Single(Of("preservative-too-weak", (food, 50), ("sodium-benzoate", 0.05))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALabelsCarbonTellsTheOrganicMatterOfALiquid()
    {
        var facts = Lint.FactsOf(Lint.Stock("kept", "1 mL/L", "10..25 °C", ("seaweed-extract", 50)));
        var stock = facts.Stocks.Single();
        var stated = new ElementContent([KeyValuePair.Create(Element.C, 0.06)], []);
        stock = stock with { Additions = [.. stock.Additions.Select(a => a with { Substance = a.Substance with { Content = stated } })] };

        var judged = PreservativeJudgement.Of(stock, new PreservativeNeeds());

        Assert.Equal(50 * 0.06 / 0.4, judged.FoodGramsPerLitre, 1e-9);
        Assert.Equal("organic matter", judged.FoodCalled);
    }

    /// <summary>More food and more time take more acid, up to the upper end of what common moulds take (Chipley 2005, recalled: 500 mg/L).</summary>
    [Fact]
    public void MoreFoodAndMoreTimeTakeMore()
    {
        var needs = new PreservativeNeeds();
        Assert.Equal(200, needs.Least("benzoic acid", 0.2, 365));
        Assert.Equal(200, needs.Least("benzoic acid", 100, 7));
        Assert.Equal(500, needs.Least("benzoic acid", 100, 365), 1e-9);
        Assert.Equal(500, needs.Least("benzoic acid", 100, null), 1e-9);
        var least = new[] { 0.5, 1, 3, 10, 30, 60 }.Select(f => needs.Least("sorbic acid", f, 90)).ToList();
        Assert.Equal(least.Order(), least);
        Assert.True(needs.Least("sorbic acid", 10, 180) > needs.Least("sorbic acid", 10, 30));
    }

    private static IReadOnlyList<Finding> Of(string rule, params (string Substance, double Grams)[] additions)
    {
        var result = LintEngine.Judge(Facts(additions), new EngineOptions { Rules = RuleList.All });
        Assert.Empty(result.Faults.Select(f => f.Message));
        return [.. result.Findings.Where(f => f.Rule.Name == rule)];
    }

    private static Facts Facts(params (string Substance, double Grams)[] additions) => Lint.FactsOf(Lint.Stock("kept", "1 mL/L", "10..25 °C", additions));
}

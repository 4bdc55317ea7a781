using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Engine;

namespace RecipeLint.Rules.Tests.Documents;

/// <summary>The rules of the documents family that judge facts, on hand-built ones; the folders test them on files.</summary>
public sealed class FactRuleTests
{
    private static IReadOnlyList<Finding> Run(string rule, Facts facts) =>
        LintEngine.Judge(facts, new EngineOptions { Rules = [RuleList.All.Single(r => r.Name == rule)] }).Findings;

    private static StockFacts Made(string file, double millilitresPerLitre) =>
        Sample.Facts(Sample.Stock(file, Dose.FromMillilitresPerLitre(millilitresPerLitre)));

    /// <summary>1:1000 and 1 mL/L are the same dose (common practice, no source).</summary>
    [Fact]
    public void OneInAThousandIsOneMillilitrePerLitre()
    {
        var stock = Sample.Facts(Sample.Stock("t.stock.json", Dose.OneIn(1000)));
        Assert.Empty(Run("dose-contradicts-dilution", Sample.All([stock], [Sample.Recipe(Sample.Dose(stock, 1))])));
    }

    /// <summary>1 mL/L is about 3.8 mL per US gallon (common practice, no source).</summary>
    [Fact]
    public void ARoundedDosePerGallonIsNoContradiction()
    {
        var stock = Made("t.stock.json", 1);
        Assert.Empty(Run("dose-contradicts-dilution", Sample.All([stock], [Sample.Recipe(Sample.Dose(stock, 3.8 / 3.785411784))])));
    }

    /// <summary>1.1 mL/L instead of 1 mL/L is 10 % more of every micronutrient (common practice, no source).</summary>
    [Fact]
    public void ATenthMoreIsAContradictionWithItsFactor()
    {
        var stock = Made("t.stock.json", 1);
        var finding = Assert.Single(Run("dose-contradicts-dilution", Sample.All([stock], [Sample.Recipe(Sample.Dose(stock, 1.1))])));

        Assert.Contains("1.1 times", finding.Message, StringComparison.Ordinal);
        Assert.Contains("1.1 mL/L", finding.Message, StringComparison.Ordinal);
        Assert.Contains("1:1000", finding.Message, StringComparison.Ordinal);
        Assert.Equal(1.1, finding.Measured!.Value, 9);
        Assert.Equal(Level.Warning, finding.Level);
    }

    [Fact]
    public void AllStocksAtHalfStrengthIsOneNote()
    {
        var (a, b) = (Made("a.stock.json", 10), Made("b.stock.json", 5));
        var recipe = Sample.Recipe(Sample.Dose(a, 5, 0), Sample.Dose(b, 2.5, 1));
        var finding = Assert.Single(Run("dose-contradicts-dilution", Sample.All([a, b], [recipe])));

        Assert.Equal(Level.Note, finding.Level);
        Assert.Equal("doses", finding.IdPath);
    }

    /// <summary>A seedling feed at 0.4 to 0.5 of every bottle is one weaker feed; a tenth of one bottle, or more of another, is not.</summary>
    [Theory]
    [InlineData(4, 2.5, 1)]
    [InlineData(12, 7, 1)]
    [InlineData(4, 1.5, 2)]
    [InlineData(4, 7, 2)]
    [InlineData(1, 0.6, 2)]
    [InlineData(30, 18, 2)]
    [InlineData(4, 5, 1)]
    public void StocksOffByAboutOneFactorAreOneNote(double ofTen, double ofFive, int findings)
    {
        var (a, b) = (Made("a.stock.json", 10), Made("b.stock.json", 5));
        var found = Run("dose-contradicts-dilution", Sample.All([a, b], [Sample.Recipe(Sample.Dose(a, ofTen, 0), Sample.Dose(b, ofFive, 1))]));

        Assert.Equal(findings, found.Count);
        Assert.Equal(ofFive != 5 && findings == 1, found.All(f => f is { Level: Level.Note, IdPath: "doses" }));
    }

    [Fact]
    public void OneStockAtHalfStrengthIsAWarningAboutThatOne()
    {
        var (a, b) = (Made("a.stock.json", 10), Made("b.stock.json", 5));
        var recipe = Sample.Recipe(Sample.Dose(a, 5, 0), Sample.Dose(b, 5, 1));
        var finding = Assert.Single(Run("dose-contradicts-dilution", Sample.All([a, b], [recipe])));

        Assert.Equal("/doses/0/dose", finding.Place.Pointer.Value);
        Assert.Equal(Level.Warning, finding.Level);
    }

    [Fact]
    public void AStockWithoutADoseContradictsNothing()
    {
        var stock = Sample.Facts(Sample.Stock("t.stock.json"));
        Assert.Empty(Run("dose-contradicts-dilution", Sample.All([stock], [Sample.Recipe(Sample.Dose(stock, 20))])));
    }

    [Fact]
    public void ThreeLinesOfOneSaltAreOneFindingWithTheSum()
    {
        var salt = Sample.Substance("potassium-nitrate");
        var stock = Sample.Facts(
            Sample.Stock(),
            Sample.Addition("kno3", salt, 50, index: 0),
            Sample.Addition("other", Sample.Substance("boric-acid"), 1, index: 1),
            Sample.Addition("kno3-2", salt, 10, index: 2),
            Sample.Addition("kno3-3", salt, 0.5, index: 3));
        var finding = Assert.Single(Run("duplicate-substance", Sample.All([stock])));

        Assert.Equal("/steps/3", finding.Place.Pointer.Value);
        Assert.Equal(2, finding.Related.Count);
        Assert.Contains("3 times: 50 + 10 + 0.5 g, together 60.5 g", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatAnAliquotBringsIsNotADuplicate()
    {
        var salt = Sample.Substance("potassium-nitrate");
        var stock = Sample.Facts(
            Sample.Stock(),
            Sample.Addition("kno3", salt, 50, index: 0),
            Sample.Addition("pre/kno3", salt, 10, index: 1) with { ThroughAliquot = true });
        Assert.Empty(Run("duplicate-substance", Sample.All([stock])));
    }

    [Fact]
    public void AStockDosedTwiceIsADuplicate()
    {
        var stock = Made("t.stock.json", 1);
        var finding = Assert.Single(Run("duplicate-substance", Sample.All([stock], [Sample.Recipe(Sample.Dose(stock, 1, 0), Sample.Dose(stock, 1, 1))])));

        Assert.Equal(Sample.RecipeFile, finding.Place.File);
        Assert.Contains("twice: 100 + 100 mL, together 200 mL", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OneFindingNamesEverySubstanceWithoutAssay()
    {
        var stock = Sample.Facts(
            Sample.Stock(),
            Sample.Addition("a", Sample.Substance("vinegar", needsAssay: true), 90, index: 0),
            Sample.Addition("b", Sample.Substance("iron-chelate", needsAssay: true), 5, index: 1),
            Sample.Addition("c", Sample.Substance("bleach", needsAssay: true), 5, index: 2, assay: true),
            Sample.Addition("d", Sample.Substance("salt"), 5, index: 3));
        var finding = Assert.Single(Run("undeclared-assay", Sample.All([stock])));

        Assert.Contains("'vinegar' and 'iron chelate' are", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("bleach", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["/steps/0", "/steps/1"], finding.Related.Select(r => r.Place.Pointer.Value));
    }

    [Fact]
    public void AStockIsUnusedOnlyWhereRecipesWereChecked()
    {
        var (a, b) = (Made("a.stock.json", 1), Made("b.stock.json", 1));
        Assert.Empty(Run("unused-stock", Sample.All([a, b])));

        var finding = Assert.Single(Run("unused-stock", Sample.All([a, b], [Sample.Recipe(Sample.Dose(a, 1))])));
        Assert.Equal("b.stock.json", finding.Place.File);
    }

    [Fact]
    public void AStockThatAnotherDrawsOnIsUsed()
    {
        var a = Sample.Facts(Sample.Stock(
            "a.stock.json",
            null,
            new AliquotStep("pre", Sample.At("a.stock.json", "/steps/0"))
            {
                What = new("pre.stock.json", Sample.At("a.stock.json", "/steps/0/add")),
                StockFile = "pre.stock.json",
            }));
        var pre = Made("pre.stock.json", 1);
        Assert.Empty(Run("unused-stock", Sample.All([a, pre], [Sample.Recipe(Sample.Dose(a, 1))])));
    }
}

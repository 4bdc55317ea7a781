using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>"Or dilute" was advised of every salt and never tried: how much water it takes is computed, and what follows from it.</summary>
public sealed class WaterRescueTests
{
    [Theory]
    [InlineData("potassium-nitrate 250 g in 1 L", "potassium-nitrate", 0.5, 1.3)]
    [InlineData("boric-acid 60 g in 1 L", "boric-acid", 0.9, 2)]
    [InlineData("potassium-sulfate 110 g in 1 L", "potassium-sulfate", 0.3, 0.8)]
    [InlineData("disodium-edta-2h2o 150 g in 1 L", "disodium-edta-crystals", 0.4, 1.5)]
    [InlineData("calcium-nitrate-4h2o 4 g, magnesium-sulfate-7h2o 4 g in 0.2 L", "gypsum", 0.5, 5)]
    public void AsMuchWaterIsAdvisedAsTakesItUp(string mix, string cause, double least, double most)
    {
        var stock = DiagnosisCase.StockOf(mix);
        var water = Of(stock, "5 °C", cause)?.Trial;

        Assert.NotNull(water);
        Assert.True(water.Helps, $"{water.Instead?.Name}");
        Assert.InRange(water.LitresPerLitre!.Value, least, most);
        var limits = DepositOptions.Of(stock.Settings);
        Assert.DoesNotContain(DepositJudgement.Of(water.Diluted!, limits).Deposits, d => d.Deposits.Count > 0);

        // Half of it leaves some lying.
        var little = WaterTrial.With(stock, water.LitresPerLitre.Value / 2);
        Assert.NotEmpty(DepositJudgement.Of(little, limits).Deposits);
        Assert.Equal(stock.Volume.Litres * (1 + water.LitresPerLitre.Value), water.Diluted!.Volume.Litres, 9);
    }

    [Theory]
    [InlineData("calcium-nitrate-4h2o 60 g, magnesium-sulfate-7h2o 40 g in 1 L", "gypsum")]
    [InlineData("calcium-nitrate-4h2o 90 g, potassium-sulfate 90 g in 1 L", "syngenite")]
    public void WaterThatDoesNotTakeItUpIsNotAdvised(string mix, string cause)
    {
        var water = Of(DiagnosisCase.StockOf(mix), "5 °C", cause)?.Trial;

        Assert.NotNull(water);
        Assert.False(water.Helps);
        Assert.Null(water.LitresPerLitre);
    }

    [Fact]
    public void TheDoseGrowsAsTheStockDoes()
    {
        var stock = Bench.Analyse([Bench.Stock("a.stock.json", "1 L", [Bench.Add("potassium-nitrate", "250 g"), Bench.TopUp("1 L")]) with
        {
            Dose = new(Chemistry.Quantities.Dose.FromMillilitresPerLitre(10), Recipes.Text.Place.Whole("a.stock.json")),
        }]).Stocks.Single();
        var water = Of(stock, "5 °C", "potassium-nitrate")!.Trial;

        Assert.Equal(10 * (1 + water.LitresPerLitre!.Value), water.Diluted!.Stock.Dose!.Value.MillilitresPerLitre, 6);
    }

    /// <summary>What kept the stock is thinner too.</summary>
    [Fact]
    public void WhatKeptItIsJudgedAnew()
    {
        var weak = Of(
            DiagnosisCase.StockOf("boric-acid 60 g, sucrose 20 g, citric-acid-h2o 2 g, potassium-sorbate 0.8 g in 1 L"), "5 °C", "boric-acid");

        Assert.True(weak!.Weakened);
        Assert.Equal("potassium sorbate", weak.Preservative?.Name);
        Assert.False(Of(DiagnosisCase.StockOf("potassium-nitrate 250 g in 1 L"), "5 °C", "potassium-nitrate")!.Weakened);
    }

    /// <summary>No text of a cause advises water untried.</summary>
    [Fact]
    public void NoTextAdvisesWaterThatIsNotTried() => Assert.All(
        DiagnosisData.Causes.Where(c => c.Rescue != Rescue.Discard), c => Assert.DoesNotMatch("(?i)\\b(or|then) dilute\\b|add(ing)? (much )?water", c.RescueSay));

    /// <summary>What water is tried on is something that the engine computes.</summary>
    [Fact]
    public void WaterIsTriedOnlyWhereTheEngineKnowsTheSolid() => Assert.All(
        DiagnosisData.Causes.Where(c => c.RescueUses.Contains("water") || c.Rescue == Rescue.Water), c =>
        {
            Assert.NotEmpty(c.Solids);
            Assert.Contains("water", c.RescueUses);
        });

    private static WaterAdvice? Of(StockFacts stock, string at, string cause)
    {
        var diagnosis = Diagnoser.Of(stock, Observation.Nothing, Bench.Read(at, Due.Temperatures).Temperatures.Low);
        return BottleAdvice.Of(diagnosis.Chemistry, diagnosis.Causes.Single(c => c.Cause.Id == cause)).Water;
    }
}

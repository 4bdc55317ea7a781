using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Acid, alkali, warmth, filter and the change of the recipe are run on the stock before they are advised.</summary>
public sealed class RescueTrialTests
{
    [Theory]
    [InlineData("sodium-benzoate 15 g, sucrose 10 g in 1 L", "5 °C", "mould", "Benzoic acid")]
    [InlineData("sodium-benzoate 15 g, ferrous-sulfate-7h2o 5 g in 1 L", "5 °C", "ferric-hydroxide", "Benzoic acid")]
    public void AChangeThatBringsSomethingElseOutIsToldSo(string mix, string at, string cause, string instead)
    {
        var trial = Of(mix, at, cause).ChangeTrial;

        Assert.NotNull(trial);
        Assert.False(trial.Helps);
        Assert.Equal(instead, trial.Instead?.Name);
    }

    [Fact]
    public void AChangeThatDoesNoHarmIsAdvised() =>
        Assert.True(Of("citric-acid-h2o 1 g, potassium-nitrate 20 g, koh-10 5 mL in 1 L", "20 °C", "mould").ChangeTrial?.Helps);

    /// <summary>Alkali was advised untried where the deposit is none of the engine's.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o 60 g, monopotassium-phosphate 3 g in 1 L", "humate-curd")]
    [InlineData("copper-sulfate-5h2o 8 g, sodium-molybdate-2h2o 1 g, nitric-38 5 mL in 1 L", "phosphomolybdate")]
    public void AlkaliThatBringsSomethingElseOutIsNotAdvised(string mix, string cause)
    {
        var trial = Of(mix, "20 °C", cause).Trial;

        Assert.NotNull(trial);
        Assert.False(trial.Helps);
        Assert.NotNull(trial.Instead);
    }

    /// <summary>Acid below pH 5 was advised untried.</summary>
    [Fact]
    public void AcidIsTriedInAnAcidStockToo()
    {
        var trial = Of("sodium-benzoate 8 g, citric-acid-h2o 3 g in 1 L", "5 °C", "vinegar-lost").Trial;

        Assert.NotNull(trial);
        Assert.False(trial.Helps);
        Assert.Equal("Benzoic acid", trial.Instead?.Name);
    }

    /// <summary>Gypsum that lies beside the clay is filtered off with it.</summary>
    [Fact]
    public void AFilterTakesAlongWhatFallsOutBesideIt()
    {
        Assert.NotEmpty(Of("calcium-nitrate-4h2o 100 g, magnesium-sulfate-h2o 60 g in 1 L", "15 °C", "insoluble-matter").Losses);
        Assert.Empty(Of("magnesium-sulfate-h2o 60 g in 1 L", "15 °C", "insoluble-matter").Losses);
    }

    /// <summary>Warmth was advised untried where the salt is not computed to fall out; phosphate of calcium is less soluble warm.</summary>
    [Fact]
    public void WarmthIsTriedWhereNothingFallsOutInTheCold() =>
        Assert.NotNull(Of("potassium-nitrate 100 g in 1 L", "5 °C", "potassium-nitrate").Trial);

    /// <summary>A figure of a text is that of this stock: where the engine computes a pH, no cause carries one of its own.</summary>
    [Fact]
    public void NoCauseThatTheEngineKnowsCarriesAPhOfItsOwn() => Assert.All(
        DiagnosisData.Causes.Where(c => c.Solids.Count > 0 && c.Rescue is Rescue.Acid or Rescue.Alkali or Rescue.Warm),
        c => Assert.DoesNotMatch(@"\bpH \d", c.RescueSay));

    private static BottleAdvice Of(string mix, string at, string cause)
    {
        var diagnosis = Diagnoser.Of(DiagnosisCase.StockOf(mix), Observation.Nothing, Bench.Read(at, Due.Temperatures).Temperatures.Low);
        return BottleAdvice.Of(diagnosis.Chemistry, diagnosis.Causes.Single(c => c.Cause.Id == cause));
    }
}

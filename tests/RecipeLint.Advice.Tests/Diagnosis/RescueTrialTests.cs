using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Judgement;
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

    /// <summary>Acid for the next batch was said of every bottle; only where it keeps this deposit dissolved is it one way.</summary>
    [Theory]
    [InlineData("monoammonium-phosphate 60 g, magnesium-sulfate-7h2o 100 g, potassium-hydroxide 10 g in 1 L", "struvite", true)]
    [InlineData("copper-sulfate-5h2o 5 g, potassium-carbonate 2 g in 1 L", "copper-hydroxide", true)]
    [InlineData("fe-eddha-na 20 g, monoammonium-phosphate 60 g, magnesium-sulfate-7h2o 100 g, potassium-hydroxide 1 g in 1 L", "manganese-oxide", null)]
    [InlineData("nitric-38 5 mL, manganese-sulfate-h2o 5 g in 1 L", "manganese-oxide", null)]
    public void AcidOfAChangeIsTriedOnTheDeposit(string mix, string cause, bool? helps)
    {
        var trial = Of(mix, "15 °C", cause).ChangeTrial;

        if (helps is null)
        {
            Assert.Null(trial);
        }
        else
        {
            Assert.Equal(helps, trial?.Helps);
        }
    }

    /// <summary>The metal of a chelate is as much part of the bottle as what falls out of it.</summary>
    [Theory]
    [InlineData("fe-edta-na-3h2o 10 g, potassium-nitrate 20 g in 1 L", "humate-curd", "EDTA")]
    [InlineData("fe-dtpa-hna 10 g, potassium-nitrate 20 g in 1 L", "humate-curd", "DTPA")]
    [InlineData("fe-eddha-na 10 g, potassium-nitrate 20 g in 1 L", "humate-curd", null)]
    [InlineData("fe-dtpa-hna 10 g, sodium-molybdate-2h2o 1 g in 1 L", "molybdic-acid", null)]
    public void AlkaliThatAChelateDoesNotStandIsNotAdvised(string mix, string cause, string? agent)
    {
        var trial = Of(mix, "20 °C", cause).Trial;

        Assert.NotNull(trial);
        Assert.Equal(agent, trial.LetsGo?.Agent);
        Assert.Equal(agent is null, trial.Helps);
    }

    [Theory]
    [InlineData("fe-eddha-na 10 g, sucrose 10 g in 1 L", "ferric-hydroxide", false)]
    [InlineData("fe-edta-na-3h2o 10 g, sucrose 10 g in 1 L", "ferric-hydroxide", true)]
    public void AcidThatAChelateDoesNotStandIsNotAdvised(string mix, string cause, bool helps)
    {
        var trial = Of(mix, "20 °C", cause).ChangeTrial;

        Assert.NotNull(trial);
        Assert.Equal(helps, trial.Helps);
        Assert.Equal(helps ? null : 4.0, trial.Harm?.BelowPh);
    }

    /// <summary>Sulfuric acid in place of nitric brings sulfate to the calcium.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o 400 g, nitric-38 60 mL in 1 L", false)]
    [InlineData("potassium-nitrate 100 g, nitric-38 60 mL in 1 L", true)]
    public void AnotherAcidIsTriedBeforeItTakesTheFirstOnesPlace(string mix, bool may)
    {
        var stock = DiagnosisCase.StockOf(mix);
        var acid = stock.Additions.Where(a => a.Substance.Id == "nitric-38").ToList();

        Assert.Equal(may, AcidTrial.MayReplace(stock, acid, AcidTrial.MineralAcids, DepositLimits.Default));
    }

    /// <summary>"Only strong acid dissolves it" sends somebody to the strong acid, for a deposit that never comes back.</summary>
    [Fact]
    public void NoRescueThatIsNoneNamesAReagent()
    {
        string[] reagents = ["acid", "alkali", "edta"];
        var none = DiagnosisData.Causes.Where(c => c.Rescue is Rescue.None or Rescue.Discard or Rescue.Keep or Rescue.Filter or Rescue.Skim).ToList();

        Assert.True(none.Count > 20);
        Assert.All(none, c => Assert.Empty(c.RescueUses.Intersect(reagents)));
        Assert.All(none.Where(c => c.Rescue == Rescue.None), c => Assert.DoesNotMatch("(?i)acid (takes|dissolves|brings)|vinegar", c.RescueSay));
    }

    private static BottleAdvice Of(string mix, string at, string cause)
    {
        var diagnosis = Diagnoser.Of(DiagnosisCase.StockOf(mix), Observation.Nothing, Bench.Read(at, Due.Temperatures).Temperatures.Low);
        return BottleAdvice.Of(diagnosis.Chemistry, diagnosis.Causes.Single(c => c.Cause.Id == cause));
    }
}

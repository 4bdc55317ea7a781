namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>A smell of ammonia in bottles of every kind: where it can come from, and what it cannot be.</summary>
public sealed class AmmoniaSmellTests
{
    [Theory]
    [InlineData("potassium-nitrate 60 g, magnesium-sulfate-7h2o 30 g in 1 L", "smells like ammonia", "2 weeks", "ammonia-from-outside")]
    [InlineData("citric-acid-h2o 4 g, zinc-sulfate-7h2o 4 g, boric-acid 3 g in 1 L", "it reeks of ammonia", "3 days", "ammonia-from-outside")]
    [InlineData("nitric-38 20 mL, potassium-nitrate 40 g in 1 L", "smell of cat pee", "at once", "ammonia-from-outside")]
    [InlineData("calcium-nitrate-4h2o 100 g, potassium-sulfate 40 g in 1 L", "smells of ammonia", "1 day", "ammonia-from-outside")]
    [InlineData("urea 40 g, potassium-nitrate 20 g in 1 L", "smells of ammonia", "5 weeks", "nitrogen-decay")]
    [InlineData("amino-acid-extract 40 mL, magnesium-sulfate-7h2o 20 g in 1 L", "stinks of ammonia", "3 weeks", "nitrogen-decay")]
    [InlineData("fish-hydrolysate 50 mL in 1 L", "smells foul and of ammonia", "10 days", "nitrogen-decay")]
    [InlineData("ammonium-sulfate 40 g, koh-10 80 mL in 1 L", "smells of ammonia", "at once", "ammonia-loss")]
    [InlineData("ammonium-nitrate 30 g, potassium-silicate-29be 20 mL in 1 L", "sharp smell of ammonia", "at once", "ammonia-loss")]
    public void ASmellOfAmmoniaIsPutDownToWhatGivesItOff(string mix, string seen, string after, string cause)
    {
        var told = new DiagnosisCase(mix, seen, after, "20 °C", cause);
        var causes = told.Diagnose().Causes.Select(c => c.Cause.Id).ToList();

        Assert.Equal(cause, causes[0]);
        Assert.DoesNotContain("plasticiser", causes.Take(3));
        Assert.DoesNotContain("layering", causes.Take(2));
    }

    /// <summary>A smell alone is put down to what smells so, not to a deposit that nobody saw.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o 100 g, potassium-sulfate 40 g in 1 L", "smells of rotten eggs", "sulfide", "hydrogen-sulfide-gas")]
    [InlineData("citric-acid-h2o 6 g, magnesium-sulfate-7h2o 60 g in 1 L", "rotten egg smell", "sulfide", "hydrogen-sulfide-gas")]
    [InlineData("calcium-nitrate-4h2o 60 g, dipotassium-phosphate 20 g in 1 L", "smells like a swimming pool", "chlorine-gas", "chloramine-gas")]
    [InlineData("calcium-nitrate-4h2o 100 g, magnesium-sulfate-7h2o 40 g in 1 L", "smells of beer", "yeast", "yeast")]
    public void ASmellAloneIsPutDownToWhatSmellsSo(string mix, string seen, string cause, string other) =>
        Assert.Equal(1, new DiagnosisCase(mix, seen, "", "20 °C", cause, other).Rank());

    /// <summary>Heat of acid that went into water is no gas, and what dissolves in vinegar is no smell.</summary>
    [Theory]
    [InlineData("nitric-60 400 g in 1 L", "it got hot", "heat-of-mixing")]
    [InlineData("potassium-hydroxide 100 g in 1 L", "it got hot when I mixed it", "heat-of-mixing")]
    [InlineData("potassium-silicate-29be 100 g, potassium-nitrate 50 g in 1 L", "silicate goes in last", "silica-gel")]
    [InlineData("potassium-silicate-29be 100 g, monopotassium-phosphate 20 g in 1 L", "silicate went in last, cloudy", "silica-gel")]
    public void HeatAndGelArePutDownToWhatMakesThem(string mix, string seen, string cause) =>
        Assert.Equal(1, new DiagnosisCase(mix, seen, "", "20 °C", cause).Rank());

    /// <summary>What cleared with vinegar lay there: no gas, no layer and no sound bottle does that.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o 100 g, potassium-nitrate 40 g in 1 L")]
    [InlineData("magnesium-sulfate-7h2o 60 g, monopotassium-phosphate 20 g in 1 L")]
    public void WhatVinegarClearsWasADeposit(string mix)
    {
        var causes = new DiagnosisCase(mix, "cleared with vinegar", "", "20 °C").Diagnose().Causes.Select(c => c.Cause).Take(3).ToList();

        Assert.DoesNotContain(causes, c => c.Id is "anticaking" or "nothing-wrong" or "layering" or "ammonia-from-outside");
        Assert.Contains(causes[0].Id, new[] { "hard-water", "lime", "calcite", "calcium-carbonate", "calcium-phosphate", "struvite", "concentrates-joined" });
    }

    /// <summary>Whatever the recipe, the smell stands before deposits that nobody saw.</summary>
    [Fact]
    public void EveryCauseThatSmellsOfAmmoniaComesBeforeThoseThatDoNot()
    {
        var told = new DiagnosisCase("potassium-nitrate 60 g in 1 L", "smells of ammonia", "", "20 °C");
        var ranked = told.Diagnose().Causes.ToList();
        var outside = ranked.FindIndex(c => c.Cause.Id == "ammonia-from-outside");

        Assert.Equal(0, outside);
        Assert.True(ranked[0].Share > 0.3, $"{ranked[0].Share:0.00}");
    }
}

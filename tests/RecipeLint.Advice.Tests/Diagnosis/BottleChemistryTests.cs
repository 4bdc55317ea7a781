using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>How far a solid stands from falling out, and in which states of a bottle that is asked.</summary>
public sealed class BottleChemistryTests
{
    [Fact]
    public void ACauseWithoutSolidsIsUnknownToTheEngine() => Assert.Equal(
        SolidVerdict.None, BottleChemistry.Of(DiagnosisCase.StockOf("potassium-nitrate 10 g in 1 L"), null).Of(MadeUp.Cause("a")));

    [Theory]
    [InlineData("Gypsum", 60.0, Standing.Forms)]
    [InlineData("Gypsum", 0.0, Standing.Absent)]
    [InlineData("No such solid", 10.0, Standing.Absent)]
    [InlineData("Gypsum", 0.05, Standing.FarBelow)]
    public void ASolidStandsWhereItsIndexPutsIt(string solid, double sulfate, Standing standing)
    {
        var verdict = Of($"calcium-nitrate-4h2o 60 g{(sulfate > 0 ? FormattableString.Invariant($", magnesium-sulfate-7h2o {sulfate} g") : "")} in 1 L", solid);

        Assert.Equal(standing, verdict.Standing);
        Assert.Equal(standing == Standing.Forms, verdict.Counts);
        Assert.Equal(standing == Standing.Forms, verdict.GramsPerLitre > 0);
        Assert.Equal(standing == Standing.Absent, verdict.Index is null);
    }

    /// <summary>The bars stand at an index of 0, -0.25 and -1, of every solid that a stock can form, as it is slowly made stronger.</summary>
    [Fact]
    public void TheStandingFollowsTheIndex()
    {
        var seen = new HashSet<Standing>();
        for (var grams = 0.02; grams < 40; grams *= 1.25)
        {
            var verdict = Of(FormattableString.Invariant($"calcium-nitrate-4h2o 3 g, magnesium-sulfate-7h2o {grams:0.####} g in 1 L"), "Gypsum");
            seen.Add(verdict.Standing);
            if (verdict.Standing is not (Standing.Forms or Standing.Held))
            {
                Assert.Equal(
                    verdict.Index switch { > 0 => Standing.Above, > -0.25 => Standing.Close, > -1 => Standing.Below, _ => Standing.FarBelow },
                    verdict.Standing);
            }
        }

        Assert.Superset(new HashSet<Standing> { Standing.Forms, Standing.Close, Standing.Below, Standing.FarBelow }, seen);
    }

    /// <summary>Salts stand by the mean of their two measures: within a factor of five below, then far below.</summary>
    [Fact]
    public void ASaltFollowsItsMean()
    {
        var seen = new HashSet<Standing>();
        for (var grams = 5.0; grams < 320; grams *= 1.12)
        {
            var verdict = Of(FormattableString.Invariant($"potassium-nitrate {grams:0.#} g in 1 L"), "Niter", 20);
            seen.Add(verdict.Standing);
            if (!verdict.Counts && verdict.Standing != Standing.Absent)
            {
                Assert.Equal(verdict.Index > -0.7 ? Standing.Below : Standing.FarBelow, verdict.Standing);
            }
        }

        Assert.Superset(new HashSet<Standing> { Standing.Below, Standing.FarBelow }, seen);
    }

    /// <summary>Of several solids the worst decides, of two that fall out the larger.</summary>
    [Theory]
    [InlineData("Gypsum", "Struvite")]
    [InlineData("Struvite", "Gypsum")]
    public void TheWorstOfTheSolidsDecides(string first, string second)
    {
        var chemistry = BottleChemistry.Of(DiagnosisCase.StockOf("calcium-nitrate-4h2o 60 g, magnesium-sulfate-7h2o 60 g in 1 L"), null);
        var verdict = chemistry.Of(MadeUp.Cause("a") with { Solids = [first, second] });

        Assert.Equal((Standing.Forms, "Gypsum"), (verdict.Standing, verdict.Solid?.Name));
        Assert.Equal(verdict.GramsPerLitre, chemistry.States.Max(s => chemistry.DepositsAt(s).Sum(d => d.GramsPerLitre)), 6);
    }

    /// <summary>Seen at a temperature, that counts; else the coldest it is kept at, and the warmest too.</summary>
    [Theory]
    [InlineData(null, 3)]
    [InlineData(12.0, 2)]
    public void TheStatesAreThoseItWasIn(double? seenAt, int states)
    {
        var stock = DiagnosisCase.StockOf("potassium-nitrate 100 g in 1 L");
        var chemistry = BottleChemistry.Of(stock, seenAt is { } at ? new Temperature(at) : null);

        Assert.Equal(states, chemistry.States.Count);
        Assert.Equal(chemistry.AtSeen, chemistry.States[0]);
        Assert.Equal(seenAt ?? stock.Chemistry.Coldest.Temperature.Celsius, chemistry.AtSeen.Temperature.Celsius);
        Assert.Contains(stock.Chemistry.Mixing, chemistry.States);
        Assert.Equal(seenAt is null, chemistry.States.Contains(stock.Chemistry.Warmest));
    }

    /// <summary>Iron(II) meets air in any bottle that is opened, also one that the file keeps for a day.</summary>
    [Theory]
    [InlineData("ferrous-sulfate-7h2o 10 g in 1 L", true)]
    [InlineData("ferric-chloride-6h2o 10 g in 1 L", false)]
    public void IronMeetsAir(string mix, bool aged) => Assert.Equal(
        aged, BottleChemistry.Of(DiagnosisCase.StockOf(mix), new Temperature(20)).States.Any(s => s.Moment == StateMoment.Aged));

    /// <summary>Acid is poured up to pH 7 and alkali up to pH 9, where it is not past that by itself; silicate is then held by nothing.</summary>
    [Theory]
    [InlineData("potassium-hydroxide 5 g in 1 L", "nitric-38", 7.0)]
    [InlineData("potassium-nitrate 5 g, nitric-38 5 mL in 1 L", "nitric-38", null)]
    [InlineData("potassium-nitrate 5 g, nitric-38 5 mL in 1 L", "koh-10", 9.0)]
    [InlineData("potassium-nitrate 5 g, nitric-38 5 mL in 1 L", "potassium-carbonate", 9.0)]
    [InlineData("potassium-hydroxide 5 g in 1 L", "koh-10", null)]
    [InlineData("potassium-hydroxide 5 g in 1 L", "potassium-nitrate", null)]
    [InlineData("potassium-hydroxide 5 g in 1 L", null, null)]
    public void WhatSomebodyPutInChangesThePh(string mix, string? putIn, double? ph)
    {
        PutIn[] puts = [new PutIn("something", null), new PutIn("it", putIn is null ? null : Bench.Substance(putIn))];
        var chemistry = BottleChemistry.Of(DiagnosisCase.StockOf(mix), new Temperature(20), puts);
        var poured = chemistry.States.Skip(2).SingleOrDefault();

        Assert.Equal(ph, poured is null ? null : Math.Round(poured.Ph, 6));
        if (poured is not null)
        {
            Assert.Equal(FormattableString.Invariant($"at the pH of {ph} that what was put in may bring"), chemistry.When(poured));
            Assert.False(poured.OpenToAir);
        }
    }

    [Fact]
    public void SilicateThatAcidMetGels()
    {
        var verdict = BottleChemistry.Of(
            DiagnosisCase.StockOf("potassium-silicate-29be 100 mL in 1 L"), null, [new PutIn("acid", Bench.Substance("nitric-38"))])
            .Of(DiagnosisData.Cause("silica-gel"));

        Assert.Equal(Standing.Forms, verdict.Standing);
        Assert.True(verdict.GramsPerLitre > 1);
    }

    private static SolidVerdict Of(string mix, string solid, double celsius = 20) =>
        BottleChemistry.Of(DiagnosisCase.StockOf(mix), new Temperature(celsius)).Of(MadeUp.Cause("a") with { Solids = [solid] });
}

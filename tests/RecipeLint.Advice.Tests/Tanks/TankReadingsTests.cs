using RecipeLint.Advice.Slips;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Readings;

namespace RecipeLint.Advice.Tests.Tanks;

/// <summary>What a meter shows in a tank beside what the engine computes, and what is tried where the two part.</summary>
public sealed class TankReadingsTests
{
    private static readonly (string, double)[] _hard = [("Ca", 80), ("Mg", 12), ("HCO3", 305)];

    private static readonly RecipeFacts _adjusted = Tank.Of(
        100, _hard, [("potassium-nitrate", "50 g")], (6, "nitric-60"), [("A", "1:100", [("calcium-nitrate-4h2o", "60 g")])]);

    private static readonly RecipeFacts _plain = Tank.Of(100, _hard, [("potassium-nitrate", "50 g"), ("nitric-60", "20 mL")]);

    [Fact]
    public void AReadingFitsUpToItsHalfWidth()
    {
        var sound = new TankReading(Measured(ReadingKind.Ph, 6), 6.5, 0.5, [], []);

        Assert.True(sound.Fits);
        Assert.True((sound with { Computed = 5.5 }).Fits);
        Assert.False((sound with { HalfWidth = 0.499 }).Fits);
        Assert.False((sound with { Computed = null }).Fits);
    }

    [Theory]
    [InlineData(ReadingKind.Ph)]
    [InlineData(ReadingKind.Conductivity)]
    public void WhatIsAsComputedNeedsNoReason(ReadingKind kind)
    {
        var final = _adjusted.Chemistry.Final;
        var value = kind == ReadingKind.Ph ? final.Ph : final.Conductivity.At25!.Value.MillisiemensPerCentimetre;
        var slack = kind == ReadingKind.Ph ? 0.2 : 0.05 * value;
        var reading = TankReadings.Of(_adjusted, Measured(kind, value, 0.1));

        Assert.True(reading.Fits);
        Assert.Equal(value, reading.Computed!.Value, 9);
        Assert.Equal(slack + 0.1, reading.HalfWidth, 9);
        Assert.Empty(reading.Explaining);
        Assert.Empty(reading.Nearest);
        Assert.True(TankReadings.Of(_adjusted, Measured(kind, value + slack + 0.0999, 0.1)).Fits);
        Assert.False(TankReadings.Of(_adjusted, Measured(kind, value - slack - 0.1001, 0.1)).Fits);
    }

    [Fact]
    public void WhatMovesAnAdjustedTankIsTried() => Assert.Equal(
        [
            "nitric acid 60 % was left out, and the tank has come to rest with the air",
            "nitric acid 60 % was left out, and the tank was just poured",
            "only half of the nitric acid 60 % went in",
            "twice the nitric acid 60 % went in",
            "the carbon dioxide has not left yet: the tank was just poured",
            "'A' was left out",
            "'A' went in twice",
            "'potassium nitrate' was left out",
            "'potassium nitrate' went in twice",
            .. new[] { "0.5", "1", "2", "3", "4", "6" }.Select(m => $"the water holds {m} meq/L more alkalinity than it is stated with"),
        ],
        TankReadings.Tried(_adjusted, ReadingKind.Ph).Select(s => s.Words));

    [Fact]
    public void WhatMovesAPlainTankIsTried()
    {
        var tried = TankReadings.Tried(_plain, ReadingKind.Ph).ToList();

        Assert.Equal(
            [
                "the carbon dioxide has not left yet: the tank was just poured",
                "'potassium nitrate' was left out",
                "'potassium nitrate' went in twice",
                "'nitric acid 60 %' was left out",
                "'nitric acid 60 %' went in twice",
            ],
            tried.Take(5).Select(s => s.Words));
        Assert.Equal(_plain.Chemistry.Tank.Ph, tried[0].Value!.Value, 9);
    }

    /// <summary>A reason explains what it comes within the half-width of, on the side of the reading, nearest first, four at the most.</summary>
    [Theory]
    [InlineData(ReadingKind.Ph, 2.5)]
    [InlineData(ReadingKind.Ph, 3.2)]
    [InlineData(ReadingKind.Ph, 5.2)]
    [InlineData(ReadingKind.Ph, 6.6)]
    [InlineData(ReadingKind.Ph, 7.5)]
    [InlineData(ReadingKind.Ph, 8.2)]
    [InlineData(ReadingKind.Ph, 9.5)]
    [InlineData(ReadingKind.Conductivity, 0.3)]
    [InlineData(ReadingKind.Conductivity, 0.9)]
    [InlineData(ReadingKind.Conductivity, 2.3)]
    public void ReasonsStandTheNearestFirst(ReadingKind kind, double value)
    {
        var reading = TankReadings.Of(_adjusted, Measured(kind, value, 0.05));
        var shown = reading.Explaining.Concat(reading.Nearest).Select(s => s.Value!.Value).ToList();
        var computed = reading.Computed!.Value;

        Assert.False(reading.Fits);
        Assert.NotEmpty(shown);
        Assert.Equal(shown.OrderBy(s => Math.Round(Math.Abs(s - value), 6)), shown);
        Assert.All(shown, s => Assert.Equal(Math.Sign(value - computed), Math.Sign(s - computed)));
        Assert.All(shown, s => Assert.True(Math.Abs(s - computed) > reading.HalfWidth / 2));
        Assert.All(reading.Explaining, s => Assert.True(Math.Abs(s.Value!.Value - value) <= reading.HalfWidth));
        Assert.All(reading.Nearest, s => Assert.True(Math.Abs(s.Value!.Value - value) > reading.HalfWidth));
        Assert.InRange(reading.Explaining.Count, 0, 4);
        Assert.Equal(reading.Explaining.Count > 0 ? 0 : 2, reading.Nearest.Count);
    }

    /// <summary>Twice the acid makes the tank more acid, none of it less; more alkalinity less acid; the tank just poured more acid.</summary>
    [Fact]
    public void EachReasonReadsAsItShould()
    {
        var ph = _adjusted.Chemistry.Final.Ph;
        var read = TankReadings.Tried(_adjusted, ReadingKind.Ph).Select(s => s.Value!.Value).ToList();

        Assert.Equal(_adjusted.Chemistry.TankInAir.Ph, read[0], 9);
        Assert.Equal(_adjusted.Chemistry.Tank.Ph, read[1], 9);
        Assert.InRange(read[2], ph + 0.5, read[0] - 0.05);
        Assert.True(read[3] < 3.5);
        Assert.True(read[4] < ph - 0.1);
        Assert.True(read[9] < read[10] - 0.01);
        Assert.True(read[9] > ph + 0.1);
    }

    /// <summary>What is left out or goes in twice moves the conductivity as far down as up, nearly.</summary>
    [Fact]
    public void WhatIsLeftOutIsMissingOnceAndWhatGoesInTwiceIsThereOnceMore()
    {
        var value = Conductivity(_adjusted);
        var read = TankReadings.Tried(_adjusted, ReadingKind.Conductivity).Select(s => s.Value!.Value - value).ToList();

        Assert.All([5, 7], i => Assert.InRange(read[i], -0.9, -0.3));
        Assert.All([5, 7], i => Assert.InRange(read[i + 1] / -read[i], 0.85, 1));
    }

    /// <summary>Six meq/L more of calcium bicarbonate bring 3 mmol/L of calcium: some 100 µS/cm for each meq (limiting conductances, recalled).</summary>
    [Fact]
    public void MoreAlkalinityIsThatOfCalciumBicarbonate()
    {
        var soft = Tank.Of(100, [], [("potassium-nitrate", "50 g")]);
        var read = TankReadings.Tried(soft, ReadingKind.Conductivity).Select(s => s.Value - Conductivity(soft)).ToList();

        Assert.InRange(read[^6]!.Value, 0.035, 0.06);
        Assert.InRange(read[^5]!.Value, 0.07, 0.11);
    }

    /// <summary>Bleach holds lye that its label does not tell: a computed pH was compared all the same.</summary>
    [Fact]
    public void APhThatNobodyCanTellIsComparedWithNothing()
    {
        var bleached = Tank.Of(100, _hard, [("potassium-nitrate", "50 g"), ("sodium-hypochlorite-5", "100 mL")]);
        var reading = TankReadings.Of(bleached, Measured(ReadingKind.Ph, 5, 0.1));

        Assert.False(bleached.Chemistry.Final.PhIsKnown);
        Assert.Null(reading.Computed);
        Assert.Empty(reading.Explaining);
        Assert.Empty(reading.Nearest);
        Assert.NotNull(TankReadings.Of(bleached, Measured(ReadingKind.Conductivity, 5, 0.1)).Computed);
    }

    [Theory]
    [InlineData(ReadingKind.Ph)]
    [InlineData(ReadingKind.Conductivity)]
    public void WithoutAComputedValueNothingIsSaid(ReadingKind kind)
    {
        var brine = Tank.Of(1, [], [("calcium-chloride-anhydrous", "3 kg")]);
        var reading = TankReadings.Of(brine, Measured(kind, 5, 0.1));

        Assert.False(brine.Chemistry.Final.IsSolved);
        Assert.Null(reading.Computed);
        Assert.False(reading.Fits);
        Assert.Equal((kind == ReadingKind.Ph ? 0.2 : 0.25) + 0.1, reading.HalfWidth, 9);
        Assert.Empty(reading.Explaining);
        Assert.Empty(reading.Nearest);
    }

    private static double Conductivity(RecipeFacts recipe) => recipe.Chemistry.Final.Conductivity.At25!.Value.MillisiemensPerCentimetre;

    private static Measurement Measured(ReadingKind kind, double value, double? halfWidth = null) => new("", new Reading(kind, 1), value, halfWidth);
}

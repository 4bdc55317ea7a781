using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Tanks;

/// <summary>What falls out at each moment of a tank, what pure water and acid change of it.</summary>
public sealed class TankChemistryTests
{
    private static readonly (string, double)[] _hard = [("Ca", 80), ("Mg", 12), ("HCO3", 305)];

    private static readonly (string, string)[] _feed =
        [("calcium-nitrate-4h2o", "60 g"), ("monopotassium-phosphate", "17 g"), ("magnesium-sulfate-7h2o", "30 g")];

    private static readonly (string, string, (string, string)[])[] _concentrates =
    [
        ("A", "1:100", [("calcium-nitrate-4h2o", "60 g")]),
        ("B", "1:100", [("monopotassium-phosphate", "17 g"), ("magnesium-sulfate-7h2o", "30 g")]),
    ];

    /// <summary>Hard water drops lime by itself, warm water more; concentrates drop something only where two of them meet.</summary>
    [Fact]
    public void EachMomentHasItsOwnDeposits()
    {
        var chemistry = TankChemistry.Of(Tank.Of(100, _hard, [], stocks: _concentrates));
        double Lime(TankMoment moment) => chemistry.DepositsAt(moment).SelectMany(d => d.Deposits).Where(d => d.Solid.Name == "Calcite")
            .Sum(d => d.Mass.GramsPerLitre);

        Assert.True(Lime(TankMoment.Water) > 0.01);
        Assert.True(Lime(TankMoment.Warm) > Lime(TankMoment.Water));
        Assert.Equal(0, Lime(TankMoment.Poured), 6);
        Assert.NotEmpty(chemistry.DepositsAt(TankMoment.Meeting));
        Assert.Empty(chemistry.DepositsAt(TankMoment.Adjusted));
        Assert.NotEmpty(chemistry.DepositsAt(TankMoment.Drying));
    }

    [Fact]
    public void OneConcentrateMeetsNone() => Assert.Empty(
        TankChemistry.Of(Tank.Of(100, _hard, _feed, stocks: [_concentrates[0]])).DepositsAt(TankMoment.Meeting));

    [Fact]
    public void PureWaterHoldsNothingToFallOut()
    {
        var chemistry = TankChemistry.Of(Tank.Of(100, [], _feed));

        Assert.Empty(chemistry.DepositsAt(TankMoment.Water));
        Assert.Empty(chemistry.DepositsAt(TankMoment.Warm));
    }

    /// <summary>Iron(II) rusts in any tank, whether its pH is set or not; what it held until then counts beside.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(6.5)]
    public void IronOfTheFeedRusts(double? ph)
    {
        var tank = Tank.Of(100, _hard, [("ferrous-sulfate-7h2o", "2 g")], ph is { } to ? (to, "nitric-60") : null);
        var chemistry = TankChemistry.Of(tank);
        var there = ph is null ? TankMoment.Air : TankMoment.Adjusted;
        var (solid, moment) = chemistry.Of(TankData.Causes.Single(c => c.Cause.Id == "iron-of-the-feed") with { Moments = [there] });

        Assert.Equal(Standing.Forms, solid.Standing);
        Assert.Equal(there, moment);
        Assert.InRange(solid.GramsPerLitre, 0.005, 0.02);
    }

    /// <summary>A tank that was told to stand warm is computed warm: more lime.</summary>
    [Fact]
    public void TheTemperatureThatWasToldCounts()
    {
        var tank = Tank.Of(100, _hard, [("potassium-nitrate", "50 g")]);
        var cause = TankData.Causes.Single(c => c.Cause.Id == "lime-scale") with { Moments = [TankMoment.Air] };
        double Grams(double? celsius) => TankChemistry.Of(tank, celsius is { } at ? new Temperature(at) : null).Of(cause).Solid.GramsPerLitre;

        Assert.Equal(20, TankChemistry.Of(tank).Of(cause).Solid.State!.Temperature.Celsius);
        Assert.Equal(Grams(20), Grams(null), 9);
        Assert.True(Grams(35) > Grams(20) + 0.005);
        Assert.True(Grams(5) < Grams(20) - 0.005);
        Assert.Equal(35, TankChemistry.Of(tank, new Temperature(35)).Of(cause).Solid.State!.Temperature.Celsius);
        Assert.Equal(new Temperature(35), TankChemistry.Of(tank, new Temperature(35)).SeenAt);
    }

    /// <summary>With pure water the lime of the water is gone, the phosphate of the feed stays; where concentrates meet no water counts.</summary>
    [Theory]
    [InlineData("lime-scale", TankMoment.Water, 0.0)]
    [InlineData("lime-scale", TankMoment.Warm, 0.0)]
    [InlineData("lime-scale", TankMoment.Air, 0.0)]
    [InlineData("concentrates-met", TankMoment.Meeting, null)]
    [InlineData("lime-scale", TankMoment.Adjusted, null)]
    public void WhatPureWaterLeavesIsComputed(string cause, TankMoment moment, double? left) => Assert.Equal(
        left,
        TankChemistry.Of(Tank.Of(100, _hard, [], stocks: _concentrates)).WithPureWater(TankData.Causes.Single(c => c.Cause.Id == cause), moment));

    [Fact]
    public void PhosphateOfTheFeedStaysInPureWaterToo()
    {
        var cause = TankData.Causes.Single(c => c.Cause.Id == "calcium-phosphate");
        var lye = Tank.Of(100, _hard, [.. _feed, ("koh-10", "200 mL")]);
        var chemistry = TankChemistry.Of(lye);
        var poured = chemistry.WithPureWater(cause, TankMoment.Poured);

        Assert.InRange(poured!.Value, 0.05, chemistry.DepositsAt(TankMoment.Poured).Sum(d => d.GramsPerLitre) + 0.05);
        Assert.Null(TankChemistry.Of(Tank.Of(100, [], [.. _feed, ("koh-10", "200 mL")])).WithPureWater(cause, TankMoment.Poured));
    }

    /// <summary>A drop that has lost nine tenths of its water holds ten times as much.</summary>
    [Fact]
    public void ADropThatDriesIsTenTimesAsStrong()
    {
        var cause = TankData.Causes.Single(c => c.Cause.Id == "gypsum");
        var chemistry = TankChemistry.Of(Tank.Of(
            100, [("Ca", 40), ("SO4", 96)], [("calcium-nitrate-4h2o", "100 g"), ("magnesium-sulfate-7h2o", "60 g")]));
        var (solid, moment) = chemistry.Of(cause);
        var pure = chemistry.WithPureWater(cause, TankMoment.Drying)!.Value;

        Assert.Equal((Standing.Forms, TankMoment.Drying), (solid.Standing, moment));
        Assert.InRange(solid.GramsPerLitre, pure + 0.5, pure + 2);
        Assert.InRange(pure, 0.01, 2);
    }

    [Theory]
    [InlineData("lime-scale", TankMoment.Water)]
    [InlineData("gypsum", null)]
    public void WhereNothingFallsOutThereIsNoMoment(string id, TankMoment? moment)
    {
        var cause = TankData.Causes.Single(c => c.Cause.Id == id);
        var (solid, at) = TankChemistry.Of(Tank.Of(100, _hard, [("potassium-nitrate", "50 g")])).Of(cause with { Moments = [cause.Moments[0]] });

        Assert.Equal(moment, at);
        Assert.Equal(moment is null ? Standing.Absent : Standing.Forms, solid.Standing);
    }

    /// <summary>
    /// Lye that sets the pH of hard water is set anew for pure water; where pure water and feed are past the pH by themselves, none goes in.
    /// </summary>
    [Theory]
    [InlineData("60 mL", 8.0)]
    [InlineData("60 mL", 6.0)]
    public void TheReagentIsSetAnewForPureWater(string acid, double ph)
    {
        var cause = TankData.Causes.Single(c => c.Cause.Id == "calcium-phosphate");
        (string, string)[] doses = [.. _feed, ("nitric-60", acid)];
        var left = TankChemistry.Of(Tank.Of(100, _hard, doses, (ph, "koh-10"))).WithPureWater(cause, TankMoment.Adjusted);
        var pure = TankChemistry.Of(Tank.Of(100, [], doses, (ph, "koh-10"))).DepositsAt(TankMoment.Adjusted).SelectMany(d => d.Deposits)
            .Where(d => cause.Cause.Solids.Contains(d.Solid.Name)).Sum(d => d.Mass.GramsPerLitre);

        Assert.NotNull(left);
        Assert.Equal(pure, left.Value, 5);
        Assert.Equal(ph > 7, pure > 0.01);
    }

    /// <summary>Lime of a tank goes with acid; of what concentrates or dries, whose pH nobody sets, acid says nothing.</summary>
    [Theory]
    [InlineData(TankMoment.Water, true)]
    [InlineData(TankMoment.Warm, true)]
    [InlineData(TankMoment.Air, true)]
    [InlineData(TankMoment.Meeting, false)]
    [InlineData(TankMoment.Drying, false)]
    [InlineData(null, false)]
    public void AcidIsTriedWhereAPhIsSet(TankMoment? moment, bool tried)
    {
        var acid = AcidOf([("potassium-nitrate", "50 g")], moment);

        Assert.Equal(tried, acid is not null);
        Assert.Equal(tried ? true : null, acid?.Helps);
    }

    /// <summary>Acid that brings the benzoic acid of the feed out harms the tank; the source water has none of it.</summary>
    [Theory]
    [InlineData(TankMoment.Air, true)]
    [InlineData(TankMoment.Water, false)]
    [InlineData(TankMoment.Warm, false)]
    public void WhatAcidHarmsIsHarmedInTheTankAlone(TankMoment moment, bool harms)
    {
        var acid = AcidOf([("fe-eddha-na", "2 g"), ("humic-acid", "500 mL"), ("potassium-silicate-29be", "500 mL")], moment);

        Assert.NotNull(acid?.ClearPh);
        Assert.Equal(harms, acid!.Harm is not null);
        Assert.Equal(!harms, acid.Helps);
    }

    [Theory]
    [InlineData(6.5, true)]
    [InlineData(null, false)]
    public void AcidHelpsOnlyWhereThereIsAPh(double? clear, bool helps) => Assert.Equal(helps, new TankAcid(clear, null).Helps);

    [Fact]
    public void WhatDoesNotFallOutNeedsNoAcid() => Assert.Null(AcidOf([("nitric-60", "40 mL")], TankMoment.Air, "calcium-phosphate"));

    private static TankAcid? AcidOf((string, string)[] doses, TankMoment? moment, string id = "lime-scale")
    {
        var chemistry = TankChemistry.Of(Tank.Of(100, _hard, doses));
        var cause = TankData.Causes.Single(c => c.Cause.Id == id);
        var (solid, _) = chemistry.Of(moment is { } at and not (TankMoment.Meeting or TankMoment.Drying) ? cause with { Moments = [at] } : cause);
        return TankAcid.Of(chemistry, new RankedCause(cause.Cause, 0, 1, [], solid), moment);
    }
}

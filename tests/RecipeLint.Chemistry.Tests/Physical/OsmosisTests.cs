using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class OsmosisTests
{
    // Water activity of NaCl solutions at 25 °C, Robinson & Stokes, Electrolyte Solutions, with the water potential after
    // Lang, Aust. J. Chem. 20 (1967) 2017: both recalled.
    [Theory]
    [InlineData(0.1, 0.9324, -0.462)]
    [InlineData(0.5, 0.9209, -2.281)]
    [InlineData(1.0, 0.9355, -4.640)]
    public void SodiumChlorideHasItsHandbookPotential(double molality, double osmoticCoefficient, double megapascal)
    {
        var activity = Math.Exp(-2 * molality * osmoticCoefficient * 0.018015);
        Assert.Equal(megapascal, Osmosis.PotentialMPa(activity, 25)!.Value, 0.005 * -megapascal);
        Assert.Equal(-megapascal, Osmosis.PressureMPa(activity, 25)!.Value, 0.005 * -megapascal);
    }

    // Saturated salts at 22.5 °C, relative humidity and potential in cm of water as worked out in an open mailing list on soil
    // water sensors (2001); 1 cm of water = 98.0665 Pa. Its three figures allow 2 %.
    [Theory]
    [InlineData(0.542, -8.51e5)]
    [InlineData(0.758, -3.85e5)]
    [InlineData(0.850, -2.26e5)]
    [InlineData(0.931, -9.93e4)]
    [InlineData(0.980, -2.82e4)]
    public void SaturatedSaltsGiveTheWorkedPotential(double activity, double centimetresOfWater) =>
        Assert.Equal(centimetresOfWater * 98.0665e-6, Osmosis.PotentialMPa(activity, 22.5)!.Value, 0.02 * 98.0665e-6 * -centimetresOfWater);

    // Molar volume of water at 20 °C, 18.048 mL/mol (Barrs 1968, as quoted in textbooks on plant water relations).
    [Fact]
    public void TheMolarVolumeOfWaterIsTheTextbookOne() => Assert.Equal(18.048, Water.MolarVolumeMl(20), 0.001);

    [Fact]
    public void PureWaterHasNoneAndNonsenseIsRefused()
    {
        Assert.Equal(0, Osmosis.PressureMPa(1, 20));
        Assert.Equal(0, Osmosis.PotentialMPa(1, 20));
        foreach (var activity in new[] { 0, -0.1, 1.01, double.NaN, double.PositiveInfinity })
            Assert.Null(Osmosis.PressureMPa(activity, 20));
        Assert.Null(Osmosis.PotentialMPa(0.9, -1));
    }
}

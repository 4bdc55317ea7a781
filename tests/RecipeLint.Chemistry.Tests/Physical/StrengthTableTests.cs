using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

/// <summary>
/// An invented acid of 50 g/mol whose density is a parabola of its mass per cent: rows are met exactly, and what lies between them can be
/// computed by hand.
/// </summary>
public sealed class StrengthTableTests
{
    private static readonly double Water20 = Water.Density(20);

    private static readonly AcidStrength Rising = Table(w => Water20 + (0.005 * w) + (0.00002 * w * w));

    private static AcidStrength Table(Func<double, double> density) => new(
        "XA", "test acid", 50, null, [20, density(20), 40, density(40), 60, density(60), 80, density(80)]);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(20, 0.108)]
    [InlineData(35, 0.1995)]
    [InlineData(70, 0.448)]
    [InlineData(80, 0.528)]
    public void EveryUnitFollowsFromTheDensity(double percent, double aboveWater)
    {
        var reading = Rising.AtMassPercent(percent);
        Assert.Equal(percent, reading.MassPercent);
        Assert.Equal(Water20 + aboveWater, reading.DensityGramsPerMl!.Value, 1e-12);
        Assert.Equal(10 * percent * (Water20 + aboveWater), reading.GramsPerLitre!.Value, 1e-9);
        Assert.Equal(10 * percent * (Water20 + aboveWater) / 50, reading.MolPerLitre!.Value, 1e-9);
        Assert.Null(reading.NotGivenBecause);
        Assert.Empty(reading.EstimateBecause);
        Assert.Equal(percent, Rising.AtGramsPerLitre(10 * percent * (Water20 + aboveWater) * (1 - 1e-12)).MassPercent!.Value, 1e-8);
        Assert.Equal(percent, Rising.AtMolPerLitre(percent * (Water20 + aboveWater) / 5 * (1 - 1e-12)).MassPercent!.Value, 1e-8);
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(45.001)]
    [InlineData(double.NaN)]
    public void TemperaturesEndAtBothEnds(double celsius)
    {
        const string Because = "densities of acids and bases are given from 0 to 45 °C";
        Assert.Equal(Because, Rising.AtMassPercent(20, celsius).NotGivenBecause);
        Assert.Equal(Because, Rising.AtGramsPerLitre(20, celsius).NotGivenBecause);
        Assert.Equal(Because, Rising.AtMolPerLitre(1, celsius).NotGivenBecause);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    public void WithoutAMeasuredOneTheTemperatureGoesLikeThatOfWater(double celsius)
    {
        var reading = Rising.AtMassPercent(20, celsius);
        Assert.Equal((Water20 + 0.108) * Water.Density(celsius) / Water20, reading.DensityGramsPerMl!.Value, 1e-12);
        Assert.Equal(["the temperature dependence of test acid is taken from water"], reading.EstimateBecause);
    }

    [Fact]
    public void TheTableEndsAtBothEnds()
    {
        Assert.Equal(80, Rising.MaxMassPercent);
        var strongest = 800 * (Water20 + 0.528);
        Assert.Equal("the table of test acid ends at 80 % by mass", Rising.AtMassPercent(80.0001).NotGivenBecause);
        Assert.Equal("the table of test acid ends at 80 % by mass", Rising.AtMassPercent(-0.0001).NotGivenBecause);
        Assert.Equal(80, Rising.AtGramsPerLitre(strongest).MassPercent!.Value, 1e-9);
        Assert.Equal(0, Rising.AtGramsPerLitre(0).MassPercent!.Value, 1e-9);
        Assert.Equal("the table of test acid ends at 1221 g/L", Rising.AtGramsPerLitre(strongest + 0.001).NotGivenBecause);
        Assert.Equal("the table of test acid ends at 1221 g/L", Rising.AtGramsPerLitre(-0.001).NotGivenBecause);
        var none = Rising.AtMolPerLitre(strongest / 50 * 1.00001);
        Assert.Null(none.MassPercent);
        Assert.Null(none.DensityGramsPerMl);
        Assert.Null(none.MolPerLitre);
        Assert.Null(none.GramsPerLitre);
    }

    [Theory]
    [InlineData("HNO3", "HNO3")]
    [InlineData("Nitric Acid", "HNO3")]
    [InlineData("hno3", null)]
    [InlineData("", null)]
    public void AFormulaIsSpelledANameIsNot(string asked, string? found) => Assert.Equal(found, AcidStrength.Find(asked)?.Formula);
}

using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class PyrophosphateHydrolysisTests
{
    /// <summary>
    /// The abstract of McBeath and others 2007 gives 34 and 174 days at 25 °C, which were put in, and 20 days at 50 °C, which follows from its
    /// heat of activation within a fifth.
    /// </summary>
    [Theory]
    [InlineData(2.3, 25, 34, 0.001)]
    [InlineData(5.4, 25, 174, 0.001)]
    [InlineData(2.3, 50, 20, 0.2)]
    public void HalfLivesAreThoseMeasured(double ph, double celsius, double days, double tolerance) =>
        Assert.InRange(PyrophosphateHydrolysis.HalfLifeDays(ph, celsius) / days, 1 - tolerance, 1 + tolerance);

    [Fact]
    public void AfterAHalfLifeHalfOfItHasTurned()
    {
        Assert.Equal(0.5, PyrophosphateHydrolysis.ShareTurned(2.3, 25, 34), 9);
        Assert.True(PyrophosphateHydrolysis.ShareTurned(9, 5, 30) < 0.05);
    }
}

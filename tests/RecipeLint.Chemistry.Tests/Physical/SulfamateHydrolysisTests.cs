using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class SulfamateHydrolysisTests
{
    /// <summary>
    /// The dossier's half-life at pH 2.5 and 50 °C; more than a year at pH 4 and 25 °C, as it says too. Kirk-Othmer (recalled): some per cent
    /// in months at room temperature of an acid solution, half within a day or two near 80 °C.
    /// </summary>
    [Theory]
    [InlineData(2.5, 50, 631, 0.49, 0.51)]
    [InlineData(4, 25, 365, 0, 0.01)]
    [InlineData(7, 45, 365, 0, 0.001)]
    [InlineData(0.6, 20, 180, 0.01, 0.1)]
    [InlineData(0.6, 80, 1.5, 0.3, 0.98)]
    public void AsMuchTurnsAsWasMeasured(double ph, double celsius, double days, double low, double high) =>
        Assert.InRange(SulfamateHydrolysis.ShareTurned(ph, celsius, days), low, high);

    [Fact]
    public void WarmthAndAcidHastenIt()
    {
        Assert.Equal(0, SulfamateHydrolysis.ShareTurned(1, 25, 0));
        Assert.True(SulfamateHydrolysis.ShareTurned(1, 35, 90) > 3 * SulfamateHydrolysis.ShareTurned(1, 25, 90));
        Assert.True(SulfamateHydrolysis.ShareTurned(1, 25, 90) > 10 * SulfamateHydrolysis.ShareTurned(2.5, 25, 90));
    }
}

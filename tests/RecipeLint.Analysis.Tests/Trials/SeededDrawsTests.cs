using RecipeLint.Analysis.Trials;
using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Analysis.Tests.Trials;

public sealed class SeededDrawsTests
{
    /// <summary>The first numbers of SplitMix64 from seed 0, as implementations print them (recalled).</summary>
    [Fact]
    public void TheGeneratorIsSplitMix()
    {
        var draws = new SeededDraws(0);
        Assert.Equal(0xE220A8397B1DCDAFUL, draws.Bits());
        Assert.Equal(0x6E789E6AA1B965F4UL, draws.Bits());
        Assert.Equal(0x06C45D188009454FUL, draws.Bits());
    }

    [Theory]
    [InlineData(ErrorShape.Normal)]
    [InlineData(ErrorShape.Rectangular)]
    [InlineData(ErrorShape.Triangular)]
    internal void DrawsHaveMeanZeroAndDeviationOne(ErrorShape shape)
    {
        var draws = new SeededDraws(7);
        var values = Enumerable.Range(0, 100_000).Select(_ => draws.Next(shape)).ToList();
        Assert.InRange(values.Average(), -0.02, 0.02);
        Assert.InRange(Math.Sqrt(values.Sum(v => v * v) / values.Count), 0.98, 1.02);
        Assert.Equal(shape == ErrorShape.Rectangular, values.Max(Math.Abs) < 1.74);
    }

    [Fact]
    public void EachTrialHasDrawsOfItsOwn()
    {
        Assert.Equal(SeededDraws.OfTrial(1, 5).Bits(), SeededDraws.OfTrial(1, 5).Bits());
        Assert.Equal(1000, Enumerable.Range(0, 1000).Select(t => SeededDraws.OfTrial(1, t).Bits()).Distinct().Count());
    }
}

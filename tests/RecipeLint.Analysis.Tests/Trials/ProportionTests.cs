using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Analysis.Tests.Trials;

public sealed class ProportionTests
{
    /// <summary>R. G. Newcombe, Statistics in Medicine 17 (1998), 857-872, table I, method 3 (recalled).</summary>
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void TheIntervalIsThePublishedOne(int hits, int of, double low, double high)
    {
        var (foundLow, foundHigh) = new Proportion(hits, of).Interval;
        Assert.Equal(low, foundLow, 4);
        Assert.Equal(high, foundHigh, 4);
    }

    [Fact]
    public void WithoutTriesNothingIsKnown()
    {
        Assert.Equal((0, 1), new Proportion(0, 0).Interval);
        Assert.Equal(1, new Proportion(7, 7).Interval.High);
    }
}

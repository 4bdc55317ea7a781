using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Tests.Composition;

public sealed class AtomicWeightsTests
{
    // CIAAW "Standard Atomic Weights 2021" table (ciaaw.org/atomic-weights.htm), the unabridged column: an interval or value(uncertainty).
    // The abridged value must lie in the interval, or round the full value, within the abridged uncertainty.
    [Theory]
    [InlineData("H", 1.00784, 1.00811)]
    [InlineData("B", 10.806, 10.821)]
    [InlineData("C", 12.0096, 12.0116)]
    [InlineData("N", 14.00643, 14.00728)]
    [InlineData("O", 15.99903, 15.99977)]
    [InlineData("Mg", 24.304, 24.307)]
    [InlineData("Si", 28.084, 28.086)]
    [InlineData("S", 32.059, 32.076)]
    [InlineData("Cl", 35.446, 35.457)]
    [InlineData("Br", 79.901, 79.907)]
    [InlineData("F", 18.998403162, 18.998403162)]
    [InlineData("Na", 22.98976928, 22.98976928)]
    [InlineData("Al", 26.9815384, 26.9815384)]
    [InlineData("P", 30.973761998, 30.973761998)]
    [InlineData("K", 39.0983, 39.0983)]
    [InlineData("Ca", 40.078, 40.078)]
    [InlineData("Mn", 54.938043, 54.938043)]
    [InlineData("Fe", 55.845, 55.845)]
    [InlineData("Co", 58.933194, 58.933194)]
    [InlineData("Ni", 58.6934, 58.6934)]
    [InlineData("Cu", 63.546, 63.546)]
    [InlineData("Zn", 65.38, 65.38)]
    [InlineData("As", 74.921595, 74.921595)]
    [InlineData("Se", 78.971, 78.971)]
    [InlineData("Mo", 95.95, 95.95)]
    [InlineData("Cd", 112.414, 112.414)]
    [InlineData("I", 126.90447, 126.90447)]
    public void AbridgedWeightsCoverTheFullTable(string symbol, double low, double high)
    {
        Assert.True(AtomicWeights.TryGet(new(symbol), out var weight));
        Assert.InRange(low, weight.Value - weight.Uncertainty, weight.Value + weight.Uncertainty);
        Assert.InRange(high, weight.Value - weight.Uncertainty, weight.Value + weight.Uncertainty);
    }

    [Fact]
    public void All84ElementsWithAStandardWeightAreThere()
    {
        // Prohaska et al. 2022: 84 elements have a standard atomic weight.
        Assert.Equal(84, AtomicWeights.Elements.Count());
        Assert.All(AtomicWeights.Elements, e =>
        {
            Assert.True(AtomicWeights.TryGet(e, out var weight));
            Assert.True(weight.Uncertainty > 0 && weight.Uncertainty < 0.02 * weight.Value);
        });
        Assert.False(AtomicWeights.TryGet(new("Tc"), out _));
        Assert.Throws<ArgumentException>(() => AtomicWeights.Of(new("Tc")));
    }
}

using System.Collections.Immutable;
using RecipeLint.Analysis.Solutions;

namespace RecipeLint.Analysis.Tests.Solutions;

public sealed class ComponentMolesTests
{
    private static readonly string[] Names = ["Ca+2", "H+", "K+", "NO3-", "SO4-2", "inert:urea", "inert:Br-1", "EDTA-4", "Cl-", "H4SiO4"];

    [Fact]
    public void SumsAreThoseOfASortedDictionaryToTheLastDigit()
    {
        var random = new Random(20);
        for (var round = 0; round < 500; round++)
        {
            var parts = Enumerable.Range(0, random.Next(1, 6)).Select(_ => Draw(random)).ToList();
            var expected = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);
            foreach (var (name, moles) in parts.SelectMany(p => p).OrderBy(m => Math.Abs(m.Value)).ThenBy(m => m.Value))
            {
                expected = expected.SetItem(name, expected.GetValueOrDefault(name) + moles);
            }

            var sum = ComponentMoles.Sum(parts.Select(ComponentMoles.Of));

            Assert.Equal(expected.AsEnumerable(), sum);
            Assert.Equal(expected.Count, sum.Count);
            Assert.All(Names, n => Assert.Equal(expected.GetValueOrDefault(n), sum.GetValueOrDefault(n)));
            Assert.All(Names, n => Assert.Equal(expected.ContainsKey(n), sum.ContainsKey(n)));
        }
    }

    [Fact]
    public void NamesThatOccurTwiceAddUpInTheOrderGiven()
    {
        var moles = ComponentMoles.Of([new("K+", 0.1), new("Ca+2", 1), new("K+", 0.2), new("K+", 0.3)]);

        Assert.Equal([new("Ca+2", 1.0), new KeyValuePair<string, double>("K+", 0.1 + 0.2 + 0.3)], moles);
    }

    [Fact]
    public void OneAmountIsSetAndTheOthersStay()
    {
        var moles = ComponentMoles.Of([new("Ca+2", 1), new("NO3-", 2)]);

        Assert.Equal([new("Ca+2", 1.0), new("K+", 3.0), new KeyValuePair<string, double>("NO3-", 2)], moles.With("K+", 3));
        Assert.Equal([new("Ca+2", 4.0), new KeyValuePair<string, double>("NO3-", 2)], moles.With("Ca+2", 4));
        Assert.Equal([new("Ca+2", 1.0), new KeyValuePair<string, double>("NO3-", 2)], moles);
    }

    [Fact]
    public void AZeroHasNoSign()
    {
        var moles = ComponentMoles.Of([new("Ca+2", -0.0), new("K+", 0)]);

        Assert.All(moles.Times(-1).Concat(moles.Over(-2)).Concat(moles), m => Assert.False(double.IsNegative(m.Value)));
    }

    private static KeyValuePair<string, double>[] Draw(Random random) =>
        [.. Names.Where(_ => random.Next(3) > 0).Select(n => KeyValuePair.Create(n, (random.NextDouble() - 0.2) * Math.Pow(10, random.Next(-9, 3))))];
}

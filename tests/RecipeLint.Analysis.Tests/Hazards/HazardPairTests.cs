using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Tests.Hazards;

/// <summary>All pairs of the catalogue before the gate.</summary>
public sealed class HazardPairTests
{
    [Fact]
    public void EveryPairThatTextbooksKeepApartIsAHazard()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToList();
        var missed = new List<string>();
        var pairs = 0;
        foreach (var (one, other) in ids.SelectMany((a, i) => ids.Skip(i + 1).Select(b => (a, b))))
        {
            pairs++;
            var found = HazardGate.Of(Holding.Of([Of(one), Of(other)], 1)).Present.Select(h => h.Kind).ToHashSet();
            missed.AddRange(TextbookPairs.Of(one, other).Where(e => !found.Contains(e)).Select(e => $"{one} with {other}: {e}"));
        }

        Assert.Equal(ids.Count * (ids.Count - 1) / 2, pairs);
        Assert.True(missed.Count == 0, string.Join('\n', missed.Take(40)));
    }

    private static Held Of(string id) => Held.Of(SubstanceCatalogue.BuiltIn.ById(id)!, 100);
}

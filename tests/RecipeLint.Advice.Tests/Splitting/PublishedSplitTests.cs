using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Tests.Published;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>
/// Published solutions, cited in Published/*.published.json, come apart into the parts growers keep them in: calcium in one, sulfate and
/// phosphate in the other, iron chelate with the calcium, traces not with the calcium (common practice, no source).
/// </summary>
public sealed class PublishedSplitTests
{
    private static readonly Dictionary<string, SplitProposal> _done = [];

    /// <summary>At least five salts; a line of a sheet or one salt is nothing to split.</summary>
    public static TheoryData<string> Recipes => [.. PublishedRecipe.Ids.Where(id => PublishedRecipe.Read(id).Facts.Doses.Count >= 5)];

    /// <summary>All that bring calcium.</summary>
    public static TheoryData<string> WithCalcium => [.. PublishedRecipe.Ids.Where(id => PublishedRecipe.Read(id).Facts is { Doses.Count: >= 5 } f && f.MilligramsPerLitre("Ca") > 0)];

    [Fact]
    public void ThereAreFourteenOfThem() => Assert.Equal(14, Recipes.Count);

    [Theory]
    [MemberData(nameof(Recipes))]
    public void TheySplitAt1To100OrStrongerIntoPartsTheWholeAnalysisFindsClear(string id)
    {
        var proposal = Split(id);

        Assert.NotNull(proposal.Plan);
        Assert.True(proposal.Plan.Dilution >= 100);
        Assert.All(proposal.Plan.Parts, p => SplitBench.AssertClear(p.Stock));
        Assert.All(proposal.Alternatives.SelectMany(a => a.Parts), p => SplitBench.AssertClear(p.Stock));
        Assert.InRange(proposal.Plan.Parts.Count, 1, 3);
    }

    [Theory]
    [MemberData(nameof(Recipes))]
    public void TheFinalSolutionStaysWithinHalfAPerCent(string id)
    {
        var proposal = Split(id);

        Assert.True(proposal.Final!.IsComplete);
        Assert.InRange(SplitBench.Change(proposal), 0, 0.005);
        Assert.Equal(proposal.Before.Where(b => b.Value > 0).Select(b => b.Key).Order(StringComparer.Ordinal), proposal.Final.Elements.Where(e => e.Value.Concentration.MilligramsPerLitre > 0).Select(e => e.Key));
    }

    [Theory]
    [MemberData(nameof(WithCalcium))]
    public void CalciumStandsApartFromSulfateAndPhosphate(string id)
    {
        var calcium = SplitBench.PartWith(Split(id), "Ca+2");

        Assert.Equal(0, calcium.Concentration("H2PO4-").MolesPerLitre);
        // The sulfate of its iron, 10 mmol/L beside 0.3 mol/L of calcium in 3 mol/L of nitrates, stays dissolved; whatever is with calcium has to.
        Assert.InRange(calcium.Concentration("SO4-2").MolesPerLitre, 0, id == "murashige-skoog-1962" ? 0.0101 : 0);
        SplitBench.AssertClear(calcium);
        Assert.All(Split(id).Plan!.Parts.Where(p => p.Stock != calcium), p => Assert.Equal(0, p.Stock.Concentration("Ca+2").MolesPerLitre));
    }

    [Theory]
    [InlineData("cooper-1979-nft")]
    [InlineData("epstein-1972-after-johnson")]
    [InlineData("ifas-hs796-stage-1")]
    [InlineData("mattson-peters-2014-lettuce")]
    public void AnIronChelateGoesWithTheCalciumAndTheTracesWithTheSulfate(string id)
    {
        var proposal = Split(id);
        var calcium = SplitBench.PartWith(proposal, "Ca+2");

        Assert.Equal(2, proposal.Plan!.Parts.Count);
        Assert.Same(calcium, SplitBench.PartWith(proposal, "Fe+3"));
        Assert.Equal(0, calcium.Concentration("Cu+2").MolesPerLitre);
    }

    [Theory]
    [MemberData(nameof(Recipes))]
    public void EverythingSaidToFallOutDoes(string id)
    {
        var proposal = Split(id);

        Assert.All(proposal.Fewer, SplitBench.AssertReallyFallsOut);
        Assert.All(proposal.Elsewhere, SplitBench.AssertReallyFallsOut);
        if (proposal.Plan!.Parts.Count > 1)
        {
            Assert.NotEmpty(proposal.Fewer);
            Assert.Contains(proposal.Fewer, f => f.Obstacles.Any(o => o is Obstacle.Deposit { Solid.Name: "Gypsum" or "Syngenite" }));
        }
    }

    /// <summary>All ways to put the units into one part fewer, judged one by one by the engine alone.</summary>
    [Theory]
    [InlineData("hoagland-arnon-1950-solution-1")]
    [InlineData("steiner-1984")]
    [InlineData("gamborg-b5")]
    [InlineData("jensen-arizona-a")]
    public void NoSmallerNumberOfPartsWorks(string id)
    {
        var proposal = Split(id);
        var units = proposal.Units;
        var fewer = proposal.Plan!.Parts.Count - 1;

        var tried = 0;
        foreach (var groups in Enumerable.Range(1, fewer).SelectMany(k => SplitBench.Partitions(units.Count, k)))
        {
            tried++;
            Assert.Contains(
                groups.Distinct(),
                g => !SplitBench.IsClear(units.Where((_, i) => groups[i] == g), 100));
        }

        Assert.True(tried > 0);
    }

    [Fact]
    public void ASaltTooMuchForOnePartIsDividedOverTwo()
    {
        var plan = Split("gamborg-b5").Plan!;

        Assert.Equal("potassium nitrate", plan.Divided);
        Assert.Equal(1, plan.Parts.SelectMany(p => p.Shares).Sum(s => s.Share), 9);
        Assert.Equal(2, plan.Parts.Count(p => p.Stock.Stock.Steps.OfType<AddStep>().Any(s => s.Substance!.Id == "potassium-nitrate")));
    }

    private static SplitProposal Split(string id)
    {
        lock (_done)
        {
            if (!_done.TryGetValue(id, out var proposal))
            {
                _done[id] = proposal = SplitBench.Split(PublishedRecipe.Read(id).Facts);
            }

            return proposal;
        }
    }
}

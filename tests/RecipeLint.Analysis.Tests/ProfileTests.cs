using RecipeLint.Analysis.Profiles;

namespace RecipeLint.Analysis.Tests;

public sealed class ProfileTests
{
    public static TheoryData<string> Names => [.. ProfileLibrary.Names];

    [Fact]
    public void TheNamedProfilesAreThere()
    {
        Assert.Superset(
            new HashSet<string> { "generic", "leafy-greens", "herbs", "tomato", "cucumber", "pepper", "strawberry", "cut-flowers", "propagation" },
            ProfileLibrary.Names.ToHashSet());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void BoundsRiseAndEachHasASource(string name)
    {
        foreach (var stage in ProfileLibrary.Stages(name).Append("any"))
        {
            var profile = ProfileLibrary.Find(name, stage)!;
            Assert.Equal(stage, profile.Stage);
            Assert.NotEmpty(profile.Elements);
            foreach (var range in profile.Elements)
            {
                double?[] bounds = [range.DeficientBelow, range.SufficientLow, range.SufficientHigh, range.Upper, range.ToxicAbove];
                var stated = bounds.OfType<double>().ToList();
                Assert.True(stated.SequenceEqual(stated.Order()), $"{name} {range.Key}: {string.Join(", ", stated)}");
                Assert.True(stated.All(b => b >= 0));
                Assert.Equal(stated.Count, range.Bounds.Count);
                Assert.All(range.Bounds.Values, b => Assert.NotEmpty(b.Source));
            }

            Assert.All(profile.Ratios, r => Assert.True(r.Low < r.High && r.Source.Length > 0, $"{name} {r.Numerator}:{r.Denominator}"));
            Assert.All(profile.Ratios, r => Assert.Contains(r.Basis, new[] { "mass", "mole", "meq" }));
            Assert.True(profile.Ec is { } ec && ec.Low < ec.High && profile.EcSource is { Length: > 0 });
            Assert.True(profile.Ph is { } ph && ph.Low < ph.High && profile.PhSource is { Length: > 0 });
        }
    }

    [Theory]
    [InlineData("lettuce", "leafy-greens")]
    [InlineData("Basil", "herbs")]
    [InlineData("sweet pepper", "pepper")]
    [InlineData("ROSE", "cut-flowers")]
    [InlineData("cut_flowers", "cut-flowers")]
    [InlineData("seedlings", "propagation")]
    public void CropsHaveAliases(string crop, string profile) => Assert.Equal(profile, ProfileLibrary.Find(crop)?.Name);

    [Fact]
    public void UnknownCropsGetSuggestionsBySpelling()
    {
        Assert.Null(ProfileLibrary.Find("letuce"));
        Assert.Equal("lettuce", ProfileLibrary.Suggest("letuce")[0]);
        Assert.Equal("tomato", ProfileLibrary.Suggest("tomatoe")[0]);
        Assert.Empty(ProfileLibrary.Suggest("qqqqqqqqqqqq"));
    }

    [Fact]
    public void AStageChangesItsRowsOnlyAndAnUnknownStageChangesNone()
    {
        var any = ProfileLibrary.Find("tomato")!;
        var early = ProfileLibrary.Find("tomato", "Seedling")!;

        Assert.Equal("early", early.Stage);
        Assert.Equal(60, early.Find("N")!.SufficientLow);
        Assert.Equal(120, any.Find("N")!.SufficientLow);
        Assert.Equal(any.Find("Mo"), early.Find("Mo"), (a, b) => a!.SufficientHigh == b!.SufficientHigh);
        Assert.Equal("any", ProfileLibrary.Find("tomato", "moonlight")!.Stage);
    }

    // Trials that tested some levels only must not become limits: Horticulturae 2019, 5(4), 72 found 250 mg/L N the best of its four solutions
    // for lettuce; Plants 2020, 9(4):441 found 210 mg/L N and 430 mg/L K best for strawberry; Terada et al. 1997 found 50 mg/L N best for roses.
    [Theory]
    [InlineData("lettuce", "N", 250)]
    [InlineData("lettuce", "K", 300)]
    [InlineData("lettuce", "Ca", 250)]
    [InlineData("strawberry", "N", 210)]
    [InlineData("strawberry", "K", 430)]
    [InlineData("rose", "N", 50)]
    [InlineData("cucumber", "N", 225)]
    [InlineData("pepper", "N", 120)]
    public void WhatATrialFoundBestIsInsideTheRange(string crop, string key, double level)
    {
        var range = ProfileLibrary.Find(crop)!.Find(key)!;

        Assert.InRange(level, range.SufficientLow!.Value, range.SufficientHigh!.Value);
        Assert.NotNull(range.Disagreement);
    }

    // Recalled bounds are common practice; copper for lettuce was read in a trial (Dey, Langenfeld and Bugbee).
    [Fact]
    public void RecalledRangesAreMarkedAsPractice()
    {
        Assert.True(ProfileLibrary.Generic.Find("N")!.IsPractice);
        Assert.True(ProfileLibrary.Find("propagation")!.Find("K")!.IsPractice);
        Assert.False(ProfileLibrary.Find("tomato")!.Ratios.Single(r => r is { Numerator: "NH4-N", Denominator: "N" }).IsPractice);
        Assert.Equal(0.25, ProfileLibrary.Find("lettuce")!.Find("Cu")!.ToxicAbove);

        // None is known for tomato: that of the hardiest other crop, pepper.
        Assert.Equal(ProfileLibrary.Find("pepper")!.Find("Cu")!.ToxicAbove, ProfileLibrary.Find("tomato")!.Find("Cu")!.ToxicAbove);
    }
}

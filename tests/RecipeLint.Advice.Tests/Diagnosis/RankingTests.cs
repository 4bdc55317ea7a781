using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>How reasons and signs become a ranking, in figures that can be worked out by hand.</summary>
public sealed class RankingTests
{
    private static readonly Seen _white = new(MadeUp.Sign("white", SignKind.Colour), true);
    private static readonly Seen _pale = new(MadeUp.Sign("pale", SignKind.Colour), true);
    private static readonly Seen _warm = new(MadeUp.Sign("warm-dissolves", SignKind.Test), true);
    private static readonly Seen _acid = new(MadeUp.Sign("vinegar-dissolves", SignKind.Test), false);

    [Theory]
    [InlineData(Frequency.Common, 0)]
    [InlineData(Frequency.Occasional, -0.4)]
    [InlineData(Frequency.Rare, -1.0)]
    public void HowOftenACauseIsMetIsWhereItStarts(Frequency frequency, double score)
    {
        var ranked = CauseRanking.Of([Entry(MadeUp.Cause("a", frequency: frequency))], Observation.Nothing);

        Assert.Equal(score, Assert.Single(ranked).Score, 12);
        Assert.Equal(1, ranked[0].Share, 12);
    }

    /// <summary>Four fifths of the difference of two scores is believed.</summary>
    [Fact]
    public void SharesFollowTheScores()
    {
        var ranked = CauseRanking.Of([Entry(MadeUp.Cause("a"), -0.5), Entry(MadeUp.Cause("b"), 1.5, 0.5)], Observation.Nothing);

        Assert.Equal(["b", "a"], ranked.Select(r => r.Cause.Id));
        Assert.Equal(2, ranked[0].Score, 12);
        Assert.Equal(Math.Exp(0.8 * 2.5), ranked[0].Share / ranked[1].Share, 9);
        Assert.Equal(1, ranked.Sum(r => r.Share), 12);
    }

    [Fact]
    public void CausesAsProbableAsEachOtherStandByName() => Assert.Equal(
        ["a", "b", "c"],
        CauseRanking.Of([.. new[] { "b", "c", "a" }.Select(id => Entry(MadeUp.Cause(id)))], Observation.Nothing).Select(r => r.Cause.Id));

    /// <summary>Two colours say little more than one; two bench tests say twice as much.</summary>
    [Fact]
    public void SignsOfOneKindOverlapAndTestsDoNot()
    {
        var cause = MadeUp.Cause(
            "a", ["white", "pale"],
            tests: new() { ["warm-dissolves"] = Behaviour.Yes, ["vinegar-dissolves"] = Behaviour.No });

        Assert.Equal(Math.Log(0.55), Score(_white), 9);
        Assert.Equal(2 * Math.Log(0.55) / Math.Sqrt(2), Score(_white, _pale), 9);
        Assert.Equal(Math.Log(0.92) + Math.Log(0.94), Score(_warm, _acid), 9);
        Assert.Equal(Math.Log(0.55) + Math.Log(0.92), Score(_white, _warm), 9);

        double Score(params Seen[] seen) => CauseRanking.Of([Entry(cause)], new Observation { Signs = seen })[0].Score;
    }

    [Fact]
    public void AReasonIsToldFromWhereItWeighsSomething()
    {
        var entry = new CauseRanking.Entry(
            MadeUp.Cause("a"), SolidVerdict.None,
            [new("at", 0.35), new("below", 0.349), new("against", -0.35), new("hardly", -0.349), new("", 2)]);
        var ranked = CauseRanking.Of([entry], Observation.Nothing)[0];

        Assert.Equal(["at", "against"], ranked.Evidence.Select(e => e.Text));
        Assert.Equal(2, ranked.Score, 12);
    }

    /// <summary>A sign weighs as much as it tells this cause from the average one.</summary>
    [Fact]
    public void ASignWeighsAgainstTheAverageCause()
    {
        var ranked = CauseRanking.Of(
            [Entry(MadeUp.Cause("a", ["white"])), Entry(MadeUp.Cause("b", never: ["white"]))],
            new Observation { Signs = [_white, _pale with { Present = false }] });

        var seen = Assert.Single(ranked[0].Evidence);
        Assert.Equal("white", seen.Text);
        Assert.False(seen.FromStock);
        Assert.Equal((Math.Log(0.55) - Math.Log(0.01)) / 2, seen.Weight, 9);
        Assert.Equal(-seen.Weight, Assert.Single(ranked[1].Evidence).Weight, 9);
    }

    [Theory]
    [InlineData(true, false, true)]
    [InlineData(false, true, false)]
    public void ACauseHasToShowInWhatWasSeen(bool whiteSeen, bool paleSeen, bool own)
    {
        var observation = new Observation { Signs = [_white with { Present = whiteSeen }, _pale with { Present = paleSeen }] };

        Assert.Equal(own, CauseRanking.OfOwnSigns([Entry(MadeUp.Cause("a", ["white"]))], observation)[0].HasOwnSign);
    }

    [Fact]
    public void WhereNothingWasSeenEveryCauseMayShow() => Assert.True(CauseRanking.OfOwnSigns(
        [Entry(MadeUp.Cause("a"))], new Observation { Signs = [_white with { Present = false }] })[0].HasOwnSign);

    [Fact]
    public void ReasonsStandTheHeaviestFirst()
    {
        var ranked = MadeUp.Ranked("a", 1) with { Evidence = [new("w", 1), new("x", -1), new("y", 2), new("z", -2), new("none", 0)] };

        Assert.Equal(["y", "w"], ranked.For.Select(e => e.Text));
        Assert.Equal(["z", "x"], ranked.Against.Select(e => e.Text));
    }

    [Theory]
    [InlineData(1, false, true, true)]
    [InlineData(0, false, true, false)]
    [InlineData(-1, false, true, false)]
    [InlineData(1, true, true, false)]
    [InlineData(1, false, false, false)]
    public void OnlyWhatTellsThisFeedIsAReason(double weight, bool ofEveryFeed, bool ownSign, bool reason) =>
        Assert.Equal(reason, (MadeUp.Ranked("a", 1, weight, ofEveryFeed) with { HasOwnSign = ownSign }).HasReason);

    [Fact]
    public void OneReasonAmongOthersIsEnough() => Assert.True((MadeUp.Ranked("a", 1) with
    {
        Evidence = [new("against", -1), new("for", 1), new("every", 1) { IsOfEveryFeed = true }],
    }).HasReason);

    /// <summary>Three at least, five at the most, from a share of 0.03 on; in a tank two, four and 0.05.</summary>
    [Fact]
    public void SoManyCausesAreListed()
    {
        RankedCause[] even = [.. new[] { "a", "b", "c", "d", "e", "f" }.Select(id => MadeUp.Ranked(id, 0.15))];
        RankedCause[] rare =
        [
            MadeUp.Ranked("a", 0.02), MadeUp.Ranked("none", 0.02, weight: -1), MadeUp.Ranked("b", 0.02), MadeUp.Ranked("c", 0.02),
            MadeUp.Ranked("d", 0.03), MadeUp.Ranked("e", 0.0299),
        ];

        Assert.Equal("abcde", Ids(BottleDiagnosis.Listed(even)));
        Assert.Equal("abcd", Ids(TankDiagnosis.Listed(even)));
        Assert.Equal("abcd", Ids(BottleDiagnosis.Listed(rare)));
        Assert.Equal("ab", Ids(TankDiagnosis.Listed(rare)));
        Assert.Equal("abc", Ids(TankDiagnosis.Listed([rare[0], rare[2], MadeUp.Ranked("c", 0.05), MadeUp.Ranked("d", 0.0499)])));

        static string Ids(IEnumerable<RankedCause> causes) => string.Concat(causes.Select(c => c.Cause.Id));
    }

    private static CauseRanking.Entry Entry(Cause cause, params double[] weights) =>
        new(cause, SolidVerdict.None, [.. weights.Select(w => new Evidence("reason", w))]);
}

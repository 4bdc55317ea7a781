using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>The odds of naive Bayes worked by hand, and the bounds from which a cause is called likely or listed.</summary>
public sealed class CauseRankingTests
{
    private const double Temper = 0.8;

    private static CauseRanking.Entry Entry(Cause cause, params Evidence[] reasons) => new(cause, SolidVerdict.None, reasons);

    /// <summary>By hand: frequency 0, -0.4 and -1; no sign, no reason: shares as exp(0.8 x).</summary>
    [Fact]
    public void HowOftenACauseIsMetCountsFirst()
    {
        var ranked = CauseRanking.Of(
            [Entry(Invented.Cause("rare", frequency: Frequency.Rare)), Entry(Invented.Cause("odd", frequency: Frequency.Occasional)), Entry(Invented.Cause("common"))],
            Observation.Nothing);
        var all = 1 + Math.Exp(Temper * -0.4) + Math.Exp(Temper * -1);
        Assert.Equal(["common", "odd", "rare"], ranked.Select(r => r.Cause.Id));
        Assert.Equal([1 / all, Math.Exp(Temper * -0.4) / all, Math.Exp(Temper * -1) / all], ranked.Select(r => r.Share).ToArray(), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([0, -0.4, -1], ranked.Select(r => r.Score));
    }

    /// <summary>By hand: three looks count as the square root of three, each bench test for itself, reasons as they are.</summary>
    [Fact]
    public void SignsOfOneKindOverlapAndTestsDoNot()
    {
        var cause = Invented.Cause(
            "c", "white sand needles", tests: [("vinegar-fizzes", Behaviour.Yes), ("warm-dissolves", Behaviour.Partly)]);
        var told = Invented.Told("+sand +needles +powder +white +vinegar-fizzes +warm-dissolves");
        var ranked = CauseRanking.Of([Entry(cause, new Evidence("because", 0.5), new Evidence("but", -0.25))], told).Single();
        var forms = ((2 * Math.Log(0.55)) + Math.Log(0.22)) / Math.Sqrt(3);
        Assert.Equal(0.25 + forms + Math.Log(0.55) + Math.Log(0.92) + Math.Log(0.5), ranked.Score, 12);
        Assert.Equal(1, ranked.Share, 12);
    }

    [Fact]
    public void WhatIsAsProbableComesByItsName()
    {
        var ranked = CauseRanking.Of([Entry(Invented.Cause("b")), Entry(Invented.Cause("a")), Entry(Invented.Cause("c"))], Observation.Nothing);
        Assert.Equal(["a", "b", "c"], ranked.Select(r => r.Cause.Id));
    }

    /// <summary>Against the average of two causes: (ln 0.55 - ln 0.05) / 2 for the one and against the other; a reason from 0.35 on is told.</summary>
    [Fact]
    public void OnlyWhatPartsACauseFromTheOthersIsTold()
    {
        var ranked = CauseRanking.Of(
            [
                Entry(Invented.Cause("a", "blue"), new Evidence("just", 0.35), new Evidence("hardly", 0.349), new Evidence("not", -0.35), new Evidence("", 2)),
                Entry(Invented.Cause("b")),
            ],
            Invented.Told("+blue +white"));
        var half = (Math.Log(0.55) - Math.Log(0.05)) / 2;
        Assert.Equal(["blue", "just"], ranked[0].For.Select(e => e.Text));
        Assert.Equal(half, ranked[0].For.First().Weight, 12);
        Assert.Equal([false, true], ranked[0].For.Select(e => e.FromStock));
        Assert.Equal(["not"], ranked[0].Against.Select(e => e.Text));
        Assert.Equal(-half, ranked[1].Against.Single().Weight, 12);
    }

    [Fact]
    public void AReasonIsToldStrongestFirstOnBothSides()
    {
        var ranked = Ranked(0.5, new Evidence("weak", 0.4), new Evidence("strong", 2), new Evidence("bad", -0.4), new Evidence("worst", -2), new Evidence("none", 0));
        Assert.Equal(["strong", "weak"], ranked.For.Select(e => e.Text));
        Assert.Equal(["worst", "bad"], ranked.Against.Select(e => e.Text));
    }

    /// <summary>Nothing told present: every cause may be meant. Something present: only whose own sign it is.</summary>
    [Fact]
    public void OwnSignsAreAskedForOnlyWhereSomethingWasSeen()
    {
        CauseRanking.Entry[] causes = [Entry(Invented.Cause("white", "white")), Entry(Invented.Cause("blue", "blue"))];
        Assert.All(CauseRanking.OfOwnSigns(causes, Observation.Nothing), r => Assert.True(r.HasOwnSign));
        Assert.All(CauseRanking.OfOwnSigns(causes, Invented.Told("-white")), r => Assert.True(r.HasOwnSign));
        Assert.Equal(["white"], CauseRanking.OfOwnSigns(causes, Invented.Told("+white -blue")).Where(r => r.HasOwnSign).Select(r => r.Cause.Id));
    }

    [Theory]
    [InlineData(0.6, Likeliness.VeryLikely)]
    [InlineData(0.5999, Likeliness.Likely)]
    [InlineData(0.25, Likeliness.Likely)]
    [InlineData(0.2499, Likeliness.Possible)]
    [InlineData(0.05, Likeliness.Possible)]
    [InlineData(0.0499, Likeliness.Unlikely)]
    public void LikelinessBeginsAtTheseShares(double share, Likeliness likeliness) => Assert.Equal(likeliness, Ranked(share).Likeliness);

    [Fact]
    public void AReasonThatHoldsOfEveryFeedListsNothing()
    {
        Assert.False(Ranked(0.5).HasReason);
        Assert.False(Ranked(0.5, new Evidence("against", -1)).HasReason);
        Assert.False(Ranked(0.5, new Evidence("zero", 0)).HasReason);
        Assert.False(Ranked(0.5, new Evidence("any feed", 1) { IsOfEveryFeed = true }).HasReason);
        Assert.True(Ranked(0.5, new Evidence("for", 0.4)).HasReason);
        Assert.False((Ranked(0.5, new Evidence("for", 0.4)) with { HasOwnSign = false }).HasReason);
        Assert.True(Ranked(0.5).HasOwnSign);
        Assert.True(new Evidence("text", 1).FromStock);
    }

    /// <summary>Three in any case, five at most, the fourth and fifth from 3 % on; what nothing speaks for does not count.</summary>
    [Theory]
    [InlineData(new[] { 0.01, 0.01, 0.01, 0.01 }, 3)]
    [InlineData(new[] { 0.5, 0.2, 0.1, 0.03, 0.0299 }, 4)]
    [InlineData(new[] { 0.3, 0.2, 0.1, 0.1, 0.1, 0.1 }, 5)]
    [InlineData(new[] { 0.9 }, 1)]
    public void SoManyCausesAreListed(double[] shares, int listed)
    {
        List<RankedCause> causes = [Ranked(0.99), .. shares.Select(s => Ranked(s, new Evidence("for", 1)))];
        Assert.Equal(causes.Skip(1).Take(listed), BottleDiagnosis.Listed(causes));
    }

    private static RankedCause Ranked(double share, params Evidence[] evidence) => new(Invented.Cause("c"), 0, share, evidence, SolidVerdict.None);

    [Theory]
    [InlineData(0, "0 mg")]
    [InlineData(0.0994, "99 mg")]
    [InlineData(0.1, "0.1 g")]
    [InlineData(1.234, "1.23 g")]
    [InlineData(9.994, "9.99 g")]
    [InlineData(10, "10 g")]
    [InlineData(12.6, "13 g")]
    public void GramsHaveTheseDigits(double grams, string said) => Assert.Equal(said, DiagnosisWords.Grams(grams));

    [Theory]
    [InlineData(0.5, "3.2 times")]
    [InlineData(3, "1000 times")]
    [InlineData(3.01, "more than a thousand times")]
    public void TimesAreToldUpToAThousand(double index, string said) => Assert.Equal(said, DiagnosisWords.Times(index));

    /// <summary>How much falls out weighs 2.6 from a gram on, 2 from a tenth, else 1.3; what is outweighed weighs less.</summary>
    [Theory]
    [InlineData(1, 0, 2.6, "1 g/L of it falls out in the cold")]
    [InlineData(0.999, 0, 2.0, "1 g/L of it falls out in the cold")]
    [InlineData(0.1, -0.5, 1.5, "0.1 g/L of it falls out in the cold")]
    [InlineData(0.0999, 0, 1.3, "100 mg/L of it falls out in the cold")]
    public void WhatFallsOutWeighsByItsMass(double grams, double outweighed, double weight, string said)
    {
        var solid = ConstantSet.Product.FindSolid("Gypsum")!;
        var deposit = new SolidDeposit(solid, 0.1, new AmountConcentration(grams / solid.MolarMassGramsPerMole), new MassConcentration(grams), false);
        var reason = Diagnoser.SolidReason(new SolidVerdict(Standing.Forms, null, solid, [deposit], 0.1), "in the cold", outweighed);
        Assert.Equal((said, weight), (reason.Text, Math.Round(reason.Weight, 12)));
    }

    [Theory]
    [InlineData(Standing.Close, "it is close to saturation there", 0.7)]
    [InlineData(Standing.Below, "it stays dissolved there, though not by far", -1.0)]
    [InlineData(Standing.FarBelow, "it is far from falling out there", -2.2)]
    [InlineData(Standing.Absent, "its ions are not all in the recipe", -3)]
    [InlineData(Standing.Unknown, "its ions are not all in the recipe", -3)]
    public void WhatDoesNotFallOutWeighsSo(Standing standing, string said, double weight) =>
        Assert.Equal(new Evidence(said, weight), Diagnoser.SolidReason(new SolidVerdict(standing, null, null, [], 0.3), "there", 0));

    [Fact]
    public void WhatIsHeldSaysWhyAndWhatIsAboveSaysByHowMuch()
    {
        Assert.Equal(new Evidence("a chelate holds it", -0.6), Diagnoser.SolidReason(new SolidVerdict(Standing.Held, null, null, [], 0.3) { HeldBecause = "a chelate holds it" }, "there", 0));
        var slow = ConstantSet.Product.Solids.First(s => s.Role == SolidRole.FormsSlowly);
        Assert.Equal(
            [new Evidence("its ions are 2 times what saturates there", 1.3), new Evidence("its ions are 2 times what saturates there", 0.6)],
            new[] { ConstantSet.Product.FindSolid("Gypsum"), slow }.Select(s => Diagnoser.SolidReason(new SolidVerdict(Standing.Above, null, s, [], Math.Log10(2)), "there", 0)));
    }

    /// <summary>Well water brings calcium and carbonate that no line names, and a fizz proves the carbonate; it brings nothing else.</summary>
    [Theory]
    [InlineData("Ca+2", true, false, -2)]
    [InlineData("CO3-2", true, true, 0)]
    [InlineData("Ca+2 CO3-2", false, true, -1)]
    [InlineData("Ca+2", false, false, -3)]
    [InlineData("H2PO4-", true, true, -3)]
    [InlineData("Ca+2 H2PO4-", true, true, -3)]
    public void WhatIsLackingWeighsSo(string missing, bool water, bool fizzed, double weight) =>
        Assert.Equal(weight, Diagnoser.Lacking(missing.Split(' '), water, fizzed), 12);

    [Theory]
    [InlineData("+vinegar-fizzes", true)]
    [InlineData("+strong-acid-fizzes", true)]
    [InlineData("-vinegar-fizzes", false)]
    [InlineData("-strong-acid-fizzes", false)]
    [InlineData("+warm-dissolves", false)]
    public void AFizzIsSeenWithEitherAcid(string told, bool fizzed) => Assert.Equal(fizzed, Diagnoser.HasFizzed(Invented.Told(told)));

    [Fact]
    public void NoCauseIsFoundByAnotherName() => Assert.Equal(
        "There is no cause 'bad luck'.", Assert.Throws<InvalidOperationException>(() => DiagnosisData.Cause("bad luck")).Message);

    /// <summary>What the gate of a test lets through: nothing to fear, and a look.</summary>
    [Fact]
    public void AnActThatNobodyKnowsIsAFault()
    {
        var report = Diagnoser.Of(DiagnosisCase.StockOf("potassium-nitrate 20 g in 1 L"), Observation.Nothing, null).Hazards;
        Assert.Equal("There is no act 'dance'.", Assert.Throws<InvalidOperationException>(() => BottleHazards.Refuses(["dance"], report)).Message);
        Assert.Equal("There is no reagent 'reagent:stardust'.", Assert.Throws<InvalidOperationException>(() => BottleHazards.Refuses(["reagent:stardust"], report)).Message);
        Assert.Null(BottleHazards.Refuses([], report));
        Assert.Null(BottleHazards.Stops(report));
        Assert.DoesNotContain(report.Hazards, h => h.Grade >= HazardGrade.Present);
    }
}

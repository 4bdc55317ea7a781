using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Chances that a sign is told of a cause: every row of the table, by itself.</summary>
public sealed class LikelihoodTests
{
    private static readonly Cause _deposit = Invented.Cause(
        "deposit", "white days smell-ammonia sand", "prisms bottom neck", "rust smell-chlorine months", Frequency.Common, Rescue.Acid,
        ("vinegar-fizzes", Behaviour.Yes), ("warm-dissolves", Behaviour.Partly), ("strong-acid-dissolves", Behaviour.No));

    /// <summary>It keeps, so it is no deposit, whatever it looks like.</summary>
    private static readonly Cause _kept = Invented.Cause("kept", "white sand", rescue: Rescue.Keep);

    [Theory]
    [InlineData("+white", 0.55)]
    [InlineData("-white", 1 - (0.8 * 0.55))]
    [InlineData("+prisms", 0.25)]
    [InlineData("+cream", 0.22)]
    [InlineData("+coffin", 0.12)]
    [InlineData("+blue", 0.05)]
    [InlineData("-blue", 1 - (0.8 * 0.05))]
    [InlineData("+rust", 0.01)]
    [InlineData("+days", 0.5)]
    [InlineData("+bottom", 0.28)]
    [InlineData("+hours", 0.22)]
    [InlineData("+surface", 0.16)]
    [InlineData("+lifts", 0.09)]
    [InlineData("+months", 0.025)]
    [InlineData("-months", 1 - (0.8 * 0.025))]
    [InlineData("+smell-ammonia", 0.55)]
    [InlineData("+smell-chlorine", 0.002)]
    [InlineData("+smell-rotten-eggs", 0.003)]
    [InlineData("+smell-yeasty", 0.003)]
    [InlineData("+smell-musty", 0.05)]
    [InlineData("+deposit", 0.85)]
    [InlineData("-deposit", 0.15)]
    [InlineData("+vinegar-fizzes", 0.92)]
    [InlineData("-vinegar-fizzes", 0.08)]
    [InlineData("+warm-dissolves", 0.5)]
    [InlineData("+strong-acid-dissolves", 0.06)]
    [InlineData("-strong-acid-dissolves", 0.94)]
    [InlineData("+water-dissolves", 0.3)]
    [InlineData("+shake-dissolves", 0.3)]
    public void ChancesOfADepositAreThese(string sign, double chance) => Assert.Equal(chance, Of(_deposit, sign), 12);

    /// <summary>Where nothing lies there nothing dissolves; it may well clear when shaken.</summary>
    [Theory]
    [InlineData("+deposit", 0.2)]
    [InlineData("-deposit", 0.8)]
    [InlineData("+water-dissolves", 0.06)]
    [InlineData("-water-dissolves", 0.94)]
    [InlineData("+shake-dissolves", 0.3)]
    [InlineData("+white", 0.55)]
    public void ChancesOfWhatIsNoDepositAreThese(string sign, double chance) => Assert.Equal(chance, Of(_kept, sign), 12);

    /// <summary>Often comes before sometimes, and both before never: data that say two things are read by the first.</summary>
    [Fact]
    public void TheStrongerWordCounts()
    {
        var torn = Invented.Cause("torn", "white", "white sand", "white sand");
        Assert.Equal(0.55, Of(torn, "+white"), 12);
        Assert.Equal(0.25, Of(torn, "+sand"), 12);
    }

    /// <summary>What is excluded is not told, though a sign akin to it is.</summary>
    [Fact]
    public void ExcludedStaysExcludedBesideItsKin() => Assert.Equal(0.01, Of(Invented.Cause("c", "white", never: "cream"), "+cream"), 12);

    [Theory]
    [InlineData("white", true)]
    [InlineData("prisms", true)]
    [InlineData("cream", true)]
    [InlineData("coffin", true)]
    [InlineData("blue", false)]
    [InlineData("rust", false)]
    [InlineData("weeks", false)]
    [InlineData("deposit", true)]
    [InlineData("vinegar-fizzes", true)]
    [InlineData("warm-dissolves", true)]
    [InlineData("strong-acid-dissolves", false)]
    [InlineData("water-dissolves", false)]
    public void OwnSignsAreThoseListedAndTheirKin(string sign, bool own)
    {
        var cause = Invented.Cause(
            "own", "white sand", "prisms", "rust weeks", Frequency.Common, Rescue.Acid,
            ("vinegar-fizzes", Behaviour.Yes), ("warm-dissolves", Behaviour.Partly), ("strong-acid-dissolves", Behaviour.No));
        Assert.Equal(own, Likelihood.IsOwn(cause, Vocabulary.Sign(sign)));
        Assert.False(Likelihood.IsOwn(_kept, Vocabulary.Sign("deposit")));
    }

    [Theory]
    [InlineData(Rescue.Acid, "sand", true)]
    [InlineData(Rescue.None, "needles", true)]
    [InlineData(Rescue.Keep, "sand", false)]
    [InlineData(Rescue.Stir, "sand", false)]
    [InlineData(Rescue.Filter, "bubbles", false)]
    [InlineData(Rescue.Filter, "layers", false)]
    [InlineData(Rescue.Filter, "ring", false)]
    [InlineData(Rescue.Filter, "bubbles sand", true)]
    [InlineData(Rescue.Discard, "white", false)]
    public void ADepositIsWhatLeavesAFormAndIsNotKept(Rescue rescue, string often, bool deposit) =>
        Assert.Equal(deposit, Invented.Cause("c", often, rescue: rescue).IsDeposit);

    private static double Of(Cause cause, string sign) => Likelihood.Of(cause, Invented.Told(sign).Signs[0]);
}

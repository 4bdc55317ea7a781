using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>How much each sign says for a cause, told and missed, in every row of the table.</summary>
public sealed class OddsOfSignsTests
{
    private static readonly Cause _cause = MadeUp.Cause("x", ["often"], ["sometimes"], ["never", "never-but-kin"]);

    [Theory]
    [InlineData(SignKind.Colour, "often", 0.55)]
    [InlineData(SignKind.Colour, "sometimes", 0.25)]
    [InlineData(SignKind.Colour, "never", 0.01)]
    [InlineData(SignKind.Colour, "akin-to-often", 0.22)]
    [InlineData(SignKind.Colour, "akin-to-sometimes", 0.12)]
    [InlineData(SignKind.Colour, "akin-to-both", 0.22)]
    [InlineData(SignKind.Colour, "akin-to-one", 0.12)]
    [InlineData(SignKind.Colour, "never-but-kin", 0.01)]
    [InlineData(SignKind.Colour, "else", 0.05)]
    [InlineData(SignKind.Form, "often", 0.55)]
    [InlineData(SignKind.Smell, "often", 0.55)]
    [InlineData(SignKind.Gas, "else", 0.05)]
    [InlineData(SignKind.Liquid, "else", 0.05)]
    [InlineData(SignKind.Time, "often", 0.5)]
    [InlineData(SignKind.Time, "sometimes", 0.28)]
    [InlineData(SignKind.Time, "never", 0.025)]
    [InlineData(SignKind.Time, "akin-to-often", 0.22)]
    [InlineData(SignKind.Time, "akin-to-sometimes", 0.16)]
    [InlineData(SignKind.Time, "else", 0.09)]
    [InlineData(SignKind.Place, "often", 0.5)]
    [InlineData(SignKind.Feel, "often", 0.5)]
    public void LooksCountByHowOftenTheyAreTold(SignKind kind, string id, double told)
    {
        string[] kin = id switch
        {
            "akin-to-often" or "never-but-kin" => ["often"],
            "akin-to-sometimes" => ["sometimes"],
            "akin-to-both" => ["sometimes", "often"],
            "akin-to-one" => ["elsewhere", "sometimes"],
            _ => [],
        };
        var sign = MadeUp.Sign(id, kind, kin);

        Assert.Equal(told, Likelihood.Of(_cause, new Seen(sign, true)), 12);
        Assert.Equal(1 - (0.8 * told), Likelihood.Of(_cause, new Seen(sign, false)), 12);
    }

    /// <summary>Salts smell of nothing.</summary>
    [Theory]
    [InlineData("smell-ammonia", 0.003, 0.002)]
    [InlineData("smell-chlorine", 0.003, 0.002)]
    [InlineData("smell-rotten-eggs", 0.003, 0.002)]
    [InlineData("smell-yeasty", 0.003, 0.002)]
    [InlineData("smell-foul", 0.05, 0.01)]
    public void ASmellThatEverybodyKnowsTellsMore(string id, double other, double never)
    {
        var sign = Vocabulary.Sign(id);

        Assert.Equal(other, Likelihood.Of(MadeUp.Cause("x"), new Seen(sign with { Kin = [] }, true)), 12);
        Assert.Equal(never, Likelihood.Of(MadeUp.Cause("x", never: [id]), new Seen(sign, true)), 12);
        Assert.Equal(0.55, Likelihood.Of(MadeUp.Cause("x", often: [id]), new Seen(sign, true)), 12);
    }

    [Theory]
    [InlineData("yes", "powder", 0.92)]
    [InlineData("partly", "powder", 0.5)]
    [InlineData("no", "powder", 0.06)]
    [InlineData("unknown", "powder", 0.3)]
    [InlineData("unknown", "bubbles", 0.06)]
    [InlineData("shake-dissolves", "bubbles", 0.3)]
    [InlineData("shake-dissolves", "powder", 0.3)]
    public void ABenchTestCountsByWhatTheDataSay(string test, string form, double positive)
    {
        var cause = MadeUp.Cause(
            "x", [form], tests: new() { ["yes"] = Behaviour.Yes, ["partly"] = Behaviour.Partly, ["no"] = Behaviour.No }, rescue: Rescue.Filter);
        var sign = MadeUp.Sign(test, SignKind.Test);

        Assert.Equal(positive, Likelihood.Of(cause, new Seen(sign, true)), 12);
        Assert.Equal(1 - positive, Likelihood.Of(cause, new Seen(sign, false)), 12);
    }

    [Theory]
    [InlineData("powder", Rescue.Filter, true)]
    [InlineData("powder", Rescue.None, true)]
    [InlineData("powder", Rescue.Keep, false)]
    [InlineData("powder", Rescue.Stir, false)]
    [InlineData("bubbles", Rescue.Filter, false)]
    [InlineData("layers", Rescue.Filter, false)]
    [InlineData("ring", Rescue.Filter, false)]
    [InlineData("white", Rescue.Filter, false)]
    public void ADepositIsWhatLeavesSomethingSolid(string often, Rescue rescue, bool deposit)
    {
        var cause = MadeUp.Cause("x", [often, "smell-foul"], rescue: rescue);
        var sign = Vocabulary.Sign("deposit");

        Assert.Equal(deposit, cause.IsDeposit);
        Assert.Equal(deposit ? 0.85 : 0.2, Likelihood.Of(cause, new Seen(sign, true)), 12);
        Assert.Equal(deposit ? 0.15 : 0.8, Likelihood.Of(cause, new Seen(sign, false)), 12);
        Assert.Equal(deposit, Likelihood.IsOwn(cause, sign));
    }

    [Theory]
    [InlineData("often", "", true)]
    [InlineData("sometimes", "", true)]
    [InlineData("else", "", false)]
    [InlineData("else", "often", true)]
    [InlineData("else", "sometimes", true)]
    [InlineData("else", "never", false)]
    [InlineData("never", "often", false)]
    public void ASignIsACausesOwnWhereItIsListedOrAkin(string id, string kin, bool own) =>
        Assert.Equal(own, Likelihood.IsOwn(_cause, MadeUp.Sign(id, SignKind.Colour, [.. new[] { kin }.Where(k => k.Length > 0)])));

    [Theory]
    [InlineData("yes", true)]
    [InlineData("partly", true)]
    [InlineData("no", false)]
    [InlineData("unknown", false)]
    public void ATestIsACausesOwnWhereItBehaves(string test, bool own) => Assert.Equal(own, Likelihood.IsOwn(
        MadeUp.Cause("x", ["unknown"], tests: new() { ["yes"] = Behaviour.Yes, ["partly"] = Behaviour.Partly, ["no"] = Behaviour.No }),
        MadeUp.Sign(test, SignKind.Test)));
}

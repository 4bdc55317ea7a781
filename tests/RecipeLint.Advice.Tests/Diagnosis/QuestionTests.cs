using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Which question is put next, and which test settles a cause, with invented causes that each question alone can part.</summary>
public sealed class QuestionTests
{
    private static readonly BottleDiagnosis _bottle = Diagnoser.Of(
        DiagnosisCase.StockOf("potassium-nitrate 20 g in 1 L"), Observation.Nothing, null) with
    { Observation = Observation.Nothing };

    private static readonly IReadOnlySet<string> _none = new HashSet<string>();

    /// <summary>Two causes that differ in one thing are parted by the question for it.</summary>
    [Theory]
    [InlineData("white", "blue", "colour")]
    [InlineData("needles", "floc", "form")]
    [InlineData("bottom", "surface", "place")]
    [InlineData("hours", "weeks", "time")]
    [InlineData("smell-musty", "smell-none", "smell")]
    public void TheQuestionThatPartsThemIsAsked(string one, string other, string question)
    {
        var diagnosis = Between(MadeUp.Cause("a", [one], never: [other]), MadeUp.Cause("b", [other], never: [one]));

        Assert.Equal(question, QuestionChooser.Next(diagnosis, _none)?.Id);
        Assert.NotEqual(question, QuestionChooser.Next(diagnosis, new HashSet<string> { question })?.Id);
    }

    [Theory]
    [InlineData("white", true)]
    [InlineData("blue", true)]
    [InlineData("powder", false)]
    public void WhatWasToldIsNotAskedAgain(string told, bool answered)
    {
        var diagnosis = Between(MadeUp.Cause("a", ["white"], never: ["blue"]), MadeUp.Cause("b", ["blue"], never: ["white"]));
        var next = QuestionChooser.Next(diagnosis with { Observation = Observation.Nothing.With([new Seen(Vocabulary.Sign(told), true)]) }, _none);

        Assert.Equal(!answered, next?.Id == "colour");
    }

    /// <summary>"A deposit" says nothing of its form; "no deposit" leaves no form to ask for.</summary>
    [Theory]
    [InlineData(true, "form")]
    [InlineData(false, null)]
    public void ADepositHasAFormOnlyWhereThereIsOne(bool present, string? question)
    {
        var diagnosis = Between(MadeUp.Cause("a", ["needles"], never: ["floc"]), MadeUp.Cause("b", ["floc"], never: ["needles"]));

        Assert.Equal(question, QuestionChooser.Next(diagnosis with
        {
            Observation = Observation.Nothing.With([new Seen(Vocabulary.Sign("deposit"), present)]),
        }, _none)?.Id);
    }

    [Fact]
    public void WhereAllCausesAnswerAlikeNothingIsAsked() => Assert.Null(
        QuestionChooser.Next(Between(MadeUp.Cause("a", ["white"]), MadeUp.Cause("b", ["white"])), _none));

    [Fact]
    public void WhereOneCauseIsLeftNothingIsAsked() => Assert.Null(QuestionChooser.Next(
        Between(MadeUp.Cause("a", ["white"], never: ["blue"]), MadeUp.Cause("b", ["blue"], never: ["white"]), share: 1), _none));

    /// <summary>Two bits of which one is nearly known are worth less than a toss.</summary>
    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.99, false)]
    public void AQuestionHasToBeWorthTheAnswer(double share, bool asked) => Assert.Equal(asked, QuestionChooser.Next(
        Between(MadeUp.Cause("a", ["white"], never: ["blue"]), MadeUp.Cause("b", ["blue"], never: ["white"]), share), _none) is not null);

    [Fact]
    public void WhereTheBottleIsToBeLeftAloneNothingIsAsked()
    {
        var left = Diagnoser.Of(DiagnosisCase.StockOf("100 mL nitric-60 in 1 L"), ObservationReader.Read("somebody poured bleach in"), null);

        Assert.NotNull(left.Hazards.ForLeaving);
        Assert.Null(QuestionChooser.Next(left, _none));
    }

    /// <summary>Each bench test settles the cause that alone answers to it.</summary>
    [Theory]
    [InlineData("shake-dissolves", "shake")]
    [InlineData("warm-dissolves", "warm")]
    [InlineData("vinegar-fizzes", "vinegar", "vinegar-dissolves")]
    [InlineData("strong-acid-dissolves", "acid")]
    [InlineData("bicarbonate-fizzes", "bicarbonate", "bicarbonate-dissolves")]
    [InlineData("water-dissolves", "water")]
    [InlineData("reductant-dissolves", "reductant")]
    public void TheTestThatPartsTheCauseFromTheOthersSettlesIt(string sign, string test, params string[] besides)
    {
        Dictionary<string, Behaviour> all = DiagnosisData.Questions.Where(q => q.IsTest).SelectMany(q => q.Answers).SelectMany(a => a.Signs)
            .Select(s => s.Sign.Id).Distinct().ToDictionary(id => id, _ => Behaviour.No);
        var (one, other) = (
            MadeUp.Cause("a", ["powder"], tests: all.ToDictionary(
                t => t.Key, t => t.Key == sign || besides.Contains(t.Key) ? Behaviour.Yes : t.Value), rescue: Rescue.Filter),
            MadeUp.Cause("b", ["powder"], tests: all, rescue: Rescue.Filter));
        var diagnosis = Between(one, other);
        var settling = QuestionChooser.Settling(diagnosis.Causes[0], diagnosis);

        Assert.Equal(test, settling?.Test.Id);
        Assert.Contains(settling!.Value.Expected.Signs, s => s.Sign.Id == sign && s.Present);
        Assert.Null(QuestionChooser.Settling(diagnosis.Causes[0] with { Share = 0.5 }, Between(one, one with { Id = "b" })));
        Assert.NotEqual(test, QuestionChooser.Settling(diagnosis.Causes[0], diagnosis with
        {
            Observation = Observation.Nothing.With([new Seen(Vocabulary.Sign(sign), false)]),
        })?.Test.Id);
    }

    /// <summary>Where nothing lies there, only a test that the data name for the cause is tried.</summary>
    [Fact]
    public void WhatLeavesNothingBehindIsNotTested()
    {
        Dictionary<string, Behaviour> no = new() { ["warm-dissolves"] = Behaviour.No };
        var diagnosis = Between(MadeUp.Cause("a"), MadeUp.Cause("b", ["powder"], tests: no, rescue: Rescue.Filter));

        Assert.Null(QuestionChooser.Settling(diagnosis.Causes[0], diagnosis));
        var named = Between(MadeUp.Cause("a", tests: new() { ["warm-dissolves"] = Behaviour.Yes }), diagnosis.Causes[1].Cause);
        Assert.Equal("warm", QuestionChooser.Settling(named.Causes[0], named)?.Test.Id);
    }

    [Fact]
    public void WhatIsCertainNeedsNoTest()
    {
        var diagnosis = Between(
            MadeUp.Cause("a", tests: new() { ["warm-dissolves"] = Behaviour.Yes }),
            MadeUp.Cause("b", tests: new() { ["warm-dissolves"] = Behaviour.No }), share: 1);

        Assert.Null(QuestionChooser.Settling(diagnosis.Causes[0], diagnosis));
    }

    private static BottleDiagnosis Between(Cause one, Cause other, double share = 0.5) => _bottle with
    {
        Causes = [new(one, 0, share, [], SolidVerdict.None), new(other, 0, 1 - share, [], SolidVerdict.None)],
    };
}

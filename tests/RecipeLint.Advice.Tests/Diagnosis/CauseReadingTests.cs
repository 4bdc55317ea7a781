using System.Text.Json;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>A cause as it is written and as it is read: every field, and what holds where one is left out.</summary>
public sealed class CauseReadingTests
{
    private const string Sentences = """{"sentences": {"warm": "Warm it gently.", "pour": "Wear goggles.", "end": "The end."}}""";

    [Fact]
    public void EveryFieldIsRead()
    {
        var cause = Read("""
            {"id": "a", "name": "A", "frequency": "rare", "nothingWrong": true, "solids": ["Gypsum"], "needs": ["Ca+2"], "needsAnyOf": ["K+", "Na+"], "madeLikelyBy": ["feeds"],
             "often": ["white"], "sometimes": ["sand"], "never": ["rust"], "tests": {"vinegar-fizzes": "yes", "warm-dissolves": "partly", "lifts": "no"}, "rescue": "acid",
             "rescueSay": "Pour it. {end}", "rescueUses": ["acid"], "rescueWarm": "Hot. {end}", "rescuePh": 4.5, "change": "Less. {end}", "changeAcid": "Sour. {end}",
             "changeUses": ["water"], "changePh": 5.5, "dangers": [{"hazard": "hydrogen-sulfide", "from": "black mud"}], "isHazard": "oxygen-pressure", "source": "invented", "confidence": "found"}
            """);
        Assert.Equal(("a", "A", Frequency.Rare, true, Rescue.Acid), (cause.Id, cause.Name, cause.Frequency, cause.NothingWrong, cause.Rescue));
        Assert.Equal(["Gypsum"], cause.Solids);
        Assert.Equal(["Ca+2"], cause.Needs);
        Assert.Equal(["K+", "Na+"], cause.NeedsAnyOf);
        Assert.Equal(["feeds"], cause.MadeLikelyBy);
        Assert.Equal(["white", "sand", "rust"], cause.Often.Concat(cause.Sometimes).Concat(cause.Never));
        Assert.Equal([Behaviour.Yes, Behaviour.Partly, Behaviour.No], new[] { "vinegar-fizzes", "warm-dissolves", "lifts" }.Select(t => cause.Tests[t]));
        Assert.Equal(("Pour it. The end. Wear goggles.", "Hot. The end.", 4.5), (cause.RescueSay, cause.RescueWarm, cause.RescuePh));
        Assert.Equal(("Less. The end.", "Sour. The end.", 5.5), (cause.Change, cause.ChangeAcid, cause.ChangePh));
        Assert.Equal(["acid", "water"], cause.RescueUses.Concat(cause.ChangeUses));
        Assert.Equal([new CauseDanger(HazardKind.HydrogenSulfide, "black mud")], cause.Dangers);
        Assert.Equal((HazardKind.OxygenPressure, "invented", Confidence.Found), (cause.IsHazard, cause.Source, cause.Confidence));
    }

    [Fact]
    public void WhatIsLeftOutIsNotThere()
    {
        var cause = Read(Short("[]", "Leave it."));
        Assert.False(cause.NothingWrong);
        Assert.Equal(0, cause.Solids.Count + cause.Needs.Count + cause.NeedsAnyOf.Count + cause.MadeLikelyBy.Count + cause.RescueUses.Count + cause.ChangeUses.Count + cause.Dangers.Count + cause.Often.Count);
        Assert.Equal(("", "", "Leave it."), (cause.RescueWarm, cause.ChangeAcid, cause.RescueSay));
        Assert.Equal((null, null, null), (cause.RescuePh, cause.ChangePh, cause.IsHazard));
    }

    /// <summary>Who warms is told how, who pours acid or lye is told to wear goggles, once.</summary>
    [Theory]
    [InlineData("""["heat"]""", "Leave it.", "Leave it. Warm it gently.")]
    [InlineData("""["acid"]""", "Leave it.", "Leave it. Wear goggles.")]
    [InlineData("""["alkali"]""", "Leave it.", "Leave it. Wear goggles.")]
    [InlineData("""["heat", "acid"]""", "Leave it.", "Leave it. Warm it gently. Wear goggles.")]
    [InlineData("""["acid"]""", "Put goggles on.", "Put goggles on.")]
    [InlineData("""["acid"]""", "Goggles on.", "Goggles on.")]
    [InlineData("""["filter", "water"]""", "Leave it.", "Leave it.")]
    public void ARescueIsToldWithItsCare(string uses, string said, string expected) => Assert.Equal(expected, Read(Short(uses, said)).RescueSay);

    private static string Short(string uses, string said) =>
        $$"""{"id": "a", "name": "A", "frequency": "common", "tests": {}, "rescue": "none", "rescueSay": "{{said}}", "rescueUses": {{uses}}, "change": "", "source": "", "confidence": "memory"}""";

    private static Cause Read(string json)
    {
        using var shared = JsonDocument.Parse(Sentences);
        using var document = JsonDocument.Parse(json);
        return DiagnosisData.ReadCause(document.RootElement, SharedSentences.Of(shared.RootElement));
    }

    /// <summary>A test that takes something out says what becomes of it; a look and a shake do not.</summary>
    [Fact]
    public void WhatWasTakenOutDoesNotGoBack()
    {
        var after = DiagnosisData.Questions.Where(q => q.IsTest && q.Act != "shake").Select(q => q.Caution!).Aggregate(Common);
        Assert.True(after.Length > 20, after);
        Assert.All(DiagnosisData.Questions, q => Assert.Equal(q.IsTest && q.Act != "shake", q.Caution?.EndsWith(after, StringComparison.Ordinal) == true));
        Assert.All(DiagnosisData.Questions, q => Assert.Equal(q.IsTest, q.Ease < 1));
        Assert.All(DiagnosisData.Questions, q => Assert.False(q.Caution?.StartsWith(' ') == true));
        Assert.Contains(DiagnosisData.Questions, q => q.Answers.Any(a => a.Signs.Any(s => !s.Present)));
        Assert.All(DiagnosisData.Questions, q => Assert.Contains(q.Answers, a => a.Signs.Any(s => s.Present)));

        static string Common(string a, string b)
        {
            var same = 0;
            while (same < Math.Min(a.Length, b.Length) && a[^(same + 1)] == b[^(same + 1)])
            {
                same++;
            }

            return a[^same..];
        }
    }
}

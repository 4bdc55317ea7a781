using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Sentences of a hostile reading that were misread, or heard as nothing.</summary>
public sealed class MisreadWordsTests
{
    [Theory]
    [InlineData("tried vinegar, nothing happened")]
    [InlineData("tried vinegar. nothing happened")]
    [InlineData("white powder, tried vinegar, nothing happened")]
    [InlineData("nothing happened with vinegar")]
    [InlineData("I tried vinegar but nothing happened")]
    public void NothingHappenedIsTheOutcomeOfATest(string seen)
    {
        var told = ObservationReader.Read(seen);

        Assert.False(told.Of("vinegar-dissolves"));
        Assert.False(told.Of("vinegar-fizzes"));
    }

    [Theory]
    [InlineData("the pH is seven", "pH 7")]
    [InlineData("pH seven point five and cloudy", "pH 7.5")]
    [InlineData("it reads pH eleven", "pH 11")]
    [InlineData("pH: six", "pH 6")]
    [InlineData("white since pH 6.5", "pH 6.5")]
    [InlineData("pH two drops", null)]
    [InlineData("took a phone call, one drop fell in", null)]
    public void AReadingInWordsIsAReading(string seen, string? reading) =>
        Assert.Equal(reading, ToldReadings.Of(seen) is [var first, ..] ? first : null);

    [Theory]
    [InlineData(HazardKind.PersonIll, "I feel woozy since I opened the bottle")]
    [InlineData(HazardKind.PersonIll, "he is fine now but was sick all night")]
    [InlineData(HazardKind.PersonIll, "the foreman feels queasy")]
    [InlineData(HazardKind.Splashed, "hands went white and soapy")]
    [InlineData(HazardKind.Splashed, "my daughter rubbed her eyes after touching it")]
    [InlineData(HazardKind.Splashed, "gloves dissolved")]
    [InlineData(HazardKind.Fire, "fire in the store, the bags of nitrate are burning")]
    [InlineData(HazardKind.Fire, "the pallet is burning")]
    [InlineData(HazardKind.HydrogenSulfide, "smels of rotton egs")]
    [InlineData(HazardKind.UnknownContents, "contains a bit of weedkiller by accident")]
    [InlineData(HazardKind.UnknownContents, "someone swapped the labels")]
    [InlineData(HazardKind.NotUnderstood, "burnt rubber smell")]
    [InlineData(HazardKind.NotUnderstood, "smells of burning plastic")]
    [InlineData(HazardKind.Chlorine, "my nose burns at the tank")]
    [InlineData(HazardKind.Chlorine, "stinkt nach Chlor")]
    [InlineData(HazardKind.HydrogenSulfide, "riecht nach faulen Eiern")]
    [InlineData(HazardKind.PersonIll, "mir ist schwindelig")]
    [InlineData(HazardKind.PersonIll, "headpain after I opened it")]
    [InlineData(HazardKind.Swallowed, "kid hat davon getrunken")]
    public void WhatWasOverheardIsHeard(HazardKind kind, string seen)
    {
        var hazards = Hazards(seen);
        Assert.True(
            hazards.Hazards.Any(h => h.Kind == kind && h.Grade >= HazardGrade.Suspected),
            string.Join(", ", hazards.Hazards.Select(h => $"{h.Grade} {h.Kind}")));
    }

    [Theory]
    [InlineData("I put a bit vinegar in it")]
    [InlineData("she added a little bit more water")]
    public void ABitOfSomethingBitesNobody(string seen) =>
        Assert.DoesNotContain(Hazards(seen).Hazards, h => h.Kind == HazardKind.Swallowed);

    /// <summary>Told of plants, of the past, or as a shape: nothing of the liquid, and no animal.</summary>
    [Theory]
    [InlineData("nothing to see but the plants are pale", "cream")]
    [InlineData("the crop looks yellow", "yellow")]
    [InlineData("clear for weeks, today a bit cloudy", "liquid-clear")]
    [InlineData("clear for weeks, today a bit cloudy", "colourless")]
    [InlineData("clear at first, then white dust", "colourless")]
    [InlineData("white hedgehog of crystals at the bottom", "animal-harmed")]
    [InlineData("white collar on the dripper, spits when I drip lemon juice on", "flame-sparks")]
    public void WhatIsNotTheLiquidsIsNotRead(string seen, string sign) =>
        Assert.DoesNotContain(ObservationReader.Read(seen).Signs, s => s.Present && s.Sign.Id == sign);

    [Theory]
    [InlineData("white collar on the dripper, spits when I drip lemon juice on", "vinegar-fizzes")]
    [InlineData("turned to milk when we tipped the two buckets together", "on-joining")]
    [InlineData("clear for weeks, today a bit cloudy", "haze")]
    [InlineData("a dog of the neighbour drank it", "animal-harmed")]
    public void WhatWasMeantIsRead(string seen, string sign) =>
        Assert.Contains(ObservationReader.Read(seen).Signs, s => s.Present && s.Sign.Id == sign);

    [Theory]
    [InlineData("leaves got burned, white patches")]
    [InlineData("root tips burned")]
    [InlineData("nobody hurt, just a cloudy bottle")]
    [InlineData("smells of rubber hose")]
    [InlineData("skin on top is white")]
    [InlineData("the store is cold")]
    [InlineData("dried in the shed")]
    [InlineData("a white pile at the bottom")]
    [InlineData("chars over a flame, burns with a smell")]
    public void WhatIsNoEmergencyIsNone(string seen)
    {
        var hazards = Hazards(seen);
        Assert.DoesNotContain(hazards.Hazards, h => h.Grade >= HazardGrade.Suspected);
    }

    [Fact]
    public void HisIsNoHiss() => Assert.Null(ObservationReader.Read("my lad got some in his eye").Of("pressure"));

    [Theory]
    [InlineData("it hisses")]
    [InlineData("hissing cap")]
    [InlineData("a hiss when I open it")]
    public void AHissIsOne(string seen) => Assert.True(ObservationReader.Read(seen).Of("pressure"));

    [Fact]
    public void ANoseThatBurnsIsNoFlameTest() => Assert.Null(ObservationReader.Read("smell of chlorine and my nose burns").Of("flame-burns"));

    private static HazardReport Hazards(string seen) => Diagnoser.Of(
        DiagnosisCase.StockOf("30 g monopotassium-phosphate, 40 g potassium-nitrate in 1 L"), ObservationReader.Read(seen), null).Hazards;
}

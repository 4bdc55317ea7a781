using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>What an answer lists binds what it advises: no acid to what may be sulfide, none to bleach, none to a strong lye.</summary>
public sealed class SafeAdviceTests
{
    private const string Trace =
        "2 g citric-acid-h2o, 2 g manganese-sulfate-h2o, 1 g zinc-sulfate-7h2o, 0.2 g copper-sulfate-5h2o, 1.7 g boric-acid in 1 L";

    private static readonly string[] Acids = ["vinegar", "acid", "reductant"];

    [Theory]
    [InlineData("black sludge at the bottom")]
    [InlineData("the colour is dark")]
    [InlineData("chocolate coloured")]
    [InlineData("no longer smells of ammonia")]
    [InlineData("grey mud")]
    [InlineData("hot summer, the colour is dark")]
    [InlineData("cloudy")]
    public void NoAcidWhereSulfideIsListed(string seen)
    {
        var diagnosis = Diagnoser.Of(DiagnosisCase.StockOf(Trace), ObservationReader.Read(seen), null);
        if (BottleDiagnosis.Listed(diagnosis.Causes).All(c => c.Cause.Dangers.Count == 0))
        {
            return;
        }

        Assert.NotNull(BottleHazards.Refuses(["acid"], diagnosis.Hazards));
        Assert.NotNull(BottleHazards.Refuses(["edta"], diagnosis.Hazards));
        Assert.All(DiagnosisData.Questions.Where(q => Acids.Contains(q.Id)), q => Assert.NotNull(BottleHazards.Refuses(q, diagnosis.Hazards)));
        Assert.All(
            BottleDiagnosis.Listed(diagnosis.Causes),
            c => Assert.DoesNotContain(QuestionChooser.Settling(c, diagnosis)?.Test.Id, Acids));
        Assert.Contains(diagnosis.Hazards.Hazards, h => h.Kind == HazardKind.HydrogenSulfide);
    }

    [Fact]
    public void BlackSludgeListsSulfide() => Assert.Contains(
        "sulfide",
        BottleDiagnosis.Listed(Diagnoser.Of(DiagnosisCase.StockOf(Trace), ObservationReader.Read("black sludge at the bottom"), null).Causes)
            .Select(c => c.Cause.Id));

    /// <summary>Where no cause gives a gas off, acid stays a test.</summary>
    [Fact]
    public void AcidStaysATestElsewhere()
    {
        var diagnosis = Diagnoser.Of(
            DiagnosisCase.StockOf("100 g calcium-nitrate-4h2o, 30 g potassium-nitrate in 1 L"), ObservationReader.Read("white crust"), null);
        Assert.Null(BottleHazards.Refuses(["acid"], diagnosis.Hazards));
    }

    [Theory]
    [InlineData("can I add bleach", true)]
    [InlineData("should I pour bleach in", true)]
    [InlineData("we bleached the tank this morning, now a white crust", false)]
    [InlineData("I flushed the lines with bleach and then acid", false)]
    [InlineData("bleach in the lines", false)]
    [InlineData("is it ok to put pool chlorine in", true)]
    [InlineData("after shocking the lines", false)]
    [InlineData("the bottle was bleached", false)]
    [InlineData("ran bleach through it", false)]
    [InlineData("soaked in bleach overnight", false)]
    [InlineData("they chlorinated the tank", false)]
    public void BleachIsHeardInAnyForm(string seen, bool asked)
    {
        var told = ObservationReader.Read(seen);
        var put = Assert.Single(told.PutIn, p => p.Substance?.Id == "sodium-hypochlorite-5");
        Assert.Equal(asked, put.IsAsked);
        Assert.Null(told.Of("liquid-faded"));
        var hazards = Diagnoser.Of(DiagnosisCase.StockOf("100 mL nitric-60 in 1 L"), told, null).Hazards;
        Assert.Equal(HazardKind.Chlorine, hazards.Hazards[0].Kind);
        Assert.True(hazards.Hazards[0].Grade >= HazardGrade.Suspected);
        Assert.NotNull(BottleHazards.Refuses(["acid"], hazards));
    }

    [Theory]
    [InlineData("nobody put any bleach in")]
    [InlineData("milky but not from bleach")]
    [InlineData("smells of bleach")]
    [InlineData("a bleach smell")]
    [InlineData("bleach turns it white")]
    [InlineData("two drops of bleach on a sample did nothing")]
    [InlineData("the colour bleached in the sun")]
    [InlineData("leaves bleached")]
    [InlineData("made with chlorinated tap water")]
    public void WhatIsNoBleachPutInIsNone(string seen) =>
        Assert.DoesNotContain(ObservationReader.Read(seen).PutIn, p => p.Substance?.Id == "sodium-hypochlorite-5");

    [Theory]
    [InlineData("100 g potassium-hydroxide in 1 L", "white crust around the cap", "acid")]
    [InlineData("100 g potassium-hydroxide in 1 L", "white crust around the cap", "wipe")]
    [InlineData("100 g potassium-hydroxide in 1 L", "white flakes at the bottom", "filter")]
    [InlineData("100 g potassium-hydroxide in 1 L", "white flakes at the bottom", "heat")]
    [InlineData("20 g potassium-hydroxide in 1 L", "white flakes at the bottom", "shake")]
    [InlineData("100 mL nitric-60 in 1 L", "white flakes at the bottom", "heat")]
    [InlineData("100 mL nitric-60 in 1 L", "white crust around the cap", "alkali")]
    [InlineData("100 mL nitric-60 in 1 L", "white crust around the cap", "wipe")]
    public void WhatBurnsIsNeitherNeutralisedNorWiped(string mix, string seen, string use)
    {
        var hazards = Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read(seen), null).Hazards;
        Assert.Contains(hazards.Hazards, h => h is { Kind: HazardKind.Splashed or HazardKind.Caustic, From: not null });
        Assert.NotNull(BottleHazards.Refuses([use], hazards));
    }

    [Fact]
    public void AnOrdinaryStockMayBeWiped()
    {
        var acid = Diagnoser.Of(DiagnosisCase.StockOf("5 mL nitric-38, 2 g manganese-sulfate-h2o in 1 L"), ObservationReader.Read("white powder"), null).Hazards;
        Assert.Null(BottleHazards.Refuses(["heat"], acid));
        Assert.Null(BottleHazards.Refuses(["filter"], acid));
        var hazards = Diagnoser.Of(DiagnosisCase.StockOf("100 g potassium-nitrate in 1 L"), ObservationReader.Read("white crust"), null).Hazards;
        Assert.Null(BottleHazards.Refuses(["wipe"], hazards));
    }

    /// <summary>The signs that the gate itself says to look out for put the danger first.</summary>
    [Theory]
    [InlineData("smells of matches", HazardKind.SulfurDioxide)]
    [InlineData("a smell of struck matches", HazardKind.SulfurDioxide)]
    [InlineData("like burnt sulfur", HazardKind.SulfurDioxide)]
    public void ASignOfAHazardPutsTheDangerFirst(string seen, HazardKind kind)
    {
        var hazards = Diagnoser.Of(DiagnosisCase.StockOf("100 g potassium-nitrate in 1 L"), ObservationReader.Read(seen), null).Hazards;
        Assert.Equal(kind, hazards.ForLeaving?.Kind);
        Assert.NotNull(BottleHazards.Refuses(["shake"], hazards));
    }

    [Fact]
    public void AddedPartsAreHeard()
    {
        var told = ObservationReader.Read("I added part B by mistake and it went milky");
        Assert.Equal(["part b"], told.Parts);
        var diagnosis = Diagnoser.Of(
            DiagnosisCase.StockOf("100 g calcium-nitrate-4h2o, 30 g potassium-nitrate, 3 g fe-dtpa-liquid-6 in 1 L"), told, null);
        Assert.Equal("concentrates-joined", diagnosis.Causes[0].Cause.Id);
    }

    [Theory]
    [InlineData("cloudy after I acidified it to pH 7")]
    [InlineData("cloudy when the acid went in")]
    [InlineData("I added vinegar, now a haze")]
    public void AcidOnSilicateIsSilicaGel(string seen) => Assert.Equal(
        "silica-gel",
        Diagnoser.Of(DiagnosisCase.StockOf("100 mL potassium-silicate-29be in 1 L"), ObservationReader.Read(seen), null).Causes[0].Cause.Id);
}

using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>What a bottle and its likely causes forbid, act by act.</summary>
public sealed class BottleHazardsTests
{
    private const string Nitre = "potassium-nitrate 20 g in 1 L";

    private static readonly Question _look = DiagnosisData.Questions.Single(q => q.Id == "colour");

    /// <summary>What a cause can give off is possible where it is listed, and as good as noticed where hardly anything else explains it.</summary>
    [Theory]
    [InlineData(0.6, HazardGrade.Suspected)]
    [InlineData(0.59, HazardGrade.Possible)]
    public void WhatACauseGivesOffCountsByItsShare(double share, HazardGrade grade)
    {
        var cause = MadeUp.Ranked("a", share, dangers: [new CauseDanger(HazardKind.HydrogenSulfide, "black sulfide")]);
        var hazards = BottleHazards.With(Report(Nitre), [MadeUp.Ranked("b", 0.01), cause]);

        var found = hazards.Find(HazardKind.HydrogenSulfide);
        Assert.Equal((grade, "black sulfide"), (found?.Grade, found?.From?.Substance.Name));
        Assert.Equal("black-sulfide", found?.From?.Substance.Id);
        Assert.Equal("black sulfide", Assert.Single(hazards.MayHold).Substance.Name);
        Assert.NotNull(BottleHazards.Refuses(["acid"], hazards));
        Assert.NotNull(BottleHazards.Refuses(["edta"], hazards));
    }

    /// <summary>Pressure listed first is as good as told; further down it is possible where something of the contents makes it.</summary>
    [Theory]
    [InlineData("sucrose 20 g in 1 L", HazardKind.FermentationPressure, true, 0.5, HazardGrade.Suspected)]
    [InlineData("sucrose 20 g in 1 L", HazardKind.FermentationPressure, false, 0.06, HazardGrade.Possible)]
    [InlineData("sucrose 20 g in 1 L", HazardKind.FermentationPressure, false, 0.04, null)]
    [InlineData("sucrose 20 g in 1 L", HazardKind.FermentationPressure, true, 0.04, null)]
    [InlineData(Nitre, HazardKind.FermentationPressure, true, 0.5, HazardGrade.Suspected)]
    [InlineData(Nitre, HazardKind.FermentationPressure, false, 0.5, null)]
    [InlineData("potassium-bicarbonate 20 g in 1 L", HazardKind.CarbonDioxidePressure, false, 0.06, HazardGrade.Possible)]
    [InlineData(Nitre, HazardKind.CarbonDioxidePressure, false, 0.06, null)]
    [InlineData(Nitre, HazardKind.OxygenPressure, true, 0.06, HazardGrade.Suspected)]
    [InlineData(Nitre, HazardKind.Chlorine, true, 0.5, null)]
    public void PressureCountsByItsPlaceInTheList(string mix, HazardKind kind, bool first, double share, HazardGrade? grade)
    {
        var pressure = MadeUp.Ranked("a", share, isHazard: kind);
        var hazards = BottleHazards.With(Report(mix), first ? [pressure, MadeUp.Ranked("b", 0.3)] : [MadeUp.Ranked("b", 0.3), pressure]);

        Assert.Equal(grade, hazards.Find(kind)?.Grade);
        Assert.Equal(grade is not null, hazards.Forbids(VesselAction.Shake) is not null);
    }

    /// <summary>From pH 11.5 a lye, to pH 2 an acid burns (CLP regulation); to pH 0.5 at once.</summary>
    [Theory]
    [InlineData("potassium-hydroxide 30 g in 1 L", HazardKind.Caustic, "potassium hydroxide, solid")]
    [InlineData("nitric-38 40 mL in 1 L", HazardKind.Splashed, "nitric acid 38 %")]
    [InlineData("nitric-60 300 mL in 1 L", HazardKind.Caustic, "nitric acid 60 %")]
    [InlineData("potassium-hydroxide 0.05 g in 1 L", null, null)]
    [InlineData("nitric-38 0.5 mL in 1 L", null, null)]
    [InlineData(Nitre, null, null)]
    public void WhatBurnsByItsPhIsCorrosive(string mix, HazardKind? kind, string? from)
    {
        var stock = DiagnosisCase.StockOf(mix);
        var bare = new HazardReport(Holding.Of(stock), [], HazardGate.Of(stock).Limits);
        var hazards = BottleHazards.WithCorrosion(bare, stock, stock.Chemistry.Mixing);

        Assert.Equal(kind, hazards.Hazards.Count > 0 ? hazards.Hazards[0].Kind : null);
        Assert.Equal(from, hazards.Hazards.Count > 0 ? hazards.Hazards[0].From?.Name : null);
        Assert.Equal(hazards.Hazards.Count, BottleHazards.WithCorrosion(hazards, stock, stock.Chemistry.Mixing).Hazards.Count);
    }

    /// <summary>Where nothing can be computed the label of what went in tells.</summary>
    [Theory]
    [InlineData("nitric-60 300 mL, calcium-chloride-anhydrous 3 kg in 1 L", true)]
    [InlineData("calcium-chloride-anhydrous 3 kg in 1 L", false)]
    public void WithoutAPhTheLabelTells(string mix, bool burns)
    {
        var stock = DiagnosisCase.StockOf(mix);
        var bare = new HazardReport(Holding.Of(stock), [], HazardGate.Of(stock).Limits);

        Assert.False(stock.Chemistry.Mixing.IsSolved);
        Assert.Equal(burns, BottleHazards.WithCorrosion(bare, stock, stock.Chemistry.Mixing).Find(HazardKind.Caustic) is not null);
    }

    [Theory]
    [InlineData("shake")]
    [InlineData("lift")]
    [InlineData("warm")]
    [InlineData("vinegar")]
    [InlineData("acid")]
    [InlineData("bicarbonate")]
    [InlineData("alkali")]
    [InlineData("water")]
    [InlineData("reductant")]
    [InlineData("flame")]
    [InlineData("smell")]
    public void OfAHarmlessBottleEverythingMayBeAsked(string question) =>
        Assert.Null(BottleHazards.Refuses(DiagnosisData.Questions.Single(q => q.Id == question), Report(Nitre)));

    /// <summary>A look from outside is refused by nothing, all else by a bottle that is to be left alone.</summary>
    [Fact]
    public void ABottleToLeaveAloneIsOnlyLookedAt()
    {
        var hazards = Report("nitric-60 100 mL in 1 L", "somebody poured bleach in");

        Assert.NotNull(hazards.ForLeaving);
        Assert.Null(BottleHazards.Refuses(_look, hazards));
        Assert.All(
            new[] { "cap", "shake", "heat", "filter", "smell", "wipe", "open", "water", "acid", "alkali", "edta" },
            act => Assert.Equal(hazards.ForLeaving, BottleHazards.Refuses([act], hazards)?.Hazard));
        Assert.NotNull(BottleHazards.Stops(hazards));
        Assert.Null(BottleHazards.Stops(Report(Nitre)));
    }

    /// <summary>Nitrate that dries with sugar, or with an organic acid, sparks over a flame; with a chelating agent it does not.</summary>
    [Theory]
    [InlineData("potassium-nitrate", "sucrose", true)]
    [InlineData("potassium-nitrate", "citric-acid-h2o", true)]
    [InlineData("potassium-sulfate", "sucrose", false)]
    [InlineData("potassium-nitrate", "phosphoric-75", false)]
    [InlineData("potassium-nitrate", "disodium-edta-2h2o", false)]
    [InlineData("potassium-nitrate", "potassium-sulfate", false)]
    public void NitrateWithFuelIsHeldOverNoFlame(string one, string other, bool refused)
    {
        var amount = Bench.Substance(other).Form == Chemistry.Substances.PhysicalForm.Liquid ? "2 mL" : "20 g";
        var hazards = BottleHazards.Of(
            Bench.StockOf(Bench.Pour("1.5 L"), Bench.Add(one, "20 g"), Bench.Add(other, amount), Bench.TopUp("2 L")), Observation.Nothing);
        var refusal = BottleHazards.Refuses(DiagnosisData.Questions.Single(q => q.Id == "flame"), hazards);

        Assert.Equal(refused, refusal is not null);
        Assert.Equal(refused ? HazardKind.Fire : null, refusal?.Hazard.Kind);
        Assert.Equal(refused ? (one, other) : default, (refusal?.Hazard.From?.Substance.Id, refusal?.Hazard.With?.Substance.Id));
        Assert.Null(BottleHazards.Refuses(["heat"], hazards));
    }

    /// <summary>Carbon dioxide of a pinch on an open glass is what the test looks for; acid for a whole bottle is another matter.</summary>
    [Fact]
    public void APinchMayFizz()
    {
        var hazards = Report("potassium-bicarbonate 40 g in 1 L");

        Assert.Null(BottleHazards.Refuses(DiagnosisData.Questions.Single(q => q.Id == "vinegar"), hazards));
        Assert.NotNull(BottleHazards.Refuses(["acid"], hazards));
        Assert.Null(BottleHazards.Refuses(["alkali"], hazards));
        Assert.NotNull(BottleHazards.Refuses(["filter", "acid"], hazards));
        Assert.Null(BottleHazards.Refuses([], hazards));
    }

    [Fact]
    public void OnlyKnownActsAreAsked()
    {
        Assert.Throws<InvalidOperationException>(() => BottleHazards.Refuses(["dance"], Report(Nitre)));
        Assert.Throws<InvalidOperationException>(() => BottleHazards.Refuses(["reagent:phlogiston"], Report(Nitre)));
    }

    private static HazardReport Report(string mix, string seen = "") => BottleHazards.Of(
        DiagnosisCase.StockOf(mix), seen.Length == 0 ? Observation.Nothing : ObservationReader.Read(seen));
}

using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Equilibrium;
using Xunit.Abstractions;

namespace RecipeLint.Advice.Tests.Tanks;

/// <summary>Tank, lines and drippers of the shop with well water, in the words of whoever stands there. Looks are common practice, no source.</summary>
public sealed class TankDiagnosisTests(ITestOutputHelper output)
{
    private static readonly (string Seen, string[] Causes)[] _cases =
    [
        ("white crust on the drippers, fizzes with vinegar", ["lime-scale"]),
        ("hard white scale in the hot pipe, vinegar foams on it", ["lime-scale"]),
        ("white crust on the emitters, plain water takes it off", ["dried-salts"]),
        ("white salt around the drip where it leaks, dissolves in water", ["dried-salts"]),
        ("rusty brown floc in the tank after a week", ["iron-of-the-feed"]),
        ("the water turned brown, rust at the bottom", ["iron-of-the-feed", "iron-of-the-water"]),
        ("slime in the lines, smells foul", ["bacterial-slime"]),
        ("clear jelly-like slime in the drippers", ["bacterial-slime"]),
        ("ropy pink slime on the tank wall", ["bacterial-slime"]),
        ("green slime where the sun falls on the tank", ["algae"]),
        ("green threads floating in the tank", ["algae"]),
        ("white cloud as soon as part b went in", ["concentrates-met", "calcium-phosphate"]),
        ("white floc where the two concentrates met in the suction hose", ["concentrates-met"]),
        ("cloudy white after the ph was raised with lye", ["calcium-phosphate"]),
        ("black stinking mud in the dead end of the line, rotten eggs", ["sulfide"]),
        ("sand and dirt at the bottom of the tank", ["silt"]),
        ("milky from tiny bubbles, clears after a few minutes", ["air-bubbles"]),
        ("undissolved grains on the tank floor right after mixing", ["undissolved"]),
    ];

    private static RecipeFacts Well => Bottle.FactsOf("tests/RecipeLint.Rules.Tests/Mutations/tarnhollow").Recipes.Single();

    [Fact]
    public void WhatIsSeenInTankAndLinesLeadsToItsCause()
    {
        var recipe = Well;
        var ranks = _cases.Select(c => (Case: c, Causes: TankDiagnoser.Of(recipe, ObservationReader.Read(c.Seen)).Causes.Select(r => r.Ranked.Cause.Id).ToList()))
            .Select(c => (c.Case, c.Causes, Rank: 1 + c.Causes.FindIndex(c.Case.Causes.Contains))).ToList();
        foreach (var (missed, causes, rank) in ranks.Where(r => r.Rank != 1))
        {
            output.WriteLine($"{rank} {missed.Seen} -> {string.Join(", ", causes.Take(3))}");
        }

        Assert.All(ranks, r => Assert.True(r.Rank <= 3, $"{r.Rank}: {r.Case.Seen}"));
        Assert.True(ranks.Count(r => r.Rank == 1) >= 0.7 * ranks.Count, $"{ranks.Count(r => r.Rank == 1)} of {ranks.Count} first");
    }

    /// <summary>A gel after the acid went in where there is silicate; without silicate it is no silica gel.</summary>
    [Fact]
    public void ACauseWhoseIonsAreMissingComesLast()
    {
        var causes = TankDiagnoser.Of(Well, ObservationReader.Read("gel in the tank after the acid went in")).Causes;

        Assert.Equal(0, Well.ComponentMoles.GetValueOrDefault(Component.Silicate));
        Assert.NotEqual("silica-gel", causes[0].Ranked.Cause.Id);
    }

    /// <summary>Lime of a hard water is the water's: pure water leaves nothing of it.</summary>
    [Fact]
    public void TheSourceWatersPartIsComputed()
    {
        var lime = TankDiagnoser.Of(Well, ObservationReader.Read("white crust, fizzes with vinegar")).Causes[0];

        Assert.Equal("lime-scale", lime.Ranked.Cause.Id);
        Assert.Equal(Standing.Forms, lime.Ranked.Solid.Standing);
        Assert.Equal(0, lime.WithPureWater);
        Assert.Contains(lime.Ranked.Evidence, e => e.Text.Contains("source water brings 2.8 meq/L alkalinity", StringComparison.Ordinal));
    }

    /// <summary>Without words the recipe alone decides, and the same input gives the same order.</summary>
    [Fact]
    public void TheOrderIsStable()
    {
        var recipe = Well;
        string Order() => string.Join(' ', TankDiagnoser.Of(recipe, Observation.Nothing).Causes.Select(c => c.Ranked.Cause.Id));

        Assert.Equal(Order(), Order());
        Assert.Equal(1, TankDiagnoser.Of(recipe, Observation.Nothing).Causes.Sum(c => c.Ranked.Share), 6);
    }

    [Fact]
    public void ADangerIsSaidFirst() =>
        Assert.Equal(HazardKind.Chlorine, TankDiagnoser.Of(Well, ObservationReader.Read("smells of swimming pool, my eyes water")).Hazards.ForLeaving?.Kind);

    [Fact]
    public void EveryCauseCanBeReadAndNamesRealSolidsAndAWayOut() => Assert.All(TankData.Causes, c =>
    {
        Assert.All(c.Cause.Solids, s => Assert.NotNull(ConstantSet.Product.FindSolid(s)));
        Assert.Equal(c.Cause.Solids.Count > 0, c.Moments.Count > 0);
        Assert.EndsWith(".", c.Cause.RescueSay, StringComparison.Ordinal);
        Assert.EndsWith(".", c.Cause.Change, StringComparison.Ordinal);
        Assert.NotEmpty(c.Cause.Source);
        Assert.True(!c.Cause.RescueSay.Contains("weak acid", StringComparison.Ordinal) || c.Cause.RescueSay.Contains("bleach acid gives chlorine", StringComparison.Ordinal), c.Cause.Id);
    });
}

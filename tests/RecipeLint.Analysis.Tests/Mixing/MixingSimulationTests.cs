using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Tests.Mixing;

public sealed class MixingSimulationTests
{
    private static MixingSimulation Mix(string makes, params Step[] steps) => Bench.Analyse([Bench.Stock("a.stock.json", makes, steps)]).Stocks.Single().Mixing;

    private static Step Sorbate => Bench.Add("potassium-sorbate", "1 g", "100 %");

    private static Step Citric => Bench.Add("citric-acid-h2o", "10 g", "100 %");

    /// <summary>KNO3: 24.2 % by mass saturated at 20 °C (CRC Handbook, 98th ed.), 31.9 g in 100 g of water; 500 mL of water weigh 499.1 g.</summary>
    [Fact]
    public void WhatTheWaterCannotDissolveLiesAtTheBottomUntilThereIsMore()
    {
        var mixing = Mix("1 L", Bench.Pour("500 mL"), Bench.Add("potassium-nitrate", "200 g", "100 %"), Bench.TopUp("1 L"));
        var lying = mixing.States[1].Find("Niter");
        Assert.NotNull(lying);
        Assert.Equal(200 - (499.1 * 0.319), lying.Mass.Grams, 3.0);
        Assert.Equal("potassium-nitrate", lying.Undissolved?.Id);
        Assert.Equal(0, lying.Locked.Grams);
        Assert.Empty(mixing.States[2].Solids);
        var passing = Assert.Single(mixing.Passing);
        Assert.Equal(SolidFate.ClearsAgain, passing.Fate);
        Assert.Equal("top-up", passing.Clears?.Step.Id);
    }

    /// <summary>80 g of calcium nitrate and 40 g of Epsom salt in one litre, later in a hundred (common practice, no source: never concentrate onto concentrate).</summary>
    [Fact]
    public void GypsumOnceFormedStaysAlthoughTheFullVolumeWouldHoldIt()
    {
        var mixing = Mix(
            "100 L",
            Bench.Pour("1 L"),
            Bench.Add("calcium-nitrate-4h2o", "80 g", "100 %"),
            Bench.Add("magnesium-sulfate-7h2o", "40 g", "100 %"),
            Bench.TopUp("100 L"));
        Assert.Empty(mixing.FinishedState.Solids);
        var gypsum = Assert.Single(mixing.Passing);
        Assert.Equal("Gypsum", gypsum.There.Name);
        Assert.Equal(SolidFate.StaysAlthoughItWouldDissolve, gypsum.Fate);
        Assert.True(mixing.States[^1].Find("Gypsum")!.Locked.Grams > 10);
    }

    /// <summary>Crystals bring water of their own, but lie there dry until somebody pours some.</summary>
    [Fact]
    public void AHeapOfDryCrystalsIsNoSolution()
    {
        var mixing = Mix(
            "1 L", Bench.Add("calcium-nitrate-4h2o", "80 g", "100 %"), Bench.Add("magnesium-sulfate-7h2o", "40 g", "100 %"), Bench.TopUp("1 L"));
        Assert.Equal([true, true, false], mixing.States.Select(s => s.IsEmpty));
        Assert.Null(mixing.States[1].Ph);
        Assert.NotEmpty(mixing.States[2].Solids);
    }

    /// <summary>Twenty salts in turn, three hundred times, in half a glass of water: half a minute of work until steps had a bound together.</summary>
    [Fact]
    public void WhatAsksForAllTheWorkIsNotFollowedToItsEnd()
    {
        string[] salts =
        [
            "calcium-nitrate-4h2o", "potassium-nitrate", "magnesium-sulfate-7h2o", "potassium-sulfate", "monopotassium-phosphate", "fe-dtpa-hna",
            "manganese-sulfate-h2o", "zinc-sulfate-7h2o", "copper-sulfate-5h2o", "boric-acid", "sodium-molybdate-2h2o", "ammonium-nitrate",
            "citric-acid-h2o", "disodium-edta-2h2o", "ferrous-sulfate-7h2o", "potassium-silicate-powder",
        ];
        var mixing = Mix("1 L", [Bench.Pour("20 mL"), .. Enumerable.Range(0, 300).Select(i => Bench.Add(salts[i % salts.Length], "1 g", "100 %")), Bench.TopUp("1 L")]);
        Assert.Equal(mixing.Steps.Count, mixing.States.Count);
        Assert.NotNull(mixing.NotFollowedFrom);
        Assert.InRange(mixing.NotFollowedFrom.Index, 10, 250);
        Assert.All(mixing.States.Skip(mixing.NotFollowedFrom.Index), s => Assert.True(s.IsNotFollowed && s.Failure is not null));
        Assert.All(mixing.States.Take(mixing.NotFollowedFrom.Index), s => Assert.False(s.IsNotFollowed));
        Assert.InRange(mixing.States.Sum(s => s.Effort), MixingSimulation.MostEffort, 2 * MixingSimulation.MostEffort);
    }

    /// <summary>What is dissolved and what lies there add up to what was put in.</summary>
    [Fact]
    public void NothingIsLostOnTheWay()
    {
        var mixing = Mix(
            "1 L",
            Bench.Pour("300 mL"),
            Bench.Add("calcium-nitrate-4h2o", "20 g", "100 %"),
            Bench.Add("magnesium-sulfate-7h2o", "40 g", "100 %"),
            Bench.Add("monopotassium-phosphate", "10 g", "100 %"),
            Bench.Add("potassium-nitrate", "120 g", "100 %"),
            Bench.TopUp("1 L"));
        foreach (var step in mixing.Steps.Skip(1))
        {
            var state = mixing.States[step.Index];
            Assert.Null(state.Failure);
            foreach (var component in new[] { "Ca+2", "SO4-2", "H2PO4-", "K+", "NO3-" })
            {
                var put = step.After.Moles.GetValueOrDefault(component);
                var lying = state.Solids.Sum(s => s.Mass.Grams / s.Solid!.MolarMassGramsPerMole * s.Solid.Composition.FirstOrDefault(c => c.Key == component).Value);
                var crystalWater = state.Solids.Sum(s => s.Mass.Grams / s.Solid!.MolarMassGramsPerMole * s.Solid.Composition.FirstOrDefault(c => c.Key == "H2O").Value);
                var water = (step.After.Solvent.Grams / 1000) - (crystalWater * 0.018015);
                var dissolved = state.Solution!.Species.Sum(s => s.MolPerKg * SpeciesComposition.Of(s.Name).FirstOrDefault(c => c.Key == component).Value) * water;
                Assert.Equal(put, dissolved + lying, 1e-6 + (1e-4 * put));
            }
        }
    }

    /// <summary>Equilibrium does not remember: without anything permanent every order ends alike.</summary>
    [Fact]
    public void TheEndDoesNotDependOnTheOrderWhenNothingPermanentForms()
    {
        Step[] salts = [Bench.Add("potassium-nitrate", "20 g"), Bench.Add("magnesium-sulfate-7h2o", "30 g"), Bench.Add("monopotassium-phosphate", "10 g")];
        var ends = new[] { (0, 1, 2), (0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1), (2, 1, 0) }
            .Select(o => Mix("1 L", Bench.Pour("800 mL"), salts[o.Item1], salts[o.Item2], salts[o.Item3], Bench.TopUp("1 L")))
            .ToList();
        Assert.All(ends, e => Assert.Empty(e.Passing));
        Assert.All(ends, e => Assert.Equal(ends[0].States[^1].Ph!.Value, e.States[^1].Ph!.Value, 1e-6));
        Assert.All(ends, e => Assert.Equal(ends[0].Steps[^1].After.Litres, e.Steps[^1].After.Litres, 1e-9));
    }

    [Fact]
    public void ToppedUpTheVesselHoldsWhatItsMarkSays()
    {
        var mixing = Mix("2 L", Bench.Pour("1.5 L"), Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.TopUp("2 L"));
        Assert.Equal(2, mixing.Steps[^1].After.Litres, 0.002);
        Assert.True(mixing.Steps[1].After.Litres > mixing.Steps[0].After.Litres);
    }

    /// <summary>
    /// Sorbic acid holds 1.5 to 1.6 g/L in water at 20 °C (as in the constants); 1 g of sorbate is 0.75 g of it. In 200 mL with acid most of
    /// it has no room, in the full litre all of it has.
    /// </summary>
    [Fact]
    public void APreservativeDropsItsAcidInTooLittleAcidWater()
    {
        var cramped = Mix("1 L", Bench.Pour("200 mL"), Citric, Sorbate, Bench.TopUp("1 L"));
        var fluff = cramped.Passing.Single(p => p.There.Name == "Sorbic acid");
        Assert.Equal(SolidFate.StaysAlthoughItWouldDissolve, fluff.Fate);
        Assert.InRange(fluff.There.Mass.Grams, 0.35, 0.5);
        Assert.Empty(Mix("1 L", Bench.Pour("900 mL"), Sorbate, Citric, Bench.TopUp("1 L")).Passing);
    }

    /// <summary>Strong acid and then an EDTA salt: the acid of the chelating agent drops below about pH 3 (0.5 g/L dissolve, handbooks; recalled).</summary>
    [Fact]
    public void EdtaPouredIntoStrongAcidTurnsToWhiteSand()
    {
        var mixing = Mix("1 L", Bench.Pour("900 mL"), Bench.Add("nitric-38", "20 g"), Bench.Add("disodium-edta-2h2o", "10 g"), Bench.TopUp("1 L"));
        Assert.True(mixing.States[2].Find("EDTA acid")!.Locked.Grams > 4);
    }

    /// <summary>
    /// Where the concentrate enters, solids form that the stirred vessel does not hold: molybdate is alkaline, and zinc phosphate wants that.
    /// </summary>
    [Fact]
    public void AlongTheMixingLineMoreFallsOutThanInTheStirredVessel()
    {
        var mixing = Mix(
            "1 L",
            Bench.Pour("900 mL"),
            Bench.Add("phosphoric-85", "2 g"),
            Bench.Add("zinc-sulfate-7h2o", "2 g"),
            Bench.Add("potassium-hydroxide", "0.6 g"),
            Bench.TopUp("1 L"));
        Assert.Null(mixing.States[3].Find("Hopeite"));
        var local = mixing.LocalExcess[3];
        Assert.NotEmpty(local);
        Assert.All(local, e => Assert.True(e.Index > 0 && e.Concentration.GramsPerLitre > 0 && e.AtATime.Grams > 0));
        Assert.Contains(local, e => e.Solid.Composition.Any(c => c.Key == "Zn+2"));
    }

    /// <summary>1.5 mol (151.65 g) of potassium nitrate in 1 kg of water take 1.5 × 34.8 kJ (NBS tables 1982); water takes 4.18 kJ/(kg K): 12.5 K.</summary>
    [Fact]
    public void AStepSaysHowFarItCoolsTheWater()
    {
        var mixing = Mix("2 L", Bench.Pour("1001.8 mL"), Bench.Add("potassium-nitrate", "151.65 g", "100 %"), Bench.TopUp("2 L"));
        Assert.Equal(-12.5, mixing.Steps[1].HeatOfDissolving!.ChangeKelvin!.Value, 0.2);
        Assert.Null(mixing.Steps[0].HeatOfDissolving);
    }

    /// <summary>
    /// At pH 7.5 and 0.21 atm oxygen half of the iron is gone after some four minutes, at pH 6 two thousand times more slowly (W. Stumm and
    /// G. F. Lee 1961; recalled).
    /// </summary>
    [Fact]
    public void IronRustsAHundredTimesFasterForEachUnitOfPh()
    {
        Assert.InRange(FerrousOxidation.Share(7.5, 4), 0.8, 1);
        Assert.Equal(100, FerrousOxidation.Share(6, 1) / FerrousOxidation.Share(5, 1), 1.0);
    }

    [Fact]
    public void ACompositionWithoutWaterIsNoProcedure()
    {
        var mixing = Mix("1 L", Bench.Add("potassium-nitrate", "20 g"));
        Assert.False(mixing.IsProcedure);
        Assert.True(mixing.States[0].IsEmpty);
        Assert.Equal(1, mixing.Finished.Litres, 0.01);
    }

    [Fact]
    public void AVesselThatCannotBeSolvedSaysSo()
    {
        var mixing = Mix("10 L", Bench.Pour("10 mL"), Bench.Add("calcium-nitrate-4h2o", "9 kg"), Bench.TopUp("10 L"));
        Assert.All(mixing.States, s => Assert.True(s.Failure is not null || s.IsEmpty || double.IsFinite(s.Ph!.Value)));
        Assert.All(mixing.States, s => Assert.All(s.Solids, x => Assert.True(x.Mass.Grams >= 0)));
    }
}

using CsCheck;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Equilibria;

public sealed class SolutionMixTests
{
    private static readonly Temperature Bench20 = new(20);

    // 200 g/L KNO3 has a density of 1.117 g/mL at 20 °C (CRC Handbook, concentrative properties: 18 mass %, 1.1164 g/mL), so 917 g water.
    [Fact]
    public void TheWaterOfALitreFollowsFromTheHandbookDensity()
    {
        var mix = Bench.StockOf(Bench.Add("potassium-nitrate", "402 g"), Bench.TopUp("2 L")).Chemistry.Mix;

        Assert.Equal(0.9154, mix.KilogramsWaterPerLitre, 0.003);
    }

    // Acetic acid 5.0 mass % is 1.0055 g/mL at 20 °C (CRC Handbook): 955 g of water in a litre, which its ions alone would not give.
    [Fact]
    public void AnAcidThatStaysWholeFillsItsOwnVolume()
    {
        var mix = Bench.StockOf(Bench.Add("acetic-acid-99.7", "100.85 g"), Bench.TopUp("2 L")).Chemistry.Mix;

        Assert.Equal(0.9552, mix.KilogramsWaterPerLitre, 0.003);
    }

    [Fact]
    public void IronThatTheAirHasOxidisedStaysOxidisedAtAnotherStrength()
    {
        var fresh = Bench.StockOf(Bench.Add("ferrous-sulfate-7h2o", "5 g"), Bench.TopUp("1 L")).Chemistry.Mix;
        var aged = fresh.WithIronOxidised();
        Assert.True(fresh.Totals["Fe+2"] > 0.005);

        foreach (var factor in (double[])[0.01, 0.5, 2])
        {
            var other = aged.Times(factor);
            Assert.Equal(0, other.Totals["Fe+2"]);
            Assert.Equal(fresh.Times(factor).Totals["Fe+2"], other.Totals["Fe+3"], 12);
            Assert.Equal(0, aged.Times(factor).Times(1 / factor).Totals["Fe+2"]);
        }

        Assert.Equal(0, fresh.Times(2).Totals["Fe+3"]);
    }

    [Fact]
    public void CompleteSubstancesLeaveNoChargeOpen()
    {
        foreach (var substance in SubstanceCatalogue.BuiltIn.Substances.Where(s => s.Dissolves.Count > 0))
        {
            var mix = Bench.StockOf(Bench.Add(substance.Id, "10 g")).Chemistry.Mix;
            Assert.True(mix.UnmeasuredEquivalentsPerKg == 0, substance.Id);
        }
    }

    [Fact]
    public void OpenChargeIsClosedAndOverOnePercentSaid()
    {
        // Calcium 4 mmol/L against 4 mmol/L of HCO3-: a water analysis that left 4 meq/L of anions out.
        var recipe = Bench.Recipe("10 L", FinalVolumeMeaning.MadeUp, Bench.Direct("potassium-nitrate", "0.1 g/L")) with
        {
            Water = new Located<WaterReference>(new("tap.water.json", "tap.water.json"), Place.Whole("tank.recipe.json")),
        };
        var chemistry = Bench.Analyse([], recipe, null, Waters.Tap(0.006)).Recipes.Single().Chemistry;

        Assert.Equal(-0.004, chemistry.Mix.UnmeasuredEquivalentsPerKg, 0.0001);
        Assert.Equal(Trust.Estimate, chemistry.Tank.Validity.Trust);
        Assert.Contains(chemistry.Tank.Validity.Reasons, r => r.Contains("do not close", StringComparison.Ordinal));

        // The open charge is an ion, not acid: the bicarbonate keeps its pH.
        Assert.InRange(chemistry.Tank.PhBeforeDeposit, 7, 9);
    }

    [Fact]
    public void WithoutAnythingInItThereIsNoStateButAReason()
    {
        var empty = StateSolver.Solve(SolutionMix.Of(ComponentMoles.Empty, new Volume(1)), new StateRequest(StateMoment.Mixing, Bench20, false, []));
        var full = Bench.StockOf(Bench.Add("calcium-nitrate-4h2o", "20 kg"));

        Assert.Equal("There is nothing in this solution.", empty.Failure);
        Assert.Equal("What is put in fills the volume by itself: no room is left for water.", full.Chemistry.Mixing.Failure);
        Assert.Null(HighestConcentration.Of(full, DepositLimits.Default).Factor);
        Assert.False(full.Chemistry.Mixing.IsSolved);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    public void AmountsThatAreNoneAreNamed(double moles)
    {
        var mix = SolutionMix.Of(ComponentMoles.Of([KeyValuePair.Create("K+", moles), KeyValuePair.Create("NO3-", 1.0)]), new Volume(1));

        Assert.StartsWith("The amount of K+ is not an amount of matter", mix.Failure, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-8, 0)]
    [InlineData(60, 45)]
    public void OutsideTheRangeOfTemperaturesTheNearestIsTakenAndSaid(double asked, double taken)
    {
        var mix = Bench.StockOf(Bench.Add("potassium-nitrate", "20 g")).Chemistry.Mix;
        var state = StateSolver.Solve(mix, new StateRequest(StateMoment.Coldest, new Temperature(asked), false, []));

        Assert.Equal(taken, state.Temperature.Celsius);
        Assert.Equal(Trust.Estimate, state.Validity.Trust);
    }

    [Fact]
    public void SubstancesOfUnknownCompositionAreNamed()
    {
        var dye = SubstanceCatalogue.BuiltIn.Substances.First(s => s.Dissolves.Count == 0);
        var chemistry = Bench.StockOf(Bench.Add("potassium-nitrate", "20 g"), Bench.Add(dye.Id, "1 g")).Chemistry;

        Assert.False(chemistry.IsComplete);
        Assert.Contains(chemistry.Mixing.Validity.Reasons, r => r.Contains($"'{dye.Name}'", StringComparison.Ordinal));
    }

    [Fact]
    public void TheOrderOfAdditionsChangesNothing()
    {
        Step[] steps =
        [
            Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.Add("potassium-nitrate", "120 g"), Bench.Add("fe-edta-na-3h2o", "8 g"), Bench.Add("nitric-38", "6 mL"),
            Bench.Add("magnesium-sulfate-7h2o", "3 g"),
        ];
        var forward = Bench.StockOf(steps).Chemistry;
        var backward = Bench.StockOf([.. steps.Reverse()]).Chemistry;

        foreach (var (one, other) in forward.States.Zip(backward.States))
        {
            Assert.Equal(one.Ph, other.Ph);
            Assert.Equal(one.Density, other.Density);
            Assert.Equal(one.Deposits, other.Deposits);
            Assert.Equal(one.Chelates, other.Chelates);
        }
    }

    [Fact]
    public void ACopyWithOtherContentsHasItsOwnChemistry()
    {
        var stock = Bench.StockOf(Bench.Add("potassium-nitrate", "20 g"));
        var first = stock.Chemistry;
        var copy = stock with { Volume = new Volume(20) };

        Assert.Same(first, stock.Chemistry);
        Assert.Equal(first.Mix.MolesPerLitre["K+"] / 10, copy.Chemistry.Mix.MolesPerLitre["K+"], 12);
        Assert.Equal(first.Mixing.Ph, stock.Chemistry.Mixing.Ph);
    }

    [Fact]
    public void ThreadsThatAskAtOnceGetTheSame()
    {
        var stock = Bench.StockOf(Bench.Add("potassium-nitrate", "20 g"), Bench.Add("fe-edta-na-3h2o", "3 g"));
        var answers = new double[8];
        Parallel.For(0, answers.Length, i => answers[i] = stock.Chemistry.Coldest.Ph);

        Assert.Single(answers.Distinct());
    }

    [Fact]
    public void WhateverIsMixedNoNumberIsNotANumber()
    {
        var ids = SubstanceCatalogue.BuiltIn.Substances.Select(s => s.Id).ToArray();
        var mixtures = Gen.Select(Gen.Int[0, ids.Length - 1].Select(i => ids[i]), Gen.Double[-4, 3].Select(e => Math.Pow(10, e))).Array[1, 10];
        mixtures.Sample(
            mixture =>
            {
                var stock = Bench.StockOf([.. mixture.Select((m, i) => Bench.Add(m.Item1, FormattableString.Invariant($"{m.Item2:0.000000} g"), id: $"{m.Item1}-{i}"))]);
                foreach (var state in stock.Chemistry.States)
                {
                    double[] numbers =
                    [
                        state.Ph, state.PhBeforeDeposit, state.IonicStrengthMolPerKg, state.WaterActivity, state.Density?.GramsPerMillilitre ?? 0,
                        state.Conductivity.At25?.MillisiemensPerCentimetre ?? 0, state.OsmoticPotentialMPa ?? 0, state.CarbonateAlkalinity.EquivalentsPerLitre,
                        .. state.Deposits.SelectMany(d => new[] { d.Index, d.Mass.GramsPerLitre, d.Amount.MolesPerLitre }),
                        .. state.NearSaturation.Select(d => d.Index),
                        .. state.DissolvedMolesPerLitre.Values,
                        .. state.Chelates.SelectMany(c => new[] { c.OfMetal, c.OfAgent }),
                        .. state.Metals.SelectMany(m => new[] { m.Dissolved.MolesPerLitre, m.Unchelated.MolesPerLitre }),
                        .. state.Preservatives.SelectMany(p => new[] { p.Index, p.Share, p.Undissociated.GramsPerLitre }),
                    ];
                    Assert.All(numbers, n => Assert.True(double.IsFinite(n)));
                    Assert.All(state.Chelates, c => Assert.InRange(c.OfMetal, 0, 1 + 1e-9));
                    Assert.True(state.IsSolved || state is { Ph: 0, Deposits.Count: 0 });
                }
            },
            iter: 150);
    }
}

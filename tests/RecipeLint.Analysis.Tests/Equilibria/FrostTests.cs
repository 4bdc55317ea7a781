using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Tests.Equilibria;

/// <summary>Freezing points from the activity of water, and a pH that is held while something falls out.</summary>
public sealed class FrostTests
{
    // CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions (recalled): freezing points of NaCl and KNO3.
    [Theory]
    [InlineData(-3.37, 1.0, "Na+", 1, "Cl-", 1)]
    [InlineData(-1.69, 0.5, "Na+", 1, "Cl-", 1)]
    [InlineData(-1.56, 0.5, "K+", 1, "NO3-", 1)]
    public void TheFreezingPointIsThatOfTheHandbook(double celsius, double molPerKg, string cation, int cations, string anion, int anions)
    {
        var mix = SolutionMix.InWater(
            ComponentMoles.Of([KeyValuePair.Create(cation, molPerKg * cations), KeyValuePair.Create(anion, molPerKg * anions)]), new Mass(1000));

        Assert.InRange(Frost.Of(mix, DepositLimits.Default)!.IceAt!.Value.Celsius, celsius - 0.12, celsius + 0.12);
    }

    /// <summary>
    /// Freezing points that follow from measured osmotic coefficients (Robinson and Stokes, Electrolyte Solutions, recalled): a kilogram of
    /// water with 1 mol of calcium nitrate has -6.39 MPa at 25 °C, 5.15 °C, of copper sulfate 1.7 °C. The model's own figure lay below both.
    /// </summary>
    [Theory]
    [InlineData(-5.15, 1.0, "Ca+2", "NO3-", 2)]
    [InlineData(-1.7, 1.0, "Cu+2", "SO4-2", 1)]
    public void WhereIceMayBeginIsNeverHeldTooLow(double celsius, double molPerKg, string cation, string anion, int anions)
    {
        var mix = SolutionMix.InWater(
            ComponentMoles.Of([KeyValuePair.Create(cation, molPerKg), KeyValuePair.Create(anion, molPerKg * anions)]), new Mass(1000));

        Assert.True(Frost.Of(mix, DepositLimits.Default)!.IceFrom.Celsius >= celsius, $"{Frost.Of(mix, DepositLimits.Default)!.IceFrom} °C");
    }

    [Fact]
    public void PureWaterFreezesAtZeroAndAnImpossibleActivityNowhere()
    {
        Assert.Equal(0, Osmosis.FreezingPointC(1)!.Value, 6);
        Assert.Null(Osmosis.FreezingPointC(1.01));
        Assert.Null(Osmosis.FreezingPointC(0.5));
    }

    [Fact]
    public void ASaltThatIsThereAtZeroComesBeforeTheIce() =>
        Assert.Equal("Niter", Frost.Of(Bench.StockOf(Bench.Add("potassium-nitrate", "500 g"), Bench.TopUp("2 L")).Chemistry.Mix, DepositLimits.Default)!.Before!.Name);

    /// <summary>Each phosphate that leaves as calcium phosphate lets go of two hydrogen ions: a held pH takes two of alkali for it.</summary>
    [Fact]
    public void AHeldPhStaysAndSaysWhatItTakes()
    {
        var mix = Bench.StockOf(Bench.Add("calcium-nitrate-4h2o", "20 g"), Bench.Add("monopotassium-phosphate", "4 g"), Bench.TopUp("2 L")).Chemistry.Mix;
        StateRequest Request(bool hold) => new(StateMoment.Mixing, new Temperature(20), false, []) { SetPh = 7.5, HoldPh = hold };
        var held = StateSolver.Solve(mix, Request(true));
        var set = StateSolver.Solve(mix, Request(false));

        Assert.Equal(7.5, held.Ph, 9);
        Assert.True(set.Ph < 7.4, $"{set.Ph}");
        Assert.InRange(-held.Solution!.ChargeGapEquivalentsPerKg * held.KilogramsWaterLeftPerLitre, 0.0265, 0.0305);
    }
}

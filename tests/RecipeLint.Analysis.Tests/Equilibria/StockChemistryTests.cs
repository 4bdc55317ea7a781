using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Equilibria;

public sealed class StockChemistryTests
{
    private static readonly Solid Gypsum = ConstantSet.Product.FindSolid("Gypsum")!;

    [Fact]
    public void CalciumNitrateWithEpsomSaltDropsGypsumAndNothingIsLost()
    {
        var chemistry = Bench.StockOf(Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.Add("magnesium-sulfate-7h2o", "100 g"), Bench.TopUp("2 L")).Chemistry;
        var state = chemistry.Coldest;
        var deposit = state.Deposit("Gypsum")!;

        // 50 g/L of epsom salt (246.47 g/mol) could give 34.9 g/L of gypsum (172.17 g/mol); what stays dissolved beside 0.2 mol/L of calcium
        // is of the order of its solubility in water, 2.2 g/L at 5 °C (CRC Handbook, CaSO4 2H2O), times a few for the salts around it.
        Assert.InRange(deposit.Mass.GramsPerLitre, 34.9 - 5, 34.9 - 1);
        Assert.Equal(5, state.Temperature.Celsius);
        Assert.Equal(0.2 / 0.98594 * 0.5 * 2.0576, state.DissolvedMolesPerLitre["SO4-2"] + deposit.Amount.MolesPerLitre, 0.01);
        Assert.Equal(chemistry.Mix.MolesPerLitre["Ca+2"], state.DissolvedMolesPerLitre["Ca+2"] + deposit.Amount.MolesPerLitre, 9);
        Assert.True(deposit.Index > 1);
    }

    [Fact]
    public void At1To50InsteadOf1To100ItStaysClear()
    {
        var stock = Made(100, Bench.Add("calcium-nitrate-4h2o", "35 mmol/L"), Bench.Add("magnesium-sulfate-7h2o", "35 mmol/L"), Bench.TopUp("2 L"));
        var nearest = NearestClear.Of(stock, Gypsum, DepositLimits.Default);

        Assert.NotNull(stock.Chemistry.Coldest.Deposit("Gypsum"));
        Assert.Equal(50, nearest.Dilution);
        Assert.InRange(nearest.Factor!.Value, 0.5, 0.64);
        Assert.Null(nearest.Ph);

        var weaker = Made(50, Bench.Add("calcium-nitrate-4h2o", "17.5 mmol/L"), Bench.Add("magnesium-sulfate-7h2o", "17.5 mmol/L"), Bench.TopUp("2 L"));
        Assert.Empty(weaker.Chemistry.Coldest.Deposits);
        Assert.True(weaker.Chemistry.Coldest.Index("Gypsum") < 0);
    }

    [Fact]
    public void TheHighestConcentrationIsClearAndALittleMoreIsNot()
    {
        var stock = Made(100, Bench.Add("calcium-nitrate-4h2o", "35 mmol/L"), Bench.Add("magnesium-sulfate-7h2o", "35 mmol/L"), Bench.TopUp("2 L"));
        var highest = HighestConcentration.Of(stock, DepositLimits.Default);

        Assert.Equal(["Gypsum"], highest.StoppedBy.Select(s => s.Name));
        Assert.Equal(highest.Factor!.Value * 100, highest.Dilution!.Value, 9);
        Assert.True(IsClear(highest.Factor.Value));
        Assert.False(IsClear(highest.Factor.Value * 1.02));

        bool IsClear(double factor) => DepositJudgement.Of(StateSolver.Solve(stock.Chemistry.Mix.Times(factor), 5), DepositLimits.Default).IsClear;
    }

    /// <summary>
    /// Pyrophosphate holds the iron of ferric citrate. In a year at 25 °C most of it turns to orthophosphate, and iron phosphate falls out;
    /// used up in two weeks, or with no time stated, nothing does.
    /// </summary>
    [Theory]
    [InlineData(365, true)]
    [InlineData(5, false)]
    [InlineData(null, false)]
    public void PyrophosphateTurnsToOrthophosphateWhileItIsKept(int? days, bool falls)
    {
        var document = Bench.Stock(
            "a.stock.json", "1 L", Bench.Add("tetrapotassium-pyrophosphate", "40 g"), Bench.Add("citric-acid-h2o", "12 g"),
            Bench.Add("ferric-citrate", "10 g"), Bench.TopUp("1 L"));
        var place = Place.Whole("a.stock.json");
        var keep = days is { } kept ? new Keeping(null, new Located<Duration>(new Duration(kept), place), null) : null;
        var chemistry = Bench.Analyse([document with { Keep = keep }]).Stocks.Single().Chemistry;
        var judged = DepositJudgement.Of(chemistry.States, DepositLimits.Default);

        Assert.Empty(chemistry.Mixing.Deposits);
        Assert.Equal(falls, chemistry.State(StateMoment.Turned) is not null);
        Assert.Equal(falls ? ["FePO4 amorphous"] : [], judged.Deposits.Select(d => d.Solid.Name));
        if (chemistry.State(StateMoment.Turned) is not { } turned)
        {
            return;
        }

        Assert.InRange(turned.Mix.PyrophosphateTurned, 0.6, 0.85);
        var phosphorus = (2 * turned.Mix.Totals["P2O7-4"]) + turned.Mix.Totals["H2PO4-"];
        Assert.Equal(2 * chemistry.Mix.Totals["P2O7-4"], phosphorus, 9);
        Assert.Equal(turned.Mix.Times(0.5).Totals["H2PO4-"] / turned.Mix.Times(0.5).Totals["P2O7-4"], turned.Mix.Totals["H2PO4-"] / turned.Mix.Totals["P2O7-4"], 9);
    }

    /// <summary>
    /// Sulfamic acid lies clear beside calcium. In a year at 25 °C a tenth of it turns to ammonium and sulfate, and gypsum falls out; within two
    /// weeks, near neutral, or with no time stated, nothing does.
    /// </summary>
    [Theory]
    [InlineData(365, "0 g", true)]
    [InlineData(14, "0 g", false)]
    [InlineData(365, "13 g", false)]
    [InlineData(null, "0 g", false)]
    public void SulfamicAcidTurnsToSulfateWhileItIsKept(int? days, string lye, bool falls)
    {
        var document = Bench.Stock(
            "a.stock.json", "1 L", Bench.Add("calcium-nitrate-4h2o", "100 g"), Bench.Add("sulfamic-acid", "20 g"),
            Bench.Add("potassium-hydroxide", lye), Bench.TopUp("1 L"));
        var place = Place.Whole("a.stock.json");
        var keep = days is { } kept ? new Keeping(null, new Located<Duration>(new Duration(kept), place), null) : null;
        var chemistry = Bench.Analyse([document with { Keep = keep }]).Stocks.Single().Chemistry;

        Assert.Empty(chemistry.Mixing.Deposits);
        Assert.Equal(falls, chemistry.State(StateMoment.Turned) is not null);
        Assert.Equal(falls ? ["Gypsum"] : [], DepositJudgement.Of(chemistry.States, DepositLimits.Default).Deposits.Select(d => d.Solid.Name));
        if (chemistry.State(StateMoment.Turned) is not { Mix: var turned })
        {
            return;
        }

        Assert.InRange(turned.SulfamateTurned, 0.05, 0.25);
        Assert.Equal(chemistry.Mix.Totals["NH2SO3-"], turned.Totals["NH2SO3-"] + turned.Totals["NH4+"], 9);
        Assert.Equal(turned.Totals["NH4+"], turned.Totals["SO4-2"], 12);
        Assert.Equal(turned.Totals["SO4-2"] / turned.Totals["NH2SO3-"], turned.Times(0.5).Totals["SO4-2"] / turned.Times(0.5).Totals["NH2SO3-"], 9);
    }

    // KNO3 in water: 13.9 g per 100 g of water at 0 °C and 21.2 at 10 °C (CRC Handbook, aqueous solubility of inorganic compounds: 12.1 and
    // 17.5 mass %); 18 g in 100 g is saturated between them.
    [Fact]
    public void PotassiumNitrateCrystallisesOnCoolingWhereTheHandbookSays()
    {
        // 18 g in 100 g of water is 170 g in a litre at this density of 1.11 g/mL.
        var crystals = FirstCrystals.Of(Bench.StockOf(Bench.Add("potassium-nitrate", "340 g"), Bench.TopUp("2 L")).Chemistry.Mix, DepositLimits.Default);

        Assert.Equal("Niter", crystals.OnCooling!.Solid.Name);
        Assert.InRange(crystals.OnCooling.At.Celsius, 4, 13);
        Assert.Null(crystals.OnWarming);
        Assert.Empty(crystals.AtBench);
    }

    [Fact]
    public void AStrongPotassiumNitrateStockDropsItsCrystalsInTheColdOnly()
    {
        var chemistry = Bench.StockOf(Bench.Add("potassium-nitrate", "500 g"), Bench.TopUp("2 L")).Chemistry;

        Assert.Empty(chemistry.Mixing.Deposits);
        var cold = chemistry.Coldest.Deposit("Niter")!;

        // 250 g/L is about 27.8 g per 100 g of water; at 5 °C 17.2 stay (between 13.9 and 21.2), so about 10.6 g per 100 g, 95 g/L, fall out.
        Assert.InRange(cold.Mass.GramsPerLitre, 80, 110);
        Assert.Empty(SuppliersOfSolid.In(Bench.StockOf(Bench.Add("potassium-nitrate", "500 g")), cold.Solid).Skip(1));
    }

    [Fact]
    public void IronChelateKeepsItsIronBesideCalciumAndIronSaltDoesNotAgeWell()
    {
        var chelated = Bench.StockOf(Bench.Add("fe-edta-na-3h2o", "20 g"), Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.TopUp("2 L")).Chemistry.Mixing;
        var iron = chelated.Metals.Single(m => m.Metal == "Fe+3");

        Assert.All(chelated.Deposits, d => Assert.True(d.IsTrace));
        Assert.True(chelated.Chelates.Single(c => c is { Metal: "Fe+3", Agent: "EDTA-4" }).OfMetal > 0.999);
        Assert.True(iron.Unchelated.MolesPerLitre < 1e-3 * iron.Dissolved.MolesPerLitre);

        var salt = Bench.StockOf(Bench.Add("ferrous-sulfate-7h2o", "16 g"), Bench.TopUp("2 L")).Chemistry;
        Assert.Empty(salt.Mixing.Deposits);
        Assert.StartsWith("Ferrihydrite", salt.Aged!.Deposits[0].Solid.Name, StringComparison.Ordinal);

        // Hydrolysis of the iron(III) that forms sets acid free.
        Assert.True(salt.Aged.Ph < 3 && salt.Mixing.Ph > 4);
    }

    [Fact]
    public void AStockUsedUpWithinTwoWeeksDoesNotAge()
    {
        var place = Place.Whole("a.stock.json");
        var stock = Bench.Stock("a.stock.json", "1 L", Bench.Add("ferrous-sulfate-7h2o", "8 g")) with
        {
            Keep = new Keeping(null, new Located<Duration>(new Duration(10), place), null),
        };

        Assert.Null(Bench.Analyse([stock]).Stocks.Single().Chemistry.Aged);
    }

    // pKa of benzoic acid 4.20 and of acetic acid 4.76 (CRC Handbook): at a pH near 3.8 about seven tenths of the benzoate is undissociated;
    // benzoic acid dissolves to 2.9 g/L at 20 °C (The Merck Index).
    [Fact]
    public void VinegarFreesBenzoicAcidWhichStaysDissolvedUntilThereIsTooMuch()
    {
        var mild = Bench.StockOf(Bench.Add("vinegar-5", "90 mL"), Bench.Add("sodium-benzoate", "2 g"), Bench.TopUp("2 L")).Chemistry.Mixing;
        var acid = mild.Preservatives.Single();

        Assert.Equal("benzoic acid", acid.Acid);
        Assert.InRange(mild.Ph, 3.6, 4.0);
        Assert.InRange(acid.Share, 0.55, 0.8);
        Assert.Equal(acid.Share * 122.12 / 144.10, acid.Undissociated.GramsPerLitre, 0.01);
        Assert.True(acid.StaysDissolved);

        var much = Bench.StockOf(Bench.Add("nitric-60", "40 mL"), Bench.Add("sodium-benzoate", "10 g"), Bench.TopUp("2 L")).Chemistry.Mixing;
        Assert.False(much.Preservatives.Single().StaysDissolved);
        Assert.Equal("Benzoic acid", much.Deposits.Single().Solid.Name);
        Assert.InRange(much.Preservatives.Single().Undissociated.GramsPerLitre, 2.5, 3.2);
    }

    [Fact]
    public void TheTwoAdditionsThatFeedADepositAreNamed()
    {
        var stock = Bench.StockOf(
            Bench.Add("potassium-sulfate", "5 g"), Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.Add("calcium-chloride-2h2o", "5 g"), Bench.Add("magnesium-sulfate-7h2o", "100 g"));
        var suppliers = SuppliersOfSolid.In(stock, Gypsum);

        Assert.Equal(["calcium-nitrate-4h2o", "magnesium-sulfate-7h2o"], suppliers.Select(s => s.Id));
        Assert.Equal(["Ca+2", "SO4-2"], suppliers.Select(s => s.Component));
        Assert.InRange(suppliers[0].Share, 0.94, 0.98);
    }

    [Fact]
    public void ASolidAcidHasItsSaltAndItsAcidAsSuppliers()
    {
        var stock = Bench.StockOf(Bench.Add("nitric-60", "40 mL"), Bench.Add("sodium-benzoate", "10 g"), Bench.Add("potassium-nitrate", "10 g"));

        Assert.Equal(["sodium-benzoate", "nitric-60"], SuppliersOfSolid.In(stock, ConstantSet.Product.FindSolid("Benzoic acid")!).Select(s => s.Id));
    }

    private static StockFacts Made(double dilution, params Step[] steps) =>
        Bench.Analyse([Bench.Stock("a.stock.json", "2 L", steps) with { Dose = new Located<Dose>(Dose.OneIn(dilution), Place.Whole("a.stock.json")) }]).Stocks.Single();
}

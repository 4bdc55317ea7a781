using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Equilibria;

public sealed class PhDemandTests
{
    private static readonly Mass OneKilogram = new(1000);
    private static readonly Temperature Bench20 = new(20);

    // pK1 of carbonic acid at 20 °C is 6.381 (L. N. Plummer and E. Busenberg 1982). At ionic strength 0.006 the activity coefficient of
    // HCO3- is 0.92, so at pH 5.8 HCO3-/CO2 is 10^(5.8-6.381)/0.92 = 0.285: of 4 mmol/kg 0.887 stay HCO3- and 3.11 mmol/kg take a hydrogen ion.
    [Fact]
    public void NitricAcidForAHardWaterFollowsTheCarbonicAcidConstant()
    {
        var demand = PhDemand.Find(Water(), OneKilogram, Bench.Substance("nitric-60"), 5.8, Bench20);

        Assert.InRange(demand.ComponentMoles["NO3-"] * 1000, 3.11 * 0.98, 3.11 * 1.02);
        Assert.Equal(demand.ComponentMoles["NO3-"] * 14.007, demand.Elements[Element.N].Grams, 4);
        Assert.Equal(demand.Mass!.Value.Grams * 0.60 / 63.01, demand.ComponentMoles["NO3-"], 5);
        Assert.Equal(demand.Mass.Value.Grams, demand.Volume!.Value.Millilitres * Bench.Substance("nitric-60").Density!.Value.GramsPerMillilitre, 9);
    }

    // At rest with the air hardly any carbon dioxide stays, and with it hardly any HCO3-: the whole 4 mmol/kg is neutralised.
    [Fact]
    public void InAirNearlyAllTheAlkalinityIsNeutralised()
    {
        var demand = PhDemand.Find(Water(), OneKilogram, Bench.Substance("nitric-60"), 5.8, Bench20, openToAir: true);

        Assert.InRange(demand.ComponentMoles["NO3-"] * 1000, 3.97, 4.0);
    }

    // pK2 of phosphoric acid is 7.198 at 25 °C (R. G. Bates and S. F. Acree 1943). With activity coefficients of Davies at ionic strength
    // 0.022 (H2PO4- 0.869, HPO4-2 0.571) the ratio at pH 7.2 is 1.53: 6.05 of 10 mmol/kg are HPO4-2, each made by one KOH.
    [Fact]
    public void PotassiumHydroxideForAPhosphateFollowsItsSecondConstant()
    {
        var moles = ComponentMoles.Of([KeyValuePair.Create("K+", 0.010), KeyValuePair.Create("H2PO4-", 0.010)]);
        var demand = PhDemand.Find(moles, OneKilogram, Bench.Substance("koh-10"), 7.2, new Temperature(25));

        Assert.InRange(demand.ComponentMoles["K+"] * 1000, 6.05 * 0.97, 6.05 * 1.03);
        Assert.Equal(-demand.ComponentMoles["K+"], demand.ComponentMoles["H+"], 12);
    }

    // The same for the ammonium salt: NH4+ (pKa 9.25) gives up less than 1 % at pH 7.2, which adds to the alkali it takes.
    [Fact]
    public void MonoammoniumPhosphateTakesALittleMoreAlkaliThanThePotassiumSalt()
    {
        var moles = ComponentMoles.Of([KeyValuePair.Create("NH4+", 0.010), KeyValuePair.Create("H2PO4-", 0.010)]);
        var demand = PhDemand.Find(moles, OneKilogram, Bench.Substance("koh-10"), 7.2, new Temperature(25));

        Assert.InRange(demand.ComponentMoles["K+"] * 1000, 6.1 * 0.97, 6.1 * 1.03);
    }

    // At pH 5.8 phosphoric acid has given its first hydrogen ion and 5 % of its second (pK2' 7.1 at this ionic strength).
    [Fact]
    public void PhosphoricAcidCountsALittleOverOneHydrogenIon()
    {
        var nitric = PhDemand.Find(Water(), OneKilogram, Bench.Substance("nitric-60"), 5.8, Bench20).ComponentMoles["NO3-"];
        var phosphoric = PhDemand.Find(Water(), OneKilogram, Bench.Substance("phosphoric-85"), 5.8, Bench20).ComponentMoles["H2PO4-"];

        Assert.InRange(nitric / phosphoric, 1.03, 1.08);
    }

    // Citric acid, pKa 3.13, 4.76, 6.40 at 25 °C (R. N. Goldberg, N. Kishore, R. M. Lennen 2002): at pH 5.8 it has given up close to two
    // and a quarter hydrogen ions. In calcium water the calcium citrate complex would take the rest of the third.
    [Fact]
    public void CitricAcidCountsMoreThanTwoHydrogenIons()
    {
        var soft = ComponentMoles.Of([KeyValuePair.Create("Na+", 0.004), KeyValuePair.Create("CO3-2", 0.004), KeyValuePair.Create("H+", 0.004)]);
        var nitric = PhDemand.Find(soft, OneKilogram, Bench.Substance("nitric-60"), 5.8, Bench20).ComponentMoles["NO3-"];
        var citric = PhDemand.Find(soft, OneKilogram, Bench.Substance("citric-acid-h2o"), 5.8, Bench20).ComponentMoles["Citrate-3"];

        Assert.InRange(nitric / citric, 2.15, 2.35);
    }

    [Fact]
    public void TheAmountBringsTheSolutionToThePH()
    {
        var demand = PhDemand.Find(Water(), OneKilogram, Bench.Substance("phosphoric-75"), 5.5, Bench20);
        var after = StateSolver.Solve(
            SolutionMix.InWater(ComponentMoles.Sum([Water(), demand.ComponentMoles]), new Mass(1000 + (demand.Mass!.Value.Grams * 0.25))),
            new StateRequest(StateMoment.Tank, Bench20, false, []));

        Assert.Equal(5.5, after.PhBeforeDeposit, 0.001);
    }

    [Theory]
    [InlineData("nitric-60", 9)]
    [InlineData("koh-10", 5)]
    [InlineData("vinegar-5", 1)]
    [InlineData("potassium-nitrate", 5)]
    public void WhatCannotBeReachedSaysSo(string reagent, double ph)
    {
        var demand = PhDemand.Find(Water(), OneKilogram, Bench.Substance(reagent), ph, Bench20);

        Assert.Null(demand.Mass);
        Assert.Contains("cannot be reached", demand.Reason, StringComparison.Ordinal);
        Assert.Empty(demand.ComponentMoles);
    }

    [Fact]
    public void AReagentOfUnknownCompositionIsNamed()
    {
        var unknown = Bench.Substance("nitric-60") with { Id = "blue-bottle", Dissolves = [] };

        Assert.Equal("What 'blue-bottle' dissolves into is not known.", PhDemand.Find(Water(), OneKilogram, unknown, 5, Bench20).Reason);
    }

    [Fact]
    public void TheReagentOfARecipeIsInItsElementsAndItsFinalPHIsTheOneAskedFor()
    {
        var place = Place.Whole("tank.recipe.json");
        var recipe = Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Direct("potassium-nitrate", "0.2 g/L")) with
        {
            Water = new Located<WaterReference>(new("tap.water.json", "tap.water.json"), place.Child("water")),
            Adjust = new PhAdjustment(place.Child("adjust"), new Located<double>(5.8, place.Child("adjust")), null, null, Bench.Substance("nitric-38")),
        };
        var facts = Bench.Analyse([], recipe, null, Waters.Tap()).Recipes.Single();

        Assert.Null(facts.Adjustment!.Reason);
        Assert.Equal(5.8, facts.Chemistry.Final.Ph, 0.002);
        Assert.Equal(StateMoment.TankAdjusted, facts.Chemistry.Final.Moment);
        Assert.True(facts.Chemistry.TankInAir.Ph > 8);

        // The tap water holds 4 meq/L, some of it falls out as calcite; nearly all is gone after the acid.
        var lime = facts.Chemistry.Tank.Deposit("Calcite")!.Amount.MillimolesPerLitre;
        Assert.Equal(4 - (2 * lime), facts.Chemistry.Tank.CarbonateAlkalinity.MilliequivalentsPerLitre, 0.01);
        Assert.InRange(facts.Chemistry.Final.CarbonateAlkalinity.MilliequivalentsPerLitre, -0.01, 0.03);
        var share = facts.Elements["N"].Contributions.Single(c => c.Source == "adjust");
        Assert.Equal(facts.Adjustment.Elements[Element.N].Grams / 100, share.Concentration.GramsPerLitre, 9);
    }

    [Fact]
    public void AnAliquotBringsItsPartOfTheReagentOfItsStock()
    {
        var pre = Bench.Stock("pre.stock.json", "1 L", Bench.Pour("900 mL"), Bench.Add("boric-acid", "3 g"), Bench.Adjust(3, "nitric-38"), Bench.TopUp("1 L"));
        var trace = Bench.Stock("trace.stock.json", "2 L", Bench.Aliquot("pre.stock.json", "100 mL", "boron"), Bench.TopUp("2 L"));
        var facts = Bench.Analyse([pre, trace]);

        Assert.Equal(facts.Stocks[0].ComponentMoles["NO3-"] / 10, facts.Stocks[1].ComponentMoles["NO3-"], 12);
        Assert.Equal("boron/adjust", facts.Stocks[1].Adjustments.Single().Id);
        Assert.Null(facts.Stocks[1].DeclaredPh);
    }

    /// <summary>2 mmol/kg Ca(HCO3)2.</summary>
    private static ComponentMoles Water() =>
        ComponentMoles.Of([KeyValuePair.Create("Ca+2", 0.002), KeyValuePair.Create("CO3-2", 0.004), KeyValuePair.Create("H+", 0.004)]);
}

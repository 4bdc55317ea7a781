using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests;

public sealed class StockTests
{
    [Fact]
    public void AWeighedSaltBringsItsElementsAndComponents()
    {
        var stock = Bench.StockOf(Bench.Add("potassium-nitrate", "202.2 g"), Bench.TopUp("2 L"));

        // KNO3 is 101.10 g/mol (CIAAW abridged weights): 202.2 g is 2.000 mol in 2 L.
        Assert.Equal(1.0, stock.Concentration("K+").MolesPerLitre, 3);
        Assert.Equal(1.0, stock.Concentration("NO3-").MolesPerLitre, 3);
        Assert.Equal(39.098, stock.Concentration(Element.K).GramsPerLitre, 2);
        Assert.Equal(stock.Totals[Element.N].Grams, stock.Totals[NitrogenForm.Nitrate].Grams, 9);
        Assert.True(stock.IsComplete);
    }

    [Fact]
    public void EveryWayToStateAnAmountGivesTheSameMass()
    {
        var weighed = Mass("potassium-nitrate", "20.22 g");

        Assert.Equal(weighed, Mass("potassium-nitrate", "10.11 g/L"), 6);
        Assert.Equal(weighed, Mass("potassium-nitrate", "0.2 mol"), 2);
        Assert.Equal(weighed, Mass("potassium-nitrate", "100 mmol/L"), 2);
        Assert.Equal(weighed, Mass("potassium-nitrate", "20220 mg"), 6);

        static double Mass(string substance, string amount) => Bench.StockOf(Bench.Add(substance, amount)).Additions.Single().Mass.Grams;
    }

    [Fact]
    public void APouredAcidWeighsItsVolumeTimesItsDensity()
    {
        var addition = Bench.StockOf(Bench.Add("nitric-38", "100 mL")).Additions.Single();
        var density = Bench.Substance("nitric-38").Density!.Value.GramsPerMillilitre;

        Assert.Equal(100 * density, addition.Mass.Grams, 9);
        Assert.Equal(0.1, addition.Volume!.Value.Litres, 12);

        // Moles of acid: mass, strength, and 63.01 g/mol of HNO3.
        Assert.Equal(100 * density * 0.38 / 63.01, addition.ComponentMoles["NO3-"], 3);
    }

    [Fact]
    public void MolesOfAnAcidCountTheAcidAndNotItsWater()
    {
        var addition = Bench.StockOf(Bench.Add("nitric-38", "1 mol")).Additions.Single();

        Assert.Equal(1, addition.ComponentMoles["NO3-"], 9);
        Assert.Equal(63.01 / 0.38, addition.Mass.Grams, 1);
    }

    [Fact]
    public void TwentyDropsAreOneMillilitreByCommonPractice()
    {
        var addition = Bench.StockOf(Bench.Add("nitric-38", "20 drops")).Additions.Single();

        Assert.Equal(0.001, addition.Volume!.Value.Litres, 9);
    }

    [Fact]
    public void ADeclaredAssayMultipliesTheContentAndNotTheMass()
    {
        var pure = Bench.StockOf(Bench.Add("boric-acid", "10 g")).Additions.Single();
        var declared = Bench.StockOf(Bench.Add("boric-acid", "10 g", assay: "98 %")).Additions.Single();

        Assert.Equal(pure.Mass, declared.Mass);
        Assert.Equal(0.98 * pure.Elements[Element.B].Grams, declared.Elements[Element.B].Grams, 12);
        Assert.Equal(0.98 * pure.ComponentMoles["B(OH)3"], declared.ComponentMoles["B(OH)3"], 12);
        Assert.True(declared.AssayDeclared);
    }

    [Theory]
    [InlineData("37.5 %", 0.375 / 0.38)]
    [InlineData("99 %", 0.99)]
    public void AnAssayNearTheNominalStrengthReplacesItAndSaysSo(string assay, double factor)
    {
        var nominal = Bench.StockOf(Bench.Add("nitric-38", "10 mL"));
        var declared = Bench.StockOf(Bench.Add("nitric-38", "10 mL", assay));

        Assert.Equal(factor, declared.ComponentMoles["NO3-"] / nominal.ComponentMoles["NO3-"], 9);
        Assert.Contains(declared.Assumptions, a => a.Key == "assay-reading");
    }

    [Fact]
    public void UndeclaredAssaysAreOneAssumptionThatNamesTheSubstances()
    {
        var stock = Bench.StockOf(
            Bench.Add("zinc-sulfate-7h2o", "2 g"), Bench.Add("boric-acid", "3 g"), Bench.Add("copper-sulfate-5h2o", "1 g", assay: "99 %"));

        var assumption = Assert.Single(stock.Assumptions, a => a.Key == "assay");
        Assert.Contains("'boric-acid', 'zinc-sulfate-7h2o'", assumption.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("copper", assumption.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AVolumeOfASolidIsLeftOutAndTheStockIsIncomplete()
    {
        var stock = Bench.StockOf(Bench.Add("boric-acid", "5 mL"), Bench.Add("zinc-sulfate-7h2o", "2 g"));

        Assert.False(stock.IsComplete);
        Assert.Single(stock.Additions);
        Assert.Contains(stock.Assumptions, a => a.Key == "left-out");
    }

    [Fact]
    public void AnAliquotBringsItsShareOfEverything()
    {
        var pre = Bench.Stock("pre.stock.json", "1 L", Bench.Add("sodium-molybdate-2h2o", "10 g"), Bench.Pour("900 mL", "tap.water.json"), Bench.TopUp("1 L"));
        var stock = Bench.Stock("a.stock.json", "2 L", Bench.Aliquot("pre.stock.json", "20 mL", "moly"), Bench.TopUp("2 L"));
        var facts = Bench.Analyse([pre, stock], waters: Tap()).FindStock("a.stock.json")!;

        var addition = Assert.Single(facts.Additions);
        Assert.Equal("moly/sodium-molybdate-2h2o", addition.Id);
        Assert.Equal(0.2, addition.Mass.Grams, 12);
        Assert.True(addition.ThroughAliquot);
        Assert.Equal("/steps/0", addition.Place.Pointer.Value);

        // 2 mmol/L of calcium in 900 mL of 1 L, of which 20 mL go in.
        Assert.Equal(0.002 * 0.9 * 0.02, facts.ComponentMoles["Ca+2"], 12);
        Assert.Equal(0.02, Assert.Single(facts.Aliquots).Volume.Litres, 12);
    }

    [Fact]
    public void AliquotsOfAliquotsDiluteTwice()
    {
        var first = Bench.Stock("one.stock.json", "1 L", Bench.Add("potassium-nitrate", "101.1 g"));
        var second = Bench.Stock("two.stock.json", "1 L", Bench.Aliquot("one.stock.json", "10 mL", "one"));
        var third = Bench.Stock("three.stock.json", "1 L", Bench.Aliquot("two.stock.json", "10 mL", "two"));
        var facts = Bench.Analyse([first, second, third]).FindStock("three.stock.json")!;

        Assert.Equal("two/one/potassium-nitrate", Assert.Single(facts.Additions).Id);
        Assert.Equal(1e-4, facts.Concentration("K+").MolesPerLitre, 6);
    }

    [Fact]
    public void StocksThatTakeFromEachOtherEndIncomplete()
    {
        var a = Bench.Stock("a.stock.json", "1 L", Bench.Aliquot("b.stock.json", "10 mL", "b"), Bench.Add("potassium-nitrate", "1 g"));
        var b = Bench.Stock("b.stock.json", "1 L", Bench.Aliquot("a.stock.json", "10 mL", "a"));
        var facts = Bench.Analyse([a, b]);

        Assert.All(facts.Stocks, s => Assert.False(s.IsComplete));
        Assert.Equal(2, facts.Stocks.Count);
    }

    [Fact]
    public void WaterIsWhatIsPouredAndWhatIsMissingToTheMark()
    {
        var stock = Bench.Stock(
            "a.stock.json", "2 L", Bench.Pour("1.4 L", "tap.water.json"), Bench.Add("nitric-38", "100 mL"), Bench.TopUp("2 L", "tap.water.json"));
        var facts = Bench.Analyse([stock], waters: Tap()).Stocks.Single();

        Assert.Equal([1.4, 0.5], facts.Waters.Select(w => Math.Round(w.Volume.Litres, 9)));
        Assert.Equal([false, true], facts.Waters.Select(w => w.VolumeIsEstimate));
        Assert.Equal(1.9 * 0.002, facts.ComponentMoles["Ca+2"], 12);

        // Hydrogen carbonate stands as carbonate and hydrogen: 4 mmol/L of it, against 4 meq/L of calcium.
        Assert.Equal(1.9 * 0.004, facts.ComponentMoles["CO3-2"], 12);
        Assert.Contains(facts.Assumptions, a => a.Key == "solids-volume");
    }

    [Fact]
    public void AWaterRangeCountsWithItsMiddle()
    {
        var stock = Bench.Stock("a.stock.json", "1 L", Bench.Pour("1 L", "tap.water.json"));
        var facts = Bench.Analyse([stock], waters: Tap(high: 0.004)).Stocks.Single();

        Assert.Equal(0.003, facts.ComponentMoles["Ca+2"], 12);
        Assert.Contains(facts.Assumptions, a => a.Key == "water-range");
    }

    [Fact]
    public void TheLastAdjustmentDeclaresThePHAndItsReagentCounts()
    {
        var facts = Bench.StockOf(Bench.Add("boric-acid", "3 g"), Bench.Adjust(4, "koh-10"), Bench.Adjust(3, "nitric-38"));

        Assert.Equal(3, facts.DeclaredPh);
        // 3 g of boric acid in 2 L is near pH 5.4 by itself, where potassium hydroxide only raises it.
        Assert.StartsWith("pH 4 cannot be reached with 'koh-10' from pH 5.", facts.Adjustments[0].Reason, StringComparison.Ordinal);
        Assert.Single(facts.Assumptions, a => a.Key == "ph-adjustment");
        Assert.DoesNotContain("K+", facts.ComponentMoles.Keys);

        // Nothing in it buffers at pH 3: 1 mmol/L of acid over an activity coefficient of 0.965 (Debye-Hückel), in 2 L.
        Assert.Equal(2 * 0.001 / 0.965, facts.ComponentMoles["NO3-"], 0.00003);
    }

    [Fact]
    public void StorageIsStatedOrTheSitesOrAssumed()
    {
        var plain = Bench.Stock("a.stock.json", "1 L", Bench.Add("boric-acid", "3 g"));
        var stated = plain with
        {
            Keep = new Keeping(new Located<Interval<Temperature>>(new(new(4), new(20)), plain.Place), null, null),
        };
        var shop = new ShopSettings { Sites = [new Site("shed", plain.Place, new(new(-2), new(35)))] };

        Assert.Equal((4, 20), Span(Bench.Analyse([stated], shop: shop)));
        Assert.Equal((-2, 35), Span(Bench.Analyse([plain], shop: shop)));
        Assert.Equal((5, 30), Span(Bench.Analyse([plain])));
        Assert.Contains(Bench.Analyse([plain]).Stocks[0].Assumptions, a => a.Key == "storage-temperature");
        Assert.DoesNotContain(Bench.Analyse([stated]).Stocks[0].Assumptions, a => a.Key == "storage-temperature");

        static (double Low, double High) Span(Facts facts) =>
            (facts.Stocks[0].StorageTemperature.Low.Celsius, facts.Stocks[0].StorageTemperature.High.Celsius);
    }

    [Fact]
    public void TheFinestScaleThatCarriesTheMassIsTakenUnlessOneIsNamed()
    {
        var here = Place.Whole("recipelint.json");
        var shop = new ShopSettings
        {
            Scales =
            [
                new Scale("kitchen", here, new Mass(5000), new Mass(1), null, null),
                new Scale("pocket", here, new Mass(500), new Mass(0.01), null, null),
                new Scale("milligram", here, new Mass(20), new Mass(0.001), null, null),
            ],
            Measures =
            [
                new Measure("cylinder-1000", here, MeasureKind.Cylinder, new Volume(1), null, null),
                new Measure("cylinder-100", here, MeasureKind.Cylinder, new Volume(0.1), null, null),
            ],
        };

        Assert.Equal("milligram", Taken(Bench.Add("boric-acid", "3 g")).Scale!.Name);
        Assert.Equal("pocket", Taken(Bench.Add("boric-acid", "30 g")).Scale!.Name);
        Assert.Equal("kitchen", Taken(Bench.Add("boric-acid", "700 g")).Scale!.Name);
        Assert.Null(Taken(Bench.Add("boric-acid", "7 kg")).Scale);
        Assert.Equal("kitchen", Taken(Bench.Add("boric-acid", "3 g", with: "kitchen")).Scale!.Name);
        Assert.True(Taken(Bench.Add("boric-acid", "3 g", with: "kitchen")).EquipmentStated);
        Assert.Equal("cylinder-100", Taken(Bench.Add("nitric-38", "90 mL")).Measure!.Name);
        Assert.Equal("cylinder-100", Taken(Bench.Add("nitric-38", "110 mL")).Measure!.Name);
        Assert.Equal("cylinder-1000", Taken(Bench.Add("nitric-38", "210 mL")).Measure!.Name);

        AdditionFacts Taken(Step step) => Bench.Analyse([Bench.Stock("a.stock.json", "10 L", step)], shop: shop).Stocks[0].Additions.Single();
    }

    [Fact]
    public void PossibleImpuritiesStandApartFromTheElements()
    {
        var substance = Bench.Substance("zinc-sulfate-7h2o");
        var stock = Bench.StockOf(Bench.Add(substance.Id, "100 g"));

        Assert.NotEmpty(substance.Impurities);
        foreach (var impurity in substance.Impurities)
        {
            Assert.Equal(100 * impurity.Content.Value.Value, stock.Impurities[impurity.Element].Grams, 12);
            Assert.Equal(0, stock.Totals[impurity.Element].Grams);
        }
    }

    [Fact]
    public void AStockWithoutAVolumeHasNoFacts()
    {
        var stock = Bench.Stock("a.stock.json", "1 L") with { Makes = null };

        Assert.Empty(Bench.Analyse([stock]).Stocks);
    }

    private static WaterDocument Tap(double high = 0.002) => Waters.Tap(high);
}

using RecipeLint.Advice.Splitting;
using RecipeLint.Advice.Tests.Told;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>What a split is made from: usual volumes, weights of the shop, units, water and keeping, each on its bound.</summary>
public sealed class SplitPartsTests
{
    private static readonly Place _place = Place.Whole("shop");

    /// <summary>The smallest usual volume that the final volume takes up, exactly that one too; beyond a cubic metre full hundreds.</summary>
    [Theory]
    [InlineData(100, 100, 1)]
    [InlineData(100, 99, 2)]
    [InlineData(1000, 100, 10)]
    [InlineData(1001, 100, 15)]
    [InlineData(60000, 100, 600)]
    [InlineData(100000, 100, 1000)]
    [InlineData(100100, 100, 1100)]
    [InlineData(123400, 100, 1300)]
    public void BatchesAreMadeInUsualVolumes(double final, double dilution, double first) =>
        Assert.Equal(first, BatchVolume.From(new Volume(final), dilution).First().Litres, 6);

    [Fact]
    public void LargerUsualVolumesFollow() => Assert.Equal(
        [80, 100, 120, 150, 200, 250, 300, 400, 500, 600, 800, 1000], BatchVolume.From(new Volume(61 * 100), 100).Select(v => v.Litres));

    /// <summary>Grams to four digits without a scale, else to the step of the finest scale that carries it in the lightest vessel.</summary>
    [Theory]
    [InlineData(12.34567, null, 12.35)]
    [InlineData(123456, null, 123500)]
    [InlineData(0.001234567, null, 0.001235)]
    [InlineData(0, null, 0)]
    [InlineData(12.34567, 0.01, 12.35)]
    [InlineData(12.3, 0.5, 12.5)]
    [InlineData(0.3, 0.1, 0.3)]
    public void WeightsAreRoundedAsTheShopReadsThem(double grams, double? step, double rounded) => Assert.Equal(
        rounded,
        ShopWeights.Round(new Mass(grams), new ShopSettings { Scales = step is { } s ? [Scale("only", s, null)] : [] }).Grams);

    [Theory]
    [InlineData(0.0123456, 12.35)]
    [InlineData(1.23456, 1235)]
    public void VolumesAreRoundedToFourDigits(double litres, double millilitres) =>
        Assert.Equal(millilitres, ShopWeights.Round(new Volume(litres)).Millilitres, 9);

    /// <summary>With a vessel of 50 g the fine scale carries 50 g and no more; past every scale the one that carries most takes portions.</summary>
    [Theory]
    [InlineData(50, "fine")]
    [InlineData(50.001, "coarse")]
    [InlineData(949.9, "coarse")]
    [InlineData(951, "coarse")]
    public void AScaleCarriesTheVesselToo(double grams, string scale)
    {
        var shop = new ShopSettings
        {
            Scales = [Scale("broken", 0, 9000), Scale("coarse", 1, 1000), Scale("fine", 0.01, 100)],
            Vessels = [new Vessel("can", _place, null, new Mass(400)), new Vessel("boat", _place, null, new Mass(50)), new Vessel("untold", _place, null, null)],
        };
        Assert.Equal(scale, ShopWeights.ScaleFor(new Mass(grams), shop)!.Name);
    }

    [Fact]
    public void ScalesThatAreAlikeComeByName()
    {
        Assert.Equal("a", ShopWeights.ScaleFor(new Mass(5), new ShopSettings { Scales = [Scale("b", 1, null), Scale("a", 1, null)] })!.Name);
        Assert.Equal("a", ShopWeights.ScaleFor(new Mass(500), new ShopSettings { Scales = [Scale("b", 1, 100), Scale("a", 1, 100), Scale("c", 1, 50)] })!.Name);
        Assert.Null(ShopWeights.ScaleFor(new Mass(5), new ShopSettings()));
        Assert.Null(ShopWeights.ScaleFor(new Mass(5), new ShopSettings { Scales = [Scale("broken", 0, null)] }));
    }

    /// <summary>Twenty steps and within 10 % at k = 2; a limit that is met exactly is met.</summary>
    [Theory]
    [InlineData(20, 20, 1.0, false)]
    [InlineData(19.99, 20, 1.0, true)]
    [InlineData(0, 0, 1.0, true)]
    public void AWeightIsTooLittleBelowSoManySteps(double steps, double limit, double uncertainty, bool tooLittle) => Assert.Equal(
        tooLittle, ShopWeights.IsTooLittle(new Mass(steps), Scale("s", 1, null), new SplitLimits { DisplaySteps = limit, WeighingUncertainty = uncertainty }));

    [Fact]
    public void AWeightIsTooLittleBeyondItsUncertainty()
    {
        var scale = Scale("s", 1, null);
        var relative = new Analysis.Uncertainty.Weighing(scale, new Mass(100)).RelativeExpanded!.Value;
        Assert.False(ShopWeights.IsTooLittle(new Mass(100), scale, new SplitLimits { WeighingUncertainty = Rounding.SixDigits(relative) }));
        Assert.True(ShopWeights.IsTooLittle(new Mass(100), scale, new SplitLimits { WeighingUncertainty = relative * 0.999 }));
    }

    /// <summary>Trace salts to 50 mg/L, any salt to 10 mg/L; bare iron takes the agents, else the traces do; calcium comes first.</summary>
    [Theory]
    [InlineData("potassium-nitrate 100, calcium-nitrate-4h2o 10.001, zinc-sulfate-7h2o 50", "Bulk calcium-nitrate-4h2o | Bulk potassium-nitrate | Trace zinc-sulfate-7h2o")]
    [InlineData("zinc-sulfate-7h2o 50.001, potassium-chloride 10", "Bulk zinc-sulfate-7h2o | Trace potassium-chloride")]
    [InlineData("potassium-chloride 10.001, boric-acid 5", "Bulk potassium-chloride | Trace boric-acid")]
    [InlineData("ferrous-sulfate-7h2o 5, disodium-edta-2h2o 8, fe-dtpa-hna 20, zinc-sulfate-7h2o 1", "Iron ferrous-sulfate-7h2o+disodium-edta-2h2o+fe-dtpa-hna | Trace zinc-sulfate-7h2o")]
    [InlineData("fe-dtpa-hna 20, disodium-edta-2h2o 8, zinc-sulfate-7h2o 1", "Iron fe-dtpa-hna | Trace disodium-edta-2h2o+zinc-sulfate-7h2o")]
    [InlineData("fe-dtpa-hna 20, disodium-edta-2h2o 80, potassium-nitrate 100", "Bulk disodium-edta-2h2o | Bulk potassium-nitrate | Iron fe-dtpa-hna")]
    [InlineData("magnesium-sulfate-7h2o 100, magnesium-sulfate-h2o 50, potassium-sorbate 20, nitric-38 30, zinc-sulfate-7h2o 1", "Bulk magnesium-sulfate-7h2o+magnesium-sulfate-h2o | Bulk nitric-38 | Trace potassium-sorbate+zinc-sulfate-7h2o")]
    [InlineData("potassium-sorbate 20, potassium-nitrate 100", "Bulk potassium-sorbate | Bulk potassium-nitrate")]
    [InlineData("copper-sulfate-5h2o 1, ammonium-molybdate 1", "Trace copper-sulfate-5h2o")]
    public void UnitsTravelTogetherLikeThis(string doses, string expected)
    {
        var recipe = Bench.RecipeOf("1000 L", [.. doses.Split(", ").Select(d => d.Split(' ')).Where(d => Chemistry.Substances.SubstanceCatalogue.BuiltIn.ById(d[0]) is not null).Select(d => Bench.Direct(d[0], $"{d[1]} mg/L"))]);
        Assert.Equal(expected, string.Join(" | ", SplitUnit.Of(SplitIngredient.In(recipe)).Select(u => $"{u.Kind} {string.Join('+', u.Ingredients.Select(i => i.Substance.Id))}")));
    }

    [Theory]
    [InlineData("potassium-nitrate 100", true)]
    [InlineData("calcium-nitrate-4h2o 100", false)]
    [InlineData("nitric-38 100", false)]
    [InlineData("magnesium-sulfate-7h2o 100, magnesium-sulfate-h2o 50", false)]
    [InlineData("zinc-sulfate-7h2o 5", false)]
    [InlineData("fe-dtpa-hna 100", false)]
    public void OnlyASingleBulkSaltWithoutCalciumIsDivided(string doses, bool divided) => Assert.Equal(
        divided,
        SplitUnit.Of(SplitIngredient.In(Bench.RecipeOf("1000 L", [.. doses.Split(", ").Select(d => d.Split(' ')).Select(d => Bench.Direct(d[0], $"{d[1]} mg/L"))]))).Single().CanBeDivided);

    /// <summary>Small salts with acids of their stock are not called trace elements.</summary>
    [Theory]
    [InlineData("zinc-sulfate-7h2o 5, boric-acid 3, potassium-chloride 5", "the trace elements")]
    [InlineData("potassium-chloride 5, ammonium-nitrate 8", "potassium chloride with ammonium nitrate")]
    [InlineData("zinc-sulfate-7h2o 5", "zinc sulfate heptahydrate")]
    public void TracesAreCalledWhatTheyAre(string doses, string name) => Assert.Equal(
        name,
        SplitUnit.Of(SplitIngredient.In(Bench.RecipeOf("1000 L", [.. doses.Split(", ").Select(d => d.Split(' ')).Select(d => Bench.Direct(d[0], $"{d[1]} mg/L"))])))[^1].Name);

    /// <summary>The same substance of the same assay is one, from wherever it comes; another assay is another.</summary>
    [Fact]
    public void IngredientsFromSeveralPlacesAreOne()
    {
        var stocks = new[] { Bench.Stock("a.stock.json", "1 L", Bench.Add("potassium-nitrate", "100 g", "98 %"), Bench.Add("monopotassium-phosphate", "10 g"), Bench.TopUp("1 L")), Bench.Stock("b.stock.json", "2 L", Bench.Add("potassium-nitrate", "100 g", "98 %"), Bench.TopUp("2 L")) };
        var recipe = Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", "10 mL/L"), Bench.Dose("b.stock.json", "20 mL/L"), Bench.Direct("potassium-nitrate", "5 g", "98 %"), Bench.Direct("potassium-nitrate", "7 g"));
        var found = SplitIngredient.In(Bench.Analyse(stocks, recipe).Recipes.Single());
        Assert.Equal(
            ["potassium-nitrate 0.98 2.05 a+b", "monopotassium-phosphate  0.1 a", "potassium-nitrate  0.07 "],
            found.Select(i => FormattableString.Invariant($"{i.Substance.Id} {i.Assay?.Value} {Math.Round(i.Mass.GramsPerLitre, 9)} {string.Join('+', i.From)}")));
        Assert.Equal(2.05 * 0.98, found[0].HeldAt(1).PureGrams / found[0].Substance.Strength.Value, 9);
        Assert.Equal(found[0].HeldAt(1).Grams * 3, found[0].HeldAt(3).Grams, 9);
        Assert.Equal(found[1].Mass.GramsPerLitre * found[1].Substance.Strength.Value, found[1].HeldAt(1).PureGrams, 9);
    }

    /// <summary>Where the parts are kept: as asked, as the stocks are, where the shop keeps them, else a shed; as long as the shortest.</summary>
    [Fact]
    public void PartsAreKeptAsTheStocksWere()
    {
        var span = new Interval<Temperature>(new Temperature(3), new Temperature(9));
        var both = Source(["b", "hard"], new ShopSettings());
        Assert.Equal((3.0, 9.0), Span(both.Keep(span)));
        Assert.Equal((5.0, 25.0), Span(both.Keep(null)));
        Assert.Equal(14, both.Keep(null).For!.Value.Days, 6);
        var shop = new ShopSettings { Sites = [new Site("x", _place, new(new Temperature(8), new Temperature(20))), new Site("y", _place, new(new Temperature(12), new Temperature(35)))] };
        Assert.Equal((8.0, 35.0), Span(Source([], shop).Keep(null)));
        var shed = Source([], new ShopSettings()).Keep(null);
        Assert.Equal((5.0, 30.0), Span(shed));
        Assert.Null(shed.For);
        Assert.Equal(LightExposure.Dark, shed.Light!.Value);
    }

    /// <summary>The water most stocks are made with, by name where as many are; without stocks that of the recipe.</summary>
    [Theory]
    [InlineData("b hard rain", "distilled")]
    [InlineData("hard", "hard.water.json")]
    [InlineData("hard rain", "hard.water.json")]
    [InlineData("rain hard", "hard.water.json")]
    [InlineData("", "iron.water.json")]
    [InlineData("dry", "distilled")]
    public void PartsAreMadeWithTheWaterOfMostStocks(string stocks, string water) =>
        Assert.Equal(water, Source(stocks.Split(' ', StringSplitOptions.RemoveEmptyEntries), new ShopSettings()).StockWater().Name);

    private static (double Low, double High) Span(Keeping keep) => (keep.At!.Value.Low.Celsius, keep.At.Value.High.Celsius);

    private static SplitSource Source(string[] stocks, ShopSettings shop) => new(
        "x", "x.recipe.json", [], ToldShop.Recipe("direct").Recipe, [.. stocks.Select(ToldShop.Stock)], shop, true, new Dictionary<string, double>());

    /// <summary>More than a search takes, more parts than salts, nothing at all: said in one sentence, and no plan.</summary>
    [Fact]
    public void WhatIsNotLookedAtSaysWhy()
    {
        Assert.Equal("there is no salt in it", SplitBench.Split("100 L").Failure);
        Assert.Equal(
            "it holds 1 kinds of salt, fewer than the 2 parts asked for",
            SplitBench.Split(Bench.RecipeOf("100 L", Bench.Direct("potassium-nitrate", "0.5 g/L")), new SplitRequest { Parts = 2 }).Failure);
        Assert.Null(SplitBench.Split("100 L", Bench.Direct("potassium-nitrate", "0.5 g/L")).Failure);
    }

    private static Scale Scale(string name, double step, double? capacity) =>
        new(name, _place, capacity is { } grams ? new Mass(grams) : null, new Mass(step), null, null);
}

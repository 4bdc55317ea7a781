using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Splitting;

/// <summary>Weights as the scales of a shop show them, and the steps of a part in their order.</summary>
public sealed class PartStepsTests
{
    private static readonly ShopSettings _bare = new();

    [Theory]
    [InlineData(12.34567, 12.35)]
    [InlineData(0.001234567, 0.001235)]
    [InlineData(123456.0, 123500.0)]
    [InlineData(1234.4, 1234.0)]
    [InlineData(12344.0, 12340.0)]
    [InlineData(0.0, 0.0)]
    [InlineData(-1.23456, -1.235)]
    public void WithoutAScaleFourDigitsStay(double grams, double rounded)
    {
        Assert.Equal(rounded, ShopWeights.Round(new Mass(grams), _bare).Grams, 12);
        Assert.Equal(rounded, ShopWeights.Round(Volume.FromMillilitres(grams)).Millilitres, 9);
    }

    [Fact]
    public void WhatIsSmallerThanAnyDigitStays() => Assert.Equal(1.23456789e-17, ShopWeights.Round(new Mass(1.23456789e-17), _bare).Grams);

    [Theory]
    [InlineData(0.5, "fine", 0.5)]
    [InlineData(0.5004, "fine", 0.5)]
    [InlineData(0.5006, "fine", 0.501)]
    [InlineData(10, "fine", 10)]
    [InlineData(10.001, "bench", 10.0)]
    [InlineData(10.06, "bench", 10.1)]
    [InlineData(500, "bench", 500)]
    [InlineData(501, "floor", 501)]
    [InlineData(50001, "floor", 50001)]
    public void TheFinestScaleThatCarriesItIsTaken(double grams, string scale, double rounded)
    {
        ShopSettings shop = new() { Scales = [Scale("floor", 1, null), Scale("bench", 0.1, 500), Scale("fine", 0.001, 10), Scale("broken", 0, null)] };

        Assert.Equal(scale, ShopWeights.ScaleFor(new Mass(grams), shop)?.Name);
        Assert.Equal(rounded, ShopWeights.Round(new Mass(grams), shop).Grams, 12);
    }

    /// <summary>What none carries at once is weighed in portions on the one that carries most; of two alike the first by name.</summary>
    [Fact]
    public void TooMuchForAnyIsWeighedOnTheLargest()
    {
        ShopSettings shop = new() { Scales = [Scale("fine", 0.001, 10), Scale("c", 0.1, 500), Scale("b", 0.1, 500), Scale("z", 0, 9000)] };

        Assert.Equal("b", ShopWeights.ScaleFor(new Mass(501), shop)?.Name);
        Assert.Equal("b", ShopWeights.ScaleFor(new Mass(100), shop)?.Name);
        Assert.Null(ShopWeights.ScaleFor(new Mass(1), new ShopSettings { Scales = [Scale("z", 0, null)] }));
        Assert.Null(ShopWeights.ScaleFor(new Mass(1), _bare));
    }

    /// <summary>The lightest vessel stands on the scale too.</summary>
    [Theory]
    [InlineData(7, "fine")]
    [InlineData(7.01, "bench")]
    public void TheVesselIsWeighedWithIt(double grams, string scale)
    {
        ShopSettings shop = new()
        {
            Scales = [Scale("fine", 0.001, 10), Scale("bench", 0.1, 500)],
            Vessels = [Vessel("jug", 50), Vessel("dish", 3), Vessel("bag", null)],
        };

        Assert.Equal(scale, ShopWeights.ScaleFor(new Mass(grams), shop)?.Name);
    }

    /// <summary>Preservative, acid, alkali, agent, salts from the least soluble on, traces, chelate, colour; stirred between.</summary>
    [Fact]
    public void StepsStandInTheOrderOfTheBench()
    {
        string[] order =
        [
            "potassium-sorbate", "nitric-38", "koh-10", "disodium-edta-2h2o", "potassium-sulfate", "potassium-nitrate", "boric-acid", "fe-dtpa-hna", "tartrazine",
        ];
        var steps = Steps([.. order.Reverse().Select(id => Amount(id, 1, id == "boric-acid" ? UnitKind.Trace : UnitKind.Bulk))]);

        Assert.Equal(order, steps.OfType<AddStep>().Select(s => s.Substance!.Id));
        Assert.Equal(order, steps.OfType<AddStep>().Select(s => s.Id));
        Assert.Equal(order, steps.OfType<AddStep>().Select(s => s.What!.Value));
        Assert.Equal(8, steps.OfType<HandlingStep>().Count());
        Assert.IsType<PourStep>(steps[0]);
        Assert.IsType<HandlingStep>(steps[2]);
        Assert.IsType<HandlingStep>(steps[^2]);
        Assert.IsType<TopUpStep>(steps[^1]);
        Assert.Equal(steps.Count, steps.Select(s => s.Id).Distinct().Count());
        Assert.All(steps.Select((s, i) => (s, i)), s => Assert.EndsWith($"{s.i}", s.s.Place.ToString(), StringComparison.Ordinal));
    }

    /// <summary>Iron of a trace stock goes in with the traces, iron(II) sulfate of the iron unit too; of equal solubility the larger first.</summary>
    [Fact]
    public void TiesAreBrokenByWeightAndName()
    {
        Assert.Equal(
            ["citric-acid-h2o", "potassium-nitrate"],
            Steps(Amount("potassium-nitrate", 1), Amount("citric-acid-h2o", 1)).OfType<AddStep>().Select(s => s.Id));
        Assert.Equal(
            ["zinc-sulfate-7h2o", "ferrous-sulfate-7h2o"],
            Steps(Amount("ferrous-sulfate-7h2o", 1, UnitKind.Iron), Amount("zinc-sulfate-7h2o", 2)).OfType<AddStep>().Select(s => s.Id));
        Assert.Equal(
            ["nitric-38", "hydrochloric-10"],
            Steps(Amount("hydrochloric-10", 1), Amount("nitric-38", 2)).OfType<AddStep>().Select(s => s.Id));
        Assert.Equal(
            ["hydrochloric-10", "nitric-38"],
            Steps(Amount("nitric-38", 2), Amount("hydrochloric-10", 2)).OfType<AddStep>().Select(s => s.Id));
    }

    /// <summary>Two bags of one salt with another assay are two steps with names of their own.</summary>
    [Fact]
    public void TwoBagsOfOneSaltHaveNamesOfTheirOwn()
    {
        var second = Amount("potassium-nitrate", 1) is var amount ? amount with { Ingredient = amount.Ingredient with { Assay = new MassFraction(0.9) } } : null!;
        var adds = Steps(Amount("potassium-nitrate", 2), second).OfType<AddStep>().ToList();

        Assert.Equal(["potassium-nitrate", "potassium-nitrate-2"], adds.Select(s => s.Id));
        Assert.Equal([null, 0.9], adds.Select(s => s.Assay?.Value.Value));
    }

    /// <summary>Three quarters of the batch go in first, less where salts and liquids take the room, none where they take all.</summary>
    [Theory]
    [InlineData("potassium-nitrate", 10, 750.0)]
    [InlineData("potassium-nitrate", 600, 660.0)]
    [InlineData("nitric-38", 900, 250.0)]
    [InlineData("potassium-nitrate", 2000, null)]
    public void RoomIsLeftForWhatGoesIn(string id, double grams, double? first)
    {
        var pour = Steps(Amount(id, grams)).OfType<PourStep>().SingleOrDefault();

        Assert.Equal(first, pour?.Volume is { } volume ? Math.Round(volume.Value.Millilitres, 9) : null);
        Assert.Equal(first is null ? null : "distilled", pour?.Of?.Value.Name);
    }

    /// <summary>A liquid is poured, four digits of it; a solid is weighed on the scale that is named.</summary>
    [Fact]
    public void LiquidsArePouredAndSolidsWeighed()
    {
        ShopSettings shop = new() { Scales = [Scale("bench", 0.1, 500)] };
        var adds = Steps(shop, Amount("nitric-38", 12.3456), Amount("potassium-nitrate", 12.3456)).OfType<AddStep>().ToList();

        var acid = Assert.IsType<Portion.ByVolume>(adds[0].Amount!.Value).Volume.Millilitres;
        Assert.Equal(12.3456 / 1.23, acid, 1);
        Assert.Equal(Math.Round(acid, 2), acid, 9);
        Assert.Null(adds[0].With);
        Assert.Equal(12.3, Assert.IsType<Portion.ByMass>(adds[1].Amount!.Value).Mass.Grams, 9);
        Assert.Equal("bench", adds[1].With?.Value);
        Assert.EndsWith("with", adds[1].With!.Place.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("amount", adds[1].Amount!.Place.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("add", adds[1].What!.Place.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, Steps(Amount("potassium-nitrate", 1)).OfType<TopUpStep>().Single().To!.Value.Litres);
    }

    private static IReadOnlyList<Step> Steps(params PartAmount[] amounts) => Steps(_bare, amounts);

    private static IReadOnlyList<Step> Steps(ShopSettings shop, params PartAmount[] amounts) =>
        PartSteps.Of(amounts, new Volume(1), new WaterReference("distilled", null), shop, "a.stock.json");

    private static PartAmount Amount(string id, double grams, UnitKind kind = UnitKind.Bulk) =>
        new(SplitIngredient.In(Bench.RecipeOf("100 L", Bench.Direct(id, Bench.Substance(id).Form == Chemistry.Substances.PhysicalForm.Liquid ? "1 mL/L" : "1 g/L")))[0],
            new Mass(grams), kind);

    private static Scale Scale(string name, double readability, double? capacity) => new(
        name, Place.Whole("recipelint.json"), capacity is { } most ? new Mass(most) : null, new Mass(readability), null, null);

    private static Vessel Vessel(string name, double? tare) => new(
        name, Place.Whole("recipelint.json"), new Volume(1), tare is { } grams ? new Mass(grams) : null);
}

using CsCheck;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Tests.Uncertainty;

public sealed class ElementUncertaintyTests
{
    private static readonly UncertaintyFacts Example = ElementUncertainty.Of(Quillmere.Facts.Recipes.Single(), Quillmere.Facts.FindStock);

    private static readonly string[] Salts =
        ["potassium-nitrate", "calcium-nitrate-4h2o", "magnesium-sulfate-7h2o", "boric-acid", "fe-dtpa-hna", "sodium-molybdate-2h2o", "phosphoric-75"];

    private static readonly string?[] Tools = [null, "bench-scale", "pocket-scale", "fine-scale", "cylinder-100", "syringe-60"];

    [Fact]
    public void ConcentrationsAreThoseOfTheFacts()
    {
        var recipe = Quillmere.Facts.Recipes.Single();
        Assert.Equal(recipe.Elements.Keys, Example.Elements.Keys);
        Assert.All(Example.Elements.Values, e => Assert.Equal(1, e.Concentration.GramsPerLitre / recipe.Elements[e.Key].Concentration.GramsPerLitre, 9));
    }

    [Fact]
    public void SharesAreOrderedAndSumToOne() =>
        Assert.All(Example.Elements.Values, e =>
        {
            Assert.Equal(1, e.Shares.Sum(s => s.Fraction), 9);
            Assert.Equal(e.Shares.OrderByDescending(s => s.Fraction).Select(s => s.Fraction), e.Shares.Select(s => s.Fraction));
            Assert.All(e.Shares, s => Assert.NotEmpty(s.Source.Name));
        });

    [Fact]
    public void SourcesHavePlainNamesAndPlaces()
    {
        var stock = Quillmere.Facts.FindStock("molybdate-pre.stock.json")!;
        var molybdenum = ElementUncertainty.Of(stock, Quillmere.Facts.FindStock).Elements["Mo"];
        var weight = Assert.Single(molybdenum.Shares, s => s.Source.Name == "the weight of sodium molybdate dihydrate on 'pocket-scale'");
        Assert.Equal(stock.Additions[0].Place, weight.Source.Place);
        Assert.Contains(molybdenum.Shares, s => s.Source.Name == "the calibration of 'pocket-scale'");
        Assert.Contains(molybdenum.Shares, s => s.Source.Name == "the assay of sodium molybdate dihydrate");
        Assert.Contains(Example.Elements["Mo"].Shares, s => s.Source.Name == "the final volume of the tank");
    }

    [Fact]
    public void WhatWasAssumedIsListedOnce()
    {
        Assert.Equal(Example.Assumptions.Distinct(), Example.Assumptions);
        Assert.Contains(Example.Assumptions, a => a.Key == "uncertainty-final-volume");
        Assert.Contains(Example.Assumptions, a => a.Key == "uncertainty-stock-volume" && a.Text.Contains("'bottle-250'", StringComparison.Ordinal));
        Assert.Contains(Example.Assumptions, a => a.Key == "uncertainty-repeatability");
        Assert.Contains(Example.Assumptions, a => a.Key == UncertaintyNotes.Neglected);
        Assert.All(Example.Assumptions, a => Assert.DoesNotContain("{0}", a.Text, StringComparison.Ordinal));
    }

    // JCGM 100:2008, 5.2.2: the common error of one scale adds, that of two scales adds in quadrature.
    [Fact]
    public void TwoWeightsOnOneScaleAreWrongTogether()
    {
        var one = Potassium("left", "left");
        var two = Potassium("left", "right");
        var (first, second) = (Shared(two, "left"), Shared(two, "right"));
        Assert.Equal(first + second, Shared(one, "left"), 12);
        Assert.True(one.RelativeStandard > two.RelativeStandard);

        static ElementUncertainty Potassium(string scale, string otherScale) => Of(
            new ShopSettings { Scales = [Quillmere.Scale("left", "1 g"), Quillmere.Scale("right", "1 g")] },
            Bench.Add("potassium-nitrate", "20 g", "99 %", with: scale),
            Bench.Add("potassium-sulfate", "20 g", "99 %", with: otherScale))["K"];

        static double Shared(ElementUncertainty element, string scale) => Effect(element, $"the calibration of '{scale}'");
    }

    [Fact]
    public void TwoDosesFromOneCylinderAreWrongTogether()
    {
        var nitrate = Example.Elements["NO3-N"];
        Assert.Equal(0.01 / Math.Sqrt(3), Effect(nitrate, "the accuracy of 'cylinder-2000'"), 6);

        // Each dose is read anew, so the two readings average.
        var readings = nitrate.Shares.Where(s => s.Source.Name.StartsWith("reading 'cylinder-2000' for the dose", StringComparison.Ordinal)).Sum(s => s.Fraction);
        Assert.True(Math.Sqrt(readings) * nitrate.RelativeStandard < 0.01 / Math.Sqrt(12));
    }

    [Fact]
    public void OneBagHasOneAssay()
    {
        // The same potassium nitrate in part A and part B; potassium comes from it and from the phosphate.
        var potassium = Example.Elements["K"];
        Assert.Single(potassium.Shares, s => s.Source.Name == "the assay of potassium nitrate");
    }

    [Fact]
    public void ACylinderThatMakesUpAndDosesCancelsWhenTheFileSaysSo()
    {
        var stock = Bench.Stock("a.stock.json", "2 L", Bench.Add("potassium-nitrate", "100 g", "99 %", with: "bench-scale"), Bench.TopUp("2 L"));
        var recipe = Bench.Recipe("200 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", "10 mL/L", with: "cylinder-2000"));
        Assert.Contains(Of(stock).Shares, s => s.Source.Name == "the accuracy of 'cylinder-2000'");
        Assert.DoesNotContain(Of(Quillmere.In("cylinder-2000", stock)).Shares, s => s.Source.Name == "the accuracy of 'cylinder-2000'");

        ElementUncertainty Of(StockDocument document)
        {
            var facts = Bench.Analyse([document], recipe, Quillmere.Shop);
            return ElementUncertainty.Of(facts.Recipes.Single(), facts.FindStock).Elements["K"];
        }
    }

    [Fact]
    public void StocksMadeUpWithOneAssumedCylinderAreWrongTogether()
    {
        // Nitrate comes from part A and part B, both made up to 2 L: the common error stays 1 % however it is split.
        Assert.Equal(0.01 / Math.Sqrt(3), Effect(Example.Elements["NO3-N"], "the accuracy of 'cylinder-2000' for finished volumes"), 6);
    }

    [Theory]
    [InlineData("2 L", 0.01)] // the cylinder that holds it, ± 20 mL
    [InlineData("250 mL", 0.05)] // the mark of some vessel, because ± 20 mL of the big cylinder would be worse
    public void AStockWithoutAVesselIsMadeUpAsWellAsTheShopCan(string makes, double limit)
    {
        var facts = Bench.Analyse([Bench.Stock("a.stock.json", makes, Bench.Add("potassium-nitrate", "10 g", "99 %"), Bench.TopUp(makes))], null, Quillmere.Shop);
        var potassium = ElementUncertainty.Of(facts.Stocks.Single(), facts.FindStock).Elements["K"];
        var source = Assert.Single(potassium.Shares, s => s.Source.Name.EndsWith("for finished volumes", StringComparison.Ordinal));
        Assert.Equal(limit / Math.Sqrt(3), Effect(potassium, source.Source.Name), 6);
    }

    [Fact]
    public void AnInjectorDoesNotCareHowBigTheTankIs()
    {
        var shop = new ShopSettings { Measures = [Quillmere.Measure("injector", MeasureKind.Injector, "100 mL")] };
        var facts = Bench.Analyse(
            [Bench.Stock("a.stock.json", "1 L", Bench.Add("potassium-nitrate", "100 g"), Bench.TopUp("1 L"))],
            Bench.Recipe("200 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", "10 mL/L", with: "injector")),
            shop);
        var potassium = ElementUncertainty.Of(facts.Recipes.Single(), facts.FindStock).Elements["K"];
        Assert.DoesNotContain(potassium.Shares, s => s.Source.Name == "the final volume of the tank");
        Assert.Equal(0.1 / Math.Sqrt(3), Effect(potassium, "the accuracy of 'injector'"), 6);
    }

    [Fact]
    public void AStatedToleranceTakesThePlaceOfTheEquipment()
    {
        var step = (AddStep)Bench.Add("potassium-nitrate", "10 g", "99 %", with: "bench-scale") with { Tolerance = new Tolerance(0.2, null) };
        var potassium = Of(Quillmere.Shop, step)["K"];
        Assert.Equal(0.2 / Math.Sqrt(3), Effect(potassium, "the stated tolerance of potassium nitrate"), 9);
        Assert.DoesNotContain(potassium.Shares, s => s.Source.Name.Contains("bench-scale", StringComparison.Ordinal));
    }

    [Fact]
    public void APreStockThatCannotBeFoundIsAssumedAndSaid()
    {
        var stock = Quillmere.Facts.FindStock("trace.stock.json")!;
        var known = ElementUncertainty.Of(stock, Quillmere.Facts.FindStock);
        var unknown = ElementUncertainty.Of(stock, _ => null);
        Assert.Equal(known.Elements.Keys, unknown.Elements.Keys);
        Assert.Contains(unknown.Assumptions, a => a.Key == "uncertainty-pre-stock");
        Assert.DoesNotContain(known.Assumptions, a => a.Key == "uncertainty-pre-stock");
    }

    [Fact]
    public void AStockThatTakesFromItselfEnds()
    {
        var stock = Quillmere.Facts.FindStock("trace.stock.json")!;
        Assert.NotEmpty(ElementUncertainty.Of(stock, _ => stock).Elements);
    }

    [Fact]
    public void NothingWeighedIsNothingKnown()
    {
        var elements = Of(Quillmere.Shop, Bench.Add("potassium-nitrate", "0 g", "99 %", with: "bench-scale"), Bench.Add("boric-acid", "1 g"));
        Assert.Equal(["B"], elements.Keys);
    }

    /// <summary>Whatever is weighed on whatever, in whatever order: finite, shares that sum to one, and the same bits.</summary>
    [Fact]
    public void RandomStocksStayFiniteAndForgetTheirOrder() =>
        Gen.Select(
            Gen.Select(
                Gen.Int[0, Salts.Length - 1].Select(i => Salts[i]),
                Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-6, 1e4]),
                Gen.Int[0, Tools.Length - 1].Select(i => Tools[i])).Array[1, 10],
            Gen.Int[0, int.MaxValue]).Sample(
            (lines, seed) =>
            {
                var stock = Bench.Stock(
                    "a.stock.json",
                    "2 L",
                    [.. lines.Select((l, i) => Bench.Add(l.Item1, FormattableString.Invariant($"{l.Item2:0.######} g"), id: $"line-{i}", with: l.Item3)), Bench.TopUp("2 L")]);
                var facts = Bench.Analyse([stock], null, Quillmere.Shop).Stocks.Single();
                var found = ElementUncertainty.Of(facts, _ => null);
                Assert.All(found.Elements.Values, e =>
                {
                    Assert.True(double.IsFinite(e.RelativeStandard) && e.RelativeStandard > 0);
                    Assert.True(Math.Abs(e.Shares.Sum(s => s.Fraction) - 1) < 1e-9);
                });

                var shuffled = facts.Additions.ToArray();
                new Random(seed).Shuffle(shuffled);
                var again = ElementUncertainty.Of(facts with { Additions = shuffled }, _ => null);
                foreach (var (key, element) in found.Elements)
                {
                    Assert.Equal((element.Concentration, element.RelativeStandard), (again.Elements[key].Concentration, again.Elements[key].RelativeStandard));
                    Assert.Equal(element.Shares, again.Elements[key].Shares);
                }

                Assert.Equal(found.Assumptions.Select(a => a.Text), again.Assumptions.Select(a => a.Text));
            },
            iter: 300);

    private static IReadOnlyDictionary<string, ElementUncertainty> Of(ShopSettings shop, params Step[] steps)
    {
        var facts = Bench.Analyse([Bench.Stock("a.stock.json", "1 L", [.. steps, Bench.TopUp("1 L")])], null, shop);
        return ElementUncertainty.Of(facts.Stocks.Single(), facts.FindStock).Elements;
    }

    /// <summary>The relative standard uncertainty one source alone would give.</summary>
    private static double Effect(ElementUncertainty element, string name) =>
        Math.Sqrt(element.Shares.Single(s => s.Source.Name == name).Fraction) * element.RelativeStandard;
}

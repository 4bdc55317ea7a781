using RecipeLint.Advice.Slips;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Advice.Tests.Slips;

/// <summary>Every slip by its words and by what is in the bottle after it, and the water that may have been taken.</summary>
public sealed class SlipListTests
{
    [Fact]
    public void EverySlipOfASmallStockIsListed()
    {
        var slips = Of(Bench.Pour("700 mL"), Bench.Add("magnesium-sulfate-7h2o", "10 g"), Bench.Add("nitric-60", "20 mL"), Bench.TopUp("1 L"));
        var told = slips.Select(s => $"{s.Id}: {s.Text}").ToList();

        Assert.Equal(slips.OrderBy(s => s.Kind).Select(s => s.Id), slips.Select(s => s.Id));
        Assert.Equal(slips.Count, slips.Select(s => s.Id).Distinct().Count());
        foreach (var expected in new[]
        {
            "left-out/magnesium-sulfate-7h2o: no magnesium sulfate heptahydrate (10 g left out)",
            "left-out/nitric-60: no nitric acid 60 % (20 mL left out)",
            "twice/magnesium-sulfate-7h2o: twice the magnesium sulfate heptahydrate (20 g instead of 10 g)",
            "half/magnesium-sulfate-7h2o: half the magnesium sulfate heptahydrate (5 g instead of 10 g)",
            "ten-times/magnesium-sulfate-7h2o: ten times the magnesium sulfate heptahydrate (100 g instead of 10 g)",
            "tenth/magnesium-sulfate-7h2o: a tenth of the magnesium sulfate heptahydrate (1 g instead of 10 g)",
            "twice/nitric-60: twice the nitric acid 60 % (40 mL instead of 20 mL)",
            "other-hydrate/magnesium-sulfate-7h2o/magnesium-sulfate-h2o: magnesium sulfate monohydrate instead of magnesium sulfate heptahydrate (10 g)",
            "other-strength/nitric-60/nitric-38: nitric acid 38 % instead of nitric acid 60 % (20 mL)",
            "other-substance/nitric-60/phosphoric-75: phosphoric acid 75 % instead of nitric acid 60 % (20 mL)",
            "other-substance/magnesium-sulfate-7h2o/potassium-nitrate: potassium nitrate instead of magnesium sulfate heptahydrate (10 g)",
            "volume-over/1.1: filled up to 1.1 L instead of 1 L",
            "volume-over/1.25: filled up to 1.25 L instead of 1 L",
            "volume-short/0.9: filled up to 900 mL instead of 1 L",
            "other-water: tap water (medium hard, assumed) instead of pure water",
        })
        {
            Assert.Contains(expected, told);
        }

        Assert.DoesNotContain(slips, s => s.Id.StartsWith("ten-times/nitric", StringComparison.Ordinal));
        Assert.DoesNotContain(slips, s => s.Id.StartsWith("other-hydrate/nitric", StringComparison.Ordinal));
        Assert.DoesNotContain(slips, s => s.Id.StartsWith("other-strength/magnesium", StringComparison.Ordinal));
        Assert.DoesNotContain(slips, s => s.Kind == SlipKind.OtherSubstance && s.Id.EndsWith("magnesium-sulfate-h2o", StringComparison.Ordinal));
        Assert.DoesNotContain(slips, s => s.Kind == SlipKind.PhNotSet || s.Kind == SlipKind.Exchanged);
    }

    /// <summary>Each slip is carried out on the line that it names, and on no other.</summary>
    [Theory]
    [InlineData("left-out/k", 0, 20)]
    [InlineData("twice/k", 20, 20)]
    [InlineData("half/k", 5, 20)]
    [InlineData("ten-times/k", 100, 20)]
    [InlineData("tenth/k", 1, 20)]
    [InlineData("left-out/more", 10, 0)]
    [InlineData("twice/more", 10, 40)]
    [InlineData("exchanged/k/more", 20, 10)]
    [InlineData("volume-over/1.1", 10, 20)]
    [InlineData("volume-short/0.9", 10, 20)]
    [InlineData("other-water", 10, 20)]
    public void ASlipIsCarriedOutOnItsLine(string id, double nitrate, double sulfate)
    {
        var slip = Of(Bench.Pour("700 mL"), Bench.Add("potassium-nitrate", "10 g", id: "k"), Bench.Add("potassium-sulfate", "20 g", id: "more"), Bench.TopUp("1 L"))
            .Single(s => s.Id == id);
        double Grams(string of) => slip.Facts.Additions.Where(a => a.Id == of).Sum(a => a.Mass.Grams);

        Assert.Equal(nitrate, Grams("k"), 9);
        Assert.Equal(sulfate, Grams("more"), 9);
        Assert.Equal(id switch { "volume-over/1.1" => 1.1, "volume-short/0.9" => 0.9, _ => 1 }, slip.Facts.Volume.Litres, 9);
    }

    /// <summary>Grams per litre were weighed for the mark that was meant: filled over, the weight stays.</summary>
    [Fact]
    public void WhatWasWeighedStaysWhereTheMarkIsMissed()
    {
        var over = Of(Bench.Pour("700 mL"), Bench.Add("potassium-nitrate", "10 g/L"), Bench.Add("potassium-sulfate", "20 g"), Bench.TopUp("1 L"))
            .Single(s => s.Id == "volume-over/1.25");

        Assert.Equal([10, 20], over.Facts.Additions.Select(a => Math.Round(a.Mass.Grams, 9)));
    }

    /// <summary>Small weights alone are off by a decimal point; a bag is mistaken from 1 g on.</summary>
    [Theory]
    [InlineData("10 g", true, true)]
    [InlineData("10.1 g", false, true)]
    [InlineData("1 g", true, true)]
    [InlineData("0.99 g", true, false)]
    public void TheWeightDecidesWhichSlipsAreUsual(string amount, bool tenfold, bool bags)
    {
        var slips = Of(Bench.Add("ammonium-sulfate", amount), Bench.TopUp("1 L"));

        Assert.Equal(tenfold, slips.Any(s => s.Kind == SlipKind.TenTimes));
        Assert.Equal(tenfold, slips.Any(s => s.Kind == SlipKind.Tenth));
        Assert.Equal(bags, slips.Any(s => s.Id == "other-substance/ammonium-sulfate/calcium-nitrate-4h2o"));
        Assert.Contains(slips, s => s.Id == "other-substance/ammonium-sulfate/ammonium-chloride");
    }

    /// <summary>Any of the bags that every shop has, and any other salt of the same stock; no liquid for a solid.</summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o", true)]
    [InlineData("potassium-nitrate", true)]
    [InlineData("potassium-sulfate", true)]
    [InlineData("monopotassium-phosphate", true)]
    [InlineData("magnesium-sulfate-7h2o", true)]
    [InlineData("boric-acid", false)]
    [InlineData("sodium-nitrate", true)]
    [InlineData("nitric-60", false)]
    [InlineData("sucrose", false)]
    public void TheUsualBagsAreTakenForEachOther(string other, bool taken) => Assert.Equal(taken, Of(
        Bench.Add("ammonium-sulfate", "20 g"), Bench.Add("sodium-nitrate", "10 g"), Bench.Add("nitric-60", "1 mL"), Bench.Add("sucrose", "5 g"), Bench.TopUp("1 L"))
            .Any(s => s.Id == $"other-substance/ammonium-sulfate/{other}"));

    /// <summary>Only a salt is mistaken for the usual bags; what is poured keeps its volume, what is weighed its weight.</summary>
    [Fact]
    public void WhatIsTakenInsteadIsMeasuredTheSame()
    {
        var slips = Of(Bench.Add("sucrose", "20 g"), Bench.Add("nitric-60", "20 mL"), Bench.Add("monopotassium-phosphate", "20 g", "98 %"), Bench.TopUp("1 L"));

        Assert.DoesNotContain(slips, s => s.Id.StartsWith("other-substance/sucrose", StringComparison.Ordinal));
        var acid = slips.Single(s => s.Id == "other-strength/nitric-60/nitric-38").Facts.Additions.Single(a => a.Id == "nitric-60");
        Assert.Equal(20, acid.Volume!.Value.Millilitres, 9);
        Assert.Equal("nitric-38", acid.Substance.Id);
        var salt = slips.Single(s => s.Id == "other-substance/monopotassium-phosphate/dipotassium-phosphate").Facts.Additions
            .Single(a => a.Id == "monopotassium-phosphate");
        Assert.Equal((20, false), (Math.Round(salt.Mass.Grams, 9), salt.AssayDeclared));
    }

    /// <summary>Weights are exchanged between two solids of different weight and kind.</summary>
    [Theory]
    [InlineData("potassium-nitrate 10 g", "potassium-sulfate 20 g", true)]
    [InlineData("potassium-nitrate 10 g", "potassium-sulfate 10 g", false)]
    [InlineData("potassium-nitrate 10 g", "nitric-60 20 mL", false)]
    [InlineData("potassium-nitrate 10 g", "potassium-nitrate 20 g", false)]
    public void WeightsAreExchangedBetweenTwoSolids(string one, string other, bool exchanged)
    {
        var slips = Of(Add(one, "one"), Add(other, "other"), Bench.TopUp("1 L"));

        Assert.Equal(exchanged ? 1 : 0, slips.Count(s => s.Kind == SlipKind.Exchanged));
        Assert.All(
            slips.Where(s => s.Kind == SlipKind.Exchanged),
            s => Assert.Equal("the weights of potassium nitrate and potassium sulfate exchanged (10 g and 20 g)", s.Text));
    }

    [Fact]
    public void APartOfAnotherStockAndThePhCanBeForgotten()
    {
        var (workspace, stock) = Shop(
            [Bench.Pour("500 mL"), Bench.Aliquot("b.stock.json", "100 mL", "b"), Bench.Add("potassium-nitrate", "50 mg"), Bench.Adjust(4, "nitric-60"), Bench.TopUp("1 L")],
            Bench.Stock("b.stock.json", "1 L", Bench.Add("potassium-sulfate", "50 g"), Bench.TopUp("1 L")));
        var slips = SlipList.Of(workspace, stock);
        double Sulfate(string id) => slips.Single(s => s.Id == id).Facts.ComponentMoles.GetValueOrDefault(Component.Sulfate);
        var whole = stock.ComponentMoles.GetValueOrDefault(Component.Sulfate);

        Assert.Equal(0, Sulfate("left-out/b"), 12);
        Assert.Equal(2 * whole, Sulfate("twice/b"), 9);
        Assert.Equal("no b (the measured part of another stock left out)", slips.Single(s => s.Id == "left-out/b").Text);
        Assert.Equal("twice the b", slips.Single(s => s.Id == "twice/b").Text);
        var unset = slips.Single(s => s.Kind == SlipKind.PhNotSet);
        Assert.Equal(("ph-not-set/adjust", "the pH not set"), (unset.Id, unset.Text));
        Assert.Empty(unset.Facts.Adjustments);
        Assert.Contains(slips, s => s.Text == "half the potassium nitrate (25 mg instead of 50 mg)");
    }

    /// <summary>Of very many lines the first thirty are looked at, and that is said.</summary>
    [Theory]
    [InlineData(30, false)]
    [InlineData(31, true)]
    public void InAVeryLongStockTheFirstLinesAreLookedAt(int lines, bool cut)
    {
        var (workspace, stock) = Shop([.. Enumerable.Range(0, lines).Select(i => Bench.Add("urea", "1 g", id: $"u{i}")), Bench.Adjust(4, "nitric-60"), Bench.TopUp("1 L")]);
        var slips = SlipList.Of(workspace, stock);

        Assert.Equal(30, slips.Count(s => s.Kind == SlipKind.LeftOut));
        Assert.Single(slips, s => s.Kind == SlipKind.PhNotSet);
        Assert.Equal(
            cut ? ["This stock has 31 lines to weigh; slips are looked for in the first 30 of them."] : Array.Empty<string>(),
            SlipList.LeftOut(stock));
    }

    /// <summary>Water of 2 mmol/L of ions and less, hydrogen of its hydrogen carbonate among them, stands for pure water; harder is what the recipe wants.</summary>
    [Theory]
    [InlineData(0.0009, 0.0005, "tap water (medium hard, assumed) instead of pure water")]
    [InlineData(0.0011, 0.0005, "distilled water instead of the water named")]
    [InlineData(0.0019, 0.0000, "tap water (medium hard, assumed) instead of pure water")]
    [InlineData(0.0021, 0.0000, "distilled water instead of the water named")]
    public void WaterIsTakenForAnother(double calcium, double carbonate, string text)
    {
        var water = Water("w.water.json", "W", calcium, carbonate);
        var (workspace, stock) = Shop([Bench.Pour("500 mL", "w.water.json"), Bench.Add("potassium-nitrate", "10 g"), Bench.TopUp("1 L")], waters: [water]);

        Assert.Equal(text, SlipList.Of(workspace, stock).Single(s => s.Kind == SlipKind.OtherWater).Text);
    }

    /// <summary>One hard water among pure ones is enough; all of it is then pure.</summary>
    [Fact]
    public void OneHardWaterIsEnough()
    {
        var (workspace, stock) = Shop(
            [Bench.Pour("500 mL"), Bench.Add("potassium-nitrate", "10 g"), Bench.TopUp("1 L", "w.water.json")], waters: [Water("w.water.json", "W", 0.002, 0.004)]);
        var slip = SlipList.Of(workspace, stock).Single(s => s.Kind == SlipKind.OtherWater);

        Assert.Equal("distilled water instead of the water named", slip.Text);
        Assert.All(slip.Facts.Waters, w => Assert.Empty(w.ComponentMoles));
        Assert.Equal(0, slip.Facts.ComponentMoles.GetValueOrDefault(Component.Calcium));
    }

    /// <summary>Every water of the stock is exchanged, and where it names none, what fills it up.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void TapWaterFillsAllThatWaterFills(bool named)
    {
        var slip = Of(named
            ? [Bench.Pour("500 mL"), Bench.Add("potassium-nitrate", "10 g"), Bench.TopUp("1 L")]
            : [Bench.Add("potassium-nitrate", "10 g")]).Single(s => s.Kind == SlipKind.OtherWater);
        double PerLitre(string component) => 1000 * slip.Facts.ComponentMoles.GetValueOrDefault(component) / slip.Facts.Waters.Sum(w => w.Volume.Litres);

        Assert.Equal(2, PerLitre(Component.Calcium), 6);
        Assert.Equal(0.5, PerLitre(Component.Magnesium), 6);
        Assert.Equal(1, PerLitre(Component.Sodium), 6);
        Assert.Equal(4, PerLitre(Component.Carbonate), 6);
        Assert.Equal(0.5, PerLitre(Component.Sulfate), 6);
        Assert.Equal(1, PerLitre(Component.Chloride), 6);
        Assert.InRange(slip.Facts.Waters.Sum(w => w.Volume.Litres), 0.95, 1.001);
    }

    /// <summary>The hardest analysed water of the shop, by its hydrogen carbonate, is the one that comes out of the tap.</summary>
    [Theory]
    [InlineData(new[] { 0.002, 0.004, 0.003 }, "1")]
    [InlineData(new[] { 0.004, 0.004 }, "0")]
    [InlineData(new[] { 0.001, 0.0009 }, "0")]
    [InlineData(new[] { 0.00099, 0.0005 }, "medium hard tap water")]
    [InlineData(new double[0], "medium hard tap water")]
    public void TheHardestWaterOfTheShopIsTheTaps(double[] carbonate, string name)
    {
        var (workspace, _) = Shop([Bench.Add("potassium-nitrate", "10 g")], waters: [
            .. carbonate.Select((c, i) => Water($"{i}.water.json", $"{i}", 0.01 - c, c)).Reverse(),
            Water("", "built in", 0.01, 0.02), Water("empty.water.json", "empty", 0, 0) with { Values = [] },
        ]);
        var (tap, inside) = TapWater.Of(workspace);

        Assert.Equal(name, tap.Name);
        Assert.Equal(name, tap.Reference.Name);
        Assert.Equal(name == "medium hard tap water", tap.Assumed);
        Assert.Equal(tap.Assumed ? null : $"{name}.water.json", tap.Reference.File);
        Assert.Equal(workspace.Waters.Count + (tap.Assumed ? 1 : 0), inside.Waters.Count);
        Assert.Equal(tap.Assumed, inside.Waters.Any(w => w.Name == "medium hard tap water" && w.File.Length == 0 && w.Values.Count == 6));
    }

    /// <summary>A weight first, then what a dilution of the dose shows; a stock without a dose is looked at at 1:100.</summary>
    [Theory]
    [InlineData(null, 100)]
    [InlineData("1:200", 200)]
    [InlineData("1:2", 100)]
    [InlineData("1:3", 3)]
    [InlineData("3 mL/L", 333)]
    public void ReadingsAreTakenTheCheapestFirst(string? dose, double dilution)
    {
        var (_, stock) = Shop([Bench.Add("potassium-nitrate", "10 g"), Bench.TopUp("1 L")], dose: dose);

        Assert.Equal(
            [new(ReadingKind.Density, 1), new(ReadingKind.Conductivity, dilution), new(ReadingKind.Ph, dilution), new Reading(ReadingKind.Ph, 1)],
            SlipSearch.Cheap(stock));
    }

    private static IReadOnlyList<Slip> Of(params Step[] steps)
    {
        var (workspace, stock) = Shop(steps);
        return SlipList.Of(workspace, stock);
    }

    private static Step Add(string text, string id) => text.Split(' ', 2) is [var substance, var amount] ? Bench.Add(substance, amount, id: id) : throw new FormatException();

    private static WaterDocument Water(string file, string name, double calcium, double carbonate) => Waters.Tap() is var tap ? tap with
    {
        File = file,
        Name = name,
        Values =
        [
            tap.Values[0] with { Concentration = new(new(calcium), new(calcium)) }, tap.Values[1] with { Concentration = new(new(carbonate), new(carbonate)) },
        ],
    } : tap;

    private static (Workspace Workspace, StockFacts Stock) Shop(
        Step[] steps, StockDocument? other = null, WaterDocument[]? waters = null, string? dose = null)
    {
        var stock = Bench.Stock("a.stock.json", "1 L", steps);
        stock = stock with { Dose = dose is null ? null : new(Bench.DoseOf(dose), stock.Place) };
        var workspace = new Workspace
        {
            Stocks = [stock, .. other is null ? Array.Empty<StockDocument>() : [other]],
            Waters = waters ?? [],
            Catalogue = SubstanceCatalogue.BuiltIn,
            SettingsFor = _ => new ShopSettings(),
        };
        return (workspace, Analyzer.Analyse(workspace).Stocks.Single(s => s.Stock.File == "a.stock.json"));
    }
}

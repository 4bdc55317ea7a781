using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Every trait of a bottle that equilibrium does not speak of, with stocks that have it and that lack it.</summary>
public sealed class StockTraitsTests
{
    private const string Nitre = "potassium-nitrate 10 g in 1 L";

    [Theory]
    [InlineData(Nitre, "K+", true, "it holds potassium")]
    [InlineData(Nitre, "CO3-2", false, "the recipe brings no carbonate")]
    [InlineData(Nitre, "NO3-", true, "it holds nitrate")]
    [InlineData(Nitre, "B(OH)3", false, "the recipe brings no boron")]
    [InlineData("boric-acid 10 g in 1 L", "B(OH)3", true, "it holds boron")]
    [InlineData("potassium-silicate-29be 10 g in 1 L", "H4SiO4", true, "it holds silicate")]
    public void AnIonIsThereOrNot(string mix, string trait, bool holds, string because) => Hold(mix, trait, holds, because);

    [Theory]
    [InlineData("humic-acid 10 g in 1 L", "humate", true, "it holds humic acid extract (potassium humate)")]
    [InlineData("fulvic-acid 10 g in 1 L", "humate", true, "fulvic acid extract is humate")]
    [InlineData(Nitre, "humate", false, "the recipe holds no humate")]
    [InlineData(Nitre, "oxalate", false, "the recipe holds no oxalate or tartrate")]
    [InlineData("ammonium-thiosulfate-60 10 mL in 1 L", "thiosulfate", true, "it holds ammonium thiosulfate solution 60 %")]
    [InlineData(Nitre, "thiosulfate", false, "the recipe holds no thiosulfate or lime sulfur")]
    [InlineData("sodium-chloride 10 g in 1 L", "table-salt", true, "sodium chloride is a chloride that is sold with anticaking agent")]
    [InlineData("potassium-chloride 10 g in 1 L", "table-salt", true, "potassium chloride is a chloride that is sold with anticaking agent")]
    [InlineData("magnesium-chloride-6h2o 10 g in 1 L", "table-salt", false, "the recipe holds no chloride that is sold with anticaking agent")]
    [InlineData("calcium-nitrate-fertiliser 10 g in 1 L", "coated", true,
        "calcium nitrate, greenhouse fertiliser 15.5-0-0 + 19 Ca is prilled fertiliser with a conditioner")]
    [InlineData(Nitre, "coated", false, "the recipe holds no prilled fertiliser with a conditioner")]
    [InlineData("vinegar-5 10 mL in 1 L", "vinegar", true, "it holds household vinegar 5 %")]
    [InlineData("acetic-acid-80 10 mL in 1 L", "vinegar", false, "the recipe holds no vinegar")]
    public void ANameTells(string mix, string trait, bool holds, string because) => Hold(mix, trait, holds, because);

    [Theory]
    [InlineData("hydrogen-peroxide-3 10 mL in 1 L", "peroxide", true, "it holds hydrogen peroxide 3 %")]
    [InlineData(Nitre, "peroxide", false, "the recipe holds no peroxide")]
    [InlineData("sodium-hypochlorite-5 10 mL in 1 L", "hypochlorite", true,
        "sodium hypochlorite solution, 5 % available chlorine is bleach")]
    [InlineData(Nitre, "hypochlorite", false, "the recipe holds no bleach")]
    [InlineData("nitric-38 10 mL in 1 L", "nitric", true, "it holds nitric acid 38 %")]
    [InlineData("sodium-nitrite 10 g in 1 L", "nitric", true, "it holds sodium nitrite")]
    [InlineData("phosphoric-75 10 mL in 1 L", "nitric", false, "the recipe holds no nitric acid or nitrite")]
    [InlineData(Nitre, "sulfide-salt", false, "the recipe holds no sulfide")]
    [InlineData("phosphoric-75 10 mL in 1 L", "acid-or-lye", true, "it holds phosphoric acid 75 %")]
    [InlineData("koh-10 10 mL in 1 L", "acid-or-lye", true, "potassium hydroxide solution 10 % is a lye")]
    [InlineData(Nitre, "acid-or-lye", false, "the recipe holds neither an acid nor a lye")]
    [InlineData("tartrazine 0.1 g in 1 L", "dye", true, "Tartrazine is a dye")]
    [InlineData(Nitre, "dye", false, "the recipe holds no dye")]
    [InlineData("hydrogen-peroxide-3 10 mL in 1 L", "oxidiser", true, "hydrogen peroxide 3 % is an oxidiser")]
    [InlineData(Nitre, "oxidiser", false, "the recipe holds no oxidiser")]
    [InlineData("zn-edta 1 g in 1 L", "chelate", true, "zinc disodium EDTA is a chelate")]
    [InlineData(Nitre, "chelate", false, "the recipe holds no chelate")]
    [InlineData("fe-eddha-na 1 g in 1 L", "iron-chelate", true, "ferric sodium EDDHA is an iron chelate")]
    [InlineData("ferrous-gluconate-2h2o 1 g in 1 L", "iron-chelate", true, "iron(II) gluconate dihydrate is an iron chelate")]
    [InlineData("zn-edta 1 g in 1 L", "iron-chelate", false, "the recipe holds no iron chelate")]
    [InlineData("ferrous-sulfate-7h2o 1 g in 1 L", "iron-chelate", false, "the recipe holds no iron chelate")]
    [InlineData("calcium-carbonate 1 g in 1 L", "technical", true, "calcium carbonate is a technical grade")]
    [InlineData("vinegar-5 10 mL in 1 L", "technical", false, "the recipe holds no technical grade")]
    [InlineData(Nitre, "technical", false, "the recipe holds no technical grade")]
    [InlineData("urea 1 g in 1 L", "rots-to-ammonia", true, "it holds urea")]
    [InlineData("glycine 1 g in 1 L", "rots-to-ammonia", true, "glycine is an amino acid")]
    [InlineData("seaweed-extract 1 g in 1 L", "rots-to-ammonia", true, "it holds seaweed extract")]
    [InlineData("disodium-edta-2h2o 1 g in 1 L", "rots-to-ammonia", false, "the recipe holds neither urea nor an amino acid nor an extract")]
    public void WhatItIsTells(string mix, string trait, bool holds, string because) => Hold(mix, trait, holds, because);

    /// <summary>A later addition is looked at as well as the first.</summary>
    [Theory]
    [InlineData("potassium-nitrate 10 g, tartrazine 0.1 g in 1 L", "dye", "Tartrazine is a dye")]
    [InlineData("potassium-nitrate 10 g, sodium-chloride 1 g, potassium-chloride 1 g in 1 L", "table-salt",
        "sodium chloride is a chloride that is sold with anticaking agent")]
    public void TheFirstThatFitsIsNamed(string mix, string trait, string because) => Hold(mix, trait, true, because);

    [Theory]
    [InlineData("koh-10 2 mL in 1 L", "alkaline", true, "it is alkaline")]
    [InlineData(Nitre, "alkaline", false, "it is not alkaline")]
    [InlineData("nitric-38 2 mL in 1 L", "acid", true, "it is acid")]
    [InlineData(Nitre, "acid", false, "it is not acid")]
    [InlineData("monopotassium-phosphate 2 g in 1 L", "acid", false, "it is not acid")]
    [InlineData("nitric-38 2 mL in 1 L", "corrosive", true, "it is acid")]
    [InlineData("copper-sulfate-5h2o 1 g in 1 L", "corrosive", true, "it holds copper, which plates out on iron")]
    [InlineData("copper-sulfate-5h2o 1 g, nitric-38 2 mL in 1 L", "corrosive", true, "it holds copper, which plates out on iron")]
    [InlineData(Nitre, "corrosive", false, "it is neither acid nor does it hold copper")]
    [InlineData("koh-10 2 mL in 1 L", "reacts-with-hardness", true, "it holds what hard water clouds with")]
    [InlineData("monopotassium-phosphate 2 g in 1 L", "reacts-with-hardness", true, "it holds what hard water clouds with")]
    [InlineData("potassium-silicate-29be 1 mL, nitric-38 2 mL in 1 L", "reacts-with-hardness", true, "it holds what hard water clouds with")]
    [InlineData(Nitre, "reacts-with-hardness", false, "it holds nothing that hard water clouds with")]
    public void ThePhTells(string mix, string trait, bool holds, string because) => Hold(mix, trait, holds, because);

    [Theory]
    [InlineData("koh-10 2 mL, nitric-38 3 mL, potassium-bicarbonate 3 g in 1 L", "carbonate-with-acid", true,
        "nitric acid 38 % drives carbon dioxide out of potassium hydrogen carbonate")]
    [InlineData("potassium-bicarbonate 3 g in 1 L", "carbonate-with-acid", false, "no acid in the recipe drives carbon dioxide out of a carbonate")]
    public void WhatItHoldsTells(string mix, string trait, bool holds, string because) => Hold(mix, trait, holds, because);

    /// <summary>Acid that somebody put in drives the gas out as that of the recipe does.</summary>
    [Fact]
    public void AcidThatWentInCounts()
    {
        var stock = DiagnosisCase.StockOf("potassium-bicarbonate 3 g in 1 L");
        var traits = new StockTraits(stock, stock.Chemistry.Mixing, null, [new PutIn("??", null), new PutIn("acid", Bench.Substance("nitric-38"))]);

        Assert.Equal(new Trait(true, "nitric acid 38 % drives carbon dioxide out of potassium hydrogen carbonate"), traits.Of("carbonate-with-acid"));
    }

    [Theory]
    [InlineData("sucrose 20 g, sodium-hypochlorite-5 200 mL in 1 L", false, "it holds bleach, in which nothing grows", true)]
    [InlineData("sucrose 20 g, hydrogen-peroxide-30 200 mL in 1 L", false, "it holds strong peroxide, in which nothing grows while it lasts", false)]
    [InlineData("sucrose 20 g, nitric-60 100 mL in 1 L", false, "it is too acid for most growth", false)]
    [InlineData("citric-acid-h2o 2 g, copper-sulfate-5h2o 50 g in 1 L", false, "it holds so much free copper that hardly anything grows", false)]
    [InlineData("vinegar-10 800 mL in 1 L", false, "it is as strong in vinegar as a pickle", false)]
    [InlineData("potassium-hydroxide 20 g in 1 L", false, "it is too alkaline for growth", true)]
    [InlineData(Nitre, false, "nothing in the recipe feeds mould or bacteria", false)]
    [InlineData("sucrose 5 g, potassium-sorbate 1.5 g, citric-acid-h2o 3 g in 1 L", false, "it holds preservative enough", false)]
    [InlineData("sucrose 5 g in 1 L", true, "sucrose feeds growth and nothing preserves it", false)]
    [InlineData("sucrose 5 g, potassium-sorbate 0.1 g in 1 L", true, "sucrose feeds growth and the preservative is weak", false)]
    [InlineData("fe-edta-na-3h2o 5 g in 1 L", true, "ferric sodium EDTA trihydrate feeds growth a little and nothing preserves it", false)]
    [InlineData("disodium-edta-2h2o 5 g in 1 L", true, "disodium EDTA dihydrate feeds growth a little and nothing preserves it", false)]
    public void WhatFeedsGrowthIsJudgedByWhatKeepsIt(string mix, bool holds, string because, bool rulesOut)
    {
        var trait = Of(mix, "feeds");

        Assert.Equal((holds, because, rulesOut), (trait.Holds, trait.Because, trait.RulesOut));
        Assert.Equal(because.Contains("a little", StringComparison.Ordinal), trait.IsSlight);
    }

    [Fact]
    public void YeastLivesOnFoodAndNotOnAChelate()
    {
        Hold("fe-edta-na-3h2o 5 g in 1 L", "ferments", false, "it holds nothing that yeast lives on");
        Hold("sucrose 5 g in 1 L", "ferments", true, "sucrose feeds growth and nothing preserves it");
        Hold(Nitre, "ferments", false, "nothing in the recipe feeds mould or bacteria");
    }

    [Theory]
    [InlineData(LightExposure.Dark, false, "it is kept dark")]
    [InlineData(LightExposure.Light, true, "it is kept in the light")]
    [InlineData(LightExposure.Shade, null, "")]
    [InlineData(null, null, "")]
    public void LightIsWhatTheFileSays(LightExposure? light, bool? holds, string because)
    {
        var place = Place.Whole("a.stock.json");
        var stock = Bench.Analyse([Bench.Stock("a.stock.json", "1 L", Bench.Add("potassium-nitrate", "10 g")) with
        {
            Keep = new Keeping(null, null, light is { } there ? new Located<LightExposure>(there, place) : null),
        }]).Stocks.Single();

        Assert.Equal(new Trait(holds, because), new StockTraits(stock, stock.Chemistry.Mixing, null, []).Of("light"));
    }

    /// <summary>5.6 °dH of hydrogen carbonate, or of calcium with magnesium, is hard.</summary>
    [Theory]
    [InlineData(0.0005, 0.000, 0.00099, "its water is soft", false)]
    [InlineData(0.0005, 0.000, 0.001, "its water is hard", true)]
    [InlineData(0.001, 0.000, 0.0001, "its water is hard", true)]
    [InlineData(0.0006, 0.0005, 0.0001, "its water is hard", true)]
    [InlineData(0.0005, 0.0004, 0.0001, "its water is soft", false)]
    public void WaterIsHardFromAThousandthOfAMole(double calcium, double magnesium, double carbonate, string because, bool hard)
    {
        var trait = Watered(calcium, magnesium, carbonate, "tap.water.json");

        Assert.Equal(new Trait(hard, because), trait);
        Assert.Equal(trait, Watered(calcium, magnesium, carbonate, "distilled"));
    }

    [Fact]
    public void PureWaterIsKnownAsPure() => Hold(Nitre, "water-not-pure", false, "the recipe takes pure water");

    [Theory]
    [InlineData(0.5, false, true, "it stood at or below freezing")]
    [InlineData(0.6, false, false, "it did not stand in frost")]
    [InlineData(20.0, true, true, "there was ice in it")]
    [InlineData(null, false, false, "it did not stand in frost")]
    public void FrostIsWhereItStoodOrWhatWasSeen(double? seenAt, bool ice, bool holds, string because)
    {
        var stock = DiagnosisCase.StockOf(Nitre);
        var traits = new StockTraits(stock, stock.Chemistry.Mixing, seenAt is { } at ? new Temperature(at) : null, [], ice);

        Assert.Equal(new Trait(holds, because), traits.Of("frost"));
    }

    [Fact]
    public void ThereAreNoOtherTraits() => Assert.Throws<InvalidOperationException>(() => Of(Nitre, "luck"));

    /// <summary>A stock of which a line could not be read may hold anything.</summary>
    [Fact]
    public void WhatAnIncompleteStockLacksIsNotKnown()
    {
        var stock = Bench.Analyse([Bench.Stock("a.stock.json", "1 L", Bench.Add("potassium-nitrate", "10 g")) with { IsComplete = false }]).Stocks.Single();

        Assert.Equal(new Trait(null, "the recipe holds no dye"), new StockTraits(stock, stock.Chemistry.Mixing, null, []).Of("dye"));
    }

    /// <summary>Half of it in water of this hardness, the rest in that of the top-up.</summary>
    private static Trait Watered(double calcium, double magnesium, double carbonate, string first)
    {
        var tap = Waters.Tap();
        WaterValue Value(string component, double moles) => tap.Values[0] with
        {
            Component = component,
            Concentration = new(new(moles), new(moles)),
        };
        var water = tap with { Values = [Value("Ca+2", calcium), Value("Mg+2", magnesium), Value("CO3-2", carbonate)] };
        var stock = Bench.Analyse(
            [Bench.Stock("a.stock.json", "1 L", Bench.Pour("500 mL", first), Bench.Add("potassium-nitrate", "10 g"), Bench.TopUp("1 L", "tap.water.json"))],
            waters: [water]).Stocks.Single();
        return new StockTraits(stock, stock.Chemistry.Mixing, null, []).Of("water-not-pure");
    }

    private static void Hold(string mix, string trait, bool? holds, string because) => Assert.Equal(new Trait(holds, because), Of(mix, trait));

    private static Trait Of(string mix, string trait)
    {
        var stock = DiagnosisCase.StockOf(mix);
        return new StockTraits(stock, stock.Chemistry.Mixing, null, []).Of(trait);
    }
}

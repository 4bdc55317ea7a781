using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Tests.Tanks;

/// <summary>Every trait of a tank that equilibrium does not speak of, with recipes that have it and that lack it.</summary>
public sealed class TankTraitsTests
{
    [Theory]
    [InlineData("salty")]
    [InlineData("feeds-algae")]
    public void WhatHoldsOfEveryFeedTellsNone(string trait) => Assert.True(TankTraits.IsOfEveryFeed(trait));

    [Theory]
    [InlineData("feeds")]
    [InlineData("sulfate")]
    [InlineData("Ca+2")]
    public void WhatHoldsOfSomeFeedsTells(string trait) => Assert.False(TankTraits.IsOfEveryFeed(trait));

    [Theory]
    [InlineData("potassium-nitrate", "K+", true, "the feed holds potassium")]
    [InlineData("potassium-nitrate", "NO3-", true, "the feed holds nitrate")]
    [InlineData("potassium-silicate-29be", "H4SiO4", true, "the feed holds silicate")]
    [InlineData("potassium-nitrate", "Ca+2", false, "neither feed nor water brings calcium")]
    [InlineData("potassium-nitrate", "salty", true, "any feed leaves its salts where it dries")]
    [InlineData("potassium-sulfate", "feeds-algae", true, "nitrogen and phosphate feed algae wherever light falls in")]
    [InlineData("potassium-sulfate", "sulfate", true, "the feed holds sulfate, which microbes without air turn to sulfide")]
    [InlineData("potassium-nitrate", "sulfate", false, "the feed holds no sulfate")]
    [InlineData("hydrogen-peroxide-3", "peroxide", true, "hydrogen peroxide 3 % gives off oxygen")]
    [InlineData("potassium-nitrate", "peroxide", false, "the recipe holds no peroxide")]
    [InlineData("seaweed-extract", "extract", true, "seaweed extract is an extract")]
    [InlineData("potassium-nitrate", "extract", false, "the recipe holds no extract")]
    [InlineData("sucrose", "feeds", true, "sucrose feeds microbes")]
    [InlineData("zn-edta", "feeds", true, "zinc disodium EDTA feeds microbes")]
    [InlineData("disodium-edta-2h2o", "feeds", true, "disodium EDTA dihydrate feeds microbes")]
    [InlineData("urea", "feeds", true, "urea feeds microbes")]
    [InlineData("potassium-nitrate", "feeds", false, "nothing in the feed but its nutrients keeps microbes alive")]
    [InlineData("potassium-nitrate", "dry-doses", true, "salts go into the tank dry")]
    [InlineData("nitric-38", "dry-doses", false, "nothing goes into the tank dry")]
    [InlineData("potassium-nitrate", "well", false, "its water is pure")]
    [InlineData("potassium-nitrate", "hard-water", false, "the source water brings no alkalinity")]
    [InlineData("potassium-nitrate", "iron-water", false, "the source water brings no iron")]
    [InlineData("potassium-nitrate", "manganese-water", false, "the source water brings no manganese")]
    [InlineData("potassium-nitrate", "bicarbonate", false, "neither water nor feed brings bicarbonate")]
    public void WhatIsDosedTells(string substance, string trait, bool holds, string because) =>
        Assert.Equal(new Trait(holds, because), new TankTraits(Bench.RecipeOf("100 L", Bench.Direct(substance, Amount(substance)))).Of(trait));

    /// <summary>What comes in a stock is looked through to its last addition; a stock is no dry dose.</summary>
    [Theory]
    [InlineData("extract", true, "seaweed extract is an extract")]
    [InlineData("feeds", true, "seaweed extract feeds microbes")]
    [InlineData("dry-doses", false, "nothing goes into the tank dry")]
    [InlineData("peroxide", false, "the recipe holds no peroxide")]
    public void WhatIsInAStockTells(string trait, bool holds, string because)
    {
        var stock = Bench.Stock(
            "a.stock.json", "1 L", Bench.Pour("800 mL"), Bench.Add("potassium-nitrate", "10 g"), Bench.Add("seaweed-extract", "10 mL"), Bench.TopUp("1 L"));
        var recipe = Bench.Analyse([stock], Bench.Recipe("100 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", "1:100"))).Recipes.Single();

        Assert.Equal(new Trait(holds, because), new TankTraits(recipe).Of(trait));
    }

    /// <summary>From 1 meq/L, 0.3 mg/L of iron and 0.1 mg/L of manganese on a water clogs drippers.</summary>
    [Theory]
    [InlineData("HCO3", 61.02, "hard-water", true, "the source water brings 1 meq/L alkalinity")]
    [InlineData("HCO3", 60.9, "hard-water", false, "the source water brings only 1 meq/L alkalinity")]
    [InlineData("HCO3", 24.4, "hard-water", false, "the source water brings only 0.4 meq/L alkalinity")]
    [InlineData("Fe", 0.301, "iron-water", true, "the source water brings 0.3 mg/L iron")]
    [InlineData("Fe", 0.29, "iron-water", false, "the source water brings only 0.29 mg/L iron")]
    [InlineData("Mn", 0.101, "manganese-water", true, "the source water brings 0.1 mg/L manganese")]
    [InlineData("Mn", 0.09, "manganese-water", false, "the source water brings only 0.09 mg/L manganese")]
    [InlineData("Mn", 0.09, "iron-water", false, "the source water brings no iron")]
    [InlineData("HCO3", 24.4, "well", null, "")]
    [InlineData("HCO3", 61.02, "bicarbonate", true,
        "the tank holds 1 meq/L alkalinity, which acid turns into up to 44 mg or 24 mL of carbon dioxide in each litre")]
    [InlineData("HCO3", 18.32, "bicarbonate", true,
        "the tank holds 0.3 meq/L alkalinity, which acid turns into up to 13 mg or 7 mL of carbon dioxide in each litre")]
    [InlineData("HCO3", 17.7, "bicarbonate", false,
        "the tank holds only 0.29 meq/L alkalinity, which acid turns into up to 13 mg or 7 mL of carbon dioxide in each litre")]
    public void WhatTheWaterBringsTells(string ion, double milligrams, string trait, bool? holds, string because) =>
        Assert.Equal(new Trait(holds, because), new TankTraits(Tank.Of(100, [(ion, milligrams)], [("potassium-nitrate", "1 g")])).Of(trait));

    [Fact]
    public void ThereAreNoOtherTraits() => Assert.Throws<InvalidOperationException>(
        () => new TankTraits(Bench.RecipeOf("100 L", Bench.Direct("potassium-nitrate", "10 g"))).Of("luck"));

    private static string Amount(string substance) => Bench.Substance(substance).Form == Chemistry.Substances.PhysicalForm.Liquid ? "100 mL" : "100 g";
}

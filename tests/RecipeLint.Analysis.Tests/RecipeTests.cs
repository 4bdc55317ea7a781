using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests;

public sealed class RecipeTests
{
    private static readonly StockDocument A = Bench.Stock("a.stock.json", "10 L", Bench.Add("calcium-nitrate-4h2o", "1180.7 g"), Bench.TopUp("10 L"));
    private static readonly StockDocument B = Bench.Stock("b.stock.json", "10 L", Bench.Add("magnesium-sulfate-7h2o", "492.9 g"), Bench.TopUp("10 L"));
    private static readonly StockDocument Trace = Bench.Stock(
        "trace.stock.json",
        "1 L",
        Bench.Add("boric-acid", "2.86 g"),
        Bench.Add("manganese-sulfate-h2o", "1.54 g"),
        Bench.Add("zinc-sulfate-7h2o", "0.22 g"),
        Bench.Add("copper-sulfate-5h2o", "0.08 g"),
        Bench.Add("sodium-molybdate-2h2o", "0.03 g"));

    [Fact]
    public void DosesMadeUpWithWaterLeaveTheStatedVolume()
    {
        var facts = Mix("1 L", FinalVolumeMeaning.MadeUp, "10 mL/L", "10 mL/L", "1 mL/L");

        Assert.Equal(1, facts.FinalVolume.Litres, 12);
        Assert.Equal(0.979, facts.WaterVolume.Litres, 12);
    }

    [Fact]
    public void ThreeDosesPouredIntoALitreMakeMoreAndLeaveEverythingTwoPerCentLow()
    {
        // 10 + 9 + 1 mL into 1 L of water make 1.02 L.
        var madeUp = Mix("1 L", FinalVolumeMeaning.MadeUp, "10 mL/L", "9 mL/L", "1 mL/L");
        var addedTo = Mix("1 L", FinalVolumeMeaning.AddedTo, "10 mL/L", "9 mL/L", "1 mL/L");

        Assert.Equal(1.02, addedTo.FinalVolume.Litres, 12);
        Assert.Equal(1, addedTo.WaterVolume.Litres, 12);
        Assert.Equal(madeUp.Elements.Keys, addedTo.Elements.Keys);
        foreach (var key in madeUp.Elements.Keys)
        {
            Assert.Equal(1 / 1.02, addedTo.MilligramsPerLitre(key) / madeUp.MilligramsPerLitre(key), 9);
        }
    }

    [Fact]
    public void AnUnsaidVolumeMeaningIsMadeUpAndListed()
    {
        var facts = Mix("1 L", null, "10 mL/L", "10 mL/L", "1 mL/L");

        Assert.Equal(1, facts.FinalVolume.Litres, 12);
        Assert.Contains(facts.Assumptions, a => a.Key == "volume-meaning");
    }

    // Common practice, no source: 1:1000 means 250 mL serves 250 L, and 1 L serves 1 m3.
    [Theory]
    [InlineData("250 L", 0.25)]
    [InlineData("1 m3", 1.0)]
    public void OneInAThousandServesAThousandfold(string final, double litres)
    {
        var recipe = Bench.Recipe(final, FinalVolumeMeaning.MadeUp, Bench.Dose("trace.stock.json", "1:1000"));
        var dose = Bench.Analyse([Trace], recipe).Recipes.Single().Doses.Single();

        Assert.Equal(litres, dose.Volume.Litres, 12);
        Assert.Equal(1, dose.Dose!.Value.MillilitresPerLitre, 12);
    }

    // Common practice, no source: 1 mL/L is about 3.8 mL for a US gallon.
    [Fact]
    public void OneMillilitreALitreIsNearlyFourAGallon()
    {
        var recipe = Bench.Recipe("1 US gal", FinalVolumeMeaning.MadeUp, Bench.Dose("trace.stock.json", "1 mL/L"));

        Assert.Equal(3.785, Bench.Analyse([Trace], recipe).Recipes.Single().Doses.Single().Volume.Millilitres, 3);
    }

    // Common practice, no source: 1.1 mL/L instead of 1 mL/L is 10 % more of every micronutrient.
    [Fact]
    public void ATenthTooMuchTraceStockIsATenthMoreOfEveryMicronutrient()
    {
        var right = Mix("100 L", FinalVolumeMeaning.MadeUp, "10 mL/L", "10 mL/L", "1 mL/L");
        var slip = Mix("100 L", FinalVolumeMeaning.MadeUp, "10 mL/L", "10 mL/L", "1.1 mL/L");

        foreach (var key in new[] { "B", "Mn", "Zn", "Cu", "Mo" })
        {
            Assert.True(right.MilligramsPerLitre(key) > 0, key);
            Assert.Equal(1.1, slip.MilligramsPerLitre(key) / right.MilligramsPerLitre(key), 9);
        }

        Assert.Equal(right.MilligramsPerLitre("Ca"), slip.MilligramsPerLitre("Ca"), 9);
    }

    [Fact]
    public void DosesComeFromWhatIsStatedFirst()
    {
        var shop = new ShopSettings
        {
            Measures = [new Measure("syringe-60", Place.Whole("recipelint.json"), MeasureKind.Syringe, Volume.FromMillilitres(60), null, null)],
        };
        var own = Trace with { Dose = new Located<Dose>(Bench.DoseOf("1 mL/L"), Trace.Place) };

        Assert.Equal((0.2, DoseBasis.StockOwn), Poured(Bench.Dose("trace.stock.json")));
        Assert.Equal((0.24, DoseBasis.Strokes), Poured(Bench.Dose("trace.stock.json", strokes: 4, with: "syringe-60")));
        Assert.Equal((0.25, DoseBasis.Volume), Poured(Bench.Dose("trace.stock.json", amount: "250 mL", strokes: 4, with: "syringe-60")));
        Assert.Equal((0.4, DoseBasis.Stated), Poured(Bench.Dose("trace.stock.json", dose: "1:500", strokes: 4, with: "syringe-60")));
        Assert.Equal((0.2, DoseBasis.StockOwn), Poured(Bench.Dose("trace.stock.json", strokes: 4, with: "spoon")));

        (double Litres, DoseBasis Basis) Poured(DoseEntry entry)
        {
            var dose = Bench.Analyse([own], Bench.Recipe("200 L", FinalVolumeMeaning.MadeUp, entry), shop).Recipes.Single().Doses.Single();
            return (Math.Round(dose.Volume.Litres, 9), dose.Basis);
        }
    }

    [Fact]
    public void ADoseThatNothingStatesLeavesTheRecipeIncomplete()
    {
        var recipe = Bench.Recipe("200 L", FinalVolumeMeaning.MadeUp, Bench.Dose("trace.stock.json"), Bench.Dose("nowhere.stock.json", "1 mL/L"));
        var facts = Bench.Analyse([Trace], recipe).Recipes.Single();

        Assert.False(facts.IsComplete);
        Assert.Empty(facts.Doses);
    }

    [Fact]
    public void ContributionsAddUpAndNameWhoBringsWhat()
    {
        var recipe = Bench.Recipe(
            "100 L", FinalVolumeMeaning.MadeUp, Bench.Dose("a.stock.json", "10 mL/L"), Bench.Direct("potassium-nitrate", "200 mg/L")) with
        {
            Water = new Located<WaterReference>(new("tap.water.json", "tap.water.json"), Place.Whole("tank.recipe.json").Child("water")),
        };
        var facts = Bench.Analyse([A], recipe, waters: Waters.Tap()).Recipes.Single();

        Assert.All(facts.Elements.Values, e =>
            Assert.Equal(e.Concentration.MilligramsPerLitre, e.Contributions.Sum(c => c.Concentration.MilligramsPerLitre), 9));
        var calcium = facts.Elements["Ca"].Contributions;
        Assert.Equal(["a", "water"], calcium.Select(c => c.Source));
        Assert.Equal("calcium nitrate tetrahydrate in 'a'", calcium[0].Label);
        Assert.Equal("/ions/Ca", calcium[1].Place.Pointer.Value);

        // 2 mmol/L in 99 of 100 L.
        Assert.Equal(0.99 * 2, facts.Elements["Ca"].Molar.MillimolesPerLitre - (calcium[0].Concentration.MilligramsPerLitre / 40.078), 6);
        Assert.Equal(["a", "potassium-nitrate"], facts.Elements["NO3-N"].Contributions.Select(c => c.Source));
    }

    [Fact]
    public void NitrogenComesByFormAndChelateNitrogenStandsApart()
    {
        var facts = Bench.RecipeOf(
            "1 L",
            Bench.Direct("ammonium-nitrate", "80 mg/L"),
            Bench.Direct("urea", "30 mg/L"),
            Bench.Direct("fe-edta-na-3h2o", "20 mg/L"));

        Assert.Equal(facts.MilligramsPerLitre("NO3-N"), facts.MilligramsPerLitre("NH4-N"), 9);

        // Urea is 46.6 % N.
        Assert.Equal(30 * 0.466, facts.MilligramsPerLitre("urea-N"), 1);
        Assert.True(facts.MilligramsPerLitre("organic-N") > 1);
        Assert.Equal(
            facts.MilligramsPerLitre("NO3-N") + facts.MilligramsPerLitre("NH4-N") + facts.MilligramsPerLitre("urea-N"),
            facts.MilligramsPerLitre("N"),
            9);
        Assert.DoesNotContain(facts.Elements.Keys, k => k is "H" or "O" or "C");
    }

    [Fact]
    public void TheChargeOfARecipeOfSaltsCloses()
    {
        string[] salts =
        [
            "calcium-nitrate-4h2o", "potassium-nitrate", "monopotassium-phosphate", "magnesium-sulfate-7h2o", "potassium-sulfate", "ammonium-nitrate",
            "monoammonium-phosphate", "potassium-chloride", "manganese-sulfate-h2o", "zinc-sulfate-7h2o", "copper-sulfate-5h2o", "boric-acid",
            "sodium-molybdate-2h2o", "disodium-edta-2h2o", "fe-edta-na-3h2o", "potassium-bicarbonate",
        ];
        var free = salts.Except(["disodium-edta-2h2o"]);
        foreach (var (salt, i) in salts.Select((s, i) => (s, i)))
        {
            var one = Bench.RecipeOf("1 L", Bench.Direct(salt, "1 mmol/L")).Charge;
            Assert.True(Math.Abs(one.Unassigned.EquivalentsPerLitre) < 1e-12, salt);
            Assert.True(Math.Abs(one.Unexplained.EquivalentsPerLitre) < 1e-12, salt);
        }

        var mixed = Bench.RecipeOf("1 L", [.. free.Select((s, i) => Bench.Direct(s, $"{i + 1} mmol/L"))]).Charge;
        Assert.Equal(0, mixed.Unassigned.EquivalentsPerLitre / mixed.Cations.EquivalentsPerLitre, 1e-9);
        Assert.Equal(0, mixed.Unexplained.EquivalentsPerLitre / mixed.Cations.EquivalentsPerLitre, 1e-9);
    }

    [Theory]
    [InlineData("nitric-38", "1 mmol/L", -1)]
    [InlineData("sulfuric-96", "1 mmol/L", -2)]
    [InlineData("phosphoric-75", "1 mmol/L", -1)]
    [InlineData("potassium-hydroxide", "1 mmol/L", 1)]
    [InlineData("dipotassium-phosphate", "1 mmol/L", 1)]
    public void WhatAcidOrAlkaliPutsInIsTheUnassignedCharge(string substance, string amount, double milliequivalents)
    {
        var charge = Bench.RecipeOf("1 L", Bench.Direct(substance, amount)).Charge;

        Assert.Equal(milliequivalents, charge.Unassigned.MilliequivalentsPerLitre, 9);
        Assert.Equal(0, charge.Unexplained.MilliequivalentsPerLitre, 9);
    }

    [Fact]
    public void ChelatingFreeMetalSetsTheAcidOfTheAgentFree()
    {
        var charge = Bench.RecipeOf("1 L", Bench.Direct("disodium-edta-2h2o", "1 mmol/L"), Bench.Direct("zinc-sulfate-7h2o", "1 mmol/L"));

        Assert.Equal(-2, charge.Charge.Unassigned.MilliequivalentsPerLitre, 9);
        Assert.Contains(charge.Ions, i => i is { Name: "Zn+2·EDTA-4", Charge: -2 });
    }

    // Published ion table of Hoagland solution 2 (helmer-borgmann.ch, umol/L): NO3 14000, NH4 1000, K 6000, Ca 4000, Mg 2000, SO4 2000, PO4 1000:
    // 19 meq/L of cations and of anions.
    [Fact]
    public void MilliequivalentsOfAPublishedSolutionFollow()
    {
        var facts = Bench.RecipeOf(
            "1 L",
            Bench.Direct("monoammonium-phosphate", "1 mmol/L"),
            Bench.Direct("potassium-nitrate", "6 mmol/L"),
            Bench.Direct("calcium-nitrate-4h2o", "4 mmol/L"),
            Bench.Direct("magnesium-sulfate-7h2o", "2 mmol/L"));

        Assert.Equal(19, facts.Charge.Cations.MilliequivalentsPerLitre, 9);
        Assert.Equal(19, facts.Charge.Anions.MilliequivalentsPerLitre, 9);
        Assert.Equal(14, -facts.Ions.Single(i => i.Name == "NO3-").ChargeConcentration.MilliequivalentsPerLitre, 9);
    }

    [Theory]
    [InlineData("lettuce", null, "leafy-greens")]
    [InlineData(null, "Tomato", "tomato")]
    [InlineData("basil", "tomato", "herbs")]
    [InlineData("moon flower", null, "generic")]
    [InlineData(null, null, "generic")]
    public void TheProfileIsThatOfTheCropThenOfTheShopThenGeneric(string? crop, string? shopProfile, string expected)
    {
        var place = Place.Whole("tank.recipe.json");
        var recipe = Bench.Recipe("1 L", FinalVolumeMeaning.MadeUp, Bench.Direct("potassium-nitrate", "1 g")) with
        {
            Crop = crop is null ? null : new Located<string>(crop, place.Child("crop")),
        };
        var shop = new ShopSettings { Profile = shopProfile is null ? null : new Located<string>(shopProfile, Place.Whole("recipelint.json")) };
        var facts = Bench.Analyse([], recipe, shop).Recipes.Single();

        Assert.Equal(expected, facts.Profile.Name);
        Assert.Equal(expected == "generic", facts.Assumptions.Any(a => a.Key == "profile"));
    }

    [Fact]
    public void ARecipeRestsOnTheAssumptionsOfItsStocks()
    {
        var facts = Mix("1 L", FinalVolumeMeaning.MadeUp, "10 mL/L", "10 mL/L", "1 mL/L");

        Assert.Equal(3, facts.Assumptions.Count(a => a.Key == "assay"));
        Assert.DoesNotContain(facts.Assumptions, a => a.Key == "storage-temperature");
    }

    [Fact]
    public void DosesThatExceedTheFinalVolumeAreSaidAndStayFinite()
    {
        var facts = Mix("1 L", FinalVolumeMeaning.MadeUp, "600 mL/L", "600 mL/L", "1 mL/L");

        Assert.Equal(1.201, facts.FinalVolume.Litres, 9);
        Assert.Equal(0, facts.WaterVolume.Litres);
        Assert.Contains(facts.Assumptions, a => a.Key == "doses-exceed-final");
    }

    private static RecipeFacts Mix(string final, FinalVolumeMeaning? meaning, string a, string b, string trace) =>
        Bench.Analyse(
            [A, B, Trace],
            Bench.Recipe(final, meaning, Bench.Dose("a.stock.json", a), Bench.Dose("b.stock.json", b), Bench.Dose("trace.stock.json", trace)))
        .Recipes.Single();
}

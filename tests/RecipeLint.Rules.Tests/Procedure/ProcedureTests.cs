using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Procedure;

/// <summary>What the procedure rules compute, held against handbooks and pocket-calculator arithmetic; the folders hold what they say.</summary>
public sealed class ProcedureTests
{
    private static double Value(Finding finding, string name) => finding.Values.Single(v => v.Name == name).Value;

    /// <summary>
    /// Volume of what is in the vessel against the density of 10 % solutions at 20 °C (CRC Handbook of Chemistry and Physics, Concentrative
    /// Properties of Aqueous Solutions): potassium nitrate 1.0627, magnesium sulfate 1.1034, potassium hydroxide 1.0873 g/mL; 1000 g each.
    /// Water is 0.9982 g/mL; the crystal water of Epsom salt counts as water, and the lye is bought as 10 %.
    /// </summary>
    [Theory]
    [InlineData("""{"pour": "901.6 mL"}, {"add": "potassium-nitrate", "amount": "100 g", "assay": "100 %"}""", 1.0627)]
    [InlineData("""{"pour": "796.7 mL"}, {"add": "magnesium-sulfate-7h2o", "amount": "204.77 g", "assay": "100 %"}""", 1.1034)]
    [InlineData("""{"pour": "1 mL"}, {"add": "koh-10", "amount": "999 g"}""", 1.0873)]
    public void VolumeInTheVesselFollowsTheHandbook(string steps, double density)
    {
        var finding = Assert.Single(Workbench.Judge("no-final-volume-step", steps, "2 L"));
        Assert.Equal(1 / density, Value(finding, "volume"), 0.005);
    }

    /// <summary>Potassium nitrate: 31.6 g in 100 g of water at 20 °C (CRC Handbook, 98th ed.: 24.0 % by mass).</summary>
    [Fact]
    public void WaterHoldsWhatTheSolubilityTableSays()
    {
        var finding = Assert.Single(Workbench.Judge(
            "too-little-water-to-dissolve",
            """{"pour": "500 mL"}, {"add": "potassium-nitrate", "amount": "200 g"}, {"stir": "well"}, {"topUp": "1 L"}"""));
        Assert.Equal(0.316 * 499.1, Value(finding, "dissolves"), 2.0);
        Assert.Equal(200 / 0.316 / 1000, Value(finding, "water needed"), 0.01);
    }

    [Theory]
    [InlineData("""{"warm": "to 50 °C"}, {"stir": "well"}""")]
    [InlineData("""{"stir": "well"}, {"warm": "to 50 °C"}""")]
    [InlineData("""{"pour": "300 mL"}, {"stir": "well"}""")]
    public void WarmthOrMoreWaterBeforeTheTopUpDissolvesIt(string then) =>
        Assert.Empty(Workbench.Judge(
            "too-little-water-to-dissolve",
            $$"""{"pour": "500 mL"}, {"add": "potassium-nitrate", "amount": "200 g"}, {{then}}, {"topUp": "1 L"}"""));

    /// <summary>Solids weighed into a dry bottle wait for the water that comes next.</summary>
    [Fact]
    public void ADryBottleIsNotTooLittleWater() =>
        Assert.Empty(Workbench.Judge("too-little-water-to-dissolve", """{"add": "potassium-nitrate", "amount": "200 g"}, {"topUp": "1 L"}"""));

    /// <summary>Past the solubility in the finished volume too: that is one finding, of the rule on solubility.</summary>
    [Fact]
    public void WhatNeverDissolvesIsLeftToTheRuleOnSolubility() =>
        Assert.Empty(Workbench.Judge(
            "too-little-water-to-dissolve",
            """{"pour": "500 mL"}, {"add": "potassium-nitrate", "amount": "500 g"}, {"stir": "well"}, {"topUp": "1 L"}"""));

    /// <summary>
    /// 1.5 mol (151.65 g) of potassium nitrate in 1 kg of water take 1.5 × 34.8 kJ (NBS tables 1982); water takes 4.18 kJ/(kg K): 12.5 K.
    /// </summary>
    [Fact]
    public void CoolingIsHeatOverHeatCapacity()
    {
        const string steps = """{"pour": "1001.8 mL"}, {"add": "potassium-nitrate", "amount": "151.65 g"}, {"stir": "well"}, {"topUp": "1.5 L"}""";
        Assert.Empty(Workbench.Judge("cools-on-dissolving", steps, "1.5 L"));

        var more = steps.Replace("151.65", "202.2", StringComparison.Ordinal);
        var finding = Assert.Single(Workbench.Judge("cools-on-dissolving", more, "1.5 L"));
        Assert.Equal(2 * 34.8 / 4.18, Value(finding, "cooling"), 0.1);
    }

    /// <summary>Heat that calcium chloride gives makes up for what a nitrate takes (common practice, no source).</summary>
    [Fact]
    public void WhatWarmsMakesUpForWhatCools() =>
        Assert.Empty(Workbench.Judge(
            "cools-on-dissolving",
            """{"pour": "800 mL"}, {"add": "calcium-chloride-anhydrous", "amount": "100 g"}, {"add": "potassium-nitrate", "amount": "150 g"}, {"topUp": "1 L"}"""));

    /// <summary>Gypsum dissolves to about 2.6 g/L (15.1 mmol/L, Marshall and Slusher 1966), so 5 mmol/L of each stays clear and 50 does not.</summary>
    [Fact]
    public void CalciumAndSulfateMayMeetInEnoughWater()
    {
        const string salts = """{"add": "calcium-nitrate-4h2o", "amount": "11.8 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "12.3 g"}, {"topUp": "10 L"}""";
        Assert.Empty(Workbench.Judge("concentrate-onto-concentrate", """{"pour": "9 L"}, """ + salts, "10 L"));

        var finding = Assert.Single(Workbench.Judge("concentrate-onto-concentrate", """{"pour": "1 L"}, """ + salts, "10 L"));
        Assert.Equal("steps/magnesium-sulfate-7h2o", finding.IdPath);
        Assert.InRange(Value(finding, "water needed"), 1.3, 4);
    }

    /// <summary>A stock that clouds when finished is one finding, of the precipitation family.</summary>
    [Fact]
    public void WhatCloudsInTheEndIsNotAMatterOfOrder() =>
        Assert.Empty(Workbench.Judge(
            "concentrate-onto-concentrate",
            """{"pour": "800 mL"}, {"add": "calcium-nitrate-4h2o", "amount": "100 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "100 g"}, {"topUp": "1 L"}"""));

    /// <summary>Ferrous iron lasts at pH 4 to 5 and rusts within minutes above 7.5 (Stumm and Lee 1961, recalled).</summary>
    [Fact]
    public void FerrousIronInPureWaterWaitsForItsAcid() =>
        Assert.Empty(Workbench.Judge(
            "metal-before-chelate-or-acid",
            """{"pour": "900 mL"}, {"add": "ferrous-sulfate-7h2o", "amount": "5 g"}, {"add": "citric-acid-h2o", "amount": "10 g"}, {"topUp": "1 L"}"""));

    /// <summary>A list of contents without any water says nothing of the order.</summary>
    [Fact]
    public void ACompositionIsNoProcedure() =>
        Assert.Empty(Workbench.JudgeAll("""{"add": "potassium-nitrate", "amount": "80 g"}, {"add": "potassium-sulfate", "amount": "50 g"}"""));

    [Fact]
    public void LabelRulesLookAtBenchSheetsOnly()
    {
        const string steps = """{"pour": "800 mL"}, {"add": "sodium-molybdate-2h2o", "amount": "0.12 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "150 g", "assay": "96 %"}, {"topUp": "1 L"}""";
        Assert.Empty(Workbench.JudgeAll(steps));
        Assert.Equal(
            ["label-incomplete", "missing-rinse-for-small-weight", "no-filter-after-technical-sulfate"],
            Workbench.JudgeAll(steps, more: "\"use\": \"bench\",").Select(f => f.Rule.Name).Order());
    }
}

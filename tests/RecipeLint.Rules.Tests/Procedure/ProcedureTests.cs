using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Procedure;

/// <summary>What the procedure rules compute, held against handbooks and pocket-calculator arithmetic; the folders hold what they say.</summary>
public sealed class ProcedureTests
{
    /// <summary>A mark that cannot be read, or one that is met and passed within the tolerance: nothing follows the top-up, and nothing may throw.</summary>
    [Fact]
    public void AVesselTooFullBeforeItsLastTopUpIsSaidThere()
    {
        var finding = Assert.Single(Workbench.Judge("topped-up-past-volume", """{"pour": "520 mL"}, {"pour": "500 mL"}, {"topUp": "1010 mL"}"""));
        Assert.Contains("the vessel already holds about 1.02 L", finding.Message, StringComparison.Ordinal);
        Workbench.Judge("topped-up-past-volume", """{"pour": "750 mL"}, {"pour": "750 mL"}, {"topUp": "to the mark"}""");
        for (var poured = 80; poured < 140; poured += 3)
        {
            for (var mark = 80; mark < 140; mark += 3)
            {
                Workbench.Judge("topped-up-past-volume", FormattableString.Invariant($$"""{"pour": "{{poured * 5}} mL"}, {"pour": "{{poured * 5}} mL"}, {"topUp": "{{mark * 10}} mL"}"""));
            }
        }
    }

    /// <summary>Two salts before any water: nothing meets in water, and the working says so.</summary>
    [Fact]
    public void SaltsBeforeAnyWaterAreExplained()
    {
        var explained = Workbench.Explain(
            "concentrate-onto-concentrate",
            """{"add": "calcium-nitrate-4h2o", "amount": "5 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "5 g"}, {"pour": "9 L"}, {"topUp": "10 L"}""",
            "10 L");
        Assert.Empty(explained.Findings);
        Assert.NotEmpty(explained.Workings);
    }

    /// <summary>400 stocks, each with a thousand times the one before: no amount is a number any more, and the rule still answers.</summary>
    [Fact]
    public void StocksDrawnFromEachOtherPastAllNumbersDoNotThrow()
    {
        var files = Enumerable.Range(0, 400).Select(i => (
            Name: $"s{i}.stock.json",
            Text: $$$"""{"format": 1, "makes": "1 mL", "steps": [{"pour": "1 mL"}, {{{(i == 0 ? "" : $$"""{"add": "s{{i - 1}}.stock.json", "amount": "1 L"}, """)}}}{"add": "potassium-nitrate", "amount": "900 kg"}, {"topUp": "1 mL"}]}"""));
        Workbench.JudgeFiles("too-little-water-to-dissolve", [.. files]);
    }

    /// <summary>Who follows the advice on water gets the next finding and not silence: saturated potassium nitrate chills its water by some 25 K.</summary>
    [Fact]
    public void TheAdvisedWaterDoesNotSilenceTheChill()
    {
        for (var grams = 1500; grams <= 2600; grams += 20)
        {
            string Steps(string pour) => FormattableString.Invariant($$"""{"pour": "{{pour}}"}, {"add": "potassium-nitrate", "amount": "{{grams}} g"}, {"stir": "well"}, {"topUp": "10 L"}""");
            var dry = Assert.Single(Workbench.Judge("too-little-water-to-dissolve", Steps("2 L"), "10 L"));
            var advised = System.Text.RegularExpressions.Regex.Match(dry.Message, @"Pour at least ([0-9.]+ L)").Groups[1].Value;
            Assert.Empty(Workbench.Judge("too-little-water-to-dissolve", Steps(advised), "10 L"));
            Assert.True(Workbench.Judge("cools-on-dissolving", Steps(advised), "10 L").Count == 1, $"{grams} g in {advised}");
        }
    }

    /// <summary>
    /// 0.83 kg of ammonium nitrate in a litre: the heats at infinite dilution add up to 63 K, but water freezes 20 K below the bench and a
    /// freezing mixture reaches 25 K at most (classic figure, carried with the heats). The message says what can happen, and its doubts.
    /// </summary>
    [Fact]
    public void TheFallIsLimitedByFreezingAndItsDoubtsAreSaid()
    {
        var finding = Assert.Single(Workbench.Judge("cools-on-dissolving", """{"pour": "1 L"}, {"add": "ammonium-nitrate", "amount": "830 g"}, {"stir": "well"}, {"topUp": "1.6 L"}""", "1.6 L"));
        Assert.Equal(20, Value(finding, "cooling"), 1e-6);
        Assert.Equal(0, Value(finding, "temperature"), 1e-6);
        Assert.Contains("by up to 20 K, from 20 to about 0 °C", finding.Message, StringComparison.Ordinal);
        Assert.Contains("the real change is smaller", finding.Message, StringComparison.Ordinal);
    }

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

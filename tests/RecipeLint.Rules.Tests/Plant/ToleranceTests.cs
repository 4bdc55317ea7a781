using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Precipitation;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>What plants and people who eat them bear, near the limits.</summary>
public sealed class ToleranceTests
{
    private const string Base = "calcium-nitrate-4h2o 90, potassium-nitrate 40, monopotassium-phosphate 17, magnesium-sulfate-7h2o 40";

    /// <summary>
    /// Theoretical oxygen demand, g/g, as textbooks of water treatment print it: glucose 1.07, acetic acid 1.07, citric acid 0.75, benzoic
    /// acid 1.97.
    /// </summary>
    [Theory]
    [InlineData("glucose", 100, 1067)]
    [InlineData("acetic-acid-80", 125, 1066)]
    [InlineData("citric-acid-anhydrous", 100, 750)]
    [InlineData("citric-acid-h2o", 100, 685)]
    public void FoodForMicrobesIsCountedByTheOxygenItTakes(string substance, double grams, double expected)
    {
        var finding = Findings($"{Base}, {substance} {grams}", "tomato").Single(f => f.Rule.Name == "organic-load");

        Assert.Equal(Level.Warning, finding.Level);
        Assert.Equal(expected, finding.Measured!.Value, expected / 200);
    }

    /// <summary>
    /// Liquids as sold, mL in 100 L, times density, carbon of the kind and 2.664 g of oxygen a gram of carbon: 1.1 × 0.04, 1.1 × 0.19,
    /// 1.15 × 0.15 and for humates a tenth of 1.1 × 0.07.
    /// </summary>
    [Theory]
    [InlineData("seaweed-extract", 200, 234, Level.Warning)]
    [InlineData("seaweed-extract", 30, 35.2, Level.Note)]
    [InlineData("seaweed-extract", 10, 0, null)]
    [InlineData("fish-hydrolysate", 100, 557, Level.Warning)]
    [InlineData("amino-acid-extract", 20, 91.9, Level.Note)]
    [InlineData("humic-acid", 100, 20.5, Level.Note)]
    [InlineData("fulvic-acid", 100, 0, null)]
    public void ExtractsCountByTheCarbonOfTheirKind(string extract, double millilitres, double expected, Level? level)
    {
        var finding = Lint.Files(("feed.recipe.json", $$"""
            {"format": 1, "name": "Feed", "final": "100 L", "volume": "made up", "water": "rain", "crop": "tomato",
             "doses": [{"add": "calcium-nitrate-4h2o", "amount": "90 g"}, {"add": "{{extract}}", "amount": "{{millilitres}} mL"}]}
            """)).Findings.SingleOrDefault(f => f.Rule.Name == "organic-load");

        Assert.Equal(level, finding?.Level);
        if (finding is not null)
        {
            Assert.Equal(expected, finding.Measured!.Value, expected / 100);
            Assert.Contains("Nothing says what is in it", finding.Message, StringComparison.Ordinal);
            Assert.Contains("factor of two", finding.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>
    /// In a mineral feed 37.5 mg/L of peroxide stunted or killed lettuce (Lau and Mattson 2021, abstract), seedlings suffered from 8; 3 % by
    /// mass is 30 mg in a gram.
    /// </summary>
    [Theory]
    [InlineData("hydrogen-peroxide-3 20", null)]
    [InlineData("hydrogen-peroxide-3 30", Level.Note)]
    [InlineData("hydrogen-peroxide-3 140", Level.Warning)]
    [InlineData("hydrogen-peroxide-3 260", Level.Error)]
    [InlineData("hydrogen-peroxide-35 3", Level.Note)]
    [InlineData("sodium-benzoate 0.6", null)]
    [InlineData("sodium-benzoate 0.8", Level.Note)]
    [InlineData("sodium-benzoate 0.4, potassium-sorbate 0.5", Level.Note)]
    [InlineData("potassium-sorbate 7", Level.Warning)]
    public void WhatKillsInATankIsJudgedByTheRoots(string biocide, Level? level) =>
        Assert.Equal(level, Findings($"{Base}, {biocide}", "lettuce").SingleOrDefault(f => f.Rule.Name == "biocide-at-the-roots")?.Level);

    /// <summary>What roots bear of a preservative is one figure, whether a stock carries it or all doses together.</summary>
    [Theory]
    [InlineData("""{"mostCarriedOver": "50 µmol/L"}""", Level.Note)]
    [InlineData("""{"mostCarriedOver": "500 µmol/L"}""", null)]
    [InlineData("""{"harmFrom": "55 µmol/L"}""", Level.Warning)]
    public void APreservativeHasOneLimit(string options, Level? level)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("recipelint.json", $$$"""{"rules": {"preservative-too-strong": {{{options}}}}}""")
            .Add("tank.recipe.json", """{"format": 1, "crop": "lettuce", "water": "distilled", "final": "100 L", "volume": "made up", "doses": [{"add": "sodium-benzoate", "amount": "0.4 g"}, {"add": "potassium-sorbate", "amount": "0.5 g"}]}""");
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(tree, ["tank.recipe.json"], new LoadOptions()));

        Assert.Equal(level, LintEngine.Judge(facts, new EngineOptions { Today = default, Rules = RuleList.All }).Findings
            .SingleOrDefault(f => f.Rule.Name == "biocide-at-the-roots")?.Level);
    }

    /// <summary>A spray onto leaves is no feed: what is judged by roots is left out and said to be, what falls out or hurts is not.</summary>
    [Theory]
    [InlineData("roots", true)]
    [InlineData("leaves", false)]
    public void ASprayOntoLeavesIsNotJudgedByTheRoots(string receiver, bool judged)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("spray.recipe.json", $$"""{"format": 1, "crop": "lettuce", "water": "distilled", "final": "10 L", "volume": "made up", "givenTo": "{{receiver}}", "targets": {"Ca": "100 mg/L"}, "doses": [{"add": "calcium-nitrate-4h2o", "amount": "50 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "60 g"}, {"add": "potassium-sulfate", "amount": "60 g"}, {"add": "hydrogen-peroxide-3", "amount": "200 mL"}, {"add": "sodium-chloride", "amount": "20 g"}]}""");
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(tree, ["spray.recipe.json"], new LoadOptions()));
        var rules = LintEngine.Judge(facts, new EngineOptions { Today = default, Rules = RuleList.All }).Findings.Select(f => f.Rule.Name).ToHashSet();

        foreach (var rule in new[] { "element-high", "element-missing", "ec-outside-window", "sodium-or-chloride-load", "biocide-at-the-roots" })
        {
            Assert.Equal(judged, rules.Contains(rule));
        }

        Assert.Contains("target-missed", rules);
        Assert.Contains("tank-precipitate", rules);
        Assert.Equal(!judged, facts.Recipes.Single().Assumptions.Any(a => a.Key == "given-to-leaves"));
    }

    /// <summary>A trace stock of 2 g/L citric acid and 0.5 g/L sorbate at 1 mL/L, and what microbes do not eat (common practice, no source).</summary>
    [Theory]
    [InlineData("citric-acid-h2o 0.2, potassium-sorbate 0.05")]
    [InlineData("urea 5")]
    [InlineData("fe-dtpa-hna 3")]
    [InlineData("potassium-hydroxide 1")]
    public void WhatATraceStockBringsIsNoLoad(string traces) =>
        Assert.DoesNotContain(Findings($"{Base}, {traces}", "tomato"), f => f.Rule.Name == "organic-load");

    /// <summary>Salt-sensitive crops are flushed from 107 mg/L chloride and 69 mg/L sodium (Combrink 2023); tomato bears 184 mg/L sodium, cut roses 92 (Baas, Acta Hortic. 507).</summary>
    [Theory]
    [InlineData("strawberry", "potassium-chloride 30", "Cl", true)]
    [InlineData("tomato", "potassium-chloride 30", "Cl", false)]
    [InlineData("strawberry", "sodium-nitrate 35", "Na", true)]
    [InlineData("tomato", "sodium-nitrate 35", "Na", false)]
    [InlineData("tomato", "sodium-nitrate 60", "Na", false)]
    [InlineData("tomato", "sodium-nitrate 75", "Na", true)]
    [InlineData("lettuce", "sodium-nitrate 60", "Na", true)]
    [InlineData("cut-flowers", "sodium-nitrate 40", "Na", true)]
    [InlineData("strawberry", "potassium-chloride 15", "Cl", false)]
    public void StrawberryBearsLessSalt(string crop, string salt, string key, bool warned)
    {
        var finding = Findings($"{Base}, {salt}", crop).SingleOrDefault(f => f.Rule.Name == "sodium-or-chloride-load" && f.IdPath.EndsWith($"#{key}", StringComparison.Ordinal));

        Assert.Equal(warned, finding?.Level == Level.Warning);
    }

    [Theory]
    [InlineData("potassium-chloride 44", Level.Warning)]
    [InlineData("potassium-chloride 46", Level.Error)]
    public void TwiceTheSaltThatACropBearsIsAnError(string salt, Level level) =>
        Assert.Equal(level, Findings($"{Base}, {salt}", "strawberry")
            .Single(f => f.Rule.Name == "sodium-or-chloride-load" && f.IdPath.EndsWith("#Cl", StringComparison.Ordinal)).Level);

    /// <summary>FAO paper 29: cobalt 0.05 mg/L and selenium 0.02 mg/L in irrigation water, harm from 0.1 and 0.025.</summary>
    [Theory]
    [InlineData("cobalt-sulfate-7h2o 0.035", "element-high", "From 0.1 mg/L it harms")]
    [InlineData("cobalt-sulfate-7h2o 0.015", null, "")]
    [InlineData("sodium-selenate 0.0054", "element-high", "From 0.025 mg/L it harms")]
    [InlineData("sodium-selenate 0.0075", "element-toxic", "poisons who eats them")]
    public void CobaltAndSeleniumAreJudgedFromTheLimitOfWater(string salt, string? rule, string says)
    {
        var found = Findings($"{Base}, {salt}", "lettuce").Where(f => f.IdPath.EndsWith("#Co", StringComparison.Ordinal) || f.IdPath.EndsWith("#Se", StringComparison.Ordinal)).ToList();

        Assert.Equal(rule, found.SingleOrDefault()?.Rule.Name);
        Assert.All(found, f => Assert.Contains(says, f.Message, StringComparison.Ordinal));
    }

    /// <summary>
    /// By hand no gas comes of it (1e-9 mol/L of Cl2); lettuce suffers from 1 mg/L (McGehee and Raudales 2023), 11 mg/L cost two fifths of a
    /// crop (Premuzic et al. 2007), and chloramine browns roots (J. Jpn. Soc. Hort. Sci. 71 (2002) 485).
    /// </summary>
    [Theory]
    [InlineData(30, "", Level.Error)]
    [InlineData(3, "", Level.Note)]
    [InlineData(3, ", ammonium-nitrate 5", Level.Warning)]
    [InlineData(8, "", Level.Warning)]
    [InlineData(1, "", null)]
    public void ADisinfectingDoseIsJudgedByTheRootsAndNotByGas(double bleach, string ammonium, Level? level)
    {
        var findings = Findings($"{Base}{ammonium}, sodium-hypochlorite-5 {bleach}", "lettuce");

        Assert.Equal(level, findings.SingleOrDefault(f => f.Rule.Name == "chlorine-at-the-roots")?.Level);
        Assert.DoesNotContain(findings, f => f.Rule.Name == "gas-or-heat-in-tank");
        Assert.All(findings, f => Assert.DoesNotContain("chlorine gas", f.Message, StringComparison.Ordinal));
    }

    /// <summary>Half of one bottle is not a lost crop: a warning; twice as much and a third can be (common practice, no source).</summary>
    [Theory]
    [InlineData("5 mL/L", Level.Warning)]
    [InlineData("15 mL/L", Level.Warning)]
    [InlineData("20 mL/L", Level.Error)]
    [InlineData("3 mL/L", Level.Error)]
    public void HalfADoseIsAWarning(string dose, Level level)
    {
        var result = Lint.Files(
            Lint.Stock("a", "10 mL/L", "15..25 °C", ("calcium-nitrate-4h2o", 90)),
            Lint.Stock("b", "10 mL/L", "15..25 °C", ("potassium-nitrate", 50)),
            ("feed.recipe.json", $$"""{"format": 1, "name": "Feed", "final": "100 L", "volume": "made up", "water": "rain", "doses": [{"stock": "a.stock.json", "dose": "{{dose}}"}, {"stock": "b.stock.json", "dose": "10 mL/L"}]}"""));

        Assert.Equal(level, result.Findings.Single(f => f.Rule.Name == "dose-contradicts-dilution").Level);
    }

    private static IReadOnlyList<Finding> Findings(string grams, string crop)
    {
        var doses = grams.Split(", ").Select(p => p.Split(' ')).Select(p => $"{{\"add\": \"{p[0]}\", \"amount\": \"{p[1]} g\"}}");
        var result = Lint.Files(
            ("a.recipe.json", $$"""{"format": 1, "name": "Feed", "crop": "{{crop}}", "water": "reverse-osmosis", "final": "100 L", "volume": "made up", "doses": [{{string.Join(", ", doses)}}]}"""));
        Assert.Empty(result.Faults);
        return result.Findings;
    }
}

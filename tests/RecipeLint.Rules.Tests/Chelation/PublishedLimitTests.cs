using System.Globalization;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Chelation;

/// <summary>Computed shares held against what is published of chelates, light and bleach.</summary>
public sealed class PublishedLimitTests
{
    private const string Feed = """
        {"add": "calcium-nitrate-4h2o", "amount": "70 g"}, {"add": "potassium-nitrate", "amount": "30 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "36 g"},
        {"add": "monopotassium-phosphate", "amount": "17 g"}, {"add": "manganese-sulfate-h2o", "amount": "155 mg"}, {"add": "zinc-sulfate-7h2o", "amount": "66 mg"},
        {"add": "copper-sulfate-5h2o", "amount": "20 mg"}, {"add": "boric-acid", "amount": "170 mg"}
        """;

    /// <summary>
    /// Published upper limits (Lindsay and Norvell 1969, Norvell 1991, suppliers' technical sheets): Fe-EDTA 6 to 6.5, Fe-HEDTA 7, Fe-DTPA 7 to 7.5,
    /// Fe-EDDHA 8.5 to 9. Half a unit below the lower one more than nine tenths, HEDTA four fifths, of the iron are held in a feed; a good half
    /// unit above the upper one less than half is, but for EDDHA, which lies beyond any feed. The default limit of 70 % lies between.
    /// </summary>
    [Theory]
    [InlineData("fe-edta-na-3h2o", 1.5, 5.5, 0.95, 1.00)]
    [InlineData("fe-edta-na-3h2o", 1.5, 6.5, 0.70, 0.80)]
    [InlineData("fe-edta-na-3h2o", 1.5, 7.2, 0.00, 0.30)]
    [InlineData("fe-hedta", 1.17, 6.0, 0.80, 0.95)]
    [InlineData("fe-hedta", 1.17, 7.6, 0.00, 0.20)]
    [InlineData("fe-dtpa-hna", 1.67, 6.5, 0.88, 1.00)]
    [InlineData("fe-dtpa-hna", 1.67, 7.5, 0.55, 0.75)]
    [InlineData("fe-dtpa-hna", 1.67, 8.5, 0.00, 0.40)]
    [InlineData("fe-eddha-na", 1.55, 7.5, 0.95, 1.00)]
    [InlineData("fe-eddha-na", 1.55, 8.5, 0.95, 1.00)]
    public void IronIsHeldUpToThePublishedPhAndLetGoAboveIt(string chelate, double grams, double ph, double atLeast, double atMost)
    {
        var recipe = Assert.Single(Recipe(chelate, grams, ph).Facts.Recipes);
        Assert.InRange(Share(recipe.Chemistry.Final, recipe.ComponentMoles["Fe+3"] / 100), atLeast, atMost);
    }

    /// <summary>Far over every published limit the iron of a kept stock is lost, whatever the constants of fresh rust still hold.</summary>
    [Theory]
    [InlineData("10 g", Level.Error)]
    [InlineData("1.2 g", Level.Warning)]
    public void AChelateInLyeIsAnError(string lye, Level level)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add(
            "x.stock.json",
            """{"format": 1, "name": "x", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "8..25 °C", "for": "3 months"}, "steps": [{"pour": "700 mL", "of": "distilled"}, {"add": "fe-edta-na-3h2o", "amount": "10 g"}, {"add": "potassium-hydroxide", "amount": "#"}, {"topUp": "1 L", "of": "distilled"}]}"""
                .Replace("#", lye, StringComparison.Ordinal));
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);

        Assert.Equal(level, Assert.Single(judged.Result.Findings, f => f.Rule.Name == "chelate-outside-its-ph").Level);
    }

    /// <summary>Where more than half of the iron is lost it is an error.</summary>
    [Theory]
    [InlineData("fe-edta-na-3h2o", 1.5, 5.8, false)]
    [InlineData("fe-edta-na-3h2o", 1.5, 6.3, false)]
    [InlineData("fe-edta-na-3h2o", 1.5, 7.0, true, "error")]
    [InlineData("fe-dtpa-hna", 1.67, 7.0, false)]
    [InlineData("fe-dtpa-hna", 1.67, 8.0, true)]
    [InlineData("fe-eddha-na", 1.55, 8.0, false)]
    [InlineData("ferric-citrate", 0.9, 6.5, true, "error")]
    public void TheFindingFollowsThePublishedWindow(string chelate, double grams, double ph, bool found, string level = "warning")
    {
        var said = Bottles.Said(Recipe(chelate, grams, ph)).Where(s => s.Contains("chelate-outside-its-ph", StringComparison.Ordinal));
        Assert.Equal(found ? [$"{level} chelate-outside-its-ph tank.recipe.json adjust"] : [], said);
    }

    /// <summary>
    /// Albano and Miller, HortScience 30 (1995) 845, abstract: a 100 times Fe-EDTA stock lost 85 % of its soluble iron in 240 h of light, a 10 times
    /// Hoagland solution with Fe-DTPA 97 % in 72 h. At 12 hours a day these are 20 and 6 days.
    /// </summary>
    [Theory]
    [InlineData("fe-edta-na-3h2o 15 g", 20, 85)]
    [InlineData("fe-dtpa-hna 1.7 g", 6, 97)]
    public void LightTakesWhatWasMeasured(string chelate, int days, double lost)
    {
        var keep = string.Create(CultureInfo.InvariantCulture, $"\"for\": \"{days} days\", \"light\": \"light\"");
        var finding = Assert.Single(Bottles.Written(Bottles.Stock("iron", Bottles.Add(chelate), keep: keep)).Result.Findings, f => f.Rule.Name == "chelate-in-light");
        Assert.Equal(lost, finding.Measured!.Value, 0.1);
    }

    /// <summary>White, Handbook of Chlorination (recalled): hypochlorite of 10 % w/v loses half in 220 days at 25 °C.</summary>
    [Fact]
    public void BleachLosesHalfInThePublishedTime()
    {
        // 12.5 % w/w at 1.2 g/mL: 663 mL in a litre make 10 % w/v.
        var stock = Bottles.Stock("bleach", """{"add": "sodium-hypochlorite-12.5", "amount": "795 g"}""", keep: "\"at\": \"25..25 °C\", \"for\": \"220 days\"");
        var finding = Assert.Single(Bottles.Written(stock).Result.Findings, f => f.Rule.Name == "shelf-life-too-long");
        Assert.Equal(50, finding.Measured!.Value, 2.0);
    }

    /// <summary>
    /// Share of an acid with pKa 4.20 (benzoic) and 4.76 (sorbic) that is undissociated at a pH, without activities: 61 and 85 % at pH 4.0, 5 and 15 %
    /// at pH 5.5. Ionic strength lowers the apparent pKa by about 0.1, so the stock has a little less.
    /// </summary>
    [Theory]
    [InlineData("sodium-benzoate 0.4 g", "4.0", 339, 0.613)]
    [InlineData("sodium-benzoate 1 g", "5.5", 847, 0.048)]
    [InlineData("potassium-sorbate 0.5 g", "5.5", 373, 0.154)]
    public void UndissociatedAcidFollowsThePublishedPk(string preservative, string ph, double milligramsOfAcid, double share)
    {
        var steps = Bottles.Add(preservative, "tripotassium-citrate-h2o 5 g") + $$""", {"adjust": "pH {{ph}}", "using": "nitric-38"}""";
        var stock = Assert.Single(Bottles.Written(Bottles.Stock("trace", steps)).Facts.Stocks);
        var acid = Assert.Single(stock.Chemistry.Mixing.Preservatives);
        Assert.InRange(acid.Undissociated.GramsPerLitre * 1000, 0.70 * share * milligramsOfAcid, 1.0 * share * milligramsOfAcid);
    }

    private static double Share(SolutionState state, double molesPerLitre) =>
        state.Metals.Where(m => m.Metal == "Fe+3").Sum(m => m.Dissolved.MolesPerLitre - m.Unchelated.MolesPerLitre) / molesPerLitre;

    private static (Analysis.Facts Facts, LintResult Result) Recipe(string chelate, double grams, double ph) =>
        Bottles.Written(("tank.recipe.json", string.Create(CultureInfo.InvariantCulture, $$"""
            {"format": 1, "name": "Tank", "water": "distilled", "final": "100 L", "volume": "made up",
             "doses": [{{Feed}}, {"add": "{{chelate}}", "amount": "{{grams}} g"}], "adjust": {"pH": "{{ph:0.0}}", "using": "koh-10"} }
            """)));
}

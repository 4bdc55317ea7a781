using System.Text;
using RecipeLint.Advice.Scoring;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Advice.Tests.Scoring;

/// <summary>What batches tell of rules and windows, counted by hand on shops of a few records; all invented.</summary>
public sealed class BatchScoreTests
{
    private const string Gypsum = """, {"add": "calcium-nitrate-4h2o", "amount": "2 kg"}, {"add": "magnesium-sulfate-7h2o", "amount": "2 kg"}""";

    private static readonly (string, string) _gypsum = ("gypsum.stock.json", """
        {"format": 1, "name": "Gypsum", "makes": "1 L", "steps": [{"pour": "800 mL", "of": "distilled"},
         {"add": "calcium-nitrate-4h2o", "amount": "100 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "100 g"}, {"topUp": "1 L", "of": "distilled"}]}
        """);

    private static readonly (string, string) _clear = ("clear.stock.json", """
        {"format": 1, "name": "Clear", "makes": "1 L", "steps": [{"pour": "800 mL", "of": "distilled"},
         {"add": "potassium-nitrate", "amount": "40 g", "id": "kno3"}, {"add": "monopotassium-phosphate", "amount": "10 g", "id": "mkp"},
         {"topUp": "1 L", "of": "distilled"}]}
        """);

    private static readonly (string, string) _bleach = ("bleach.stock.json", """
        {"format": 1, "name": "Bleach", "makes": "1 L", "steps": [{"pour": "0.7 L", "of": "distilled"}, {"add": "sodium-hypochlorite-5", "amount": "20 mL"},
         {"add": "nitric-38", "amount": "20 mL"}, {"topUp": "1 L", "of": "distilled"}]}
        """);

    private static readonly (string, string) _limy = ("limy.recipe.json", """
        {"format": 1, "name": "Limy", "water": "hard.water.json", "final": "100 L", "volume": "made up",
         "doses": [{"add": "potassium-nitrate", "amount": "50 g"}, {"add": "koh-10", "amount": "300 mL"}]}
        """);

    private static readonly (string, string) _soft = ("soft.recipe.json", """
        {"format": 1, "name": "Soft", "water": "distilled", "final": "100 L", "volume": "made up",
         "doses": [{"add": "potassium-nitrate", "amount": "50 g", "id": "n"}, {"add": "monopotassium-phosphate", "amount": "10 g", "id": "p"}]}
        """);

    private static readonly (string, string) _hard = ("hard.water.json",
        """{"format": 1, "name": "Hard", "ions": {"Ca": "80 mg/L", "Mg": "12 mg/L", "HCO3": "305 mg/L"} }""");

    /// <summary>Copper takes EDTA from the iron, not EDDHA.</summary>
    private static (string, string) Iron(string chelate, string more = "") => ("iron.recipe.json", $$"""
        {"format": 1, "name": "Iron", "water": "distilled", "final": "100 L", "volume": "made up",
         "doses": [{"add": "potassium-nitrate", "amount": "70 g"}, {"add": "copper-sulfate-5h2o", "amount": "1 g"}, {"add": "{{chelate}}", "amount": "1.5 g"}{{more}}],
         "adjust": {"pH": "6", "using": "koh-10"} }
        """);

    [Theory]
    [InlineData(0, 0, 0, false)]
    [InlineData(1, 0, 0, true)]
    [InlineData(0, 1, 0, true)]
    [InlineData(0, 0, 1, true)]
    public void ARuleIsToldOfWhereAnythingWasCounted(int hits, int misses, int falseAlarms, bool told) =>
        Assert.Equal(told, new RuleScore("r", hits, misses, falseAlarms).IsTold);

    [Fact]
    public void SharesAreOfWhatWasSaidAndOfWhatWasSo()
    {
        var score = new RuleScore("r", 3, 2, 1);

        Assert.Equal(new Proportion(3, 4), score.RightWhenItSpeaks);
        Assert.Equal(new Proportion(3, 5), score.Found);
    }

    /// <summary>Two bottles of gypsum clouded and one did not; the clear one was clear as foretold; a smell alone says nothing of deposits.</summary>
    [Fact]
    public void ForetoldDepositsAreHeldAgainstWhatWasSeen()
    {
        var score = Of(
            _gypsum, _clear,
            Bottle("gypsum", seen: "white crystals"), Bottle("gypsum", seen: "white sediment"), Bottle("gypsum", seen: "clear"),
            Bottle("clear", seen: "clear"), Bottle("clear", seen: "nothing to see"), Bottle("clear"), Bottle("clear", seen: "smells of chlorine"));

        Assert.Equal((7, 5, 2, 0), (score.Batches, score.Looked, score.RightlyQuiet, score.MissedByAll));
        Assert.Equal(new RuleScore("calcium-with-sulfate", 2, 0, 1), score.Rules[0]);
        Assert.Equal(score.Rules.Skip(1).Select(r => r.Rule).Order(StringComparer.Ordinal), score.Rules.Skip(1).Select(r => r.Rule));
        Assert.All(score.Rules.Skip(1), r => Assert.False(r.IsTold));
        Assert.Empty(score.LeftOut);
        Assert.Empty(score.TankRules);
    }

    /// <summary>Rules that batches tell most of stand first, whatever they tell.</summary>
    [Fact]
    public void RulesWithMoreToTellStandFirst()
    {
        (string, string) phosphate = ("phosphate.stock.json", """
            {"format": 1, "name": "Phosphate", "makes": "1 L", "steps": [{"pour": "800 mL", "of": "distilled"},
             {"add": "calcium-nitrate-4h2o", "amount": "60 g"}, {"add": "dipotassium-phosphate", "amount": "20 g"}, {"topUp": "1 L", "of": "distilled"}]}
            """);
        var score = Of(
            _gypsum, phosphate,
            Bottle("gypsum", seen: "clear"), Bottle("gypsum", seen: "white crystals"),
            Bottle("phosphate", seen: "clear"), Bottle("phosphate", seen: "clear"), Bottle("phosphate", seen: "white floc"));

        Assert.Equal(["calcium-with-phosphate", "calcium-with-sulfate"], score.Rules.Take(2).Select(r => r.Rule));
        Assert.Equal((1, 2), (score.Rules[0].Hits, score.Rules[0].FalseAlarms));
        Assert.Equal((1, 1), (score.Rules[1].Hits, score.Rules[1].FalseAlarms));
    }

    /// <summary>One clouded sight is enough, and then only the time of that sight counts.</summary>
    [Fact]
    public void OneSightOfADepositIsADeposit()
    {
        var score = Of(_gypsum, Bottle("gypsum", seen: ["clear", "white crystals"]));

        Assert.Equal(new RuleScore("calcium-with-sulfate", 1, 0, 0), score.Rules[0]);
        Assert.Equal(1, score.Looked);
    }

    /// <summary>White needles in phosphate that no rule foretold point to a salt, whose rule has missed them; mould has no rule.</summary>
    [Theory]
    [InlineData("white needles after a cold night, dissolve on warming", 1, 0)]
    [InlineData("mould floats on top, fluffy, musty smell", 0, 1)]
    public void WhatNobodyForetoldIsMissedByTheRuleOfItsLikeliestCause(string seen, int byARule, int byAll)
    {
        var score = Of(_clear, Bottle("clear", seen: seen));

        Assert.Equal(byARule, score.Rules.Sum(r => r.Misses));
        Assert.Equal(byAll, score.MissedByAll);
        Assert.Equal((1, 0), (score.Looked, score.RightlyQuiet));
        Assert.Equal(byARule == 1, score.Rules[0] is { Hits: 0, Misses: 1, FalseAlarms: 0 });
    }

    [Fact]
    public void DangersAreHeldAgainstWhatWasNoticed()
    {
        var score = Of(
            _bleach, _clear,
            Bottle("bleach", seen: "smells of chlorine"), Bottle("bleach", seen: "clear, no smell"), Bottle("bleach"),
            Bottle("clear", seen: "smells of chlorine"));

        Assert.Equal(new RuleScore("chlorine gas", 1, 1, 1), Assert.Single(score.Hazards, h => h.Rule == "chlorine gas"));
        Assert.All(score.Hazards, h => Assert.True(h.IsTold));
    }

    /// <summary>A pH read in the stock and in its dilution, one of each inside the window; an EC.</summary>
    [Fact]
    public void ReadingsAreHeldAgainstTheirWindows()
    {
        var score = Of(
            _clear, _soft,
            Bottle("clear", readings: """{"pH": 4.4}, {"pH": 9}, {"EC": "900 mS/cm"}"""),
            Bottle("clear", readings: """{"pH": 9}"""),
            Tank("soft", readings: """{"pH": 5.0}, {"EC": "0.75 mS/cm"}"""),
            Tank("soft", readings: """{"pH": 9}, {"EC": "0.75 mS/cm"}"""));

        Assert.Equal(
            [(ReadingKind.Conductivity, new Proportion(0, 1)), (ReadingKind.Ph, new Proportion(1, 3))],
            score.Readings.Select(r => (r.Kind, r.Inside)));
        Assert.Equal(
            [(ReadingKind.Conductivity, new Proportion(2, 2)), (ReadingKind.Ph, new Proportion(1, 2))],
            score.TankReadings.Select(r => (r.Kind, r.Inside)));
    }

    /// <summary>A limit on the pH of stocks is held against a pH of the stock, not of its dilution.</summary>
    [Fact]
    public void RulesOnPhAreHeldAgainstThePhOfTheStock()
    {
        (string, string) settings = ("recipelint.json", """{"rules": {"stock-ph-outside-range": {"highest": 4.2}}}""");
        var score = Of(
            settings, _clear,
            Bottle("clear", readings: """{"pH": 4.5}"""), Bottle("clear", readings: """{"pH": 4}"""),
            Bottle("clear", readings: """{"pH": 4, "dilution": "1:100"}"""));

        Assert.Equal(new RuleScore("stock-ph-outside-range", 1, 0, 1), Assert.Single(score.PhRules, r => r.Rule == "stock-ph-outside-range"));
        Assert.Empty(score.TankRules);
    }

    [Fact]
    public void RulesOnTanksAreHeldAgainstTheMeters()
    {
        (string, string) sour = ("sour.recipe.json", """
            {"format": 1, "name": "Sour", "crop": "lettuce", "water": "distilled", "final": "100 L", "volume": "made up",
             "doses": [{"add": "calcium-nitrate-4h2o", "amount": "944 mg/L"}, {"add": "potassium-nitrate", "amount": "303 mg/L"},
              {"add": "magnesium-sulfate-7h2o", "amount": "370 mg/L"}, {"add": "phosphoric-75", "amount": "164 mg/L"}]}
            """);
        var score = Of(sour, Tank("sour", readings: """{"pH": 2.8}, {"EC": "9 mS/cm"}"""), Tank("sour", readings: """{"pH": 6}"""));

        Assert.Contains(new RuleScore("ph-outside-window", 1, 0, 1), score.TankRules);
        Assert.Contains(new RuleScore("ec-outside-window", 0, 1, 0), score.TankRules);
        Assert.Empty(score.PhRules);
    }

    /// <summary>Lime in a tank is foretold by the rule on tanks; where nothing is foretold and something lies there, it has missed it.</summary>
    [Fact]
    public void DepositsOfTanksAreHeldAgainstWhatWasSeen()
    {
        var score = Of(
            _hard, _limy, _soft,
            Tank("limy", seen: "white floc"), Tank("limy", seen: "clear"), Tank("soft", seen: "clear"), Tank("soft", seen: "green slime on the wall"));

        Assert.Equal(new RuleScore("tank-precipitate", 1, 0, 1), Assert.Single(score.TankRules));
        Assert.Equal((4, 4, 1, 1), (score.Batches, score.Looked, score.RightlyQuiet, score.MissedByAll));
        Assert.All(score.Rules, r => Assert.False(r.IsTold));
    }

    [Fact]
    public void ACauseOfTheTankThatNoRuleForetoldIsMissedByTheRuleOnTanks()
    {
        (string, string) calm = ("soft.recipe.json", """
            {"format": 1, "name": "Soft", "water": "distilled", "final": "100 L", "volume": "made up",
             "doses": [{"add": "potassium-nitrate", "amount": "50 g"}, {"add": "potassium-silicate-29be", "amount": "30 mL"}]}
            """);
        var score = Of(calm, Tank("soft", seen: "gel flakes after the acid went in"));

        Assert.Equal((1, 0), (score.Looked, score.RightlyQuiet));
        Assert.Equal(1, score.MissedByAll + score.TankRules.Sum(r => r.Misses));
        Assert.Equal(new RuleScore("tank-precipitate", 0, 1, 0), Assert.Single(score.TankRules));
    }

    /// <summary>
    /// Iron that its chelate lets go is foretold by the rules on chelates; beside gypsum both rules speak; a chelate that holds tells nothing.
    /// </summary>
    [Theory]
    [InlineData("fe-edta-na-3h2o", "", "brown floc", "chelate-robbed")]
    [InlineData("fe-edta-na-3h2o", Gypsum, "brown floc", "chelate-robbed tank-precipitate")]
    [InlineData("fe-eddha-na", Gypsum, "white floc", "tank-precipitate")]
    [InlineData("fe-edta-na-3h2o", Gypsum, "clear", "chelate-robbed tank-precipitate")]
    [InlineData("fe-eddha-na", "", "clear", "")]
    public void IronLetGoIsForetoldByTheRulesOnChelates(string chelate, string more, string seen, string rules)
    {
        var score = Of(Iron(chelate, more), Tank("iron", seen: seen));

        Assert.Equal(rules, string.Join(' ', score.TankRules.Select(r => r.Rule)));
        Assert.All(score.TankRules, r => Assert.Equal(seen == "clear" ? (0, 0, 1) : (1, 0, 0), (r.Hits, r.Misses, r.FalseAlarms)));
    }

    /// <summary>
    /// The rule on the pH that a chelate stands foretells that iron is let go, the more the longer it stands; where none has fallen out by
    /// the time of the sight, that is not what was seen.
    /// </summary>
    [Fact]
    public void IronThatIsStillDissolvedIsNotGraded()
    {
        (string, string) soft = ("soft.recipe.json", """
            {"format": 1, "name": "Soft", "water": "distilled", "final": "100 L", "volume": "made up",
             "doses": [{"add": "potassium-nitrate", "amount": "70 g"}, {"add": "fe-edta-na-3h2o", "amount": "1.5 g"}],
             "adjust": {"pH": "8.2", "using": "koh-10"} }
            """);
        var score = Of(soft, Tank("soft", seen: "brown floc"));

        Assert.Equal(new RuleScore("tank-precipitate", 0, 1, 0), Assert.Single(score.TankRules));
    }

    /// <summary>
    /// That rule looks at all files; of a tank that was mixed it is asked as those are that look at one (found in 2026: it was never graded,
    /// neither by what was seen nor by a meter).
    /// </summary>
    [Fact]
    public void AChelateOutsideItsPhIsGraded()
    {
        (string, string) hard = ("hard.recipe.json", """
            {"format": 1, "name": "Hard", "water": "hard.water.json", "final": "100 L", "volume": "made up",
             "doses": [{"add": "calcium-nitrate-4h2o", "amount": "70 g"}, {"add": "fe-edta-na-3h2o", "amount": "1.5 g"}],
             "adjust": {"pH": "8.6", "using": "koh-10"} }
            """);
        var seen = Of(_hard, hard, Tank("hard", seen: "brown floc"));
        Assert.Contains(new RuleScore("chelate-outside-its-ph", 1, 0, 0), seen.TankRules);

        var read = Of(_hard, hard, Tank("hard", readings: """{"pH": 8.5}"""), Tank("hard", readings: """{"pH": 6}"""));
        Assert.Contains(new RuleScore("chelate-outside-its-ph", 1, 0, 1), read.TankRules);
    }

    [Fact]
    public void WeightsAreHeldAgainstTheFile()
    {
        var score = Of(
            _clear,
            Bottle("clear", steps: """{"step": "kno3", "amount": "40.1 g"}, {"step": "mkp", "amount": "10 g"}"""),
            Bottle("clear", steps: """{"step": "kno3", "amount": "60 g"}"""));

        Assert.Equal(new Proportion(2, 3), score.Weights);
    }

    /// <summary>A record of a substance that nobody knows is left out, and so is one of an edition that is gone.</summary>
    [Fact]
    public void WhatCannotBeFollowedIsLeftOutByName()
    {
        var score = Of(
            _clear, _gypsum,
            Bottle("clear", steps: """{"add": "unheard-of", "amount": "1 g"}""", seen: "clear"), Bottle("clear", seen: "clear"),
            Bottle("gone", seen: "clear"));

        Assert.Equal(["0.batch.json", "2.batch.json"], score.LeftOut);
        Assert.Equal((3, 1, 1), (score.Batches, score.Looked, score.RightlyQuiet));
    }

    private static string Bottle(string stock, string steps = "", string readings = "", params string[] seen) =>
        Record("stock", stock + ".stock.json", steps, readings, seen);

    private static string Tank(string recipe, string steps = "", string readings = "", params string[] seen) =>
        Record("recipe", recipe + ".recipe.json", steps, readings, seen);

    private static string Record(string what, string file, string steps, string readings, string[] seen) => $$"""
        {"format": 1, "{{what}}": "{{file}}", "made": "2026-03-02", "steps": [{{steps}}], "readings": [{{readings}}],
         "seen": [{{string.Join(", ", seen.Select(s => $$"""{"at": "20 °C", "what": "{{s}}"}"""))}}]}
        """;

    /// <param name="files">Files by name, then records, which are numbered.</param>
    private static BatchScore Of(params object[] files)
    {
        var tree = new MemoryFileTree("/shop").AddFolder("/shop");
        foreach (var (name, text) in files.OfType<(string, string)>().Concat(files.OfType<string>().Select((text, i) => ($"{i}.batch.json", text))))
        {
            tree.Add(name, Encoding.UTF8.GetBytes(text));
        }

        return BatchScore.Of(Analyzer.Analyse(WorkspaceLoader.Load(tree, ["."], Agreement.Bottle.Load)));
    }
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Engine;

public sealed class LintEngineTests
{
    private static readonly Problem _duplicate =
        new(ProblemKind.DuplicateKey, Sample.At(Sample.StockFile, "/steps/1/amount"), "The key 'amount' stands twice. Delete one.");

    [Fact]
    public void NothingToSayIsAnEmptyResult()
    {
        var result = LintEngine.Judge(Sample.All(), new EngineOptions { Rules = RuleList.All });

        Assert.Empty(result.Findings);
        Assert.Empty(result.Suppressed);
        Assert.Empty(result.Faults);
        Assert.Null(result.Worst);
    }

    [Fact]
    public void AProblemBecomesAFindingOfItsRule()
    {
        var problem = _duplicate with
        {
            Related = [new RelatedPlace(Sample.At(Sample.StockFile, "/steps/1"), "first here")],
            Suggestions = ["amount"],
        };

        var finding = Assert.Single(LintEngine.Judge(Sample.All(problems: [problem]), new EngineOptions { Rules = RuleList.All }).Findings);

        Assert.Equal("RL0004", finding.Rule.Id);
        Assert.Equal(Level.Error, finding.Level);
        Assert.Equal(problem.Place, finding.Place);
        Assert.Equal(problem.Message, finding.Message);
        Assert.Equal(problem.Related, finding.Related);
        Assert.Equal(problem.Suggestions, finding.Suggestions);
    }

    [Theory]
    [InlineData("note", Level.Note)]
    [InlineData("warning", Level.Warning)]
    [InlineData("error", Level.Error)]
    public void TheShopSetsTheLevelByNameOrId(string word, Level level)
    {
        foreach (var rule in new[] { "duplicate-key", "RL0004", "rl0004" })
        {
            var facts = Sample.All(problems: [_duplicate], shop: Sample.Shop([Sample.Setting(rule, word)]));
            Assert.Equal(level, Assert.Single(LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings).Level);
        }
    }

    [Fact]
    public void OffSilencesAWorkspaceRuleAndAStockRule()
    {
        var facts = Sample.All(problems: [_duplicate], shop: Sample.Shop([Sample.Setting("duplicate-key", "off")]));
        Assert.Empty(LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings);

        var stock = Sample.All([Sample.Facts(Sample.Stock())], shop: Sample.Shop([Sample.Setting("duplicate-key", "off")]));
        var fault = new EngineOptions { Rules = [new BrokenStockRule()] };
        Assert.Empty(LintEngine.Judge(stock, fault).Faults);
    }

    [Fact]
    public void SettingsHoldOnlyForTheirOwnFiles()
    {
        var other = _duplicate with { Place = Sample.At("sub/b.stock.json", "/makes") };
        var facts = Sample.All(problems: [_duplicate, other]);
        var strict = Sample.Shop([Sample.Setting("duplicate-key", "off")]);
        facts = facts with
        {
            Workspace = facts.Workspace with
            {
                SettingsFor = f => f.StartsWith("sub/", StringComparison.Ordinal) ? strict : new RecipeLint.Recipes.Shop.ShopSettings(),
            },
        };

        Assert.Equal(Sample.StockFile, Assert.Single(LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings).Place.File);
    }

    [Fact]
    public void ABrokenRuleIsAFaultAndTheOthersStillSpeak()
    {
        var facts = Sample.All([Sample.Facts(Sample.Stock())], problems: [_duplicate]);
        var options = new EngineOptions { Rules = [new BrokenStockRule(), .. RuleList.All.Where(r => r.Name == "duplicate-key")] };

        var result = LintEngine.Judge(facts, options);

        Assert.Single(result.Findings);
        var fault = Assert.Single(result.Faults);
        Assert.Equal("RL0004", fault.RuleId);
        Assert.Equal(Sample.StockFile, fault.File);
        Assert.Contains("RL0004", fault.Message, StringComparison.Ordinal);
        Assert.Contains(Sample.StockFile, fault.Message, StringComparison.Ordinal);
        Assert.Contains("division", fault.Message, StringComparison.Ordinal);
    }

    /// <summary>A message is told with its rule, whose fault it is where that fails; in a trial only one that is read.</summary>
    [Fact]
    public void AMessageThatCannotBeToldIsAFaultOfItsRule()
    {
        var facts = Sample.All([Sample.Facts(Sample.Stock())]);
        var told = 0;
        var rule = new SlowToTellRule(() => ++told > 1 ? throw new InvalidOperationException("no words") : "What. Do.");
        var options = new EngineOptions { Rules = [rule] };

        Assert.Equal(0, LintEngine.Judge(facts, options with { TellsWhenRead = true }).Findings.Count(f => f.Told.IsValueCreated));
        Assert.Equal(0, told);
        Assert.Equal("What. Do.", Assert.Single(LintEngine.Judge(facts, options).Findings).Message);
        Assert.Contains("no words", Assert.Single(LintEngine.Judge(facts, options).Faults).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ANumberThatIsNoneIsAFault(double value)
    {
        var facts = Sample.All([Sample.Facts(Sample.Stock())]);

        var result = LintEngine.Judge(facts, new EngineOptions { Rules = [new NumberRule(value)] });

        Assert.Empty(result.Findings);
        Assert.Contains("not a finite number", Assert.Single(result.Faults).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FindingsComeByFileThenPlaceThenRule()
    {
        Problem At(ProblemKind kind, string file, string pointer) => new(kind, Sample.At(file, pointer), "What. Do.");
        var problems = new[]
        {
            At(ProblemKind.UnknownUnit, "b.stock.json", "/makes"),
            At(ProblemKind.UnknownUnit, "a.stock.json", "/steps/10/amount"),
            At(ProblemKind.UnknownUnit, "a.stock.json", "/steps/9/amount"),
            At(ProblemKind.DuplicateKey, "a.stock.json", "/steps/9/amount"),
            At(ProblemKind.UnknownUnit, "a.stock.json", "/steps/9"),
        };

        foreach (var order in new[] { problems, [.. problems.Reverse()] })
        {
            var findings = LintEngine.Judge(Sample.All(problems: order), new EngineOptions { Rules = RuleList.All }).Findings;
            Assert.Equal(
                ["a /steps/9 RL0011", "a /steps/9/amount RL0004", "a /steps/9/amount RL0011", "a /steps/10/amount RL0011", "b /makes RL0011"],
                findings.Select(f => $"{f.Place.File[0]} {f.Place.Pointer} {f.Rule.Id}"));
        }
    }

    [Fact]
    public void TheSameFindingTwiceIsSaidOnce()
    {
        Assert.Single(LintEngine.Judge(Sample.All(problems: [_duplicate, _duplicate]), new EngineOptions { Rules = RuleList.All }).Findings);
    }

    [Fact]
    public void TheLevelFollowsHarmAndOddsWhateverTheMethod()
    {
        var rule = RuleBook.Find("duplicate-key")!;
        Level Of(RuleDescriptor r, Certainty c) =>
            new RuleContext(Sample.All(), r, new Dictionary<string, string>()).Find(Place.Whole("a"), "x", Harm.Loss, Odds.Certain, c).Level;

        foreach (var certainty in Enum.GetValues<Certainty>())
        {
            Assert.Equal(Level.Error, Of(rule, certainty));
            Assert.Equal(Level.Error, Of(rule with { Family = "people" }, certainty));
        }
    }

    /// <summary>Stands in for a rule with a fault of its own; borrows a description, since it has no folder.</summary>
    private sealed class BrokenStockRule : StockRule
    {
        public override string Name => "duplicate-key";

        public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context) =>
            throw new InvalidOperationException("division of nothing by nothing");
    }

    private sealed class SlowToTellRule(Func<string> tell) : StockRule
    {
        public override string Name => "duplicate-key";

        public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context) =>
            [context.Find(stock.Stock.Place, "steps", new Lazy<string>(tell), Harm.Loss, Odds.Certain)];
    }

    private sealed class NumberRule(double value) : StockRule
    {
        public override string Name => "duplicate-key";

        public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context) =>
            [context.Find(stock.Stock.Place, "What. Do.", Harm.Loss, Odds.Certain) with { Values = [new NamedValue("ratio", value, "")] }];
    }
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Engine;

public sealed class SuppressionTests
{
    private static readonly DateOnly _today = new(2026, 11, 25);

    [Theory]
    [InlineData("measured", "steps/edta/amount")]
    [InlineData("measured", "steps/edta")]
    [InlineData("measured", "steps")]
    [InlineData("measured", null)]
    public void HoldsBackAFindingOfItsRuleFileAndPlace(string rule, string? at)
    {
        var result = Judge(1.5, Suppress(rule, at));

        Assert.Empty(result.Findings);
        var suppressed = Assert.Single(result.Suppressed);
        Assert.Equal("looked at and found harmless", suppressed.Suppression.Reason);
    }

    [Theory]
    [InlineData("measured", "steps/ed")]
    [InlineData("measured", "steps/edta/amount/x")]
    [InlineData("other", null)]
    public void LeavesOtherPlacesAndRulesAlone(string rule, string? at)
    {
        var result = Judge(1.5, Suppress(rule, at));

        Assert.Contains(result.Findings, f => f.Rule.Name == MeasuredRule.RuleName);
        Assert.Contains(result.Findings, f => f.Rule.Name == "suppression-unused" && f.Place.File == Sample.SettingsFile);
        Assert.Empty(result.Suppressed);
    }

    [Theory]
    [InlineData(1.5, 1.5, true)]
    [InlineData(1.5, 2.0, true)]
    [InlineData(1.5, 1.4, false)]
    [InlineData(1.5, 1.4999999, true)] // the last bit never reopens
    [InlineData(0.5, 0.5, true)] // below the limit of 1 a smaller value is the worse one
    [InlineData(0.5, 0.4, true)]
    [InlineData(0.5, 0.6, false)]
    public void AWorseValueThanTheAcceptedOneReopensTheFinding(double value, double accepted, bool held)
    {
        var result = Judge(value, Suppress("measured", null) with { Accepted = accepted });

        Assert.Equal(held, result.Suppressed.Count == 1);
        if (!held)
        {
            var finding = Assert.Single(result.Findings);
            var related = Assert.Single(finding.Related);
            Assert.Equal(Sample.SettingsFile, related.Place.File);
            Assert.Contains("accepted here up to", related.Label, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AnAcceptedValueNeedsANumberToCompareWith()
    {
        var result = Judge(null, Suppress("measured", null) with { Accepted = 2 });

        Assert.Equal([MeasuredRule.RuleName, "suppression-unused"], result.Findings.Select(f => f.Rule.Name));
    }

    [Theory]
    [InlineData("2026-11-24", false)]
    [InlineData("2026-11-25", true)]
    [InlineData("2026-11-26", true)]
    public void HoldsThroughItsLastDay(string last, bool held)
    {
        var result = Judge(1.5, Suppress("measured", null) with { Expires = DateOnly.Parse(last, System.Globalization.CultureInfo.InvariantCulture) });

        Assert.Equal(held, result.Suppressed.Count == 1);
        // So close to its end the suppression is told of while it still holds.
        string[] told = held ? ["suppression-expired"] : [MeasuredRule.RuleName, "suppression-expired"];
        Assert.Equal(told, result.Findings.Select(f => f.Rule.Name));
        Assert.Equal(held ? Level.Note : Level.Warning, result.Findings.Single(f => f.Rule.Name == "suppression-expired").Level);
    }

    [Fact]
    public void WithoutADayNothingExpires()
    {
        var facts = FactsWith(Suppress("measured", null) with { Expires = new DateOnly(2000, 1, 1) });

        Assert.Empty(LintEngine.Judge(facts, Options(1.5, null)).Findings);
    }

    [Fact]
    public void AnExpiredOneThatCoversNothingSaysSoOnce()
    {
        var result = LintEngine.Judge(
            FactsWith(Suppress("other", null) with { Expires = new DateOnly(2000, 1, 1) }),
            new EngineOptions { Today = _today, Rules = [.. RuleList.All] });

        Assert.Contains("delete the entry", Assert.Single(result.Findings, f => f.Rule.Name == "suppression-expired").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(result.Findings, f => f.Rule.Name == "suppression-unused");
    }

    [Fact]
    public void NothingIsSaidOfAFileThatWasNotReadUnlessTheSettingsWereAskedAbout()
    {
        var suppression = Sample.Suppress("duplicate-key", "elsewhere.stock.json");
        var facts = FactsWith(suppression);
        Assert.Contains(LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings, f => f.Rule.Name == "suppression-unused");

        facts = facts with { Workspace = facts.Workspace with { Asked = new HashSet<string> { Sample.StockFile } } };
        Assert.DoesNotContain(LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All }).Findings, f => f.Rule.Name == "suppression-unused");
    }

    private static Suppression Suppress(string rule, string? at) =>
        Sample.Suppress(rule == "measured" ? MeasuredRule.RuleName : "unknown-unit", Sample.StockFile, at);

    private static LintResult Judge(double? value, Suppression suppression) => LintEngine.Judge(FactsWith(suppression), Options(value, _today));

    private static Facts FactsWith(Suppression suppression) =>
        Sample.All([Sample.Facts(Sample.Stock())], shop: Sample.Shop(suppressions: [suppression]));

    private static EngineOptions Options(double? value, DateOnly? today) =>
        new() { Today = today, Rules = [new MeasuredRule(value), .. RuleList.All.OfType<SuppressionRule>()] };

    /// <summary>Finds one value against a limit of 1 at steps/edta/amount; borrows a description, since it has no folder.</summary>
    private sealed class MeasuredRule(double? value) : StockRule
    {
        internal const string RuleName = "duplicate-key";

        public override string Name => RuleName;

        public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context) =>
        [
            context.Find(Place.Whole(stock.Stock.File), "steps/edta/amount", "Too much. Less.", Harm.Loss, Odds.Certain) with
            {
                Measured = value is { } v ? new Measured("ratio", v, 1, "") : null,
            },
        ];
    }
}

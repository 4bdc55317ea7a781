using System.Diagnostics;
using System.Text;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Rules that a shop writes itself, as JSON Schema over the facts: where they speak, how they are tuned, and what stops an evil one.</summary>
public sealed class HouseRuleTests
{
    private const string Stock = """
        {"format": 1, "name": "Trace", "makes": "1 L", "steps": [
          {"pour": "0.7 L"},
          {"add": "manganese-sulfate-h2o", "amount": "0.5 g", "id": "mn"},
          {"add": "KNO3", "amount": "50 g"},
          {"topUp": "1 L"}]}
        """;

    private static string Rule(string must, string id = "HR0001", string name = "weighed-below-a-gram", string more = "") => $$$"""
        {"format": 1, "id": "{{{id}}}", "name": "{{{name}}}", "level": "warning", "looksAt": "stock",
         "must": {{{must}}},
         "message": "{1/id} of '{/name}' is weighed as {0} g, {/nothing/there}.", "reason": "Make a pre-stock."{{{more}}}}
        """;

    private const string Small = """{"properties": {"additions": {"items": {"properties": {"mass_g": {"minimum": 1}}}}}}""";

    private static Answer Check(string rule, string settings = "{}", params string[] more)
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", settings);
        scratch.Write("house-rules/own.rule.json", rule);
        scratch.Write("trace.stock.json", Stock);
        return Cli.RunIn(scratch.Path, null, ["check", ".", .. more]);
    }

    private static string[] Own(Answer answer) => [.. answer.Out.Split('\n').Where(l => l.Contains(" HR0001 ", StringComparison.Ordinal))];

    [Fact]
    public void TheExamplesOfTheExampleShopDoWhatTheyShould()
    {
        var answer = Cli.Run("rules", "--test", "examples/tarnbeck-house-rules");
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Equal(7, answer.Out.TrimEnd().Split('\n').Length);
        Assert.Equal(0, Cli.Run("check", "examples/tarnbeck-house-rules", "--fail-on", "note").Code);
    }

    [Fact]
    public void AFindingStandsAtTheAmountThatTheFactWasReadFrom()
    {
        var answer = Check(Rule(Small));
        Assert.Equal("trace.stock.json:3:46: warning HR0001 weighed-below-a-gram (practice):", Assert.Single(Own(answer)));
        Assert.Contains("mn of 'Trace' is weighed as 0.5 g, nothing. Make a pre-stock.", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"rules": {"weighed-below-a-gram": "off"}}""", "")]
    [InlineData("""{"rules": {"HR0001": "off"}}""", "")]
    [InlineData("""{"rules": {"HR0001": "error"}}""", ": error HR0001")]
    [InlineData("""{"suppressions": [{"rule": "HR0001", "file": "trace.stock.json", "at": "steps/mn", "reason": "weighed elsewhere"}]}""", "")]
    [InlineData("""{"suppressions": [{"rule": "weighed-below-a-gram", "file": "trace.stock.json", "reason": "weighed elsewhere"}]}""", "")]
    public void AShopTunesItsOwnRulesLikeAnyOther(string settings, string expected)
    {
        var answer = Check(Rule(Small), settings);
        Assert.DoesNotContain("unknown-rule", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("wrong-shape", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("unknown-key", answer.Out, StringComparison.Ordinal);
        Assert.Equal(expected.Length > 0, Own(answer).Length > 0);
        Assert.Contains(expected, string.Join('\n', Own(answer)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}", "warning", "mn of 'Trace' is weighed as 0.5 g")]
    [InlineData("""{"rules": {"HR0001": "error"}}""", "error", "mn of 'Trace' is weighed as 0.5 g")]
    [InlineData("""{"rules": {"HR0001": "off"}}""", "off", "not asked")]
    public void ShowTellsWhatTheRulesOfTheShopSay(string settings, string level, string says)
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", settings);
        scratch.Write("house-rules/own.rule.json", Rule(Small));
        scratch.Write("house-rules/other.rule.json", Rule("""{"type": "object"}""", "HR0002", "no-facts-at-all"));
        scratch.Write("trace.stock.json", Stock);
        scratch.Write("plain.recipe.json", """{"format": 1, "water": "distilled", "final": "10 L", "doses": [{"stock": "trace.stock.json", "dose": "1 mL/L"}]}""");
        var lines = Cli.RunIn(scratch.Path, null, "show", "trace.stock.json", "--width", "200").Out.Split('\n');
        Assert.Contains(lines, l => l.Contains("HR0001 weighed-below-a-gram", StringComparison.Ordinal) && l.Contains(level, StringComparison.Ordinal) && l.Contains(says, StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("HR0002 no-facts-at-all", StringComparison.Ordinal) && l.Contains("nothing", StringComparison.Ordinal));
        Assert.DoesNotContain("HR0001", Cli.RunIn(scratch.Path, null, "show", "plain.recipe.json").Out, StringComparison.Ordinal);
    }

    /// <summary>Whatever could take for ever, or asks for what is not there, is a finding in the file of the rule; the rule judges nothing.</summary>
    [Theory]
    [InlineData("""{"properties": {"name": {"pattern": "^(a+)+\\1$"}}}""", "pattern")]
    [InlineData("""{"properties": {"name": {"pattern": "(?=x)"}}}""", "looks around")]
    [InlineData("""{"properties": {"name": {"pattern": "^(((a{100}){100}){100})$"}}}""", "repeats too often")]
    [InlineData("""{"properties": {"name": {"pattern": "("}}}""", "no regular expression")]
    [InlineData("""{"$ref": "#"}""", "names a definition")]
    [InlineData("""{"$ref": "https://example.invalid/schema"}""", "names a definition")]
    [InlineData("""{"$ref": "#/$defs/a", "$defs": {"a": {"allOf": [{"$ref": "#/$defs/b"}]}, "b": {"not": {"$ref": "#/$defs/a"}}}}""", "never end")]
    [InlineData("""{"propertees": {}}""", "\"properties\"")]
    [InlineData("""{"minimum": "1"}""", "JSON Schema")]
    [InlineData("""{"items": 7}""", "schema is an object")]
    [InlineData("""{"$dynamicRef": "#x"}""", "no keyword")]
    [InlineData("""{"patternProperties": {"(a+)+$": {}}}""", "no keyword")]
    public void WhatCannotBeUsedIsFoundFaultWithInTheRule(string must, string said)
    {
        var answer = Check(Rule(must));
        Assert.InRange(answer.Code, 0, 1);
        Assert.Empty(Own(answer));
        var finding = Assert.Single(answer.Findings, f => f.StartsWith("house-rules/own.rule.json:", StringComparison.Ordinal));
        Assert.Contains("wrong-shape", finding, StringComparison.Ordinal);
        Assert.Contains(said, string.Join(' ', answer.Out.Split('\n', StringSplitOptions.TrimEntries)), StringComparison.Ordinal);
    }

    /// <summary>An expression that a matcher which goes back would need longer for than the world is old.</summary>
    [Fact]
    public void AnEvilExpressionIsMatchedInNoTime()
    {
        var rule = Rule("""{"properties": {"name": {"pattern": "^(([a-z])+.)+[A-Z]([a-z])+$"}, "additions": {"items": {"properties": {"name": {"pattern": "^(x+x+)+y$"}}}}}}""");
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{}");
        scratch.Write("own.rule.json", rule);
        scratch.Write("trace.stock.json", Stock.Replace("\"Trace\"", $"\"{new string('a', 190)}\"", StringComparison.Ordinal));
        var watch = Stopwatch.StartNew();
        var answer = Cli.RunIn(scratch.Path, null, "check", ".");
        Assert.NotEmpty(Own(answer));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), $"{watch.Elapsed}");
    }

    /// <summary>Ten definitions, each ten times the one before: ten thousand million schemas once they are followed.</summary>
    [Fact]
    public void ASchemaThatGrowsWithoutEndIsNotFollowed()
    {
        var definitions = new StringBuilder("\"d0\": {\"type\": \"object\"}");
        for (var i = 1; i <= 10; i++)
        {
            var same = string.Join(',', Enumerable.Repeat($$"""{"$ref": "#/$defs/d{{i - 1}}"}""", 10));
            definitions.Append($$""", "d{{i}}": {"allOf": [{{same}}]}""");
        }

        var answer = Check(Rule("{\"$ref\": \"#/$defs/d10\", \"$defs\": {" + definitions + "}}"));
        Assert.Empty(Own(answer));
        Assert.Contains("more than 10000 parts", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ARuleNestedOrFilledWithoutEndIsAFinding()
    {
        var deep = string.Concat(Enumerable.Repeat("{\"not\":", 5000)) + "true" + new string('}', 5000);
        Assert.NotEmpty(Check(Rule(deep)).Findings);
        var many = $$"""{"enum": [{{string.Join(',', Enumerable.Range(0, 1_000_000))}}]}""";
        Assert.Contains(Check(Rule(many)).Findings, f => f.StartsWith("house-rules/own.rule.json:1:1: error RL0001", StringComparison.Ordinal));
        Assert.InRange(Check(Rule($$"""{"enum": [{{string.Join(',', Enumerable.Range(0, 100_000))}}]}""")).Code, 0, 1);
    }

    /// <summary>Facts of a million values, as no file that is read can have them: the rule is not asked and says so at its own place.</summary>
    [Fact]
    public void ADocumentOfAMillionElementsEndsWithAFinding()
    {
        var files = new MemoryFileTree("/shop").Add("recipelint.json", "{}").Add("trace.stock.json", Stock)
            .Add("own.rule.json", Rule("""{"allOf": [{"type": "array"}, {"type": "array"}, {"items": {"type": "number"}}, {"items": {"minimum": 1}}, {"items": {"maximum": 2}}, {"items": true}]}"""));
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(files, ["/shop"], new LoadOptions { Profiles = ProfileLibrary.AllNames }));
        var million = Encoding.UTF8.GetBytes($"[{string.Join(',', Enumerable.Repeat("1", 1_000_000))}]");
        var result = LintEngine.Judge(facts, new EngineOptions { Rules = RuleList.All, FactsDocument = (_, _) => million });
        var finding = Assert.Single(result.Findings, f => f.Rule.Family == HouseRules.Family);
        Assert.Equal("own.rule.json", finding.Place.File);
        Assert.Contains("1,000,001 values", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoRulesOfOneIdAndOneWithABuiltInNameAreTold()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{}");
        scratch.Write("a.rule.json", Rule(Small));
        scratch.Write("b.rule.json", Rule(Small, name: "another"));
        scratch.Write("c.rule.json", Rule(Small, "HR0003", "calcium-with-sulfate"));
        var found = Cli.RunIn(scratch.Path, null, "check", ".").Findings;
        Assert.Contains(found, f => f.StartsWith("b.rule.json:", StringComparison.Ordinal) && f.Contains("duplicate-key", StringComparison.Ordinal));
        Assert.Contains(found, f => f.StartsWith("c.rule.json:", StringComparison.Ordinal));
    }

    [Fact]
    public void ARuleServesItsShopAndNoOther()
    {
        using var scratch = new Scratch();
        scratch.Write(".git/HEAD", "");
        scratch.Write("one/recipelint.json", "{}");
        scratch.Write("one/house-rules/own.rule.json", Rule(Small));
        scratch.Write("one/stocks/trace.stock.json", Stock);
        scratch.Write("two/recipelint.json", "{}");
        scratch.Write("two/stocks/trace.stock.json", Stock);
        Assert.StartsWith("one/stocks/trace.stock.json:", Assert.Single(Own(Cli.RunIn(scratch.Path, null, "check", "."))), StringComparison.Ordinal);

        // A file judged alone is judged alike.
        Assert.Single(Own(Cli.RunIn(scratch.Path, null, "check", "one/stocks/trace.stock.json")));
    }

    [Theory]
    [InlineData("""{"houseRules": "house-rules"}""", 1, false)]
    [InlineData("""{"houseRules": ["elsewhere", "house-rules"]}""", 1, true)]
    [InlineData("""{"houseRules": "stocks"}""", 0, false)]
    public void AShopMaySayWhereItsRulesLie(string settings, int speaks, bool isMissing)
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", settings);
        scratch.Write("house-rules/own.rule.json", Rule(Small));
        scratch.Write("stocks/trace.stock.json", Stock);
        var answer = Cli.RunIn(scratch.Path, null, "check", ".");
        Assert.Equal(speaks, Own(answer).Length);
        Assert.Equal(isMissing, answer.Findings.Any(f => f.Contains("missing-reference", StringComparison.Ordinal)));
    }

    [Fact]
    public void TheLogForMachinesKnowsTheRule()
    {
        var answer = Check(Rule(Small), "{}", "--format", "sarif");
        Assert.Contains("\"id\": \"HR0001\"", answer.Out, StringComparison.Ordinal);
        Assert.Contains("\"ruleId\": \"HR0001\"", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AnExampleThatDoesNotDoWhatItShouldFailsTheRun()
    {
        const string Examples = """
            , "failing": [{"what": "two grams", "file": "a.stock.json", "files": {"a.stock.json": {"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "2 g"}, {"topUp": "1 L"}]}}},
                          {"what": "unreadable", "file": "a.stock.json", "files": {"a.stock.json": {"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "2"}, {"topUp": "1 L"}]}}}],
              "passing": [{"what": "half a gram", "file": "a.stock.json", "files": {"a.stock.json": {"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "0.5 g"}, {"topUp": "1 L"}]}}}]
            """;
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", "{}");
        scratch.Write("own.rule.json", Rule(Small, more: Examples));
        var answer = Cli.RunIn(scratch.Path, null, "rules", "--test");
        Assert.Equal(1, answer.Code);
        Assert.Contains("'two grams': The rule finds no fault", answer.Out, StringComparison.Ordinal);
        Assert.Contains("'half a gram': The rule finds fault", answer.Out, StringComparison.Ordinal);
        Assert.Contains("'unreadable': 'a.stock.json' cannot be read whole", answer.Out, StringComparison.Ordinal);
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "rules", "own.rule.json").Code);
        using var empty = new Scratch();
        empty.Write("recipelint.json", "{}");
        Assert.Equal(2, Cli.RunIn(empty.Path, null, "rules", "--test").Code);
    }

    [Fact]
    public void EveryCommandThatKnowsRulesKnowsThoseOfTheShop()
    {
        using var scratch = new Scratch();
        scratch.Write("recipelint.json", """{"rules": {"weighed-below-a-gram": "error"}}""");
        scratch.Write("house-rules/own.rule.json", Rule(Small));
        scratch.Write("trace.stock.json", Stock);
        Answer In(params string[] arguments) => Cli.RunIn(scratch.Path, null, arguments);

        Assert.Contains("HR0001  warning  weighed-below-a-gram", In("rules").Out, StringComparison.Ordinal);
        Assert.Contains("HR0001", In("list", "rules", "gram").Out, StringComparison.Ordinal);
        Assert.Contains("Make a pre-stock.", In("explain", "HR0001").Out, StringComparison.Ordinal);
        Assert.Contains("line 3: mn of 'Trace'", In("explain", "weighed-below-a-gram", "--for", "trace.stock.json").Out, StringComparison.Ordinal);
        Assert.Matches(@"HR0001 weighed-below-a-gram: error +recipelint\.json:1", In("settings", "trace.stock.json").Out);

        Assert.Equal(0, In("accept", "trace.stock.json:3 HR0001", "--because", "weighed on the fine scale").Code);
        Assert.DoesNotContain(In("check", ".").Findings, f => f.Contains("HR0001", StringComparison.Ordinal));
        scratch.Write("recipelint.json", "{}");
        Assert.Equal(0, In("baseline", "update").Code);
        Assert.Contains("HR0001", File.ReadAllText(Path.Combine(scratch.Path, "recipelint.baseline.json")), StringComparison.Ordinal);
        Assert.Equal(0, In("baseline", "compare").Code);
    }
}

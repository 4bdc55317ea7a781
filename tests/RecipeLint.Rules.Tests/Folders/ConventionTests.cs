using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>What holds for every rule folder; a rule that breaks it cannot be added.</summary>
public sealed partial class ConventionTests
{
    private static readonly Dictionary<string, (int First, int Last)> _ranges = new()
    {
        ["documents"] = (1, 99),
        ["precipitation"] = (100, 199),
        ["chelation"] = (200, 299),
        ["preservation"] = (300, 399),
        ["weighing"] = (400, 499),
        ["plant"] = (500, 599),
        ["procedure"] = (600, 699),
        ["people"] = (700, 799),
    };

    private static readonly string[] _headings =
        ["What it finds", "Why it matters", "Failing", "Passing", "Options", "What to do", "Repairs", "Cautions", "Sources"];

    private static readonly string[] _confidences = ["found", "memory", "derived", "practice"];

    public static TheoryData<string> Names() => RuleFolder.Names();

    [Fact]
    public void EveryRuleClassIsListedOnce()
    {
        var classes = typeof(Rule).Assembly.GetTypes().Where(t => !t.IsAbstract && t.IsAssignableTo(typeof(Rule))).Select(t => t.FullName).Order();
        Assert.Equal(classes, RuleList.All.Select(r => r.GetType().FullName).Order());
    }

    /// <summary>The descriptions are made when the program is built: they say what the files of the checkout say, key for key.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void WhatTheProgramKnowsOfARuleIsWhatItsFolderSays(string name)
    {
        var folder = RuleFolder.Find(name).Path;
        var said = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "rule.json")))!.AsObject();
        said.Remove("$schema");
        if (said["problemKind"] is JsonValue one)
        {
            said["problemKind"] = new JsonArray(one.DeepClone());
        }

        var rule = RuleBook.Find(name)!;
        var known = new JsonObject
        {
            ["id"] = rule.Id,
            ["name"] = rule.Name,
            ["family"] = rule.Family,
            ["level"] = Words.Of(rule.Level),
            ["certainty"] = Words.Of(rule.Certainty),
            ["scope"] = rule.Scope.ToString().ToLowerInvariant(),
            ["title"] = rule.Title,
            ["since"] = rule.Since,
            ["options"] = new JsonArray([.. rule.Options.Select(o => new JsonObject
            {
                ["name"] = o.Name,
                ["description"] = o.Description,
                ["default"] = o.IsNumber ? JsonNode.Parse(o.Default) : o.Default,
                ["unit"] = o.Unit,
                ["source"] = o.Source,
            })]),
            ["sources"] = new JsonArray([.. rule.Sources.Select(s => new JsonObject { ["text"] = s.Text, ["confidence"] = s.Confidence })]),
        };
        if (rule.IsPreview)
        {
            known["preview"] = true;
        }

        if (rule.ProblemKinds.Count > 0)
        {
            known["problemKind"] = new JsonArray([.. rule.ProblemKinds.Select(k => JsonValue.Create(k.ToString()))]);
        }

        Assert.True(JsonNode.DeepEquals(said, known), $"{said}\n{known}");
        Assert.Equal(File.ReadAllText(Path.Combine(folder, "explanation.md")).ReplaceLineEndings("\n"), rule.Explanation.Value);
    }

    [Fact]
    public void EveryRuleHasAFolderAndEveryFolderARule()
    {
        Assert.Equal(RuleFolder.All.Select(f => f.Name).Order(), RuleList.All.Select(r => r.Name).Order());
        Assert.Equal(RuleFolder.All.Select(f => f.Name).Order(), RuleBook.Descriptors.Select(d => d.Name).Order());
    }

    [Fact]
    public void IdsNamesAndTitlesAreUnique()
    {
        Assert.Equal(RuleBook.Descriptors.Length, RuleBook.Descriptors.Select(d => d.Id).Distinct().Count());
        Assert.Equal(RuleBook.Descriptors.Length, RuleBook.Descriptors.Select(d => d.Name).Distinct().Count());
        Assert.Equal(RuleBook.Descriptors.Length, RuleBook.Descriptors.Select(d => d.Title).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void DescriptionMatchesFolderFamilyAndClass(string name)
    {
        var folder = RuleFolder.Find(name);
        var rule = RuleBook.Find(name)!;
        Assert.Equal(folder.Family, rule.Family);
        Assert.Matches(KebabCase(), rule.Name);
        Assert.Matches(IdShape(), rule.Id);
        var (first, last) = _ranges[rule.Family];
        Assert.InRange(int.Parse(rule.Id[2..], CultureInfo.InvariantCulture), first, last);
        Assert.Matches(VersionShape(), rule.Since);
        Assert.Equal(RuleList.All.Single(r => r.Name == name).Scope, rule.Scope);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void TitleIsOneSentence(string name)
    {
        var title = RuleBook.Find(name)!.Title;
        Assert.EndsWith(".", title, StringComparison.Ordinal);
        Assert.DoesNotContain(". ", title, StringComparison.Ordinal);
        Assert.True(char.IsUpper(title[0]) || char.IsDigit(title[0]), title);
        Assert.InRange(title.Length, 10, 100);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void UncertainVerdictsStayBelowError(string name)
    {
        var rule = RuleBook.Find(name)!;
        Assert.True(rule.Certainty == Certainty.Computed || rule.Level < Level.Error || rule.Family == "people", rule.Name);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ExplanationHasEveryHeadingWithText(string name)
    {
        var rule = RuleBook.Find(name)!;
        var text = rule.Explanation.Value;
        Assert.StartsWith("# " + rule.Title.TrimEnd('.') + "\n", text, StringComparison.Ordinal);
        var found = text.Split('\n').Where(l => l.StartsWith("## ", StringComparison.Ordinal)).Select(l => l[3..]);
        Assert.Equal(_headings, found);
        foreach (var heading in _headings)
        {
            Assert.False(string.IsNullOrWhiteSpace(rule.Section(heading)), $"{name}: nothing under '{heading}'");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EverythingHasASource(string name)
    {
        var rule = RuleBook.Find(name)!;
        Assert.NotEmpty(rule.Sources);
        foreach (var source in rule.Sources)
        {
            Assert.Contains(source.Confidence, _confidences);
            Assert.True(
                source.Confidence != "practice" || source.Text.Contains("common practice", StringComparison.OrdinalIgnoreCase),
                $"{name}: what is practice says so");
        }

        var section = rule.Section("Sources");
        Assert.True(
            section.StartsWith("- ", StringComparison.Ordinal) || section.Contains("ommon practice, no source", StringComparison.Ordinal),
            $"{name}: list the sources, or write 'common practice, no source'");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryOptionIsExplained(string name)
    {
        var rule = RuleBook.Find(name)!;
        var section = rule.Section("Options");
        if (rule.Options.Count == 0)
        {
            Assert.StartsWith("None.", section, StringComparison.Ordinal);
        }

        foreach (var option in rule.Options)
        {
            Assert.Matches(CamelCase(), option.Name);
            Assert.EndsWith(".", option.Description, StringComparison.Ordinal);
            Assert.False(string.IsNullOrWhiteSpace(option.Source), $"{name}: option {option.Name} has no source");
            Assert.Contains($"`{option.Name}`", section, StringComparison.Ordinal);
            Assert.Contains(option.Unit.Length == 0 ? option.Default : $"{option.Default} {option.Unit}", section, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ThereIsAFailingAndAPassingExample(string name)
    {
        var folder = RuleFolder.Find(name);
        Assert.NotEmpty(folder.Failing);
        Assert.NotEmpty(folder.Passing);
        Assert.All(folder.Failing, f => Assert.True(File.Exists(f.ExpectedFile), $"{f}: expected.json is missing"));
        Assert.All(folder.Passing, f => Assert.False(File.Exists(f.ExpectedFile), $"{f}: a passing example expects nothing"));
        var known = new[] { "rule.json", "explanation.md" };
        Assert.All(Directory.GetFiles(folder.Path), f => Assert.Contains(Path.GetFileName(f), known));
        Assert.All(
            Directory.GetDirectories(folder.Path),
            d => Assert.Matches("^(failing|passing)-[a-z0-9-]+$", Path.GetFileName(d)));
    }

    [Fact]
    public void EveryProblemKindHasExactlyOneRule()
    {
        var owned = RuleBook.Descriptors.SelectMany(d => d.ProblemKinds).Order();
        Assert.Equal(Enum.GetValues<RecipeLint.Recipes.Text.ProblemKind>().Order(), owned);
        foreach (var rule in RuleList.All.OfType<RecipeLint.Rules.Documents.ProblemRule>())
        {
            Assert.Equal(RuleBook.Of(rule).ProblemKinds.Order(), rule.Kinds.Order());
        }
    }

    /// <summary>Words of two letters at least: a single one would put two capitals together in the PascalCase name that SARIF asks for.</summary>
    [GeneratedRegex("^[a-z][a-z0-9]+(-[a-z0-9]{2,})*$")]
    private static partial Regex KebabCase();

    [GeneratedRegex("^[a-z][a-zA-Z0-9]*$")]
    private static partial Regex CamelCase();

    [GeneratedRegex("^RL[0-9]{4}$")]
    private static partial Regex IdShape();

    [GeneratedRegex(@"^[0-9]+\.[0-9]+\.[0-9]+$")]
    private static partial Regex VersionShape();
}

using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>A card shows the real files and the real findings.</summary>
public sealed class RuleCardTests
{
    public static TheoryData<string> Names => [.. RuleBook.Descriptors.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryExampleIsOnTheCardWithItsFindings(string name)
    {
        var rule = RuleBook.Find(name)!;
        var page = Book.Pages[$"rules/{name}.html"];
        var folders = Directory.GetDirectories(Path.Combine(Repository.Root, "rules", rule.Family, name)).Select(f => Path.GetFileName(f)!).ToList();
        Assert.All(folders, f => Assert.Contains(page.Descendants(), e => e.Attr("id") == f));

        var failing = page.Descendants("div").Where(d => d.Attr("class") == "example").ToList();
        Assert.Equal(folders.Count(f => f.StartsWith("failing-", StringComparison.Ordinal)), failing.Count);
        Assert.All(failing, example =>
        {
            var findings = example.Descendants("div").Where(d => d.Attr("class")?.StartsWith("finding", StringComparison.Ordinal) == true).ToList();
            Assert.NotEmpty(findings);
            Assert.All(findings, f => Assert.Contains($"{rule.Id} {name}", f.Value, StringComparison.Ordinal));
            Assert.NotEmpty(example.Descendants("figure"));
        });
        Assert.Contains(failing, example => example.Descendants("mark").Any());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EverySourceAndOptionIsOnTheCard(string name)
    {
        var rule = RuleBook.Find(name)!;
        var text = Book.Pages[$"rules/{name}.html"].Value;
        Assert.All(rule.Sources, s => Assert.Contains(Printable.Show(s.Text), text, StringComparison.Ordinal));
        Assert.All(rule.Options, o => Assert.Contains(o.Description, text, StringComparison.Ordinal));
        Assert.All(new[] { "What it finds", "What to do", "Cautions", "Why it matters", "Options", "Sources" }, h => Assert.Contains(h, text, StringComparison.Ordinal));
    }

    /// <summary>What a reader copies into the settings must be read without a word.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void TheSettingsShownCanBeUsed(string name)
    {
        var rule = RuleBook.Find(name)!;
        if (rule.Options.Count == 0)
        {
            Assert.Contains("None.", Book.Pages[$"rules/{name}.html"].Value, StringComparison.Ordinal);
            return;
        }

        var files = new MemoryFileTree("/shop").Add("recipelint.json", RulePage.SettingsSnippet(rule)).Add("a.stock.json", FilesPage.SmallestStock);
        var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions());
        var result = LintEngine.Judge(Analyzer.Analyse(workspace), new EngineOptions { Rules = RuleList.All });
        Assert.DoesNotContain(result.Findings, f => f.Place.File == "recipelint.json");
    }

    [Fact]
    public void TheStockOfTheGuideIsClean()
    {
        var files = new MemoryFileTree("/shop").Add("a.stock.json", FilesPage.SmallestStock);
        var workspace = WorkspaceLoader.Load(files, ["."], new LoadOptions());
        Assert.Empty(LintEngine.Judge(Analyzer.Analyse(workspace), new EngineOptions { Rules = RuleList.All }).Findings);
    }

    [Fact]
    public void TheAmountsOfTheGuideAreReadWithoutAQuestion() =>
        Assert.All(FilesPage.Quantities, q => Assert.All(q.Written, w => Assert.True(QuantityReader.TryRead(w, q.Due, out _, out _), w)));

    [Fact]
    public void TitlesOfExamplesGetTheCapitalsOfTheTradeBack()
    {
        string Title(string name) => new ShelfFolder(name, [], new Dictionary<string, string>()).Title;
        Assert.Equal("Epsom salt in part A", Title("failing-epsom-in-part-a"));
        Assert.Equal("P2O5 read as P", Title("failing-p2o5-read-as-p"));
        Assert.Equal("In the dark", Title("passing-in-the-dark"));
    }

    [Fact]
    public void SignsNameRulesThatExistAndADangerSaysWhatToDo()
    {
        Assert.All(Sign.All.SelectMany(s => s.Rules), r => Assert.NotNull(RuleBook.Find(r)));
        Assert.All(Sign.All.Where(s => s.Rules.Any(r => RuleBook.Find(r)!.Family == "people")), s => Assert.NotNull(s.Danger));
        Assert.Equal(RuleBook.Descriptors.Select(d => d.Family).Distinct(), Family.All.Select(f => f.Name));
    }

    [Fact]
    public void SearchKnowsEveryRuleAndTheWordsPeopleUse()
    {
        var lines = Book.Text("find-words.js").Split('\n');
        Assert.All(RuleBook.Descriptors, d => Assert.Single(lines, l => l.StartsWith($"[\"{d.Id}\",\"{d.Name}\",", StringComparison.Ordinal)));
        Assert.All(
            new[] { ("gypsum", "calcium-with-sulfate"), ("mold", "carbon-without-preservative"), ("rust", "chelate-short"), ("p2o5", "target-missed"), ("crust", "calcium-with-sulfate") },
            pair => Assert.Contains(lines, l => l.Contains($"\"{pair.Item2}\"", StringComparison.Ordinal) && l.Split('"')[^2].Split(' ').Contains(pair.Item1)));
    }
}

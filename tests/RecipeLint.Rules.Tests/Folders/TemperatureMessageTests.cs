using System.Text.RegularExpressions;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>
/// Every message over every example of the rules, the shops of examples/, the published and the good recipes, every explanation and every
/// repair: of a solid or chelate of which nothing tells how it changes with temperature none says coldest, warmest, warmer or colder.
/// </summary>
public sealed partial class TemperatureMessageTests
{
    private static readonly string _tests = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "tests"));

    private static readonly (string Name, Regex Pattern)[] _untold =
    [
        .. ConstantSet.Product.Solids
            .Where(s => s is { TemperatureKnown: false, Role: SolidRole.FormsReadily or SolidRole.SolubleSalt or SolidRole.FormsSlowly })
            .Select(s => s.Called.Split(" (")[0])
            .Distinct()
            .Select(n => (n, new Regex($@"(?<![\w-]){Regex.Escape(n)}(?![\w-]| \w+hydrate)", RegexOptions.CultureInvariant))),
    ];

    [Fact]
    public void NoMessageOfAnExampleSaysHowItChanges()
    {
        var texts = RuleFolder.All
            .SelectMany(f => f.Failing.Concat(f.Passing))
            .SelectMany(e => ExampleRun.Of(e).Result.Findings.Select(f => (Where: e.ToString(), f.Message)))
            .ToList();
        Assert.True(texts.Count > 300, $"{texts.Count} messages");
        Assert.Contains(texts, t => Array.Exists(_untold, u => u.Pattern.IsMatch(t.Message)));
        Assert.Empty(texts.SelectMany(t => Told(t.Where, t.Message)));
    }

    [Fact]
    public void NoMessageOfAShopOrRecipeSaysHowItChanges()
    {
        var examples = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "examples"));
        string[] folders =
        [
            .. Directory.GetDirectories(examples), Path.Combine(_tests, "RecipeLint.Analysis.Tests", "Published"),
            Path.Combine(_tests, "RecipeLint.Rules.Tests", "GoodRecipes"),
        ];
        foreach (var folder in folders)
        {
            var files = new MemoryFileTree("/shop").AddFolder("/shop/.git");
            foreach (var path in Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories))
            {
                files.Add(Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllBytes(path));
            }

            var facts = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], ExampleRun.Load));
            Assert.Empty(LintEngine.Judge(facts, ExampleRun.Engine).Findings.SelectMany(f => Told(folder, f.Message)));
        }
    }

    [Fact]
    public void NoExplanationOrRepairSaysHowItChanges()
    {
        var files = RuleFolder.All.Select(f => Path.Combine(f.Path, "explanation.md"))
            .Append(Path.Combine(_tests, "RecipeLint.Rules.Tests", "Repairs", "repairs.md"));
        Assert.Empty(files.SelectMany(f => Told(f, File.ReadAllText(f))));
    }

    /// <summary>What falls out together with such a solid is not spoken of as cold or warm either (found in 2026).</summary>
    [Fact]
    public void WhatFallsOutBesideItIsNotCalledColdest()
    {
        var folder = RuleFolder.Find("magnesium-ammonium-phosphate");
        var run = ExampleRun.Of(folder.Failing.Single(e => e.Name == "failing-epsom-with-dkp"));
        var message = run.Result.Findings.Single(f => f.Rule.Name == folder.Name).Message;
        Assert.Contains("newberyite", message, StringComparison.Ordinal);
        Assert.Contains("(how K-struvite changes with temperature is not known)", message, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Told(string where, string text) =>
        from sentence in End().Split(text)
        where Words().IsMatch(sentence)
        from untold in _untold
        where untold.Pattern.IsMatch(sentence)
        select $"{where}: {untold.Name}: {sentence}";

    [GeneratedRegex("coldest|warmest|warmer|colder", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    [GeneratedRegex(@"(?<=[.;])\s", RegexOptions.CultureInvariant)]
    private static partial Regex End();
}

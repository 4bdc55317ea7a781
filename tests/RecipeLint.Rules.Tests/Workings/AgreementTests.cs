using System.Text;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Rules.Tests.Workings;

/// <summary>
/// Rule and working say the same of every mutant of every example, and neither ever fails: each verdict of each rule against its working, and
/// what is explained of the example's own rule against its findings. RECIPELINT_LONG=1 makes some 300,000 mutants.
/// </summary>
public sealed class AgreementTests
{
    private const int Usual = 2500, Long = 300_000;

    [Fact]
    public void RuleAndWorkingAgreeOnEveryMutant()
    {
        var wanted = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? Long : Usual;
        var examples = RuleFolder.All.SelectMany(f => f.Failing.Concat(f.Passing).Select(e => (Rule: f.Name, Run: ExampleRun.Of(e)))).ToList();
        var each = (wanted + examples.Count - 1) / examples.Count;
        var made = 0;
        var differences = examples.AsParallel().AsOrdered().SelectMany(e =>
        {
            var found = Differences(e.Rule, e.Run, each, out var count);
            Interlocked.Add(ref made, count);
            return found;
        }).ToList();
        Assert.True(differences.Count == 0, $"{differences.Count} of {made} mutants:\n{string.Join('\n', differences.Take(20))}");
        Assert.InRange(made, wanted / 2, int.MaxValue);
    }

    /// <summary>A salt past its solubility in a tank, by its activities and its totals together: found by 300,000 mutants.</summary>
    [Theory]
    [InlineData("potassium-nitrate", "31 g")]
    [InlineData("potassium-nitrate", "45 g")]
    [InlineData("potassium-sulfate", "25 g")]
    [InlineData("monopotassium-phosphate", "40 g")]
    public void ASaltOfWhichATankIsFullIsWorkedOutAsItIsJudged(string salt, string amount)
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add(
            "tank.recipe.json",
            """{"format": 1, "name": "Tank", "water": "distilled", "final": "0.1 L", "volume": "made up", "doses": [{"add": "#", "amount": "?"}, {"add": "calcium-nitrate-4h2o", "amount": "1 g"}]}"""
                .Replace("#", salt, StringComparison.Ordinal).Replace("?", amount, StringComparison.Ordinal));
        var facts = Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], ExampleRun.Load));
        Assert.Contains(RuleOnFile.Of(facts, (JudgingRule)RuleList.All.Single(r => r.Name == "tank-precipitate"), "tank.recipe.json").Workings, w => w.Fires);
        Assert.Empty(Of(facts, "tank-precipitate"));
    }

    private static List<string> Differences(string rule, ExampleRun run, int each, out int made)
    {
        made = 0;
        var found = new List<string>();
        var mutants = new JsonMutants(run.Workspace.Sources.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => (s.Key, Encoding.UTF8.GetString(s.Value.Bytes.ToArray()))));
        for (var number = 0; number < each; number++)
        {
            if (mutants.Of(number) is not var (file, bytes, slip))
            {
                continue;
            }

            made++;
            try
            {
                var facts = Analyzer.Analyse(WorkspaceLoader.Load(new OverlayFileTree(run.Files, file, bytes), ["."], ExampleRun.Load));
                found.AddRange(Of(facts, rule).Take(1).Select(d => $"{rule}, {slip}: {d}"));
            }
#pragma warning disable CA1031 // That nothing ever fails is what is tested: whatever comes is a difference, with its mutant.
            catch (Exception e)
#pragma warning restore CA1031
            {
                found.Add($"{rule}, {slip}: {e}");
            }
        }

        return found;
    }

    private static IEnumerable<string> Of(Facts facts, string rule)
    {
        var everything = new WorkingSubject("", facts, facts.Stocks, facts.Recipes, facts.Workspace.Waters);
        foreach (var judging in RuleList.All.OfType<JudgingRule>())
        {
            var context = RuleOnFile.ContextFor(facts, RuleBook.Of(judging));
            foreach (var difference in judging.Look(everything, context).Select(v => Agreement.Difference(judging, v.Verdict, v.Context)).OfType<string>())
            {
                yield return difference;
            }
        }

        if (RuleList.All.Single(r => r.Name == rule) is not JudgingRule { HasWorking: true } own)
        {
            yield break;
        }

        foreach (var file in facts.Workspace.Sources.Keys.Order(StringComparer.Ordinal))
        {
            var explained = RuleOnFile.Of(facts, own, file);
            if (!explained.IsOff && explained.Findings.Count + explained.Accepted.Count > 0 != explained.Workings.Any(w => w.Fires))
            {
                yield return $"{file}: {explained.Findings.Count} findings, but {explained.Workings.Count(w => w.Fires)} of its workings fire";
            }
        }
    }
}

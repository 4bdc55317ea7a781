using System.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>The table of which rules have repairs, in which of their failing examples, and why the others have none.</summary>
public sealed class RepairTableTests
{
    private static readonly string _table = Path.Combine(AppContext.BaseDirectory, "../../../Repairs/repairs.md");

    [Fact]
    public void TheTableIsUpToDate()
    {
        var text = new StringBuilder("# Repairs by rule\n\nWritten by the tests. What each repair of a failing example does, or why there is none.\n");
        foreach (var rule in RuleBook.Descriptors)
        {
            text.Append($"\n## {rule.Id} {rule.Name}\n\n");
            if (RuleList.All.Single(r => r.Name == rule.Name) is not IProposesRepairs)
            {
                text.Append($"None: {RepairReasons.ForRule(rule.Name) ?? "NO REASON GIVEN"}\n");
                continue;
            }

            foreach (var example in RuleFolder.Find(rule.Name).Failing)
            {
                text.Append($"- {example.Name}\n");
                var repairs = RepairExampleTests.Of(example);
                text.Append(repairs.Count == 0 ? $"  - none: {RepairReasons.ForExample(rule.Name, example.Name) ?? "NO REASON GIVEN"}\n" : "");
                foreach (var repair in repairs)
                {
                    var lines = RepairText.Lines(repair);
                    text.Append($"  - `{repair.Repair.Key}` ({(repair.Repair.Kind == RepairKind.Safe ? "safe" : "chemistry")}): {string.Join(' ', lines)}\n");
                }
            }
        }

        var found = text.ToString();
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(_table, found);
        }

        Assert.DoesNotContain("NO REASON GIVEN", found, StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(_table), found);
    }

    [Fact]
    public void EveryReasonIsNeeded()
    {
        var needed = RuleBook.Descriptors
            .Where(d => RuleList.All.Single(r => r.Name == d.Name) is not IProposesRepairs).Select(d => d.Name)
            .Concat(RuleFolder.All.Where(f => RuleList.All.Single(r => r.Name == f.Name) is IProposesRepairs)
                .SelectMany(f => f.Failing.Where(e => RepairExampleTests.Of(e).Count == 0).Select(e => $"{f.Name}/{e.Name}")));
        Assert.Equal(needed.Order(StringComparer.Ordinal), RepairReasons.All.Keys.Order(StringComparer.Ordinal));
        Assert.All(RepairReasons.All, r => Assert.EndsWith(".", r.Value, StringComparison.Ordinal));
    }

    /// <summary>The explanation says why there is no repair in the words of the table, or names each way by its key or the beginning of it.</summary>
    [Fact]
    public void EveryExplanationNamesTheRepairs()
    {
        foreach (var rule in RuleBook.Descriptors)
        {
            var section = rule.Section("Repairs");
            if (RepairReasons.ForRule(rule.Name) is { } reason)
            {
                Assert.Equal($"None: {reason}", section);
                continue;
            }

            Assert.StartsWith("`check --repairs`", section, StringComparison.Ordinal);
            foreach (var repair in RuleFolder.Find(rule.Name).Failing.SelectMany(RepairExampleTests.Of).DistinctBy(r => r.Repair.Key))
            {
                var named = System.Text.RegularExpressions.Regex.Matches(section, "`([a-z0-9.-]+)`").Select(m => m.Groups[1].Value);
                Assert.True(named.Any(n => Fits(repair.Repair.Key, n)), $"{rule.Name} does not name '{repair.Repair.Key}'");
                Assert.True(repair.Repair.Kind != RepairKind.Safe || section.Contains("`--fix`", StringComparison.Ordinal), $"{rule.Name} does not speak of --fix");
            }
        }
    }

    /// <summary>"move-...-to-..." stands for any key that runs so; an example of a basis for all of them.</summary>
    private static bool Fits(string key, string named) =>
        System.Text.RegularExpressions.Regex.IsMatch(key, "^" + System.Text.RegularExpressions.Regex.Escape(named).Replace("\\.\\.\\.", ".+", StringComparison.Ordinal) + "$")
        || (named == "as-p2o5" && key.StartsWith("as-", StringComparison.Ordinal));
}

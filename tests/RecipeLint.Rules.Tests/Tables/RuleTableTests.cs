using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Documents;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Tables;

/// <summary>
/// The table of all rules, rules.md beside this file: what computes each, where its limit comes from, and its examples. It is made from the
/// rule folders and the source of the rules and rewritten where RECIPELINT_UPDATE=1 is set.
/// </summary>
public sealed partial class RuleTableTests
{
    private static readonly string[] _computing =
    [
        "RecipeLint.Analysis.Uncertainty", "RecipeLint.Analysis.Equilibria", "RecipeLint.Analysis.Profiles", "RecipeLint.Analysis.Mixing",
        "RecipeLint.Chemistry.Equilibrium", "RecipeLint.Chemistry.Physical", "RecipeLint.Chemistry.Composition",
    ];

    [Fact]
    public void TheTableOfRulesIsUpToDate()
    {
        var path = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "tests", "RecipeLint.Rules.Tests", "Tables", "rules.md"));
        var table = Write();
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(path, table);
        }

        Assert.Equal(table, File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryRuleHasARowWithNoEmptyCell()
    {
        var rows = Write().Split('\n').Where(l => l.StartsWith("| RL", StringComparison.Ordinal)).ToList();
        Assert.Equal(RuleList.All.Count, rows.Count);
        Assert.All(rows, r => Assert.All(r.Trim('|').Split(" | "), cell => Assert.False(string.IsNullOrWhiteSpace(cell), r)));
    }

    private static string Write()
    {
        var sources = SourceFiles();
        var known = ComputingTypes();
        var text = new StringBuilder();
        text.Append("# All rules\n\nMade by RuleTableTests from the rule folders; rewritten with RECIPELINT_UPDATE=1.\n");
        foreach (var family in RuleBook.Descriptors.GroupBy(d => d.Family))
        {
            text.Append("\n## ").Append(family.Key).Append("\n\n");
            text.Append("| Rule | Level, certainty | What computes it | Source of its limit | Failing | Passing |\n|---|---|---|---|---|---|\n");
            foreach (var rule in family)
            {
                var folder = RuleFolder.Find(rule.Name);
                string[] cells =
                [
                    $"{rule.Id} {rule.Name}",
                    $"{Words.Of(rule.Level)}, {Words.Of(rule.Certainty)}",
                    Computes(rule, sources, known),
                    Limits(rule),
                    Links(folder, folder.Failing),
                    Links(folder, folder.Passing),
                ];
                text.Append("| ").AppendJoin(" | ", cells.Select(c => c.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
            }
        }

        return text.ToString();
    }

    /// <summary>Class and scope, and the computing types its source names.</summary>
    private static string Computes(RuleDescriptor rule, Dictionary<string, string> sources, HashSet<string> known)
    {
        var logic = RuleList.All.Single(r => r.Name == rule.Name);
        if (logic is ProblemRule problems)
        {
            return $"reading: {string.Join(", ", problems.Kinds.Order())}";
        }

        var type = logic.GetType().Name;
        var used = Word().Matches(sources[type]).Select(m => m.Value).Where(w => known.Contains(w) && w != type).Distinct().Order(StringComparer.Ordinal).ToList();
        var scope = logic.Scope switch
        {
            RuleScope.Stock => "facts of a stock",
            RuleScope.Recipe => "facts of a recipe",
            _ when logic is SuppressionRule => "suppressions",
            _ => "facts of the workspace",
        };
        return used.Count == 0 ? $"{type}: {scope}" : $"{type}: {scope}; {string.Join(", ", used)}";
    }

    /// <summary>Each option with its default and source; a rule without options rests on its sources.</summary>
    private static string Limits(RuleDescriptor rule) =>
        rule.Options.Count == 0
            ? string.Join("; ", rule.Sources.Select(s => $"{s.Text.TrimEnd('.')} ({s.Confidence})"))
            : string.Join("; ", rule.Options.Select(o => $"{o.Name} {o.Default}{(o.Unit.Length == 0 ? "" : " " + o.Unit)}: {o.Source.TrimEnd('.')}"));

    private static string Links(RuleFolder folder, IReadOnlyList<ExampleFolder> examples) =>
        string.Join(", ", examples.Select(e => $"[{e.Name[(e.Name.IndexOf('-', StringComparison.Ordinal) + 1)..]}](../../../rules/{folder.Family}/{folder.Name}/{e.Name})"));

    /// <summary>Source text of every class of the rules project by its name, without comments and usings; an alias counts as what it stands for.</summary>
    private static Dictionary<string, string> SourceFiles()
    {
        var root = Path.GetFullPath(Path.Combine(RuleFolder.Root, "..", "src", "RecipeLint.Rules"));
        var files = new Dictionary<string, string>();
        foreach (var path in Directory.GetFiles(root, "*.cs", SearchOption.AllDirectories).Where(p => !Generated().IsMatch(p)).Order(StringComparer.Ordinal))
        {
            var lines = File.ReadAllLines(path).Select(l => Alias().Replace(l, "$1.")).Where(l => !Ignored().IsMatch(l));
            files[Path.GetFileNameWithoutExtension(path)] = string.Join('\n', lines);
        }

        return files;
    }

    /// <summary>Types that compute: of the analysis and chemistry, and the helpers of the rule families.</summary>
    private static HashSet<string> ComputingTypes()
    {
        var assemblies = new[] { typeof(RecipeLint.Analysis.Facts).Assembly, typeof(RecipeLint.Chemistry.Quantities.Mass).Assembly };
        var engine = assemblies.SelectMany(a => a.GetTypes()).Where(t => _computing.Contains(t.Namespace) && !t.IsEnum);
        var helpers = typeof(Rule).Assembly.GetTypes()
            .Where(t => t.Namespace is { } space && space != typeof(Rule).Namespace && space != typeof(RecipeLint.Rules.Repairs.RepairDesk).Namespace
                && space != typeof(RecipeLint.Rules.Workings.RuleOnFile).Namespace && !t.IsAssignableTo(typeof(Verdict)) && !t.Name.EndsWith("Options", StringComparison.Ordinal)
                && !t.IsAssignableTo(typeof(Rule)) && !t.IsNested && !t.Name.EndsWith("Rules", StringComparison.Ordinal));
        return [.. engine.Concat(helpers).Where(t => !t.IsNested && TypeName().IsMatch(t.Name)).Select(t => t.Name)];
    }

    [GeneratedRegex(@"^\s*(///|//|using |namespace )")]
    private static partial Regex Ignored();

    [GeneratedRegex(@"[\\/](bin|obj)[\\/]")]
    private static partial Regex Generated();

    [GeneratedRegex(@"^using \w+ = .*?(\w+);$")]
    private static partial Regex Alias();

    /// <summary>A name used as a type: before a member, a variable or the end of a type argument, and no member itself.</summary>
    [GeneratedRegex(@"(?<![.\w])[A-Z][A-Za-z]+(?=\.|\??\s+[a-z_]|\??>)")]
    private static partial Regex Word();

    [GeneratedRegex("^[A-Z][A-Za-z]+$")]
    private static partial Regex TypeName();
}

using System.Collections.Concurrent;
using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>For every failing example of every rule with a repair: applying it removes the finding and brings none as grave, and once is enough.</summary>
public sealed class RepairExampleTests
{
    private static readonly ConcurrentDictionary<string, IReadOnlyList<VerifiedRepair>> _found = new();

    public static TheoryData<string, string> Failing()
    {
        var data = new TheoryData<string, string>();
        foreach (var folder in RuleFolder.All.Where(f => RuleList.All.Single(r => r.Name == f.Name) is IProposesRepairs))
        {
            foreach (var example in folder.Failing)
            {
                data.Add(folder.Name, example.Name);
            }
        }

        return data;
    }

    /// <summary>The repairs of every finding of a rule in one of its examples.</summary>
    internal static IReadOnlyList<VerifiedRepair> Of(ExampleFolder example) => _found.GetOrAdd(example.Path, _ =>
    {
        var run = ExampleRun.Of(example);
        var desk = new RepairDesk(run.Files, ExampleRun.Load, ExampleRun.Engine, new Judged(run.Workspace, run.Facts, run.Result));
        return [.. run.Result.Findings.Where(f => f.Rule.Name == example.Rule.Name).SelectMany(f => desk.For(f))];
    });

    [Theory]
    [MemberData(nameof(Failing))]
    public void EveryFailingExampleHasARepairUnlessTheTableSaysWhyNot(string rule, string example)
    {
        var folder = Find(rule, example);
        Assert.True(Of(folder).Count > 0 != RepairReasons.ForExample(rule, example) is not null, $"{folder}: {Of(folder).Count} repairs, yet '{RepairReasons.ForExample(rule, example)}'");
    }

    [Theory]
    [MemberData(nameof(Failing))]
    public void ARepairRemovesItsFindingAndBringsNoneAsGrave(string rule, string example)
    {
        var run = ExampleRun.Of(Find(rule, example));
        foreach (var repair in Of(Find(rule, example)))
        {
            var files = repair.Patches.Aggregate((Recipes.Files.IFileTree)run.Files, (t, p) => new Recipes.Files.OverlayFileTree(t, p.Key, p.Value.Bytes!));
            var after = Judged.Of(files, ["."], ExampleRun.Load, ExampleRun.Engine);
            Assert.Empty(after.Result.Faults);
            var same = after.Result.Findings.Count(f => FindingDifference.IsSame(f, repair.Finding));
            Assert.True(same < run.Result.Findings.Count(f => FindingDifference.IsSame(f, repair.Finding)), $"{repair.Name} leaves it");
            var graver = FindingDifference.Between(run.Result, after.Result, repair.Finding).Added
                .Where(f => f.Level >= repair.Finding.Level && !repair.Reveals.Any(r => FindingDifference.IsSame(r, f)));
            Assert.True(!graver.Any(), $"{repair.Name} brings {string.Join(", ", graver.Select(f => $"{f.Rule.Name} at {f.IdPath}: {f.Message}"))}");
            Assert.True(repair.Reveals.Count == 0 || repair.Finding.Rule.Family == "documents", $"{repair.Name} reveals");
        }
    }

    [Theory]
    [MemberData(nameof(Failing))]
    public void UntouchedLinesStayToTheByte(string rule, string example)
    {
        foreach (var patch in Of(Find(rule, example)).SelectMany(r => r.Patches.Values))
        {
            var source = patch.Before;
            var after = JsonReading.Read(source.Path, patch.Bytes!).Source;
            var touched = patch.Edits.SelectMany(e => Enumerable.Range(source.ToPosition(e.Span.Start).Line, source.ToPosition(e.Span.End).Line - source.ToPosition(e.Span.Start).Line + 1)).ToHashSet();
            var kept = Lines(source).Where((_, i) => !touched.Contains(i + 1)).ToList();
            Assert.Equal(kept, Subsequence(kept, Lines(after)));
            Assert.Equal(source.Bytes.ToArray(), JsonPatcher.Join(after.Bytes, patch.Reversed()));
        }
    }

    [Theory]
    [MemberData(nameof(Failing))]
    public void ApplyingTwiceChangesNothing(string rule, string example)
    {
        var run = ExampleRun.Of(Find(rule, example));
        var before = new Judged(run.Workspace, run.Facts, run.Result);
        foreach (var key in Of(Find(rule, example)).Select(r => r.Repair.Key).Distinct().Take(2))
        {
            var first = new RepairSession(run.Files, ["."], ExampleRun.Load, ExampleRun.Engine, before);
            first.Apply(RuleBook.Find(rule)!.Id, key);
            Assert.NotEmpty(first.Changed);
            var second = new RepairSession(first.Files, ["."], ExampleRun.Load, ExampleRun.Engine, first.Now);
            second.Apply(RuleBook.Find(rule)!.Id, key);
            Assert.Empty(second.Changed);
        }
    }

    private static ExampleFolder Find(string rule, string example) => RuleFolder.Find(rule).Failing.Single(e => e.Name == example);

    private static List<string> Lines(SourceFile source) => [.. Encoding.UTF8.GetString(source.Bytes).Split('\n')];

    /// <summary>Those of the first that stand in the second in the same order.</summary>
    private static List<string> Subsequence(List<string> wanted, List<string> lines)
    {
        var at = 0;
        return [.. wanted.Where(w => (at = lines.IndexOf(w, at) + 1) > 0)];
    }
}

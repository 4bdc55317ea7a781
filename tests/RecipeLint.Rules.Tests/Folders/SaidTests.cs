using System.Globalization;
using System.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Repairs;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>
/// Every word that a rule says of its own examples: findings with their numbers and places, and how each is worked out. A change of a word
/// shows here. With RECIPELINT_UPDATE=1 the files are written anew; read them before keeping them.
/// </summary>
public sealed class SaidTests
{
    private static readonly bool _update = Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1";

    private static readonly string _folder = Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Said");

    public static TheoryData<string> Names() => RuleFolder.Names();

    [Theory]
    [MemberData(nameof(Names))]
    public void ARuleSaysThisOfItsExamples(string rule)
    {
        var folder = RuleFolder.Find(rule);
        var text = new StringBuilder();
        foreach (var example in folder.Failing.Concat(folder.Passing))
        {
            var run = ExampleRun.Of(example);
            text.Append(CultureInfo.InvariantCulture, $"# {example.Name}\n");
            foreach (var finding in run.Result.Findings.Where(f => f.Rule.Name == rule))
            {
                Write(text, finding);
            }

            foreach (var file in run.Workspace.Sources.Keys.Order(StringComparer.Ordinal))
            {
                Write(text, RuleOnFile.Of(run.Facts, RuleList.All.Single(r => r.Name == rule), file, ExampleRun.Engine.Today));
            }
        }

        Hold($"{rule}.txt", text);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ARuleOffersTheseRepairsOfItsExamples(string rule)
    {
        var folder = RuleFolder.Find(rule);
        var text = new StringBuilder();
        foreach (var example in RuleList.All.Single(r => r.Name == rule) is IProposesRepairs ? folder.Failing : [])
        {
            text.Append(CultureInfo.InvariantCulture, $"# {example.Name}\n");
            foreach (var repair in RepairExampleTests.Of(example))
            {
                text.Append(CultureInfo.InvariantCulture, $"{repair.Name} ({repair.Repair.Kind}): {repair.Repair.Title}\n");
                foreach (var (file, patch) in repair.Patches.OrderBy(p => p.Key, StringComparer.Ordinal))
                {
                    text.Append(CultureInfo.InvariantCulture, $"  {file}: {patch.Bytes?.Length ?? 0} bytes\n");
                }
            }
        }

        Hold($"{rule}.repairs.txt", text);
    }

    /// <summary>Nothing is kept of rules that are gone.</summary>
    [Fact]
    public void EveryFileBelongsToARule() =>
        Assert.Empty(Directory.GetFiles(_folder).Select(f => Path.GetFileName(f).Split('.')[0]).Except(RuleFolder.All.Select(f => f.Name)));

    internal static void Write(StringBuilder text, Finding finding)
    {
        text.Append(CultureInfo.InvariantCulture, $"{finding.Level} {finding.Place.File} {finding.Place.Pointer} ({finding.Certainty}): {finding.Message}\n");
        if (finding.Measured is { } measured)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {measured.Name}: {measured.Value:G5} {measured.Unit}, limit {measured.Limit:G5}\n");
        }

        foreach (var value in finding.Values)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {value.Name} = {value.Value:G5} {value.Unit}\n");
        }

        foreach (var related in finding.Related)
        {
            text.Append(CultureInfo.InvariantCulture, $"  at {related.Place.File} {related.Place.Pointer}: {related.Label}\n");
        }

        foreach (var suggestion in finding.Suggestions)
        {
            text.Append(CultureInfo.InvariantCulture, $"  suggests {suggestion}\n");
        }
    }

    internal static void Write(StringBuilder text, RuleOnFile explained)
    {
        if (explained.Elsewhere is { } elsewhere)
        {
            text.Append(CultureInfo.InvariantCulture, $"{explained.File}: {elsewhere}\n");
        }

        foreach (var working in explained.Workings)
        {
            text.Append(CultureInfo.InvariantCulture, $"{explained.File}, {working.Title}: {(working.Fires ? "fires" : "silent")}\n");
            foreach (var step in working.Steps)
            {
                text.Append(CultureInfo.InvariantCulture, $"  {Line(step)}\n");
            }
        }
    }

    private static string Line(WorkingStep step) => step switch
    {
        GivenStep given => $"{given.What}: {given.Number.Text} {given.Unit} ({given.From})",
        ResultStep result => $"{result.What} = {result.Formula} = {result.Numbers.Text} = {result.Result.Text} {result.Unit}",
        TestStep test => $"{test.Check.What}: {test.Left.Text} {test.Check.Relation} {test.Right.Text} {test.Check.Unit}, {test.Check.Holds}",
        ConditionStep condition => $"{condition.Check.What}: {condition.Check.Holds}",
        RemarkStep remark => remark.Text,
        _ => throw new InvalidOperationException($"A {step.GetType().Name} is not written here."),
    };

    private static void Hold(string name, StringBuilder text)
    {
        var path = Path.Combine(_folder, name);
        if (_update)
        {
            Directory.CreateDirectory(_folder);
            File.Delete(path);
            if (text.Length > 0)
            {
                File.WriteAllText(path, text.ToString());
            }
        }

        Assert.Equal(File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "", text.ToString());
    }
}

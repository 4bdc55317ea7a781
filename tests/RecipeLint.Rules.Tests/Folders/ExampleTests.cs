using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>
/// Every rule fires on its failing examples at the marked places and nowhere else, and stays silent on its passing ones.
/// With RECIPELINT_UPDATE=1 the expectations are rewritten from what was found; read them before keeping them.
/// </summary>
public sealed class ExampleTests
{
    private static readonly bool _update = Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1";

    public static TheoryData<string, string> Failing() => Pairs(f => f.Failing);

    public static TheoryData<string, string> Passing() => Pairs(f => f.Passing);

    public static TheoryData<string, string> Every() => Pairs(f => [.. f.Failing, .. f.Passing]);

    [Theory]
    [MemberData(nameof(Failing))]
    public void FailingExampleRaisesItsRuleAtTheMarkedPlaces(string rule, string example)
    {
        var (folder, run) = Load(rule, example);
        var found = run.Result.Findings.Where(f => f.Rule.Name == rule).Select(run.Describe).ToList();
        Assert.NotEmpty(found);
        if (_update)
        {
            Update(folder, run, found);
        }

        var expected = Expectation.Read(folder.ExpectedFile);
        Assert.Equal(expected.Findings, found);
    }

    [Theory]
    [MemberData(nameof(Failing))]
    public void OtherFindingsOfAFailingExampleAreListedWithTheirReason(string rule, string example)
    {
        var (folder, run) = Load(rule, example);
        var also = Expectation.Read(folder.ExpectedFile).Also;
        var others = run.Result.Findings.Where(f => f.Rule.Name != rule).ToList();

        var unlisted = others.Where(f => !also.Any(a => a.Covers(f.Rule.Name, f.Place.File, f.IdPath)));
        Assert.True(!unlisted.Any(), $"{folder}: not listed under 'also':\n{Show(unlisted)}");
        var stale = also.Where(a => !others.Any(f => a.Covers(f.Rule.Name, f.Place.File, f.IdPath)));
        Assert.True(!stale.Any(), $"{folder}: listed under 'also' but not raised: {string.Join(", ", stale.Select(a => a.Rule))}");
        Assert.All(also, a => Assert.True(SentenceCount.Of(a.Reason) >= 1, $"{folder}: the reason for '{a.Rule}' is not a sentence"));
    }

    [Theory]
    [MemberData(nameof(Passing))]
    public void PassingExampleIsSilent(string rule, string example)
    {
        var (folder, run) = Load(rule, example);
        var found = run.Result.Findings.Where(f => f.Rule.Name == rule);
        Assert.True(!found.Any(), $"{folder} is not silent:\n{Show(found)}");
    }

    /// <summary>A passing example must be about something: at least one document was read in full.</summary>
    [Theory]
    [MemberData(nameof(Passing))]
    public void PassingExampleIsReadInFull(string rule, string example)
    {
        var (folder, run) = Load(rule, example);
        var errors = run.Result.Findings.Where(f => f.Rule.ProblemKinds.Count > 0 && f.Level == Level.Error);
        Assert.True(!errors.Any(), $"{folder} has faults of its own:\n{Show(errors)}");
        Assert.NotEmpty(run.Workspace.Sources);
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void NoRuleFails(string rule, string example)
    {
        var (_, run) = Load(rule, example);
        Assert.Empty(run.Result.Faults.Select(f => f.Message));
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void MessagesSayWhatWhyAndWhatToDo(string rule, string example)
    {
        var (_, run) = Load(rule, example);
        Assert.All(run.Result.Findings.Concat(run.Result.Suppressed.Select(s => s.Finding)), finding =>
        {
            var message = finding.Message;
            Assert.True(message.EndsWith('.') || message.EndsWith('?'), $"{finding.Rule.Name} ends without a period: {message}");
            Assert.True(SentenceCount.Of(message) >= 2, $"{finding.Rule.Name} says too little: {message}");
            // First aid is not cut short.
            Assert.True(message.Length <= (finding.Rule.Family == "people" ? 1000 : 600), $"{finding.Rule.Name} says too much ({message.Length} characters): {message}");
            Assert.DoesNotContain("  ", message, StringComparison.Ordinal);
            Assert.DoesNotContain("\n", message, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", message, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", message, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", message, StringComparison.Ordinal);
            Assert.All(finding.Values, v => Assert.True(double.IsFinite(v.Value), $"{finding.Rule.Name}: {v.Name}"));
            Assert.All(finding.Related, r => Assert.True(r.Label.Length > 0 && !r.Label.EndsWith('.'), $"{finding.Rule.Name}: label '{r.Label}'"));
        });
    }

    /// <summary>A finding that turns on a number says which, so that a shop can accept it up to a value and no further.</summary>
    [Theory]
    [MemberData(nameof(Failing))]
    public void FindingsWithNumbersSayWhichOneCanBeAccepted(string rule, string example)
    {
        var (_, run) = Load(rule, example);
        string[] families = ["precipitation", "chelation", "preservation", "weighing", "plant"];
        Assert.All(
            run.Result.Findings.Where(f => families.Contains(f.Rule.Family) && f.Values.Count > 0),
            f => Assert.True(f.Measured is not null, $"{f.Rule.Name}: {f.Message}"));
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void FindingsCanBeToldApartByTheirFingerprint(string rule, string example)
    {
        var (folder, run) = Load(rule, example);
        var twice = run.Result.Findings.GroupBy(Fingerprint.Of).Where(g => g.Count() > 1).SelectMany(g => g);
        Assert.True(!twice.Any(), $"{folder}: the same fingerprint for\n{Show(twice)}");
    }

    private static (ExampleFolder Folder, ExampleRun Run) Load(string rule, string example)
    {
        var folder = RuleFolder.Find(rule);
        var found = folder.Failing.Concat(folder.Passing).Single(e => e.Name == example);
        return (found, ExampleRun.Of(found));
    }

    private static TheoryData<string, string> Pairs(Func<RuleFolder, IEnumerable<ExampleFolder>> examples)
    {
        var data = new TheoryData<string, string>();
        foreach (var folder in RuleFolder.All)
        {
            foreach (var example in examples(folder))
            {
                data.Add(folder.Name, example.Name);
            }
        }

        return data;
    }

    /// <summary>Keeps the reasons that still apply and leaves the new ones empty, so that the next test asks for them.</summary>
    private static void Update(ExampleFolder folder, ExampleRun run, List<ExpectedFinding> found)
    {
        var old = File.Exists(folder.ExpectedFile) ? Expectation.Read(folder.ExpectedFile).Also : [];
        var others = run.Result.Findings.Where(f => f.Rule.Name != folder.Rule.Name).ToList();
        var kept = old.Where(a => others.Any(f => a.Covers(f.Rule.Name, f.Place.File, f.IdPath))).ToList();
        var added = others
            .Where(f => !kept.Any(a => a.Covers(f.Rule.Name, f.Place.File, f.IdPath)))
            .Select(f => new AlsoExpected(f.Rule.Name, f.Place.File, f.IdPath, ""));
        File.WriteAllText(folder.ExpectedFile, new Expectation(found, [.. kept, .. added]).Write());
    }

    private static string Show(IEnumerable<Finding> findings) =>
        string.Join('\n', findings.Select(f => $"  {f.Rule.Name} {f.Place.File} {f.IdPath}: {f.Message}"));
}

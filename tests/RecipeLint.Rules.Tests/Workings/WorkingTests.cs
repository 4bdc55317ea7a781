using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Rules.Tests.Workings;

/// <summary>
/// Every rule that turns on a number shows its working on its own examples; every line of it gives on a pocket calculator what it says; and
/// what is worked out by hand fires exactly where the rule does.
/// </summary>
public sealed class WorkingTests
{
    /// <summary>The rules without a working, and what decides instead.</summary>
    private static readonly Dictionary<string, string> WithoutNumber = new()
    {
        ["malformed-file"] = "the grammar of JSON",
        ["wrong-encoding"] = "the bytes of the file",
        ["comment-in-file"] = "a comment is there",
        ["duplicate-key"] = "a key is there twice",
        ["unknown-key"] = "the spelling of a key",
        ["missing-key"] = "a key is not there",
        ["wrong-shape"] = "the kind of a value",
        ["unknown-unit"] = "the spelling of a unit",
        ["number-without-unit"] = "a unit is not there",
        ["ambiguous-number"] = "a number that reads in two ways",
        ["ambiguous-unit"] = "a unit that reads in two ways",
        ["wrong-dimension"] = "the kind of a quantity",
        ["implausible-amount"] = "bounds of the reader, quoted in the message",
        ["unknown-substance"] = "the name of a substance",
        ["ambiguous-substance"] = "a name that fits two hydrates; the message quotes the factor",
        ["formula-mass-disagrees"] = "two masses that the message quotes",
        ["impossible-analysis"] = "a label that cannot be; the message quotes its sum",
        ["undeclared-assay"] = "an assay is not there",
        ["duplicate-substance"] = "a line is there twice; the message adds the two",
        ["missing-reference"] = "a file is not there",
        ["reference-leaves-repository"] = "where a file lies",
        ["reference-loop"] = "what refers to what",
        ["unused-stock"] = "what refers to what",
        ["substance-named-two-ways"] = "the names of a substance",
        ["older-spelling"] = "the name of a key",
        ["two-stocks-of-one-name"] = "the names of stocks",
        ["unknown-equipment"] = "the name of a scale or measure",
        ["unknown-profile"] = "the name of a crop or stage",
        ["batch-weighed-off"] = "two amounts that the message quotes",
        ["batch-of-earlier-edition"] = "whether two texts are the same",
        ["batch-reading-off"] = "a reading against the window of 'proof', both quoted in the message",
        ["batch-deposit-not-foreseen"] = "words of a record",
        ["batch-danger-noticed"] = "words of a record",
        ["import-not-understood"] = "an entry is there",
        ["unknown-rule"] = "the name of a rule",
        ["unusable-option"] = "the text of an option",
        ["suppression-unused"] = "what became of a suppression",
        ["suppression-expired"] = "a date",
        ["calibration-overdue"] = "a date",
    };

    private static readonly Dictionary<string, Facts> _facts = [];

    public static TheoryData<string, string> Every()
    {
        var data = new TheoryData<string, string>();
        foreach (var folder in RuleFolder.All.Where(f => WorkingList.Has(RuleList.All.Single(r => r.Name == f.Name))))
        {
            foreach (var example in folder.Failing.Concat(folder.Passing))
            {
                data.Add(folder.Name, example.Name);
            }
        }

        return data;
    }

    [Fact]
    public void EveryRuleHasAWorkingOrAReasonWhyNot()
    {
        var without = RuleList.All.Where(r => !WorkingList.Has(r)).Select(r => r.Name).Order();
        Assert.Equal(WithoutNumber.Keys.Order(), without);
        Assert.All(WithoutNumber.Values, reason => Assert.NotEmpty(reason));
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void EveryLineGivesOnAPocketCalculatorWhatItSays(string rule, string example)
    {
        foreach (var step in Explained(rule, example).SelectMany(e => e.Workings).SelectMany(w => w.Steps))
        {
            if (step is ResultStep result)
            {
                var recomputed = Term.Of(PocketCalculator.Evaluate(result.Numbers.Text));
                Assert.True(Agree(recomputed.Value, result.Result.Value), $"{rule}, {result.What}: {result.Numbers.Text} is {recomputed.Text}, not {result.Result.Text}");
            }

            foreach (var number in Numbers(step))
            {
                Assert.True(double.IsFinite(number.Value), $"{rule}: {step}");
                Assert.Equal(number.Value, PocketCalculator.Evaluate(number.Text), Math.Abs(number.Value) * 1e-12);
            }
        }
    }

    /// <summary>By hand and by the engine it comes to the same: on every file of every example of the rule.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void FiresByHandWhereTheRuleFires(string rule, string example)
    {
        foreach (var explained in Explained(rule, example))
        {
            var fires = explained.Workings.Any(w => w.Fires);
            var found = explained.Findings.Count + explained.Accepted.Count > 0;
            Assert.True(found == fires, $"{rule}/{example} {explained.File}: the rule {(found ? "fires" : "is silent")}, its working does not\n{Show(explained)}");
        }
    }

    /// <summary>The number a finding turns on is among those worked out, within the rounding of the lines before it.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void TheNumberOfTheFindingIsWorkedOut(string rule, string example)
    {
        foreach (var explained in Explained(rule, example))
        {
            foreach (var measured in explained.Findings.Select(f => f.Measured).OfType<Measured>())
            {
                var worked = explained.Workings.Where(w => w.Fires).Select(w => w.Value?.Value).OfType<double>().ToList();
                Assert.True(
                    worked.Any(v => Math.Abs(v - measured.Value) <= Math.Max(0.002 * Math.Abs(measured.Value), 0.0005)),
                    $"{rule}/{example} {explained.File}: {measured} is not among {string.Join(", ", worked)}\n{Show(explained)}");
            }
        }
    }

    /// <summary>A working shows the checks of its verdict and no others, and its lines come to their numbers: to six digits where nobody rounds.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void AWorkingShowsTheChecksOfItsVerdict(string rule, string example)
    {
        if (RuleList.All.Single(r => r.Name == rule) is not JudgingRule judging)
        {
            return;
        }

        foreach (var (facts, file) in FactsOf(rule, example))
        {
            var context = RuleOnFile.ContextFor(facts, RuleBook.Of(judging));
            Assert.All(judging.Look(WorkingSubject.Of(facts, file), context), v => Agreement.Assert(judging, v.Verdict, v.Context));
        }
    }

    /// <summary>A finding is never left without its working, and silence never without a reason.</summary>
    [Theory]
    [MemberData(nameof(Every))]
    public void EveryFileOfTheRulesScopeIsWorkedOut(string rule, string example)
    {
        Assert.Contains(Explained(rule, example), e => e.Workings.Count > 0);
        Assert.All(Explained(rule, example).SelectMany(e => e.Workings), w => Assert.True(w.Fires || w.Prevented is not null, $"{rule}: {w.Title}"));
    }

    private static bool Agree(double one, double other) => Math.Abs(one - other) <= 1.01e-5 * Math.Abs(other);

    private static IEnumerable<Term> Numbers(WorkingStep step) => step switch
    {
        GivenStep given => [given.Number],
        ResultStep result => [result.Result],
        TestStep test => [test.Left, test.Right],
        _ => [],
    };

    private static IEnumerable<RuleOnFile> Explained(string rule, string example) =>
        FactsOf(rule, example).Select(f => RuleOnFile.Of(f.Facts, RuleList.All.Single(r => r.Name == rule), f.File));

    /// <summary>The facts of an example, with each of its files.</summary>
    private static List<(Facts Facts, string File)> FactsOf(string rule, string example)
    {
        var folder = RuleFolder.Find(rule);
        var run = ExampleRun.Of(folder.Failing.Concat(folder.Passing).Single(e => e.Name == example));
        Facts facts;
        lock (_facts)
        {
            if (!_facts.TryGetValue(rule + "/" + example, out facts!))
            {
                _facts[rule + "/" + example] = facts = Analyzer.Analyse(run.Workspace);
            }
        }

        return [.. run.Workspace.Sources.Keys.Order(StringComparer.Ordinal).Select(f => (facts, f))];
    }

    private static string Show(RuleOnFile explained) =>
        string.Join('\n', explained.Findings.Select(f => "  finding: " + f.Message)
            .Concat(explained.Workings.Select(w => $"  {w.Title}: fires {w.Fires}, value {w.Value?.Text}, prevented by {w.Prevented}")));
}

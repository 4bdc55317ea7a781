using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Analysis;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Tests.Procedure;
using RecipeLint.Rules.Tests.Workings;
using Xunit.Abstractions;

namespace RecipeLint.Rules.Tests.Repairs;

/// <summary>The amount that a message asks for is the amount that its repair writes, over all failing examples.</summary>
public sealed partial class RepairAmountTests(ITestOutputHelper output)
{
    /// <summary>A repair rounds up to what is worth weighing.</summary>
    private const double Rounded = 0.06;

    [Fact]
    public void TheAmountOfAMessageIsTheAmountOfItsRepair()
    {
        var compared = 0;
        foreach (var folder in RuleFolder.All.Where(f => RuleList.All.Single(r => r.Name == f.Name) is IProposesRepairs).SelectMany(f => f.Failing))
        {
            var facts = ExampleRun.Of(folder).Facts;
            foreach (var repair in RepairExampleTests.Of(folder))
            {
                if (facts.FindStock(repair.Finding.Place.File) is not { } stock || Written(repair) is not var (grams, name) || Asked(repair.Finding, name) is not { } perLitre)
                {
                    continue;
                }

                compared++;
                var ratio = grams / (perLitre * stock.Volume.Litres);
                output.WriteLine($"{folder}: {repair.Name}: {ratio:0.000}");
                Assert.True(ratio is > 0.995 and < 1 + Rounded, $"{folder}: '{repair.Repair.Title}' against '{repair.Finding.Message}'");
            }
        }

        Assert.InRange(compared, 3, 1000);
    }

    /// <summary>
    /// Every finding that says how much of something to add, take, pour or have, against each of its repairs that writes an amount of the
    /// same thing: one figure of the message is the figure of the repair, over all failing examples.
    /// </summary>
    [Fact]
    public void WhatAMessageAsksForIsWhatARepairWrites()
    {
        var compared = 0;
        var apart = new List<string>();
        foreach (var folder in RuleFolder.All.Where(f => RuleList.All.Single(r => r.Name == f.Name) is IProposesRepairs).SelectMany(f => f.Failing))
        {
            Compare(folder.ToString(), RepairExampleTests.Of(folder), ExampleRun.Of(folder).Facts, apart, ref compared);
        }

        output.WriteLine($"{compared} compared, {apart.Count} apart");
        Assert.True(apart.Count == 0, $"{compared} compared\n{string.Join('\n', apart)}");
        Assert.InRange(compared, 6, 5000);
    }

    /// <summary>The same over mutants of the examples whose repairs write an amount; RECIPELINT_LONG=1 makes forty times as many.</summary>
    [Fact]
    public void WhatAMessageAsksForIsWhatARepairWritesInMutantsToo()
    {
        var each = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 80 : 2;
        var examples = RuleFolder.All.Where(f => RuleList.All.Single(r => r.Name == f.Name) is IProposesRepairs).SelectMany(f => f.Failing)
            .Where(f => RepairExampleTests.Of(f).Any(r => AmountOfThing().IsMatch(r.Repair.Title))).ToList();
        var all = examples.AsParallel().AsOrdered().Select(folder =>
        {
            var run = ExampleRun.Of(folder);
            var mutants = new JsonMutants(run.Workspace.Sources.OrderBy(s => s.Key, StringComparer.Ordinal).Select(s => (s.Key, Encoding.UTF8.GetString(s.Value.Bytes.ToArray()))));
            var (compared, apart) = (0, new List<string>());
            for (var number = 0; number < each; number++)
            {
                if (mutants.Of(number) is not var (file, bytes, slip))
                {
                    continue;
                }

                var files = new OverlayFileTree(run.Files, file, bytes);
                var now = Judged.Of(files, ["."], ExampleRun.Load, ExampleRun.Engine);
                var desk = new RepairDesk(files, ExampleRun.Load, ExampleRun.Engine, now);
                var repairs = now.Result.Findings.Where(f => f.Rule.Name == folder.Rule.Name).SelectMany(f => desk.For(f)).ToList();
                Compare($"{folder}, {slip}", repairs, now.Facts, apart, ref compared);
            }

            return (Compared: compared, Apart: apart);
        }).ToList();
        output.WriteLine($"{examples.Count} examples, {all.Sum(a => a.Compared)} compared");
        Assert.True(all.TrueForAll(a => a.Apart.Count == 0), string.Join('\n', all.SelectMany(a => a.Apart)));
        Assert.InRange(all.Sum(a => a.Compared), 6, 100_000);
    }

    private static void Compare(string example, IEnumerable<VerifiedRepair> repairs, Facts facts, List<string> apart, ref int compared)
    {
        foreach (var repair in repairs)
        {
            var litres = facts.FindStock(repair.Finding.Place.File)?.Volume.Litres ?? 1;
            if (AmountOfThing().Match(repair.Repair.Title) is not { Success: true } title)
            {
                continue;
            }

            var written = In(title.Groups["number"].Value, title.Groups["unit"].Value, title.Groups["per"].Success ? litres : 1);
            var asked = AskedOf(repair.Finding.Message, title.Groups["thing"].Value, litres).ToList();
            if (asked.Count == 0)
            {
                continue;
            }

            compared++;
            if (!asked.Exists(a => written / a is > 1 - Rounded and < 1 + Rounded))
            {
                apart.Add($"{example}: '{repair.Repair.Title}' against '{repair.Finding.Message}'");
            }
        }
    }

    /// <summary>Amounts of a thing that a message asks for, in g or L; what it holds now does not count.</summary>
    private static IEnumerable<double> AskedOf(string message, string thing, double litres) =>
        Regex.Matches(message, $@"(?<number>\d[\d.]*) (?<unit>mg|kg|g|mL|L)(?<per>/L)? of {Regex.Escape(thing)}\b")
            .Where(m => AsksFor().IsMatch(message[..m.Index]))
            .Select(m => In(m.Groups["number"].Value, m.Groups["unit"].Value, m.Groups["per"].Success ? litres : 1));

    private static double In(string number, string unit, double times) => times * Number(number) * unit switch
    {
        "mg" or "mL" => 0.001,
        "kg" => 1000,
        _ => 1,
    };

    /// <summary>The reported case: 30 g/L of citric acid, kept for months, with 0.26 g of benzoate is not preserved.</summary>
    [Fact]
    public void ALittleBenzoateDoesNotKeepMuchCitricAcid()
    {
        var finding = Assert.Single(Workbench.Judge(
            PreservativeTooWeak.RuleName,
            """{"pour": "800 mL"}, {"add": "sodium-benzoate", "amount": "0.26 g"}, {"add": "citric-acid-h2o", "amount": "30 g"}, {"topUp": "1 L"}""",
            "1 L"));

        Assert.True(finding.Level >= Level.Warning, finding.Message);
    }

    /// <summary>g and the name of the preservative that a repair adds or raises; null for any other repair.</summary>
    private static (double Grams, string Name)? Written(VerifiedRepair repair) =>
        TitleAmount().Match(repair.Repair.Title) is { Success: true } match
            ? (Number(match.Groups[1].Value) * (match.Groups[2].Value == "mg" ? 0.001 : 1), match.Groups[3].Value)
            : null;

    /// <summary>g/L that the message asks of it; null where it names another remedy.</summary>
    private static double? Asked(Finding finding, string name)
    {
        if (finding.Rule.Name is not (PreservativeTooWeak.RuleName or CarbonWithoutPreservative.RuleName))
        {
            return null;
        }

        var named = Regex.Match(finding.Message, $@"([\d.]+) (m?g)/L of {Regex.Escape(name)}");
        var match = named.Success ? named : DoseRaised().Match(finding.Message);
        return match.Success ? Number(match.Groups[1].Value) * (match.Groups[2].Value == "mg" ? 0.001 : 1) : null;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?:Add|Take) ([\d.]+) (m?g) of (potassium sorbate|sodium benzoate)\b")]
    private static partial Regex TitleAmount();

    [GeneratedRegex(@"^(?:Add|Take|Pour) (?<number>\d[\d.]*) (?<unit>mg|kg|g|mL|L)(?<per>/L)? of (?<thing>.+?)(?= to the| instead| first|, which|\.$)")]
    private static partial Regex AmountOfThing();

    [GeneratedRegex(@"(?:\b(?:[Aa]dd|[Tt]ake|[Pp]our|[Hh]ave|[Ww]eigh|[Dd]issolve|with|or|to|at least|at most|about|no more than)(?: at least| about| up to)?) $")]
    private static partial Regex AsksFor();

    [GeneratedRegex(@"the dose to ([\d.]+) (m?g)/L")]
    private static partial Regex DoseRaised();
}

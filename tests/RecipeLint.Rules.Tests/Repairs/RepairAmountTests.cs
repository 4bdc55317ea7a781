using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Tests.Procedure;
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

    [GeneratedRegex(@"the dose to ([\d.]+) (m?g)/L")]
    private static partial Regex DoseRaised();
}

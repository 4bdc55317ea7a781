using System.Text;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>Beside too much ammonium nobody is told to raise nitrogen, but to bring it as nitrate.</summary>
public sealed class NitrogenFormsTests
{
    private const string Rest =
        "monopotassium-phosphate 25 g, magnesium-sulfate-7h2o 50 g, calcium-chloride-2h2o 30 g, fe-dtpa-hna 3 g";

    [Theory]
    [InlineData("ammonium-sulfate 20 g, calcium-nitrate-fertiliser 10 g, potassium-sulfate 40 g, " + Rest, "element-low")]
    [InlineData("ammonium-sulfate 12 g, urea 10 g, potassium-nitrate 10 g, " + Rest, "ratio-out-of-range")]
    [InlineData("ammonium-sulfate 20 g, calcium-nitrate-fertiliser 10 g, potassium-sulfate 40 g, " + Rest, "target-missed")]
    public void NitrogenIsRaisedAsNitrate(string doses, string rule)
    {
        var findings = Judge(doses).Where(f => f.Rule.Name == rule && Regex.IsMatch(f.Message, @"\bN\b(?!H)")).ToList();

        Assert.NotEmpty(findings);
        Assert.Contains(findings, f => f.Message.Contains("nitrate", StringComparison.Ordinal));
        Assert.All(findings, f => Assert.DoesNotMatch("[Rr]aise N[.,]|Raise the salt that carries it|Change the additions", f.Message));
    }

    /// <summary>Without ammonium the advice stays as it was.</summary>
    [Fact]
    public void WithoutAmmoniumTheSaltThatCarriesItIsRaised() => Assert.Contains(
        Judge("calcium-nitrate-fertiliser 20 g, potassium-sulfate 40 g, monopotassium-phosphate 25 g, magnesium-sulfate-7h2o 30 g, fe-dtpa-hna 3 g"),
        f => f.Rule.Name == "element-low" && f.Message.Contains(" N;", StringComparison.Ordinal) && f.Message.Contains("Raise the salt", StringComparison.Ordinal));

    private static IReadOnlyList<Finding> Judge(string held)
    {
        var doses = held.Split(", ").Select(h => h.Split(' ', 2)).Select(h => $$"""{"add": "{{h[0]}}", "amount": "{{h[1]}}"}""");
        var tree = new MemoryFileTree("/shop").AddFolder("/shop/.git").Add("t.recipe.json", Encoding.UTF8.GetBytes(
            $$"""{"format": 1, "name": "T", "final": "100 L", "volume": "made up", "water": "rain", "crop": "lettuce", "doses": [{{string.Join(", ", doses)}}], "targets": {"N": "150 mg/L ± 5 %"} }"""));
        return Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine).Result.Findings;
    }
}

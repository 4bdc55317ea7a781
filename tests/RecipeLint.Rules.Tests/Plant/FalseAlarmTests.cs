using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Procedure;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>Ordinary recipes of the trade that once were called errors.</summary>
public sealed class FalseAlarmTests
{
    /// <summary>
    /// A weak feed harms nobody; where a crop and a strength far below seedlings are stated, a dose is missing. Without a crop what seedlings,
    /// orchids and cuttings get is no alarm.
    /// </summary>
    [Theory]
    [InlineData("", "20 g", Level.Note)]
    [InlineData("", "2 g", Level.Warning)]
    [InlineData("\"crop\": \"tomato\", ", "25 g", Level.Warning)]
    [InlineData("\"crop\": \"tomato\", ", "5 g", Level.Error)]
    public void AThinFeedIsAnErrorOnlyForACropThatIsNamed(string crop, string nitrate, Level level)
    {
        var finding = Assert.Single(Workbench.JudgeFiles(
            "ec-outside-window",
            [("weak.recipe.json", Recipe(crop, $$"""
                {"add": "urea", "amount": "5 g"}, {"add": "calcium-nitrate-fertiliser", "amount": "{{nitrate}}"},
                {"add": "monopotassium-phosphate", "amount": "5 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "10 g"}
                """))]));
        Assert.Equal(level, finding.Level);
    }

    /// <summary>
    /// 20 mL of silicate solution in 10 L: 0.5 g/L SiO2, which hazes over weeks and is sprayed within hours; tenfold it sets. To roots it is
    /// told as before.
    /// </summary>
    [Theory]
    [InlineData("leaves", "20 mL", false)]
    [InlineData("leaves", "200 mL", true)]
    [InlineData("roots", "20 mL", true)]
    public void ASilicateSprayIsJudgedByItsHours(string receiver, string amount, bool speaks)
    {
        var findings = Workbench.JudgeFiles(
            "tank-precipitate",
            [("spray.recipe.json", $$"""
                {"format": 1, "water": "reverse-osmosis", "final": "10 L", "volume": "made up", "givenTo": "{{receiver}}",
                "doses": [{"add": "potassium-silicate-29be", "amount": "{{amount}}"}]}
                """)]);
        Assert.Equal(speaks, findings.Count > 0);
    }

    private const string Bottles = """
        {"format": 1, "substances": [
        {"id": "micro", "form": "liquid", "density": "1.15 kg/L", "label": {"basis": "oxide", "nitrogen": {"nitrate": "4.7 %", "ammonium":
        "0.3 %"}, "K2O": "1 %", "CaO": "5 %", "Fe": "0.1 %", "Mn": "0.05 %", "chelatedWith": "EDTA"}},
        {"id": "bloom", "form": "liquid", "density": "1.15 kg/L", "label": {"basis": "oxide", "P2O5": "5 %", "K2O": "4 %", "MgO": "1.5 %",
        "SO3": "1 %"}}]}
        """;

    /// <summary>Labels whose bases do not close leave the pH a guess: what hangs on it is a warning that says so, until it is set.</summary>
    [Fact]
    public void AFindingOnAGuessedPhIsNoCertainty()
    {
        var finding = Assert.Single(Workbench.JudgeFiles(
            "chelate-outside-its-ph",
            [
                ("own.substances.json", Bottles),
                ("veg.recipe.json", Recipe("", """{"add": "micro", "amount": "150 mL"}, {"add": "bloom", "amount": "250 mL"}""")),
            ]));
        Assert.NotEqual(Level.Error, finding.Level);
        Assert.Contains("This pH is a guess", finding.Message, StringComparison.Ordinal);
        Assert.Contains("measure it", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>The same iron at a pH that lye brings is an error as before.</summary>
    [Fact]
    public void AFindingOnAComputedPhStaysCertain()
    {
        var finding = Assert.Single(Workbench.JudgeFiles(
            "chelate-outside-its-ph",
            [("veg.recipe.json", Recipe("", """
                {"add": "calcium-nitrate-4h2o", "amount": "80 g"}, {"add": "fe-edta-na-3h2o", "amount": "3 g"},
                {"add": "potassium-hydroxide", "amount": "3 g"}
                """))]));
        Assert.Equal(Level.Error, finding.Level);
        Assert.DoesNotContain("guess", finding.Message, StringComparison.Ordinal);
    }

    private static string Recipe(string crop, string doses) =>
        $$"""{"format": 1, {{crop}}"water": "reverse-osmosis", "final": "100 L", "volume": "made up", "doses": [{{doses}}]}""";
}

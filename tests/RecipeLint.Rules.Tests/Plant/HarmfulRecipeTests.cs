using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Precipitation;
using Xunit.Abstractions;

namespace RecipeLint.Rules.Tests.Plant;

/// <summary>
/// Invented recipes that harm a crop, lose what they should give, or endanger somebody: a plain check stops every one of them, with an
/// error that is not about how the file is written. Whatever the limits are, these lie far past them.
/// </summary>
public sealed class HarmfulRecipeTests(ITestOutputHelper output)
{
    /// <summary>A sound feed of 100 L without traces, to which a fault is added (g).</summary>
    private const string Base = "calcium-nitrate-4h2o 90, potassium-nitrate 40, monopotassium-phosphate 17, magnesium-sulfate-7h2o 40";

    private const string Traces = "fe-dtpa-hna 2, manganese-sulfate-h2o 0.15, zinc-sulfate-7h2o 0.1, boric-acid 0.2, copper-sulfate-5h2o 0.02, sodium-molybdate-2h2o 0.01";

    public static TheoryData<string, string, string> Feeds => new()
    {
        { "boron at ten times what is toxic", $"{Base}, {Traces}, boric-acid 12", "tomato" },
        { "boron four times toxic by borax", $"{Base}, {Traces}, borax-10h2o 8", "lettuce" },
        { "copper four times toxic", $"{Base}, {Traces}, copper-sulfate-5h2o 0.4", "lettuce" },
        { "zinc three times toxic", $"{Base}, {Traces}, zinc-sulfate-7h2o 4.5", "cucumber" },
        { "manganese four times toxic", $"{Base}, {Traces}, manganese-sulfate-h2o 6.5", "tomato" },
        { "molybdenum three times toxic", $"{Base}, {Traces}, sodium-molybdate-2h2o 8", "tomato" },
        { "nickel three times toxic", $"{Base}, {Traces}, nickel-sulfate-6h2o 0.7", "tomato" },
        { "cobalt twenty times toxic (FAO paper 29)", $"{Base}, {Traces}, cobalt-sulfate-7h2o 1", "tomato" },
        { "selenium a hundred times the limit of FAO paper 29", $"{Base}, {Traces}, sodium-selenate 0.5", "lettuce" },
        { "iodide four times toxic", $"{Base}, {Traces}, potassium-iodide 2.6", "lettuce" },
        { "sodium chloride like sea water", $"{Base}, {Traces}, sodium-chloride 300", "strawberry" },
        { "iron without a chelate in a neutral feed", $"{Base}, ferric-chloride-6h2o 1, manganese-sulfate-h2o 0.15, potassium-bicarbonate 5", "tomato" },
        { "calcium phosphate by dipotassium phosphate", "calcium-nitrate-4h2o 150, dipotassium-phosphate 80, magnesium-sulfate-7h2o 40", "tomato" },
        { "gypsum at many times its product in the tank", "calcium-nitrate-4h2o 1200, potassium-sulfate 800", "tomato" },
        { "a feed as strong as brine", "calcium-nitrate-4h2o 900, potassium-nitrate 400, monopotassium-phosphate 170, magnesium-sulfate-7h2o 400", "lettuce" },
        { "caustic feed", $"{Base}, {Traces}, potassium-hydroxide 60", "lettuce" },
        { "strongly acid feed", $"{Base}, {Traces}, sulfuric-96 50", "lettuce" },
        { "only ammonium for nitrogen", "ammonium-sulfate 100, monopotassium-phosphate 17, potassium-sulfate 40, magnesium-sulfate-7h2o 40, calcium-chloride-2h2o 40", "tomato" },
        { "bleach and ammonium in one tank", $"{Base}, ammonium-sulfate 30, sodium-hypochlorite-5 100", "lettuce" },
        { "bleach and acid in one tank", $"{Base}, citric-acid-h2o 50, sodium-hypochlorite-5 100", "lettuce" },
    };

    public static TheoryData<string, string, string> Stocks => new()
    {
        { "ten g/L of gypsum", "calcium-nitrate-4h2o 150, magnesium-sulfate-7h2o 150", "5..30 °C" },
        { "all iron lost to phosphate", "ferrous-sulfate-7h2o 8, dipotassium-phosphate 40", "5..30 °C" },
        { "all iron lost to air at pH 7", "ferric-chloride-6h2o 5, potassium-bicarbonate 10", "5..30 °C" },
        { "calcium with phosphate", "calcium-nitrate-4h2o 100, dipotassium-phosphate 50", "5..30 °C" },
        { "lime out of carbonate", "calcium-chloride-2h2o 50, potassium-carbonate 40", "5..30 °C" },
        { "potassium sulfate at twice what dissolves", "potassium-sulfate 220", "2..25 °C" },
        { "potassium nitrate at twice what dissolves in the cold", "potassium-nitrate 320", "2..20 °C" },
        { "silicate with acid", "potassium-silicate-29be 60, nitric-38 40", "5..30 °C" },
        { "silicate with magnesium", "potassium-silicate-29be 120, magnesium-sulfate-7h2o 5", "8..25 °C" },
        { "calcium with molybdate, ten thousand times the product", "calcium-nitrate-4h2o 200, sodium-molybdate-2h2o 0.5", "8..25 °C" },
        { "borax with calcium (colemanite, LLNL database)", "calcium-nitrate-4h2o 200, borax-10h2o 20", "8..25 °C" },
        { "copper hydroxide", "copper-sulfate-5h2o 10, potassium-hydroxide 5", "5..30 °C" },
        { "zinc phosphate", "zinc-sulfate-7h2o 20, dipotassium-phosphate 40", "5..30 °C" },
        { "magnesium ammonium phosphate", "magnesium-sulfate-7h2o 80, diammonium-phosphate 60", "5..30 °C" },
        { "EDTA out of strong acid", "disodium-edta-2h2o 30, nitric-38 100", "5..30 °C" },
        { "benzoic acid in the cold", "sodium-benzoate 15, citric-acid-h2o 50", "2..20 °C" },
        { "bleach with acid", "sodium-hypochlorite-5 100, phosphoric-75 50", "5..30 °C" },
        { "bleach with urea", "sodium-hypochlorite-5 100, urea 50", "5..30 °C" },
        { "peroxide with iron", "hydrogen-peroxide-3 300, ferrous-sulfate-7h2o 10", "5..30 °C" },
        { "peroxide with alkali", "hydrogen-peroxide-3 300, potassium-hydroxide 10", "5..30 °C" },
        { "strong nitric acid with strong acetic acid", "acetic-acid-80 300, nitric-65 300", "5..30 °C" },
        { "carbonate with acid", "potassium-carbonate 60, citric-acid-h2o 60", "5..30 °C" },
        { "ammonium with lye", "ammonium-sulfate 80, potassium-hydroxide 60", "5..30 °C" },
        { "strong lye poured onto strong acid", "sulfuric-96 400, potassium-hydroxide 300", "5..30 °C" },
    };

    [Theory]
    [MemberData(nameof(Feeds))]
    public void AFeedThatHarmsIsStopped(string what, string grams, string crop) => Stopped(what, Feed(grams, crop));

    [Theory]
    [MemberData(nameof(Stocks))]
    public void AStockThatHarmsIsStopped(string what, string grams, string keep)
    {
        var (_, text) = Lint.Stock("a", "10 mL/L", keep, [.. Parts(grams)]);
        Stopped(what, ("a.stock.json", text));
    }

    /// <summary>A bottle of which only the trade name is known, in a stock.</summary>
    [Theory]
    [InlineData("Household bleach", "ammonium-sulfate")]
    [InlineData("Pool chlorine", "citric-acid-h2o")]
    [InlineData("Drain cleaner", "sodium-hypochlorite-5")]
    [InlineData("Battery acid", "potassium-carbonate")]
    [InlineData("pH up", "ammonium-sulfate")]
    [InlineData("pH down", "sodium-hypochlorite-5")]
    public void AProductKnownByItsNameIsStopped(string name, string with) => Stopped(
        $"{name} with {with}",
        ("shop.substances.json", $$"""{"format": 1, "substances": [{"id": "thing", "name": "{{name}}", "kind": "product", "unknownComposition": true}]}"""),
        ("a.stock.json", $$"""
            {"format": 1, "name": "a", "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "5..30 °C", "for": "3 days"}, "steps": [{"pour": "700 mL"},
              {"add": "{{with}}", "amount": "60 g", "assay": "{{Assay(with)}}"}, {"add": "thing", "amount": "80 g"}, {"topUp": "1 L"}]}
            """));

    private void Stopped(string what, params (string Name, string Text)[] files)
    {
        var result = Lint.Files(files);
        Assert.Empty(result.Faults);
        foreach (var finding in result.Findings.Where(f => f.Level >= Level.Note))
        {
            output.WriteLine($"{finding.Level} {finding.Rule.Name}: {finding.Message}");
        }

        Assert.DoesNotContain(result.Findings, f => f.Rule.Family == "documents" && f.Level == Level.Error);
        Assert.True(
            result.Findings.Any(f => f.Level == Level.Error),
            $"{what}: {string.Join(", ", result.Findings.Select(f => $"{f.Level} {f.Rule.Name}"))}");
    }

    private static (string Name, string Text) Feed(string grams, string crop)
    {
        var doses = Parts(grams).GroupBy(p => p.Substance).Select(g => FormattableString.Invariant(
            $"{{\"add\": \"{g.Key}\", \"amount\": \"{g.Sum(p => p.Grams):0.####} g\", \"assay\": \"{Assay(g.Key)}\"}}"));
        return ("a.recipe.json", $$"""{"format": 1, "name": "Feed", "crop": "{{crop}}", "water": "reverse-osmosis", "final": "100 L", "volume": "made up", "doses": [{{string.Join(", ", doses)}}]}""");
    }

    private static string Assay(string substance) => substance == "sodium-hypochlorite-5" ? "5 %" : "100 %";

    private static IEnumerable<(string Substance, double Grams)> Parts(string grams) => grams.Split(", ").Select(p => p.Split(' '))
        .Select(p => (p[0], double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture)));
}

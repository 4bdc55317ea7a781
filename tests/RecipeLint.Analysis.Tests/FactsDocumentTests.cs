using System.Buffers;
using System.Text.Json;
using Json.Schema;
using RecipeLint.Analysis.Tests.Published;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Reports.ComputedFacts;

namespace RecipeLint.Analysis.Tests;

public sealed class FactsDocumentTests
{
    private static readonly Lazy<JsonSchema> Schema = new(() =>
        JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schema", "facts.schema.json"))));

    [Theory]
    [InlineData("pre.stock.json")]
    [InlineData("trace.stock.json")]
    [InlineData("tank.recipe.json")]
    public void WrittenFactsFitTheirSchema(string file)
    {
        AssertFits(Write(Everything(), file));
        AssertFits(Write(Everything(), file, full: true));
    }

    [Fact]
    public void SpeciesAreListedOnRequestOnly()
    {
        Assert.DoesNotContain("\"species\"", Write(Everything(), "trace.stock.json"), StringComparison.Ordinal);
        Assert.Contains("\"Zn+2\"", Write(Everything(), "trace.stock.json", full: true), StringComparison.Ordinal);
    }

    /// <summary>Every solid that a state names, every range of the profile and every hazard stands there with a source that says something.</summary>
    [Theory]
    [InlineData("trace.stock.json", "hazards of")]
    [InlineData("tank.recipe.json", "range of")]
    public void ListsOfSourcesAreFilled(string file, string kind)
    {
        using var document = JsonDocument.Parse(Write(Everything(), file));
        var sources = document.RootElement.GetProperty("sources").EnumerateArray().ToDictionary(s => s.GetProperty("of").GetString()!, s => s.GetProperty("source").GetString()!);
        Assert.NotEmpty(sources);
        Assert.All(sources, s => Assert.True(s.Key.Length > 0 && s.Value.Trim().Length > 3, $"{s.Key}: '{s.Value}'"));
        Assert.Contains(sources.Keys, k => k.StartsWith(kind, StringComparison.Ordinal));
        foreach (var state in document.RootElement.GetProperty("chemistry").GetProperty("states").EnumerateArray())
        {
            foreach (var solid in new[] { "deposits", "nearSaturation", "salts" }.SelectMany(k => state.GetProperty(k).EnumerateObject()))
            {
                var formula = solid.Value.GetProperty("formula").GetString()!;
                Assert.Contains(sources.Keys, k => k.StartsWith("constant of", StringComparison.Ordinal) && k.EndsWith(", " + formula, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void ADepositIsWrittenWithItsRepairsAndItsSuppliers()
    {
        var stock = Bench.Stock("a.stock.json", "2 L", Bench.Add("calcium-nitrate-4h2o", "200 g"), Bench.Add("magnesium-sulfate-7h2o", "100 g"), Bench.TopUp("2 L"));
        var text = Write(Bench.Analyse([stock]), "a.stock.json");
        AssertFits(text);
        using var document = JsonDocument.Parse(text);
        var chemistry = document.RootElement.GetProperty("chemistry");
        var cold = chemistry.GetProperty("states")[1];

        Assert.Equal("coldest storage", cold.GetProperty("moment").GetString());
        Assert.True(cold.GetProperty("deposits").GetProperty("Gypsum").GetProperty("mass_g_per_L").GetDouble() > 25);
        var repair = chemistry.GetProperty("repairs")[0];
        Assert.InRange(repair.GetProperty("factor").GetDouble(), 0.02, 0.3);
        Assert.Equal("calcium-nitrate-4h2o", repair.GetProperty("suppliers")[0].GetProperty("id").GetString());
    }

    [Fact]
    public void AStockThatCannotBeSolvedIsWrittenWithoutNumbers()
    {
        var text = Write(Bench.Analyse([Bench.Stock("a.stock.json", "2 L", Bench.Add("calcium-nitrate-4h2o", "20 kg"))]), "a.stock.json");
        AssertFits(text);
        using var document = JsonDocument.Parse(text);

        Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("chemistry").GetProperty("states")[0].GetProperty("pH").ValueKind);
    }

    [Fact]
    public void FactsOfPublishedRecipesFitTheSchema()
    {
        foreach (var id in PublishedRecipe.Ids)
        {
            var facts = PublishedRecipe.Read(id).Facts;
            AssertFits(Write(Bench.Analyse([], facts.Recipe), facts.Recipe.File));
        }
    }

    [Theory]
    [InlineData("\"formatVersion\": 1", "\"formatVersion\": 2")]
    [InlineData("\"volume_L\"", "\"volume\"")]
    [InlineData("\"mass_g\"", "\"mass_mg\"")]
    public void TheSchemaRefusesAnotherShape(string right, string wrong)
    {
        var text = Write(Everything(), "trace.stock.json").Replace(right, wrong, StringComparison.Ordinal);

        using var document = JsonDocument.Parse(text);
        Assert.False(Schema.Value.Evaluate(document.RootElement).IsValid);
    }

    [Fact]
    public void NumbersReadBackToTheSameDoubles()
    {
        var facts = Everything();
        using var document = JsonDocument.Parse(Write(facts, "tank.recipe.json"));
        foreach (var (key, fact) in facts.Recipes[0].Elements)
        {
            var written = document.RootElement.GetProperty("elements").GetProperty(key).GetProperty("concentration_mg_per_L").GetDouble();
            Assert.Equal(fact.Concentration.MilligramsPerLitre, written);
        }
    }

    // P2O5 is 2.2914 times its phosphorus and K2O 1.2046 times its potassium (fertiliser label conversions; D. L. Sparks, recalled).
    [Theory]
    [InlineData("P", "P2O5", 2.2914)]
    [InlineData("K", "K2O", 1.2046)]
    [InlineData("Ca", "CaO", 1.3992)]
    [InlineData("Mg", "MgO", 1.6583)]
    [InlineData("S", "SO3", 2.4969)]
    public void LabelsGetTheirOxides(string key, string oxide, double factor)
    {
        using var document = JsonDocument.Parse(Write(Everything(), "tank.recipe.json"));
        var element = document.RootElement.GetProperty("elements").GetProperty(key);
        var asOxide = element.GetProperty("asOxide");

        Assert.Equal(oxide, asOxide.GetProperty("oxide").GetString());
        Assert.Equal(factor, asOxide.GetProperty("concentration_mg_per_L").GetDouble() / element.GetProperty("concentration_mg_per_L").GetDouble(), 3);
    }

    [Fact]
    public void EverythingCarriesALocatorByPointerAndByIds()
    {
        using var document = JsonDocument.Parse(Write(Everything(), "trace.stock.json"));
        var locator = document.RootElement.GetProperty("additions")[1].GetProperty("locator");

        Assert.Equal("trace.stock.json", locator.GetProperty("file").GetString());
        Assert.Equal("/steps/2", locator.GetProperty("pointer").GetString());
        Assert.Equal("steps/moly", locator.GetProperty("idPath").GetString());
    }

    [Fact]
    public void AnAmountThatCannotReachThePHSaysWhyItIsMissing()
    {
        using var document = JsonDocument.Parse(Write(Everything(), "trace.stock.json"));
        var adjustment = document.RootElement.GetProperty("adjustments")[0];

        Assert.Equal(JsonValueKind.Null, adjustment.GetProperty("reagent_mass_g").ValueKind);
        Assert.StartsWith("pH 3 cannot be reached with 'koh-10' from pH ", adjustment.GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameFactsAreTheSameBytesEndingInALineFeed()
    {
        var text = Write(Everything(), "tank.recipe.json");

        Assert.Equal(text, Write(Everything(), "tank.recipe.json"));
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ThereAreNoFactsOfWhatIsNoStockOrRecipe()
    {
        var output = new ArrayBufferWriter<byte>();

        Assert.False(FactsWriter.TryWrite(Everything(), "tap.water.json", output));
        Assert.Equal(0, output.WrittenCount);
    }

    /// <summary>Stocks and a recipe that use every key of the document.</summary>
    private static Facts Everything()
    {
        var shop = new ShopSettings
        {
            Scales = [new Scale("pocket", Place.Whole("recipelint.json"), new Mass(500), new Mass(0.01), null, null)],
            Measures = [new Measure("syringe-60", Place.Whole("recipelint.json"), MeasureKind.Syringe, Volume.FromMillilitres(60), null, null)],
        };
        var pre = Bench.Stock("pre.stock.json", "1 L", Bench.Add("sodium-molybdate-2h2o", "10 g"));
        var trace = Bench.Stock(
            "trace.stock.json",
            "2 L",
            Bench.Pour("1.4 L", "tap.water.json"),
            Bench.Add("zinc-sulfate-7h2o", "4 g", assay: "98 %"),
            Bench.Aliquot("pre.stock.json", "20 mL", "moly"),
            Bench.Adjust(3, "koh-10"),
            Bench.TopUp("2 L", "tap.water.json"));
        var recipe = Bench.Recipe(
            "200 L",
            FinalVolumeMeaning.AddedTo,
            Bench.Dose("trace.stock.json", strokes: 4, with: "syringe-60"),
            Bench.Direct("monopotassium-phosphate", "136 mg/L"),
            Bench.Direct("calcium-nitrate-4h2o", "1 g/L"),
            Bench.Direct("magnesium-sulfate-7h2o", "0.5 g/L"),
            Bench.Direct("nitric-38", "10 mL")) with
        {
            Water = new Located<WaterReference>(new("tap.water.json", "tap.water.json"), Place.Whole("tank.recipe.json").Child("water")),
            Adjust = new PhAdjustment(Place.Whole("tank.recipe.json").Child("adjust"), null, null, null, Bench.Substance("nitric-38")),
        };
        return Bench.Analyse([pre, trace], recipe, shop, Waters.Tap());
    }

    private static string Write(Facts facts, string file, bool full = false)
    {
        var output = new ArrayBufferWriter<byte>();
        Assert.True(FactsWriter.TryWrite(facts, file, output, full));
        return System.Text.Encoding.UTF8.GetString(output.WrittenSpan);
    }

    private static void AssertFits(string text)
    {
        using var document = JsonDocument.Parse(text);
        var result = Schema.Value.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var errors = result.Details?
            .Where(d => d.Errors is { Count: > 0 })
            .Take(12)
            .Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Select(e => e.Value))}");
        Assert.True(result.IsValid, string.Join('\n', errors ?? []));
    }
}

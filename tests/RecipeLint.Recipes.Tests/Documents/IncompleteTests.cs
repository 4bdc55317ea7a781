using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>
/// A document says that it is incomplete where something that decides its contents is missing or could not be read, and only then: nothing
/// that is computed from half a recipe is told as if it were the whole.
/// </summary>
public sealed class IncompleteTests
{
    private const string Settings = """
        {"scales": [{"name": "bench", "readability": "0.1 g"}],
         "measures": [{"name": "jug", "kind": "jug", "capacity": "1 L"}, {"name": "pump", "kind": "injector", "tolerance": "± 10 %"}],
         "vessels": [{"name": "bottle", "capacity": "2 L"}]}
        """;

    private const string Other = """{"format": 1, "makes": "1 L", "steps": [{"topUp": "1 L"}]}""";

    private static StockDocument Stock(string members) => Assert.Single(
        InMemoryShop.Of(("recipelint.json", Settings), ("b.stock.json", Other), ("a.stock.json", $$"""{"format": 1, {{members}} }""")).Load()
            .Stocks, s => s.File == "a.stock.json");

    private static RecipeDocument Recipe(string members) => Assert.Single(
        InMemoryShop.Of(("recipelint.json", Settings), ("b.stock.json", Other), ("r.recipe.json", $$"""{"format": 1, {{members}} }""")).Load()
            .Recipes);

    [Theory]
    [InlineData("""  "makes": "1 L", "steps": [] """, true)]
    [InlineData("""  "makes": "1 L", "steps": [{"pour": "0.5 L"}, {"topUp": "1 L"}] """, true)]
    [InlineData("""  "makes": "1 L", "steps": [{"stir": "well"}, {"warm": "to 40 °C"}, {"cool": "x"}, {"rest": "x"}, {"rinse": "x"}] """, true)]
    [InlineData("""  "makes": "1 L", "steps": [{"add": "b.stock.json", "amount": "20 mL"}] """, true)]
    [InlineData("""  "steps": [{"topUp": "1 L"}] """, false)]
    [InlineData("""  "makes": "0 L", "steps": [{"topUp": "1 L"}] """, false)]
    [InlineData("""  "makes": "1 L" """, false)]
    [InlineData("""  "makes": "1 L", "steps": {} """, false)]
    [InlineData("""  "makes": "1 L", "steps": ["x"] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"shake": "well"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"pour": "5 g"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"topUp": "0 L"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"topUp": "1 L", "of": "gone.water.json"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"pour": "1 L", "of": "gone.water.json"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"add": "gone.stock.json", "amount": "20 mL"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"add": "b.stock.json"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"add": "b.stock.json", "amount": "2 mmol"}] """, false)]
    [InlineData("""  "makes": "1 L", "steps": [{"add": "unobtainium", "amount": "1 g"}] """, false)]
    public void AStockSaysWhetherItIsWhole(string members, bool whole) => Assert.Equal(whole, Stock(members).IsComplete);

    [Theory]
    [InlineData("""  "final": "10 L", "doses": [] """, true)]
    [InlineData("""  "final": "10 L", "water": "rain", "doses": [{"stock": "b.stock.json", "dose": "1:100"}] """, true)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 4.0}] """, true)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 4.5}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 0}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 3000000000}] """, false)]
    [InlineData("""  "doses": [{"stock": "b.stock.json", "dose": "1:100"}] """, false)]
    [InlineData("""  "final": "0 L", "doses": [] """, false)]
    [InlineData("""  "final": "10 L" """, false)]
    [InlineData("""  "final": "10 L", "doses": ["x"] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"dose": "1:100"}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "gone.stock.json", "dose": "1:100"}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "dose": "some"}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"stock": "b.stock.json", "amount": "0 L"}] """, false)]
    [InlineData("""  "final": "10 L", "doses": [{"add": "KNO3"}] """, false)]
    [InlineData("""  "final": "10 L", "water": "gone.water.json", "doses": [] """, false)]
    public void ARecipeSaysWhetherItIsWhole(string members, bool whole) => Assert.Equal(whole, Recipe(members).IsComplete);

    [Fact]
    public void StrokesAreCountedAndTooManyAreNamed()
    {
        var shop = InMemoryShop.Of(
            ("recipelint.json", Settings), ("b.stock.json", Other),
            ("r.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": «10001»}]}"""));
        shop.Single(ProblemKind.WrongShape);
        Assert.Equal(10001, Assert.IsType<StockDose>(shop.Load().Recipes[0].Doses[0]).Strokes!.Value);
        Assert.Equal(10000, Assert.IsType<StockDose>(Recipe(
            """  "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 1e4}] """).Doses[0]).Strokes!.Value);
        InMemoryShop.Of(
            ("recipelint.json", Settings), ("b.stock.json", Other),
            ("r.recipe.json", """{"format": 1, "final": "10 L", "doses": [{"stock": "b.stock.json", "with": "jug", "strokes": 10000}]}""")).Clean();
    }

    [Theory]
    [InlineData("\"made up\"", FinalVolumeMeaning.MadeUp)]
    [InlineData("\"added to\"", FinalVolumeMeaning.AddedTo)]
    public void WhatTheFinalVolumeMeansIsRead(string word, FinalVolumeMeaning meaning) =>
        Assert.Equal(meaning, Recipe($"\"final\": \"10 L\", \"volume\": {word}, \"doses\": []").VolumeMeaning!.Value);

    [Theory]
    [InlineData("\"roots\"", Receiver.Roots)]
    [InlineData("\"leaves\"", Receiver.Leaves)]
    public void WhoGetsItIsRead(string word, Receiver receiver) =>
        Assert.Equal(receiver, Recipe($"\"final\": \"10 L\", \"givenTo\": {word}, \"doses\": []").GivenTo!.Value);

    [Fact]
    public void AnAdjustmentKeepsItsTolerance()
    {
        var adjust = Recipe("""  "name": "Feed", "final": "10 L", "doses": [], "at": "18..22 °C", "adjust": {"pH": "5.8 ± 0.2", "using": "nitric-38"} """);
        Assert.Equal((5.8, 0.2), (adjust.Adjust!.Target!.Value, adjust.Adjust.Tolerance!.Value));
        Assert.Equal(("Feed", 18.0, 22.0), (adjust.Name, adjust.At!.Value.Low.Celsius, adjust.At.Value.High.Celsius));
        var none = Recipe("""  "final": "10 L", "doses": [], "adjust": {"using": "nitric-38"} """).Adjust!;
        Assert.Equal((null, null), (none.Target, none.Tolerance));
        Assert.Null(Recipe("""  "final": "10 L", "doses": [], "adjust": {"pH": 15} """).Adjust!.Target);
    }

    [Theory]
    [InlineData("""{"add": "KNO3", "amount": "20 mL"}""", "solid")]
    [InlineData("""{"add": "KNO3", "amount": "3 drops"}""", "solid")]
    [InlineData("""{"add": "KNO3", "amount": "2 mL/L"}""", "solid")]
    [InlineData("""{"add": "x", "amount": "2 mmol"}""", "moles")]
    [InlineData("""{"add": "x", "amount": "2 mmol/L"}""", "moles")]
    [InlineData("""{"add": "x", "amount": "2 mL"}""", "density")]
    [InlineData("""{"add": "x", "amount": "2 mL/L"}""", "density")]
    public void WhatCannotBeMeasuredSoIsToldHow(string step, string word)
    {
        var problem = Assert.Single(InMemoryShop.Of(
            ("own.substances.json", """{"format": 1, "substances": [{"id": "x", "form": "liquid", "label": {"K2O": "10 %"}}]}"""),
            ("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{{step}}]}""")).Load().ProblemsOf("a.stock.json"));
        Assert.Equal((ProblemKind.WrongDimension, "/steps/0/amount"), (problem.Kind, problem.Place.Pointer.Value));
        Assert.Contains(word, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryWayToStateAnAmountIsRead()
    {
        Portion[] portions =
        [
            .. Stock("""
                "makes": "1 L", "steps": [
                  {"add": "KNO3", "amount": "2 g"}, {"add": "vinegar-5", "amount": "3 mL"}, {"add": "vinegar-5", "amount": "4 drops"},
                  {"add": "KNO3", "amount": "5 mmol"}, {"add": "KNO3", "amount": "6 g/L"}, {"add": "KNO3", "amount": "7 mmol/L"},
                  {"add": "vinegar-5", "amount": "8 mL/L"}]
                """).Steps.Select(s => Assert.IsType<AddStep>(s).Amount!.Value),
        ];
        Assert.Equal(2, Assert.IsType<Portion.ByMass>(portions[0]).Mass.Grams);
        Assert.Equal(3, Assert.IsType<Portion.ByVolume>(portions[1]).Volume.Millilitres, 1e-12);
        Assert.Equal(4, Assert.IsType<Portion.ByDrops>(portions[2]).Count);
        Assert.Equal(0.005, Assert.IsType<Portion.ByAmount>(portions[3]).Amount.Moles, 1e-15);
        Assert.Equal(6, Assert.IsType<Portion.PerLitreMass>(portions[4]).Concentration.GramsPerLitre, 1e-12);
        Assert.Equal(7, Assert.IsType<Portion.PerLitreAmount>(portions[5]).Concentration.MillimolesPerLitre, 1e-12);
        Assert.Equal(0.008, Assert.IsType<Portion.PerLitreVolume>(portions[6]).Dose.LitresPerLitre, 1e-15);
    }

    [Theory]
    [InlineData("stir", Handling.Stir)]
    [InlineData("filter", Handling.Filter)]
    [InlineData("warm", Handling.Warm)]
    [InlineData("cool", Handling.Cool)]
    [InlineData("rest", Handling.Rest)]
    [InlineData("rinse", Handling.Rinse)]
    public void WhatIsDoneIsReadByItsWord(string verb, Handling handling)
    {
        var step = Assert.IsType<HandlingStep>(Assert.Single(Stock($$"""  "makes": "1 L", "steps": [{"{{verb}}": "so", "note": "n"}] """).Steps));
        Assert.Equal((handling, "so", verb, "n"), (step.Handling, step.How.Value, step.Id, step.Note));
    }

    [Theory]
    [InlineData("dark", LightExposure.Dark)]
    [InlineData("shade", LightExposure.Shade)]
    [InlineData("light", LightExposure.Light)]
    public void HowLightItStandsIsRead(string word, LightExposure light)
    {
        var keep = Stock($$"""  "makes": "1 L", "steps": [], "keep": {"light": "{{word}}"} """).Keep!;
        Assert.Equal((light, null, null), (keep.Light!.Value, keep.At, keep.For));
    }

    [Fact]
    public void ALabelStatesWhatIsWrittenOnIt()
    {
        var label = Stock("""
            "makes": "1 L", "steps": [],
            "label": {"contents": " trace ", "dilution": "1:100", "date": "3 March", "hazard": "none", "keepApart": "acid", "disposal": "drain"}
            """).Label!;
        Assert.Equal((true, true, true, true, true, true), (label.Contents, label.Dilution, label.Date, label.Hazard, label.KeepApart, label.Disposal));
        Assert.Equal(("trace", null), (label.ContentsText, label.Colour));
        var blank = Stock("""
            "makes": "1 L", "steps": [], "label": {"contents": " ", "hazard": "", "keepApart": 3, "colour": " "}
            """).Label!;
        Assert.Equal((false, false, false, false, false, false), (blank.Contents, blank.Dilution, blank.Date, blank.Hazard, blank.KeepApart, blank.Disposal));
        Assert.Equal((null, null), (blank.ContentsText, blank.Colour));
        Assert.Null(Stock("""  "makes": "1 L", "steps": [], "label": "x" """).Label);
    }

    [Theory]
    [InlineData("makes")]
    [InlineData("final")]
    public void ALiquidLargerThanTheBatchIsNamedWithTheBatch(string key)
    {
        var (file, text) = key == "makes"
            ? ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"pour": «"1.1 L"»}]}""")
            : ("a.recipe.json", """{"format": 1, "final": "1 L", "doses": [{"stock": "b.stock.json", "amount": «"1.1 L"»}]}""");
        var problem = InMemoryShop.Of(("b.stock.json", Other), (file, text)).Single(ProblemKind.ImplausibleAmount);
        Assert.Equal($"/{key}", Assert.Single(problem.Related).Place.Pointer.Value);
        Assert.Equal([1.1, 1], problem.Values.Select(v => v.Value));
    }

    [Theory]
    [InlineData("{\"add\": \"b.stock.json\", \"amount\": «\"1.2 L\"»}")]
    [InlineData("{\"add\": \"vinegar-5\", \"amount\": «\"1.2 L\"»}")]
    public void WhateverIsPouredHasToFit(string step) =>
        InMemoryShop.Of(("b.stock.json", Other), ("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{{step}}]}"""))
            .Single(ProblemKind.ImplausibleAmount);

    /// <summary>What an import could not place stands in the file, and each piece is told.</summary>
    [Fact]
    public void WhatAnImportCouldNotPlaceIsTold()
    {
        var workspace = InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [], "notUnderstood": ["B7: 3 spoons", 4, "C2: ??"]}""")).Load();
        Assert.Equal(["/notUnderstood/0", "/notUnderstood/2"],
            workspace.Problems.Where(p => p.Kind == ProblemKind.ImportNotUnderstood).Select(p => p.Place.Pointer.Value));
        Assert.Contains("'B7: 3 spoons'", workspace.Problems.First(p => p.Kind == ProblemKind.ImportNotUnderstood).Message, StringComparison.Ordinal);
    }
}

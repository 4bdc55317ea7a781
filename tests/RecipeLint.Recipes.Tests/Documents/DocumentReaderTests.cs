using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

public sealed class DocumentReaderTests
{
    private const string Settings = """
        {
          "scales": [{"name": "pocket", "readability": "0.01 g", "capacity": "200 g", "repeatability": "0.015 g", "minimumWeight": "0.5 g"}],
          "measures": [{"name": "cylinder-100", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL", "tolerance": "± 0.5 mL"},
                       {"name": "injector", "kind": "injector", "tolerance": "± 10 %"}],
          "vessels": [{"name": "bottle", "capacity": "2 L", "tare": "180 g"}],
          "sites": [{"name": "store", "at": "8..25 °C"}],
          "profile": "lettuce",
          "rules": {"note": "why", "stock-not-used": "off", "RL0104": {"level": "note", "limit": 0.5, "share": "2 %", "strict": true, "note": "n"}},
          "suppressions": [{"rule": "stock-not-used", "file": "stocks/trace.stock.json", "at": "steps/edta", "reason": "kept", "accepted": 1.4, "expires": "2027-03-01"}]
        }
        """;

    [Fact]
    public void AStockIsReadWithEverythingInIt()
    {
        var stock = InMemoryShop.Of(
            ("recipelint.json", Settings),
            ("stocks/pre.stock.json", """{"format": 1, "makes": "100 mL", "steps": [{"topUp": "100 mL"}]}"""),
            ("water/well.water.json", """{"format": 1, "alkalinity": "3 meq/L"}"""),
            ("stocks/trace.stock.json", """
                { "format": 1, "name": "Trace", "makes": "2 L", "dose": "1 mL/L", "use": "bench", "vessel": "bottle",
                  "keep": {"at": "4..30 °C", "for": "6 months", "light": "dark"},
                  "label": {"contents": "trace", "dilution": " ", "colour": "pale green"},
                  "steps": [
                    {"pour": "1.4 L", "of": "../water/well.water.json", "with": "cylinder-100"},
                    {"add": "vinegar-5", "amount": "90 mL", "with": "cylinder-100"},
                    {"add": "disodium-edta-2h2o", "amount": "24 g", "id": "edta", "assay": "99 %", "with": "pocket", "note": "slow"},
                    {"add": "boric-acid", "amount": "1 g"},
                    {"add": "boric-acid", "amount": "1 g ± 5 %"},
                    {"add": "pre.stock.json", "amount": "20 mL"},
                    {"add": "food-colour", "amount": "3 drops"},
                    {"adjust": "pH 3.0 ± 0.2", "using": "koh-10"},
                    {"stir": "until clear"}, {"filter": "coffee filter"}, {"stir": "again"},
                    {"topUp": "2 L", "of": "rain"} ] }
                """)).Clean().FindStock("stocks/trace.stock.json")!;
        Assert.True(stock.IsComplete);
        Assert.Equal((2, 0.001, true, "bottle"), (stock.Makes!.Value.Litres, stock.Dose!.Value.LitresPerLitre, stock.ForBench, stock.Vessel!.Value));
        Assert.Equal((4.0, 30.0), (stock.Keep!.At!.Value.Low.Celsius, stock.Keep.At.Value.High.Celsius));
        Assert.Equal((6 * 30.4375, LightExposure.Dark), (stock.Keep.For!.Value.Days, stock.Keep.Light!.Value));
        Assert.Equal((true, false, false, "pale green"), (stock.Label!.Contents, stock.Label.Dilution, stock.Label.Date, stock.Label.Colour));
        Assert.Equal(
            ["pour", "vinegar-5", "edta", "boric-acid", "boric-acid-2", "pre", "food-colour", "adjust", "stir", "filter", "stir-2", "top-up"],
            stock.Steps.Select(s => s.Id));

        var edta = Assert.IsType<AddStep>(stock.Steps[2]);
        Assert.Equal(("disodium-edta-2h2o", "pocket", "slow"), (edta.Substance!.Id, edta.With!.Value, edta.Note));
        Assert.Equal(new Portion.ByMass(new Mass(24)), edta.Amount!.Value);
        Assert.Equal(0.99, edta.Assay!.Value.Value, 1e-15);
        Assert.Equal("/steps/2/amount", edta.Amount.Place.Pointer.Value);
        Assert.Equal(0.05, Assert.IsType<AddStep>(stock.Steps[4]).Tolerance!.Value.Relative);
        Assert.Equal("stocks/pre.stock.json", Assert.IsType<AliquotStep>(stock.Steps[5]).StockFile);
        Assert.Equal(new Portion.ByDrops(3), Assert.IsType<AddStep>(stock.Steps[6]).Amount!.Value);
        var adjust = Assert.IsType<AdjustStep>(stock.Steps[7]);
        Assert.Equal((3.0, 0.2, "koh-10"), (adjust.TargetPh!.Value, adjust.PhTolerance!.Value, adjust.Reagent!.Id));
        Assert.Equal(Handling.Filter, Assert.IsType<HandlingStep>(stock.Steps[9]).Handling);
        Assert.Equal("water/well.water.json", Assert.IsType<PourStep>(stock.Steps[0]).Of!.Value.File);
        Assert.Equal(new WaterReference("rain", null), Assert.IsType<TopUpStep>(stock.Steps[^1]).Of!.Value);
    }

    [Fact]
    public void AStockKeptAtASiteHasItsTemperatures()
    {
        var stock = InMemoryShop.Of(
            ("recipelint.json", Settings),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "keep": {"at": "store"}, "steps": [{"stir": "well"}]}""")).Clean().Stocks[0];
        Assert.Equal((8.0, 25.0), (stock.Keep!.At!.Value.Low.Celsius, stock.Keep.At.Value.High.Celsius));
        Assert.Equal("a.stock.json", stock.Keep.At.Place.File);
        Assert.Equal("a", stock.Name);
    }

    [Fact]
    public void AStatedIdGoesBeforeOneThatIsMade()
    {
        var stock = InMemoryShop.Of(("a.stock.json", """
            {"format": 1, "makes": "1 L", "steps": [
              {"add": "boric-acid", "amount": "1 g"}, {"add": "KNO3", "amount": "1 g", "id": "boric-acid"}, {"add": "boric-acid", "amount": "1 g"}]}
            """)).Clean().Stocks[0];
        Assert.Equal(["boric-acid-2", "boric-acid", "boric-acid-3"], stock.Steps.Select(s => s.Id));
    }

    [Fact]
    public void ARecipeIsReadWithEverythingInIt()
    {
        var recipe = InMemoryShop.Of(
            ("recipelint.json", Settings),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"stir": "well"}]}"""),
            ("r.recipe.json", """
                { "format": 1, "crop": "lettuce", "stage": "growing", "water": "rain", "final": "200 L", "volume": "added to",
                  "doses": [{"stock": "a.stock.json", "dose": "1:100"}, {"stock": "a.stock.json", "with": "injector", "strokes": 4},
                            {"stock": "a.stock.json", "amount": "2 L"}, {"add": "KNO3", "amount": "5 mmol/L", "assay": "99 %"}],
                  "adjust": {"pH": 5.8, "using": "nitric-38"},
                  "targets": {"N": "150 mg/L ± 10 %", "P": "71 mg/L as P2O5", "K": "240 mg/L as K2O", "Ca": "8 meq/L", "Mg": "2 mmol/L",
                              "NO3-N": "620 mg/L as NO3", "EC": "2.0 ± 0.2 mS/cm", "pH": "5.8 ± 0.2"} }
                """)).Clean().Recipes[0];
        Assert.True(recipe.IsComplete);
        Assert.Equal(("r", 200, FinalVolumeMeaning.AddedTo), (recipe.Name, recipe.Final!.Value.Litres, recipe.VolumeMeaning!.Value));
        Assert.Equal(["a", "a-2", "a-3", "potassium-nitrate"], recipe.Doses.Select(d => d.Id));
        Assert.Equal(100, Assert.IsType<StockDose>(recipe.Doses[0]).Dose!.Value.Dilution, 1e-12);
        Assert.Equal((4, "injector"), (((StockDose)recipe.Doses[1]).Strokes!.Value, recipe.Doses[1].With!.Value));
        Assert.Equal(new Portion.PerLitreAmount(AmountConcentration.FromMillimolesPerLitre(5)), Assert.IsType<DirectDose>(recipe.Doses[3]).Amount!.Value);
        Assert.Equal((5.8, "nitric-38"), (recipe.Adjust!.Target!.Value, recipe.Adjust.Reagent!.Id));

        // Label factors: P2O5 to P 0.4364, K2O to K 0.8302, NO3 to N 0.2259 (fertiliser trade, derived from CIAAW weights).
        double MilligramsPerLitre(string key) => recipe.Targets.Single(t => t.Key.Value == key).Concentration!.Value.MilligramsPerLitre;
        Assert.Equal(150, MilligramsPerLitre("N"), 1e-9);
        Assert.Equal(71 * 0.4364, MilligramsPerLitre("P"), 0.01);
        Assert.Equal(240 * 0.8302, MilligramsPerLitre("K"), 0.02);
        Assert.Equal(620 * 0.2259, MilligramsPerLitre("NO3-N"), 0.02);
        Assert.Equal(4 * 40.078, MilligramsPerLitre("Ca"), 0.01);
        Assert.Equal(2 * 24.305, MilligramsPerLitre("Mg"), 0.01);
        Assert.Equal(("P2O5", 0.1), (recipe.Targets[1].Basis, recipe.Targets[0].Tolerance!.Value.Relative));
        Assert.Equal((2.0, 0.2), (recipe.Targets[6].Number, recipe.Targets[6].Tolerance!.Value.Absolute));
        Assert.Equal((5.8, 0.2), (recipe.Targets[7].Number, recipe.Targets[7].Tolerance!.Value.Absolute));
    }

    [Fact]
    public void SettingsAreReadWithEverythingInThem()
    {
        var settings = InMemoryShop.Of(("recipelint.json", Settings)).Clean().SettingsFor("anywhere/x.stock.json");
        Assert.Equal("recipelint.json", settings.File);
        var scale = settings.FindScale("pocket")!;
        Assert.Equal((0.01, 200, 0.015, 0.5), (scale.Readability.Grams, scale.Capacity!.Value.Grams, scale.Repeatability!.Value.Grams, scale.MinimumWeight!.Value.Grams));
        var cylinder = settings.FindMeasure("cylinder-100")!;
        Assert.Equal((MeasureKind.Cylinder, 0.1, 0.0005), (cylinder.Kind, cylinder.Capacity!.Value.Litres, cylinder.Tolerance!.Value.Absolute));
        Assert.Equal(0.1, settings.FindMeasure("injector")!.Tolerance!.Value.Relative);
        Assert.Equal((2, 180), (settings.Vessels[0].Capacity!.Value.Litres, settings.Vessels[0].Tare!.Value.Grams));
        Assert.Equal("lettuce", settings.Profile!.Value);
        Assert.Equal(["stock-not-used", "RL0104"], settings.Rules.Select(r => r.Rule));
        Assert.Equal(("off", "note"), (settings.Rules[0].Level, settings.Rules[1].Level));
        Assert.Equal(["limit=0.5", "share=2 %", "strict=true"], settings.Rules[1].Options.Select(o => $"{o.Key}={o.Value.Value}"));
        Assert.Equal("/rules/RL0104/limit", settings.Rules[1].Options["limit"].Place.Pointer.Value);
        var suppression = Assert.Single(settings.Suppressions);
        Assert.Equal(("stocks/trace.stock.json", "steps/edta", 1.4, new DateOnly(2027, 3, 1)), (suppression.File, suppression.IdPath, suppression.Accepted, suppression.Expires));
    }

    [Theory]
    [InlineData("\"scales\": [{\"name\": \"x\", \"readability\": «\"0.01 mL\"»}]", ProblemKind.WrongDimension)]
    [InlineData("\"scales\": [{\"name\": \"x\", \"readability\": «\"0 g\"»}]", ProblemKind.ImplausibleAmount)]
    [InlineData("\"scales\": [{\"name\": \"x\", \"readability\": \"1 g\"}], \"measures\": [{\"name\": «\"x\"», \"kind\": \"jug\"}]", ProblemKind.DuplicateKey)]
    [InlineData("\"measures\": [{\"name\": \"x\", \"kind\": \"jug\", \"tolerance\": «\"± 0.5 g\"»}]", ProblemKind.WrongDimension)]
    [InlineData("\"measures\": [{\"name\": \"x\", \"kind\": \"jug\", \"tolerance\": «\"± 0.5\"»}]", ProblemKind.NumberWithoutUnit)]
    [InlineData("\"sites\": [{\"name\": \"x\", \"at\": «\"4..90 °C\"»}]", ProblemKind.ImplausibleAmount)]
    [InlineData("\"suppressions\": [{\"rule\": \"x\", \"file\": \"a\", \"reason\": \"r\", \"expires\": «\"2027-02-30\"»}]", ProblemKind.WrongShape)]
    [InlineData("\"suppressions\": [{\"rule\": \"x\", \"file\": \"a\", \"reason\": «\" \"»}]", ProblemKind.WrongShape)]
    [InlineData("\"suppressions\": [{\"rule\": \"x\", \"file\": «\"../a\"», \"reason\": \"r\"}]", ProblemKind.ReferenceLeavesRepository)]
    public void WhatSettingsStateIsRefusedWhereItStands(string members, ProblemKind kind) =>
        InMemoryShop.Of(("recipelint.json", $$"""{ {{members}} }""")).Single(kind);

    [Fact]
    public void EquipmentThatCannotBeReadIsReportedOnceWhereItIsDescribed() =>
        InMemoryShop.Of(
            ("recipelint.json", """{"scales": [{"name": "pocket", "readability": «"0.01 mL"»}]}"""),
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "1 g", "with": "pocket"}]}"""))
            .Single(ProblemKind.WrongDimension);

    [Fact]
    public void AHydrateIsNeverChosenAndTheFactorIsNamed()
    {
        // 246.47 g/mol against 120.37 g/mol (molar masses of the two magnesium sulfates): 2.048.
        var problem = InMemoryShop.Of(("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": «"magnesium sulfate"», "amount": "1 g"}]}"""))
            .Single(ProblemKind.AmbiguousSubstance);
        Assert.Equal(246.47 / 120.37, problem.Values.Single(v => v.Name == "factor").Value, 1e-3);
        Assert.Contains("magnesium-sulfate-7h2o", problem.Suggestions);
    }

    [Fact]
    public void WhatCouldNotBeReadLeavesTheDocumentIncomplete()
    {
        var workspace = InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "KNO3", "amount": "7,5 g"}, {"add": "boric-acid", "amount": "1 g"}]}"""),
            ("b.stock.json", """{"format": 1, "makes": "1 L", "steps": [{"add": "boric-acid", "amount": "1 g"}]}""")).Load();
        Assert.Single(workspace.Problems);
        Assert.Equal([false, true], workspace.Stocks.Select(s => s.IsComplete));
        Assert.Null(Assert.IsType<AddStep>(workspace.Stocks[0].Steps[0]).Amount);
        Assert.NotNull(Assert.IsType<AddStep>(workspace.Stocks[0].Steps[1]).Amount);
    }
}

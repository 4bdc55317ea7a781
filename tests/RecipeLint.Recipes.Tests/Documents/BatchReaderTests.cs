using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

public sealed class BatchReaderTests
{
    private const string Stock = """
        {"format": 1, "makes": "2 L", "steps": [
          {"pour": "1.5 L"}, {"add": "KNO3", "amount": "80 g"}, {"stir": "until clear"}, {"topUp": "2 L"}]}
        """;

    private static Workspace Load(string batch, string stock = Stock) =>
        InMemoryShop.Of(("a.stock.json", stock), ("x/run.batch.json", batch)).Load("x");

    private static string Record(string rest) => $$"""{"format": 1, "stock": "../a.stock.json", "made": "2026-03-02"{{rest}}}""";

    [Fact]
    public void EverythingThatIsWrittenIsRead()
    {
        var workspace = Load(Record(
            """
            , "by": "bench 2", "batch": "4 L",
            "steps": [
              {"step": "potassium-nitrate", "amount": "159.2 g", "lot": "24-117", "note": "twice"},
              {"step": "pour", "amount": "3 L"},
              {"add": "MgSO4·7H2O", "amount": "3 g"},
              {"step": "top-up", "add": "KCl", "amount": "0 g"}],
            "readings": [{"pH": 3.4}, {"pH": "5.2 ± 0.1", "dilution": "1:100"}, {"EC": "1.8 mS/cm", "dilution": "10 mL/L"},
              {"weight": "1.12 kg", "of": "1 L"}, {"weight": "2.2 kg"}],
            "seen": [{"what": "clear"}, {"after": "3 days", "at": "4..8 °C", "what": "white needles"}]
            """));
        Assert.Empty(workspace.Problems);
        var batch = Assert.Single(workspace.Batches);
        Assert.Equal("a.stock.json", batch.StockFile);
        Assert.Equal(new DateOnly(2026, 3, 2), batch.Made!.Value);
        Assert.Equal(4, batch.Size!.Value.Litres);
        Assert.True(batch.IsComplete);
        Assert.Equal(159.2, Assert.IsType<Portion.ByMass>(batch.Steps[0].Amount!.Value).Mass.Grams);
        Assert.Equal(("24-117", "twice"), (batch.Steps[0].Lot, batch.Steps[0].Note));
        Assert.Equal("magnesium-sulfate-7h2o", batch.Steps[2].Substance!.Id);
        Assert.True(batch.Steps[3].LeftOut);
        Assert.Equal([1, 100, 100, 1, 1], batch.Readings.Select(r => Math.Round(r.Dilution, 6)));
        Assert.Equal(0.1, batch.Readings[1].Tolerance!.Value.Absolute!.Value, 1e-12);
        Assert.Equal(1, Assert.IsType<WeightReading>(batch.Readings[3]).Of!.Value.Litres);
        Assert.Null(Assert.IsType<WeightReading>(batch.Readings[4]).Of);
        Assert.Equal(["clear", "white needles"], batch.Seen.Select(s => s.What.Value));
        Assert.Equal(8, batch.Seen[1].At!.Value.High.Celsius, 1e-9);
        Assert.Equal(["x/run.batch.json"], workspace.Asked);
        Assert.NotNull(workspace.FindStock("a.stock.json"));
    }

    [Theory]
    [InlineData(""", "steps": [{"step": "potassium-nitrat", "amount": "80 g"}]""", ProblemKind.MissingReference, "/steps/0/step", "'potassium-nitrate'")]
    [InlineData(""", "steps": [{"step": "pour", "amount": "80 g"}]""", ProblemKind.WrongDimension, "/steps/0/amount", "volume")]
    [InlineData(""", "steps": [{"step": "stir", "amount": "80 g"}]""", ProblemKind.WrongDimension, "/steps/0/amount", "nothing is put in")]
    [InlineData(""", "steps": [{"step": "potassium-nitrate", "amount": "80 mL"}]""", ProblemKind.WrongDimension, "/steps/0/amount", "solid")]
    [InlineData(""", "steps": [{"step": "pour"}, {"step": "pour"}]""", ProblemKind.DuplicateKey, "/steps/1/step", "twice")]
    [InlineData(""", "steps": [{"step": "pour", "amount": "1 mL/L"}]""", ProblemKind.WrongDimension, "/steps/0/amount", "1 mL/L")]
    [InlineData(""", "steps": [{"step": "pour", "amount": "-1 L"}]""", ProblemKind.ImplausibleAmount, "/steps/0/amount", "above zero")]
    [InlineData(""", "steps": [{"add": "KCl"}]""", ProblemKind.MissingKey, "/steps/0/add", "amount")]
    [InlineData(""", "steps": [{"add": "unobtainium", "amount": "1 g"}]""", ProblemKind.UnknownSubstance, "/steps/0/add", "unobtainium")]
    [InlineData(""", "steps": [{"amount": "1 g"}]""", ProblemKind.MissingKey, "/steps/0", "step")]
    [InlineData(""", "readings": [{"pH": 34}]""", ProblemKind.ImplausibleAmount, "/readings/0/pH", "34")]
    [InlineData(""", "readings": [{"pH": 3, "EC": "1 mS/cm"}]""", ProblemKind.WrongShape, "/readings/0/EC", "do not go together")]
    [InlineData(""", "readings": [{"weight": "1.1 L"}]""", ProblemKind.WrongDimension, "/readings/0/weight", "1.1 L")]
    [InlineData(""", "seen": [{"what": " "}]""", ProblemKind.WrongShape, "/seen/0/what", "clear")]
    [InlineData(""", "batch": "0 L" """, ProblemKind.ImplausibleAmount, "/batch", "nothing")]
    public void WhatCannotBeIsSaidAtItsPlace(string rest, ProblemKind kind, string pointer, string word)
    {
        var problem = Assert.Single(Load(Record(rest)).Problems);
        Assert.Equal((kind, pointer), (problem.Kind, problem.Place.Pointer.Value));
        Assert.Contains(word, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"format": 1, "made": "2026-03-02"}""", ProblemKind.MissingKey, "", "stock")]
    [InlineData("""{"format": 1, "stock": "../a.stock.json", "recipe": "../a.recipe.json", "made": "2026-03-02"}""", ProblemKind.WrongShape, "/recipe", "do not go together")]
    [InlineData("""{"format": 1, "recipe": "../a.stock.json", "made": "2026-03-02"}""", ProblemKind.MissingReference, "/recipe", "is not a recipe file")]
    [InlineData("""{"format": 1, "stock": "../a.stock.json", "edition": "yesterday", "made": "2026-03-02"}""", ProblemKind.WrongShape, "/edition", "yesterday")]
    [InlineData("""{"format": 1, "stock": "../a.stock.json", "edition": 12, "made": "2026-03-02"}""", ProblemKind.WrongShape, "/edition", "")]
    public void WhatItWasMixedFromIsOneThing(string record, ProblemKind kind, string pointer, string word)
    {
        var problem = InMemoryShop.Of(("a.stock.json", Stock), ("a.recipe.json", """{"format": 1, "final": "10 L", "doses": []}"""), ("x/run.batch.json", record))
            .Load("x").Problems.Where(p => p.Place.File == "x/run.batch.json").ToList();
        Assert.Contains(problem, p => (p.Kind, p.Place.Pointer.Value) == (kind, pointer) && p.Message.Contains(word, StringComparison.Ordinal));
    }

    [Fact]
    public void ADayThatIsNoneAndAStockThatIsMissingAreSaid()
    {
        var workspace = Load("""{"format": 1, "stock": "b.stock.json", "made": "2026-02-30"}""");
        Assert.Equal(["/made", "/stock"], workspace.Problems.Select(p => p.Place.Pointer.Value).Order());
        Assert.Null(Assert.Single(workspace.Batches).StockFile);
    }

    [Fact]
    public void ARecordOfAStockThatCannotBeReadIsStillARecord() => Assert.Single(Load(Record(""), "[]").Batches);
}

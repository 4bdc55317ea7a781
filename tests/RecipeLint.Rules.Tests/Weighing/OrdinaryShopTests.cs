namespace RecipeLint.Rules.Tests.Weighing;

/// <summary>
/// Shops as they are, that work well enough: nothing is said of them. Amounts follow Hoagland and Arnon (California Agricultural Experiment
/// Station circular 347, 1950, recalled): per litre of feed 0.945 g calcium nitrate, 0.607 g potassium nitrate, 0.115 g monoammonium phosphate,
/// 0.493 g Epsom salt; trace metals in the same order of size.
/// </summary>
public sealed class OrdinaryShopTests
{
    private const string Keep = """ "dose": "10 mL/L", "keep": { "for": "3 months" }, """;

    [Fact]
    public void ABalconyWithAPocketScaleAndASyringeForEachBottle()
    {
        const string settings = """
            { "scales": [ { "name": "pocket", "readability": "0.01 g", "capacity": "500 g" } ],
              "measures": [
                { "name": "syringe-a", "kind": "syringe", "capacity": "60 mL", "readability": "1 mL" },
                { "name": "syringe-b", "kind": "syringe", "capacity": "60 mL", "readability": "1 mL" },
                { "name": "syringe-trace", "kind": "syringe", "capacity": "20 mL", "readability": "1 mL" },
                { "name": "jug", "kind": "jug", "capacity": "1 L" } ],
              "vessels": [ { "name": "bottle", "capacity": "1 L", "tare": "40 g" } ] }
            """;
        var shop = new Shop().With(settings)
            .Stock("a", "1 L", """{ "add": "calcium-nitrate-4h2o", "amount": "94.5 g", "assay": "99 %" }, { "add": "fe-dtpa-hna", "amount": "1.7 g", "assay": "98 %" }""", Keep)
            .Stock(
                "b",
                "1 L",
                """
                { "add": "potassium-nitrate", "amount": "60.7 g", "assay": "99 %" }, { "add": "monoammonium-phosphate", "amount": "11.5 g", "assay": "99 %" },
                { "add": "magnesium-sulfate-7h2o", "amount": "49.3 g", "assay": "99 %" }
                """,
                Keep)
            .Stock("molybdate", "500 mL", """{ "add": "sodium-molybdate-2h2o", "amount": "2.5 g", "assay": "99 %" }""")
            .Stock(
                "trace",
                "1 L",
                """
                { "add": "manganese-sulfate-h2o", "amount": "1.54 g", "assay": "98 %" }, { "add": "zinc-sulfate-7h2o", "amount": "0.66 g", "assay": "99 %" },
                { "add": "boric-acid", "amount": "1.72 g", "assay": "99.5 %" }, { "add": "molybdate.stock.json", "amount": "20 mL", "with": "syringe-trace" }
                """,
                """ "dose": "1 mL/L", "vessel": "bottle", "keep": { "for": "6 months" }, """)
            .Recipe(
                "20 L",
                """
                { "stock": "a.stock.json", "dose": "10 mL/L", "with": "syringe-a" }, { "stock": "b.stock.json", "dose": "10 mL/L", "with": "syringe-b" },
                { "stock": "trace.stock.json", "dose": "1 mL/L", "with": "syringe-trace" }
                """);
        Assert.Equal([], shop.Judge().Select(f => f.Rule.Name + ": " + f.Message));
    }

    /// <summary>
    /// The file names no scale and no measure: 80 g with its vessel goes onto the scale that carries both, 300 mL into a cylinder filled
    /// twice and not into a jug of five litres. What no other scale shows well stays on the finest.
    /// </summary>
    [Theory]
    [InlineData("calcium-nitrate-4h2o", "80 g", 0)]
    [InlineData("nitric-38", "300 mL", 0)]
    [InlineData("potassium-nitrate", "52 g", 0)]
    public void NobodyWeighsOnTheScaleThatDoesNotCarryTheVessel(string what, string much, int findings)
    {
        const string settings = """
            { "scales": [ { "name": "bench", "readability": "0.1 g", "capacity": "3 kg" }, { "name": "fine", "readability": "0.001 g", "capacity": "100 g" } ],
              "measures": [ { "name": "jug", "kind": "jug", "capacity": "5 L", "readability": "50 mL", "tolerance": "± 50 mL" },
                { "name": "cylinder", "kind": "cylinder", "capacity": "250 mL", "readability": "2 mL", "tolerance": "± 2 mL" } ],
              "vessels": [ { "name": "beaker", "capacity": "1 L", "tare": "50 g" } ] }
            """;
        var shop = new Shop().With(settings).Stock("a", "5 L", $$"""{ "add": "{{what}}", "amount": "{{much}}", "assay": "99 %" }""", Keep);
        Assert.Equal(findings, shop.Judge().Count(f => f.Rule.Name is "over-scale-capacity" or "measure-too-coarse"));
    }

    [Fact]
    public void AGlasshouseWithInjectorsAndAPlatformScale()
    {
        const string settings = """
            { "scales": [ { "name": "platform", "readability": "0.05 kg", "capacity": "150 kg" }, { "name": "bench", "readability": "1 g", "capacity": "15 kg" } ],
              "measures": [ { "name": "injector-a", "kind": "injector" }, { "name": "injector-b", "kind": "injector" } ],
              "vessels": [ { "name": "tank-1000", "capacity": "1000 L", "tare": "60 kg" } ] }
            """;
        const string rest = """ "dose": "1:100", "vessel": "tank-1000", "keep": { "for": "1 month" }, """;
        var shop = new Shop().With(settings)
            .Stock(
                "a",
                "1000 L",
                """
                { "add": "calcium-nitrate-fertiliser", "amount": "75 kg", "with": "platform", "assay": "99 %" }, { "add": "fe-dtpa-hna", "amount": "1.7 kg", "with": "bench", "assay": "98 %" }
                """,
                rest)
            .Stock(
                "b",
                "1000 L",
                """
                { "add": "potassium-nitrate", "amount": "50 kg", "with": "platform", "assay": "99 %" }, { "add": "monopotassium-phosphate", "amount": "20 kg", "with": "platform", "assay": "99 %" },
                { "add": "magnesium-sulfate-7h2o", "amount": "40 kg", "with": "platform", "assay": "99 %" }, { "add": "manganese-sulfate-h2o", "amount": "150 g", "with": "bench", "assay": "98 %" },
                { "add": "boric-acid", "amount": "170 g", "with": "bench", "assay": "99.5 %" }
                """,
                rest)
            .Recipe("20000 L", """{ "stock": "a.stock.json", "with": "injector-a" }, { "stock": "b.stock.json", "with": "injector-b" }""");
        Assert.Equal([], shop.Judge().Select(f => f.Rule.Name + ": " + f.Message));
    }
}

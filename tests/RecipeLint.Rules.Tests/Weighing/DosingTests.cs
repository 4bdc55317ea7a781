using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Weighing;

/// <summary>Volumes, vessels, doses and what they do to the elements.</summary>
public sealed class DosingTests
{
    private const string Manganese = """{ "add": "manganese-sulfate-h2o", "amount": "1.5 g", "assay": "98 %" }""";

    private static Shop Trace(string settings, string doses, string final) =>
        new Shop().With(settings).Stock("trace", "1 L", Manganese, "\"dose\": \"1 mL/L\",").Recipe(final, doses);

    /// <summary>
    /// 4 mL from a 10 mL syringe: ± 0.19 mL, 4.75 %, the worked example printed with ISO 7886-1 table 1; rectangular, k = 2: 5.48 %.
    /// </summary>
    [Fact]
    public void ASyringeBelowHalfItsSizeHasTheLimitOfTheStandard()
    {
        const string settings = """
            { "measures": [ { "name": "syringe", "kind": "syringe", "capacity": "10 mL" } ], "rules": { "measure-too-coarse": { "limit": 5 } } }
            """;
        var finding = Assert.Single(Trace(settings, """{ "stock": "trace.stock.json", "dose": "1 mL/L", "with": "syringe" }""", "4 L").Judge("measure-too-coarse"));
        Assert.Equal(2 * 4.75 / Math.Sqrt(3), finding.Measured!.Value, 3);
    }

    /// <summary>A cylinder's limit is the same at every mark, so 15 % (k = 2, 1 mL and reading to 1 mL) is passed at 8.6 mL, by hand.</summary>
    [Theory]
    [InlineData("8.5 L", true)]
    [InlineData("8.7 L", false)]
    public void ACylinderOfAHundredIsTooCoarseBelowItsWorkedLimit(string final, bool reported)
    {
        const string settings = """
            { "measures": [ { "name": "cylinder", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL", "tolerance": "± 1 mL" } ] }
            """;
        var found = Trace(settings, """{ "stock": "trace.stock.json", "dose": "1 mL/L", "with": "cylinder" }""", final).Judge();
        Assert.Equal(reported ? ["measure-too-coarse"] : [], found.Select(f => f.Rule.Name));
    }

    /// <summary>The element is uncertain because of that measure, which is said once, where it stands.</summary>
    [Fact]
    public void WhatAMeasureSpoilsIsNotSaidAgainOfTheElement()
    {
        const string doses = """{ "stock": "trace.stock.json", "dose": "1 mL/L", "with": "jug" }""";
        const string jug = """ "measures": [ { "name": "jug", "kind": "jug", "capacity": "1 L" } ] """;
        Assert.Equal(["measure-too-coarse"], Trace("{" + jug + "}", doses, "100 L").Judge().Select(f => f.Rule.Name));

        var off = Trace("{" + jug + ", \"rules\": { \"measure-too-coarse\": \"off\" } }", doses, "100 L").Judge();
        var finding = Assert.Single(off);
        Assert.Equal("element-too-uncertain", finding.Rule.Name);
        Assert.Equal("doses/trace/with", finding.IdPath);
    }

    /// <summary>Two recipes with the same poor stock: one finding at the step, not one for each recipe.</summary>
    [Fact]
    public void OneCauseIsSaidOnceHoweverManyRecipesSuffer()
    {
        const string step = """{ "add": "manganese-sulfate-h2o", "amount": "1.5 g ± 25 %", "assay": "98 %", "id": "mn" }""";
        var shop = new Shop().Stock("trace", "1 L", step, "\"dose\": \"1 mL/L\",").Recipe("100 L", """{ "stock": "trace.stock.json" }""")
            .File("other.recipe.json", """{ "format": 1, "water": "distilled", "final": "50 L", "volume": "made up", "doses": [ { "stock": "trace.stock.json" } ] }""");
        var finding = Assert.Single(shop.Judge("element-too-uncertain"));

        Assert.Equal("steps/mn", finding.IdPath);

        // Rectangular ± 25 %, k = 2: 28.9 % from the weight alone; assay, volume and tank add a little.
        Assert.InRange(finding.Measured!.Value, 200 * 0.25 / Math.Sqrt(3), 30);
    }

    /// <summary>4.8 L poured into 100 L of water are 4.58 % of the mix, by hand.</summary>
    [Theory]
    [InlineData("48 mL/L", Level.Note)]
    [InlineData("60 mL/L", Level.Warning)]
    public void DosesThatMayOrMayNotBePartOfTheVolumeAreCounted(string dose, Level level)
    {
        var shop = new Shop().Stock("weak", "1 L", Manganese).Recipe("100 L", $$"""{ "stock": "weak.stock.json", "dose": "{{dose}}" }""", "");
        var finding = Assert.Single(shop.Judge("doses-shift-the-volume"));
        Assert.Equal(level, finding.Level);
        if (level == Level.Note)
        {
            Assert.Contains("4.58 %", finding.Message, StringComparison.Ordinal);
        }
    }

    /// <summary>
    /// Doses of 10 L added to 100 L are a tenth of 110 L too little for a target that fits 10 L in 100 L. Doses d give d/(100 + d) = 1/10 at
    /// 11.1 L, 11.1 % more.
    /// </summary>
    [Fact]
    public void TheDosesThatReachATargetAreWorkedOut()
    {
        var shop = new Shop().Stock("weak", "1 L", """{ "add": "potassium-nitrate", "amount": "10 g", "assay": "100 %" }""").Recipe(
            "100 L", """{ "stock": "weak.stock.json", "dose": "100 mL/L" }""", "\"volume\": \"added to\", \"targets\": { \"K\": \"387 mg/L ± 5 %\" },");
        var message = Assert.Single(shop.Judge("doses-shift-the-volume")).Message;
        Assert.Contains("raise the doses by 11.1 %", message, StringComparison.Ordinal);
        Assert.Contains("9.09 %", message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Equal parts of 151 g/L calcium nitrate tetrahydrate and 59.2 g/L Epsom salt: 0.12 mol/L of sulfate, so at most 20.7 g/L of gypsum, and most
    /// of that, since gypsum leaves about 0.015 mol/L in water (CRC Handbook, recalled).
    /// </summary>
    [Fact]
    public void WhatFallsOutOfARemnantIsMostOfTheSulfate()
    {
        const string settings = """{ "measures": [ { "name": "syringe", "kind": "syringe", "capacity": "60 mL" } ] }""";
        var shop = new Shop().With(settings)
            .Stock("a", "1 L", """{ "add": "calcium-nitrate-4h2o", "amount": "151 g", "assay": "100 %" }""")
            .Stock("b", "1 L", """{ "add": "magnesium-sulfate-7h2o", "amount": "59.2 g", "assay": "100 %" }""")
            .Recipe("5 L", """{ "stock": "a.stock.json", "dose": "10 mL/L", "with": "syringe" }, { "stock": "b.stock.json", "dose": "10 mL/L", "with": "syringe" }""");
        var finding = Assert.Single(shop.Judge("shared-dosing-syringe"));
        var most = 59.2 / 246.47 / 2 * 172.17;
        Assert.InRange(finding.Measured!.Value, 0.7 * most, most);
        Assert.Equal("doses/b/with", finding.IdPath);
    }

    /// <summary>Two stocks without a common solid may share a syringe.</summary>
    [Fact]
    public void StocksThatStayClearTogetherMayShareASyringe()
    {
        const string settings = """{ "measures": [ { "name": "syringe", "kind": "syringe", "capacity": "60 mL" } ] }""";
        var shop = new Shop().With(settings)
            .Stock("a", "1 L", """{ "add": "calcium-nitrate-4h2o", "amount": "151 g", "assay": "100 %" }""")
            .Stock("b", "1 L", """{ "add": "potassium-nitrate", "amount": "100 g", "assay": "100 %" }""")
            .Recipe("5 L", """{ "stock": "a.stock.json", "dose": "10 mL/L", "with": "syringe" }, { "stock": "b.stock.json", "dose": "10 mL/L", "with": "syringe" }""");
        Assert.Empty(shop.Judge("shared-dosing-syringe"));
    }

    [Theory]
    [InlineData("52 L", false)]
    [InlineData("53 L", true)]
    public void ABatchIsHeldAgainstEveryRecipeThatUsesIt(string makes, bool reported)
    {
        // Two recipes of 1 L of stock each, twice a week: 4 L a week; 3 months are 13.04 weeks, so 52.2 L.
        var shop = new Shop().Stock("trace", makes, Manganese, """ "keep": { "for": "3 months" }, """)
            .Recipe("100 L", """{ "stock": "trace.stock.json", "dose": "10 mL/L" }""")
            .File("other.recipe.json", """{ "format": 1, "water": "distilled", "final": "100 L", "volume": "made up", "doses": [ { "stock": "trace.stock.json", "dose": "10 mL/L" } ] }""");
        Assert.Equal(reported, shop.Judge("batch-outlasts-shelf-life").Count == 1);
    }

    /// <summary>Marks good to 5 % of 3 L are ± 150 mL: 15 % of 1 L, so 2·15/√3 = 17.3 %, and 5.8 % of 3 L.</summary>
    [Theory]
    [InlineData("1 L", true)]
    [InlineData("3 L", false)]
    [InlineData("3.1 L", false)]
    public void AVesselIsHeldAgainstWhatIsMadeInIt(string makes, bool reported)
    {
        const string settings = """{ "vessels": [ { "name": "jug", "capacity": "3 L" } ] }""";
        var found = new Shop().With(settings).Stock("trace", makes, Manganese, "\"vessel\": \"jug\",").Judge("vessel-too-coarse");
        Assert.Equal(reported ? [200 * 0.15 / Math.Sqrt(3)] : [], found.Select(f => Math.Round(f.Measured!.Value, 3)), (a, b) => Math.Abs(a - b) < 0.001);
    }

    [Fact]
    public void AnOverloadIsSplitIntoPortionsThatFit()
    {
        const string settings = """{ "scales": [ { "name": "pocket", "readability": "0.01 g", "capacity": "200 g" } ] }""";
        var shop = new Shop().With(settings).Stock("a", "2 L", """{ "add": "calcium-nitrate-4h2o", "amount": "390 g", "with": "pocket", "assay": "99 %" }""");
        var finding = Assert.Single(shop.Judge());
        Assert.Equal(Level.Error, finding.Level);

        // Two portions of 195 g leave 5 g for the vessel; three of 130 g leave 70 g.
        Assert.Contains("3 portions of 130 g", finding.Message, StringComparison.Ordinal);
    }
}

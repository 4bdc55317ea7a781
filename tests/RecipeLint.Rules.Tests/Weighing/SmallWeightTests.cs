using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Weighing;

/// <summary>Weights that are too small, and whether the ways out hold when they are followed.</summary>
public sealed partial class SmallWeightTests
{
    private const string Pocket = """{ "scales": [ { "name": "pocket", "readability": "0.01 g", "capacity": "200 g" } ] }""";

    private static Shop Trace(string settings, string substance, string amount, string makes = "1 L", string rest = "\"dose\": \"1 mL/L\",") =>
        new Shop().With(settings).Stock(
            "trace", makes, $$"""{ "add": "{{substance}}", "amount": "{{amount}}", "assay": "99 %", "id": "salt" }""", rest);

    /// <summary>
    /// u² = s² + 2·d²/12 + (a/√3)² with s = 1.5 d and a = d: 1.658 d, so 0.25 g on 0.01 g is known to 2·0.01658/0.25 = 13.27 %
    /// (JCGM 100:2008, 4.3.7, 5.1.2, F.2.2.1; OIML R 76-1:2006 for a; s is common practice, no source).
    /// </summary>
    [Fact]
    public void TheUncertaintyOfAWeightIsTheOneWorkedByHand()
    {
        var finding = Assert.Single(Trace(Pocket, "copper-sulfate-5h2o", "0.25 g").Judge("below-minimum-weight"));

        Assert.Equal(200 * 0.01 * Math.Sqrt(2.25 + (1.0 / 6) + (1.0 / 3)) / 0.25, finding.Measured!.Value, 3);
        Assert.Equal(10, finding.Measured.Limit);
        Assert.Equal("steps/salt/amount", finding.IdPath);
        Assert.Equal(Certainty.Estimate, finding.Certainty);
    }

    /// <summary>
    /// USP &lt;41&gt;, smallest weight by repeatability alone: 2 s over the fraction; s = 0.41 d at best (rounding of two readings) gives
    /// 0.082 g on 0.001 g for 1 %. Rounding is one of the terms here, so what passes here at 1 % is never less than that.
    /// </summary>
    [Theory]
    [InlineData("81 mg", true)]
    [InlineData("400 mg", false)]
    public void NoWeightPassesThatAPharmacopoeiaCallsTooSmall(string amount, bool reported)
    {
        const string settings = """
            { "scales": [ { "name": "fine", "readability": "0.001 g", "repeatability": "0.00041 g", "capacity": "50 g" } ],
              "rules": { "below-minimum-weight": { "limit": 1 } } }
            """;
        Assert.Equal(reported, Trace(settings, "copper-sulfate-5h2o", amount).Judge("below-minimum-weight").Count == 1);
    }

    [Theory]
    [InlineData("0.15 g", "below-scale-resolution")]
    [InlineData("0.25 g", "below-minimum-weight")]
    public void OneWeightIsReportedByOneRule(string amount, string rule)
    {
        var shop = Trace(Pocket, "copper-sulfate-5h2o", amount).Recipe("100 L", """{ "stock": "trace.stock.json", "dose": "1 mL/L" }""");
        Assert.Equal([rule], shop.Judge().Select(f => f.Rule.Name));
    }

    [Fact]
    public void WhereTheFirstRuleIsOffTheSecondSpeaks()
    {
        const string settings = """{ "scales": [ { "name": "pocket", "readability": "0.01 g" } ], "rules": { "below-scale-resolution": "off" } }""";
        Assert.Equal(["below-minimum-weight"], Trace(settings, "copper-sulfate-5h2o", "0.15 g").Judge().Select(f => f.Rule.Name));
    }

    /// <summary>A tenth more or less colour is seen by nobody (common practice, no source).</summary>
    [Fact]
    public void ADyeMayBeWeighedRoughly() => Assert.Empty(Trace(Pocket, "tartrazine", "0.05 g").Judge());

    /// <summary>
    /// Whoever follows the advice to dissolve, make up and take a part gets the same mass, and none of the rules speaks again.
    /// </summary>
    [Theory]
    [InlineData("sodium-molybdate-2h2o", "20 mg", "1 L")]
    [InlineData("sodium-molybdate-2h2o", "0.12 g", "1 L")]
    [InlineData("copper-sulfate-5h2o", "0.25 g", "2 L")]
    [InlineData("zinc-sulfate-7h2o", "0.19 g", "500 mL")]
    [InlineData("boric-acid", "0.3 g", "500 mL")]
    public void ThePreStockThatIsAdvisedHolds(string substance, string amount, string makes)
    {
        const string settings = """
            { "scales": [ { "name": "pocket", "readability": "0.01 g", "capacity": "200 g" } ],
              "measures": [
                { "name": "pipette", "kind": "pipette", "capacity": "10 mL", "readability": "0.1 mL", "tolerance": "± 0.1 mL" },
                { "name": "cylinder", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL", "tolerance": "± 1 mL" },
                { "name": "flask-250", "kind": "flask", "capacity": "250 mL" },
                { "name": "flask-500", "kind": "flask", "capacity": "500 mL" },
                { "name": "flask-1000", "kind": "flask", "capacity": "1 L" } ] }
            """;
        var finding = Assert.Single(Trace(settings, substance, amount, makes).Judge());
        var advice = PreStock().Match(finding.Message);
        Assert.True(advice.Success, finding.Message);
        var taken = Number(advice, "aliquot");
        var weight = Number(advice, "weight");
        var volume = Number(advice, "volume") * (advice.Groups["unit"].Value == "L" ? 1000 : 1);

        var mended = new Shop().With(settings)
            .Stock("pre", $"{volume} mL", $$"""{ "add": "{{substance}}", "amount": "{{weight}} g", "assay": "99 %" }""")
            .Stock("trace", makes, $$"""{ "add": "pre.stock.json", "amount": "{{taken}} mL", "with": "{{(taken > 10 ? "cylinder" : "pipette")}}" }""", "\"dose\": \"1 mL/L\",");
        Assert.Empty(mended.Judge());

        var wanted = Trace(settings, substance, amount, makes).Facts().FindStock("trace.stock.json")!.Additions[0].Mass.Grams;
        Assert.Equal(wanted, mended.Facts().FindStock("trace.stock.json")!.Additions[0].Mass.Grams, wanted * 0.005);
    }

    /// <summary>
    /// 18 g of boric acid in 1 L on a kitchen scale of 1 g: a pre-stock ten times as strong, 180 g/L, would not dissolve; water takes about 47 g/L
    /// at 20 °C (CRC Handbook, recalled).
    /// </summary>
    [Fact]
    public void NoPreStockIsAdvisedThatWouldNotDissolve()
    {
        const string kitchen = """{ "scales": [ { "name": "kitchen", "readability": "1 g", "capacity": "5 kg" } ] }""";
        var boric = Assert.Single(Trace(kitchen, "boric-acid", "18 g").Judge("below-scale-resolution"));
        Assert.DoesNotContain("issolve", boric.Message, StringComparison.Ordinal);
        Assert.Contains("at once", boric.Message, StringComparison.Ordinal);

        // Calcium nitrate dissolves at that strength, 180 g/L, many times over.
        var nitrate = Assert.Single(Trace(kitchen, "calcium-nitrate-4h2o", "18 g").Judge("below-scale-resolution"));
        Assert.Contains("issolve", nitrate.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ABetterScaleOfTheShopComesFirst()
    {
        const string settings = """
            { "scales": [ { "name": "pocket", "readability": "0.01 g" }, { "name": "fine", "readability": "0.001 g", "capacity": "50 g" } ] }
            """;
        var shop = new Shop().With(settings).Stock("trace", "1 L", """{ "add": "copper-sulfate-5h2o", "amount": "0.1 g", "with": "pocket", "assay": "99 %" }""");
        Assert.Contains("Weigh it on 'fine'", Assert.Single(shop.Judge()).Message, StringComparison.Ordinal);
    }

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"issolve (?<weight>[\d.]+) g in water to (?<volume>[\d.]+) (?<unit>m?L) and add (?<aliquot>[\d.]+) mL")]
    private static partial Regex PreStock();
}

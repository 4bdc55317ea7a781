using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Procedure;

namespace RecipeLint.Rules.Tests.People;

/// <summary>What the rules that protect people compute, at both sides of published limits.</summary>
public sealed class PeopleTests
{
    private static double Value(Finding finding, string name) => finding.Values.Single(v => v.Name == name).Value;

    /// <summary>What boils as the acid goes in is another danger than the water that comes onto it later: neither is silent for the other.</summary>
    [Theory]
    [InlineData(300, 300)]
    [InlineData(300, 600)]
    [InlineData(250, 600)]
    public void AcidThatBoilsAsItGoesInIsSaidBesideWaterOntoAcid(int acid, int water)
    {
        var steps = $$"""{"pour": "{{water}} mL"}, {"add": "sulfuric-96", "amount": "{{acid}} mL"}, {"topUp": "2 L"}""";

        var said = Workbench.JudgeAll(steps, "2 L");
        Assert.Equal(Level.Error, Assert.Single(said, f => f.Rule.Name == "water-onto-acid").Level);
        var boils = Assert.Single(said, f => f.Rule.Name == "gas-or-heat-in-stock");
        Assert.Equal(Level.Error, boils.Level);
        Assert.Contains("100 °C", boils.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// By Thomsen's formula sulfuric acid of 45 % warms by 6.6 K where it meets water, of 37 % by 4.0 K, of 24 % by 1.4 K: 100 g of 96 %
    /// acid in 113 g of water is 45 %, in 160 g 37 %, in 300 g 24 %.
    /// </summary>
    [Theory]
    [InlineData("113.5 mL", 45.0, Level.Error)]
    [InlineData("160.3 mL", 37.0, Level.Warning)]
    [InlineData("300.6 mL", 24.0, null)]
    public void WaterMayFollowAnAcidThatIsDiluteByThen(string water, double percent, Level? level)
    {
        var findings = Workbench.Judge("water-onto-acid", $$"""{"pour": "{{water}}"}, {"add": "sulfuric-96", "amount": "100 g"}, {"topUp": "1 L"}""");
        Assert.Equal(level is not null, findings.Count == 1);
        Assert.All(findings, f => Assert.Equal(percent, Value(f, "acid when water comes onto it"), 0.1));
        Assert.All(findings, f => Assert.Equal(level, f.Level));
    }

    /// <summary>250 mL of 85 % phosphoric acid in 0.7 L of water: 32 %, which warms by 1 K with more water.</summary>
    [Theory]
    [InlineData("phosphoric-85", "250 mL", "700 mL")]
    [InlineData("nitric-60", "400 mL", "500 mL")]
    public void ToppingUpAnAcidThatHasGivenOffItsHeatIsOrdinary(string acid, string amount, string water) => Assert.Empty(Workbench.Judge(
        "water-onto-acid", $$"""{"pour": "{{water}}"}, {"add": "{{acid}}", "amount": "{{amount}}"}, {"topUp": "1 L"}"""));

    /// <summary>A few per cent of nitric acid beside vinegar in a dilute stock is ordinary (common practice, no source).</summary>
    [Fact]
    public void DiluteNitricAcidMayMeetVinegar() =>
        Assert.Empty(Workbench.Judge(
            "nitric-with-organic",
            """{"pour": "700 mL"}, {"add": "vinegar-5", "amount": "100 mL"}, {"add": "nitric-60", "amount": "50 mL"}, {"topUp": "1 L"}"""));

    /// <summary>
    /// 10 g of 5 % available chlorine (52.5 g/kg NaOCl, 74.44 g/mol) are 7.05 mmol, which set 0.50 g of Cl2 (70.90 g/mol) free.
    /// </summary>
    [Fact]
    public void ChlorineIsCountedMoleForMole()
    {
        var finding = Assert.Single(Workbench.Judge(
            "hypochlorite-with-acid",
            """{"pour": "800 mL"}, {"add": "sodium-hypochlorite-5", "amount": "10 g"}, {"add": "vinegar-5", "amount": "50 mL"}, {"topUp": "1 L"}"""));
        Assert.Equal(10 * 0.0525 / 74.44 * 70.90, Value(finding, "chlorine in the batch"), 0.005);
    }

    /// <summary>Vinegar is acid and organic, bleach with it is one danger and one finding.</summary>
    [Fact]
    public void BleachWithVinegarIsOneFinding()
    {
        var findings = Workbench.JudgeAll(
            """{"pour": "100 mL"}, {"add": "sodium-hypochlorite-12.5", "amount": "700 mL"}, {"add": "vinegar-5", "amount": "50 mL"}, {"topUp": "1 L"}""");
        Assert.Equal("hypochlorite-with-acid", Assert.Single(findings, f => f.Level == Level.Error).Rule.Name);
    }

    /// <summary>Boric acid counts from 0.3 % by mass (CLP Annex I, table 3.7.2): 3.1 g in a litre of about 1000 g do, 2.9 g do not.</summary>
    [Theory]
    [InlineData("3.1 g", 1)]
    [InlineData("2.9 g", 0)]
    public void BoricAcidCountsFromItsLimit(string amount, int findings) =>
        Assert.Equal(
            findings,
            Workbench.Judge("reprotoxic-notice", $$"""{"pour": "900 mL"}, {"add": "boric-acid", "amount": "{{amount}}"}, {"topUp": "1 L"}""").Count);

    /// <summary>
    /// Copper sulfate, H410 with factor 10: ten times ten times its share against 25 % (CLP Annex I, table 4.1.2), so from 0.25 % by mass.
    /// </summary>
    [Theory]
    [InlineData("2.6 g", 1)]
    [InlineData("2.4 g", 0)]
    public void CopperSulfateCountsFromAQuarterPerCent(string amount, int findings) =>
        Assert.Equal(
            findings,
            Workbench.Judge("aquatic-hazard-notice", $$"""{"pour": "900 mL"}, {"add": "copper-sulfate-5h2o", "amount": "{{amount}}"}, {"topUp": "1 L"}""").Count);

    /// <summary>
    /// Nitric acid burns from 5 % of HNO3 (CLP Annex VI, recalled), damages eyes from 3 and irritates the skin from 1 % as any corrosive
    /// ingredient (Annex I, tables 3.2.3 and 3.3.3).
    /// </summary>
    [Theory]
    [InlineData("100 g", "H314")]
    [InlineData("60 g", "H318")]
    [InlineData("20 g", "H315")]
    public void CorrosiveIngredientsAddUp(string amount, string statement)
    {
        var finding = Assert.Single(Workbench.Judge(
            "hazardous-substance-without-caution",
            $$"""{"pour": "900 mL"}, {"add": "nitric-60", "amount": "{{amount}}"}, {"topUp": "1 L"}""",
            more: "\"use\": \"bench\","));
        Assert.Equal(statement, finding.Values[0].Name);
    }

    /// <summary>
    /// A trace stock of usual strength at 1:1000, a calcium part and a phosphate part at 1:100, an acid at a few per cent, mixed as the
    /// handbooks say: nothing to say (amounts after common published recipes; common practice, no source).
    /// </summary>
    [Theory]
    [InlineData("""{"pour": "800 mL"}, {"add": "citric-acid-h2o", "amount": "2 g"}, {"add": "manganese-sulfate-h2o", "amount": "1.54 g"}, {"add": "zinc-sulfate-7h2o", "amount": "0.22 g"}, {"add": "copper-sulfate-5h2o", "amount": "0.08 g"}, {"add": "boric-acid", "amount": "2.86 g"}, {"add": "sodium-molybdate-2h2o", "amount": "0.12 g"}, {"stir": "until clear"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "750 mL"}, {"add": "calcium-nitrate-4h2o", "amount": "94 g"}, {"stir": "until clear"}, {"add": "potassium-nitrate", "amount": "25 g"}, {"add": "fe-edta-na-3h2o", "amount": "1.5 g"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "750 mL"}, {"add": "potassium-nitrate", "amount": "60 g"}, {"stir": "until clear"}, {"add": "magnesium-sulfate-7h2o", "amount": "49 g"}, {"add": "monopotassium-phosphate", "amount": "14 g"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "750 mL"}, {"add": "potassium-sulfate", "amount": "44 g"}, {"stir": "until clear"}, {"add": "magnesium-sulfate-7h2o", "amount": "49 g"}, {"add": "monoammonium-phosphate", "amount": "11 g"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "850 mL"}, {"add": "nitric-38", "amount": "80 mL"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "800 mL"}, {"add": "disodium-edta-2h2o", "amount": "8 g"}, {"stir": "until clear"}, {"add": "ferrous-sulfate-7h2o", "amount": "5.6 g"}, {"topUp": "1 L"}""")]
    [InlineData("""{"pour": "40 L"}, {"add": "calcium-nitrate-4h2o", "amount": "47 g"}, {"add": "potassium-nitrate", "amount": "25 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "24 g"}, {"add": "monopotassium-phosphate", "amount": "7 g"}, {"topUp": "50 L"}""", "50 L")]
    public void OrdinaryStocksRaiseNothing(string steps, string makes = "1 L") =>
        Assert.Empty(Workbench.JudgeAll(steps, makes).Select(f => $"{f.Rule.Name} {f.IdPath}: {f.Message}"));

    [Fact]
    public void TheCleanExampleRaisesNothing() => Assert.Empty(Workbench.JudgeExample("quillmere").Select(f => f.Message));

    /// <summary>Every explanation of the family says who decides.</summary>
    [Fact]
    public void EveryExplanationDefersToWhoDecides() =>
        Assert.All(RuleBook.Descriptors.Where(d => d.Family == "people"), d =>
        {
            Assert.Contains("safety data sheets", d.Section("Cautions"), StringComparison.Ordinal);
            Assert.Contains("local codes", d.Section("Cautions"), StringComparison.Ordinal);
            Assert.Contains("licensed practice", d.Section("Cautions"), StringComparison.Ordinal);
        });
}

using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>What the family says of stocks whose behaviour is known.</summary>
public sealed class PrecipitationTests
{
    private const string Shed = "5..25 °C";

    [Fact]
    public void OneDepositAtThreeTemperaturesIsOneFindingAtItsWorst()
    {
        var findings = Lint.Files(Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 90), ("magnesium-sulfate-7h2o", 45))).OfTheFamily();

        var finding = Assert.Single(findings);
        Assert.Equal("calcium-with-sulfate", finding.Rule.Name);
        Assert.Equal(Level.Error, finding.Level);
        Assert.Equal(Certainty.Computed, finding.Certainty);
        Assert.Equal(5, Value(finding, "temperature"));
        Assert.Single(finding.Related);
    }

    /// <summary>
    /// The more calcium nitrate beside the same sulfate, the more gypsum falls out: across an ionic strength of 3 and 6 mol/kg the level may
    /// not fall (a warning with 330 g/L was a note with 440 in 2026).
    /// </summary>
    [Fact]
    public void ALargerDepositHasNoMilderLevelWhereTheModelEnds()
    {
        Level? last = null;
        foreach (var grams in (double[])[150, 200, 260, 330, 400, 440, 500, 600, 700, 800])
        {
            var found = Lint.Files(Lint.Stock("g", "1:100", "15..25 °C", ("potassium-sulfate", 8), ("calcium-nitrate-4h2o", grams)))
                .OfTheFamily().Single(f => f.Rule.Name == "calcium-with-sulfate");

            Assert.True(last is null || found.Level >= last, $"{grams} g/L: {found.Level} after {last}: {found.Message}");
            last = found.Level;
        }
    }

    /// <summary>What is kept beyond 0 to 45 °C was judged at the end of the model without a word (found in 2026).</summary>
    [Theory]
    [InlineData("20..60 °C", "up to 60 °C", "at 45 °C")]
    [InlineData("-15..20 °C", "down to -15 °C", "at 0 °C")]
    [InlineData("5..45 °C", null, null)]
    public void WhatIsKeptBeyondTheModelIsToldSo(string keep, string? kept, string? judged)
    {
        var said = Lint.Files(Lint.Stock("k", "1:100", keep, ("potassium-nitrate", 20))).OfTheFamily()
            .Where(f => f.Rule.Name == "solution-not-judged").ToList();

        Assert.Equal(kept is null ? 0 : 1, said.Count);
        Assert.All(said, f => Assert.Contains(kept!, f.Message, StringComparison.Ordinal));
        Assert.All(said, f => Assert.Contains($"judged {judged}", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void ADepositAtTheEndOfTheModelIsNotCalledThatOfTheWarmestItIsKept()
    {
        var found = Lint.Files(Lint.Stock("w", "1:100", "40..60 °C", ("calcium-nitrate-4h2o", 90), ("magnesium-sulfate-7h2o", 45))).OfTheFamily()
            .Single(f => f.Rule.Name == "calcium-with-sulfate");

        Assert.DoesNotContain("warmest it is kept", found.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Gypsum in water holds 15.2 mmol/kg at 25 °C (CRC Handbook; Marshall and Slusher 1966 print 15.1): far below it silence, at 1.5 times
    /// of it a finding, whatever the order of the steps.
    /// </summary>
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(1.5, true)]
    public void GypsumIsNamedAboveItsHandbookSolubility(double times, bool named)
    {
        var findings = Lint.Files(Lint.Stock("g", "100 mL/L", "24..26 °C", ("calcium-sulfate-2h2o", times * 0.0152 * 172.17))).OfTheFamily();

        Assert.Equal(named, findings.Any(f => f.Rule.Name == "calcium-with-sulfate"));
    }

    /// <summary>
    /// Silicate falls with magnesium at once, as with calcium, and milligrams of it from hard water count too; alone it stays clear
    /// (common practice, no source).
    /// </summary>
    [Theory]
    [InlineData("magnesium-sulfate-7h2o", 5, Level.Error)]
    [InlineData("magnesium-nitrate-6h2o", 0.5, Level.Error)]
    [InlineData("calcium-nitrate-4h2o", 5, Level.Error)]
    [InlineData("potassium-nitrate", 5, null)]
    public void SilicateFallsWithMagnesiumAsWithCalcium(string substance, double grams, Level? level)
    {
        var findings = Lint.Files(Lint.Stock("s", "10 mL/L", "8..25 °C", ("potassium-silicate-29be", 120), (substance, grams))).OfTheFamily();

        var finding = findings.SingleOrDefault(f => f.Rule.Name == "silicate-with-acid-or-metal");
        Assert.Equal(level, finding?.Level);
        Assert.Equal(substance[0] == 'm', finding?.Message.Contains("magnesium silicate", StringComparison.Ordinal) ?? false);
    }

    /// <summary>
    /// Calcium molybdate (log K of ThermoChimie 12a: -7.9) ten thousand times past its product falls within hours; a hundred times, 5 mg/L
    /// of molybdenum beside calcium nitrate, stays clear for long (common practice, no source).
    /// </summary>
    [Theory]
    [InlineData(200, 0.5, Level.Error)]
    [InlineData(100, 0.0126, Level.Note)]
    public void CalciumMolybdateIsJudgedByHowFarItIsPast(double nitrate, double molybdate, Level level)
    {
        var findings = Lint.Files(
            Lint.Stock("a", "10 mL/L", "8..25 °C", ("calcium-nitrate-4h2o", nitrate), ("sodium-molybdate-2h2o", molybdate))).OfTheFamily();

        var finding = Assert.Single(findings, f => f.Rule.Name == "molybdate-with-calcium");
        Assert.Equal(level, finding.Level);
        Assert.Equal(level == Level.Error, finding.Message.Contains(" falls out of ", StringComparison.Ordinal));
    }

    /// <summary>
    /// Calcium borate falls where borax meets calcium, as with a borax solution in qualitative analysis (recalled); judged by log K 21.57 of
    /// colemanite (LLNL database). Boric acid, a trace of borax and borax with as much acid stay clear (common practice, no source).
    /// </summary>
    [Theory]
    [InlineData("borax-10h2o", 20, 0, true)]
    [InlineData("borax-10h2o", 0.5, 0, false)]
    [InlineData("boric-acid", 10, 0, false)]
    [InlineData("borax-10h2o", 20, 20, false)]
    public void CalciumBorateFallsOutOfBoraxAndNotOfBoricAcid(string substance, double grams, double nitric, bool named)
    {
        var findings = Lint.Files(Lint.Stock(
            "a", "10 mL/L", "8..25 °C", [("calcium-nitrate-4h2o", 200), (substance, grams), .. nitric > 0 ? [("nitric-38", nitric)] : Array.Empty<(string, double)>()])).OfTheFamily();

        Assert.Equal(named, findings.Any(f => f.Rule.Name == "any-other-solid"));
    }

    /// <summary>
    /// Manganese ammonium phosphate, by which manganese is weighed in analysis (pKsp 12, Meites, recalled), falls out of diammonium phosphate
    /// and not of acid stocks, nor without ammonium.
    /// </summary>
    [Theory]
    [InlineData("diammonium-phosphate", 20, true)]
    [InlineData("monoammonium-phosphate", 20, false)]
    [InlineData("monopotassium-phosphate", 20, false)]
    public void ManganeseFallsWithAmmoniumAndPhosphateNearNeutral(string phosphate, double grams, bool named)
    {
        var findings = Lint.Files(Lint.Stock("m", "10 mL/L", "8..25 °C", ("manganese-sulfate-h2o", 20), (phosphate, grams))).OfTheFamily();

        Assert.Equal(named, findings.Any(f => f.Message.Contains("manganese ammonium phosphate", StringComparison.Ordinal)));
    }

    [Fact]
    public void TheOrderOfTheStepsChangesNoNumber()
    {
        var one = Lint.Files(Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 90), ("magnesium-sulfate-7h2o", 45), ("potassium-nitrate", 30))).OfTheFamily();
        var other = Lint.Files(Lint.Stock("a", "10 mL/L", Shed, ("potassium-nitrate", 30), ("magnesium-sulfate-7h2o", 45), ("calcium-nitrate-4h2o", 90))).OfTheFamily();

        Assert.Equal(one.Select(f => f.Message), other.Select(f => f.Message));
    }

    /// <summary>
    /// Handbook solubility of potassium nitrate (CRC): 13.9 % by mass at 0 °C, 24.0 % at 20 °C, 27.5 % at 25 °C. 200 g/L is clear at 20 °C
    /// and crystallises at 5 °C; 100 g/L is clear at both.
    /// </summary>
    [Theory]
    [InlineData("18..25 °C", 200, false)]
    [InlineData("5..25 °C", 200, true)]
    [InlineData("5..25 °C", 100, false)]
    public void SaltpetreCrystallisesInTheColdOnly(string keep, double grams, bool named)
    {
        var findings = Lint.Files(Lint.Stock("b", "5 mL/L", keep, ("potassium-nitrate", grams))).OfTheFamily();

        Assert.Equal(named, findings.Any(f => f.Rule.Name == "salt-past-its-solubility" && f.Level == Level.Error));
        Assert.Equal(named ? 1 : 0, findings.Count);
    }

    /// <summary>The strength and the temperature a finding offers are clear when they are tried.</summary>
    [Fact]
    public void TheWayOutIsOne()
    {
        var finding = Lint.Files(Lint.Stock("b", "5 mL/L", Shed, ("potassium-nitrate", 250))).OfTheFamily().Single();

        var factor = Value(finding, "clear at this part of the strength");
        Assert.Empty(Messages(Lint.Files(Lint.Stock("b", "5 mL/L", Shed, ("potassium-nitrate", 250 * factor)))));
        Assert.NotEmpty(Lint.Files(Lint.Stock("b", "5 mL/L", Shed, ("potassium-nitrate", 250 * factor * 1.05))).OfTheFamily());

        // On the shelf; mixed at 20 °C it is still close.
        var celsius = Math.Ceiling(Value(finding, "clear at"));
        var warm = Lint.Files(Lint.Stock("b", "5 mL/L", FormattableString.Invariant($"{celsius}..30 °C"), ("potassium-nitrate", 250))).OfTheFamily();
        Assert.All(warm, f => Assert.Contains("as it is mixed", f.Message, StringComparison.Ordinal));
        Assert.All(warm, f => Assert.Equal(Level.Warning, f.Level));
    }

    [Fact]
    public void ThePhOfferedIsClear()
    {
        var finding = Lint.Files(Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 90), ("monopotassium-phosphate", 20))).OfTheFamily().Single();

        var pH = Math.Floor(Value(finding, "clear at pH") * 10) / 10;
        Assert.InRange(pH, 2, 4);
        var (name, text) = Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 90), ("monopotassium-phosphate", 20));
        var acidified = text.Replace("{\"topUp\"", FormattableString.Invariant($"{{\"adjust\": \"pH {pH - 0.1:0.0}\", \"using\": \"nitric-38\"}}, {{\"topUp\""), StringComparison.Ordinal);
        Assert.DoesNotContain(Lint.Files((name, acidified)).OfTheFamily(), f => f.Level > Level.Note);
    }

    [Fact]
    public void SilicateAloneInItsAlkaliIsNoGel() =>
        Assert.Empty(Lint.Files(Lint.Stock("s", "1 mL/L", Shed, ("potassium-silicate-29be", 200))).OfTheFamily());

    /// <summary>
    /// T. Murashige and F. Skoog, Physiol. Plant. 15 (1962) 473: 27.8 mg/L iron(II) sulfate with 37.3 mg/L disodium EDTA, kept as a stock of
    /// 200 times that. It is acid and yellow and stays clear.
    /// </summary>
    [Fact]
    public void TheClassicalIronStockStaysClear() =>
        Assert.Empty(Messages(Lint.Files(Lint.Stock("iron", "5 mL/L", Shed, ("disodium-edta-2h2o", 7.45), ("ferrous-sulfate-7h2o", 5.57)))));

    /// <summary>
    /// With the usual slight excess of EDTA (1.05 for each iron) only the excess can fall out, not what the iron holds once the air has oxidised
    /// it: 21.0 mmol less 20.0 mmol, as EDTA acid (292.24 g/mol, arithmetic from CIAAW weights) at most 0.29 g/L.
    /// </summary>
    [Theory]
    [InlineData("10..25 °C")]
    [InlineData("18..25 °C")]
    public void OfAnIronStockWithSomeEdtaToSpareOnlyTheSpareCanFallOut(string keep)
    {
        var findings = Lint.Files(Lint.Stock("iron", "5 mL/L", keep, ("disodium-edta-2h2o", 7.82), ("ferrous-sulfate-7h2o", 5.57))).OfTheFamily();
        Assert.All(findings, f => Assert.Equal("chelating-acid-drops-out", f.Rule.Name));
        Assert.All(findings, f => Assert.InRange(f.Measured!.Value, 0, 0.29));
        Assert.All(findings, f => Assert.NotEqual(Level.Error, f.Level));
    }

    /// <summary>A slow solid gives a note about storage in a stock that is kept, and nothing in one that is used up.</summary>
    [Fact]
    public void SlowSolidsAreARemarkAtMost()
    {
        var kept = Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 60), ("sodium-gluconate", 50));
        var finding = Lint.Files(kept).OfTheFamily().Single();
        Assert.Equal("calcium-with-citrate", finding.Rule.Name);
        Assert.Equal(Level.Note, finding.Level);

        Assert.Empty(Lint.Files((kept.Name, kept.Text.Replace("3 months", "1 week", StringComparison.Ordinal))).OfTheFamily());
    }

    /// <summary>Something the file does not say, or that could not be read, leaves an estimate: a warning at most.</summary>
    [Fact]
    public void AnUnknownReagentMakesAnEstimate()
    {
        var (name, text) = Lint.Stock("a", "10 mL/L", Shed, ("calcium-nitrate-4h2o", 90), ("magnesium-sulfate-7h2o", 45));
        var coloured = text.Replace("{\"topUp\"", "{\"add\": \"food-colour\", \"amount\": \"5 drops\"}, {\"topUp\"", StringComparison.Ordinal);
        var finding = Lint.Files((name, coloured)).OfTheFamily().Single(f => f.Rule.Name == "calcium-with-sulfate");

        // Far past its limit it is an error although the state is an estimate.
        Assert.Equal(Certainty.Estimate, finding.Certainty);
        var index = finding.Values.Single(v => v.Name == "saturation index").Value;
        Assert.Equal(index >= 1 ? Level.Error : Level.Warning, finding.Level);
    }

    [Fact]
    public void FindingsNameBothSuppliersAndTheirNumbers()
    {
        var finding = Lint.Files(Lint.Stock("b", "10 mL/L", Shed, ("monopotassium-phosphate", 20), ("ferric-chloride-6h2o", 1))).OfTheFamily().Single();

        Assert.Equal("iron-with-phosphate", finding.Rule.Name);
        Assert.Contains("iron(III) chloride", finding.Message, StringComparison.Ordinal);
        Assert.Contains("potassium dihydrogen phosphate", finding.Message, StringComparison.Ordinal);
        Assert.NotNull(finding.Measured);
        Assert.Equal(new JsonPointer("/steps/2"), finding.Place.Pointer);
    }

    private static IEnumerable<string> Messages(LintResult result) => result.OfTheFamily().Select(f => f.Message);

    private static double Value(Finding finding, string name) => finding.Values.Single(v => v.Name == name).Value;

    /// <summary>Found by a hostile reading: 300 g/L of one salt at 5 °C, of which pure water there holds 171 g/kg (CRC Handbook), is no estimate.</summary>
    [Fact]
    public void ASaltAloneFarPastItsHandbookSolubilityIsAnError()
    {
        var finding = Assert.Single(Lint.Files(Lint.Stock("saltpetre", "10 mL/L", "5..20 °C", ("potassium-nitrate", 300))).OfTheFamily());
        Assert.Equal(("salt-past-its-solubility", Level.Error, Certainty.Computed), (finding.Rule.Name, finding.Level, finding.Certainty));

        // By hand: a litre holds about 885 g of water, which keeps 0.885 x 171 = 151 g; 149 g crystallise.
        Assert.InRange(finding.Measured!.Value, 143, 155);
    }

    /// <summary>Borax drops borax in the cold, and no boric acid: half of its boron is borate.</summary>
    [Fact]
    public void BoraxInTheColdDropsBoraxAlone()
    {
        var finding = Assert.Single(Lint.Files(Lint.Stock("borax", "10 mL/L", "10..20 °C", ("borax-10h2o", 60))).OfTheFamily());
        Assert.Contains("of borax crystallises", finding.Message, StringComparison.Ordinal);

        // By hand: at 10 °C water holds 1.6 g of Na2B4O7 (CRC Handbook), as decahydrate about 3.1 g, in 100 g; of 60 g some 28 g crystallise.
        Assert.InRange(finding.Measured!.Value, 25, 31);
    }
}

using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

public sealed class WaterReaderTests
{
    // One milliequivalent is 50.04 mg of CaCO3 and 61.02 mg of HCO3 (Standard Methods for the Examination of Water and Wastewater,
    // method 2320; recalled), 1 °dH is 17.8 mg/L and 1 °fH 10 mg/L as CaCO3, 1 grain per US gallon 17.1 mg/L (printed on every softener).
    [Theory]
    [InlineData("alkalinity", "50.04 mg/L as CaCO3", 1)]
    [InlineData("alkalinity", "61.02 mg/L as HCO3", 1)]
    [InlineData("alkalinity", "1 meq/L", 1)]
    [InlineData("alkalinity", "2.804 °dH", 1)]
    [InlineData("alkalinity", "5.004 °fH", 1)]
    [InlineData("alkalinity", "50.04 ppm as CaCO3", 1)]
    [InlineData("hardness", "50.04 mg/L as CaCO3", 1)]
    [InlineData("hardness", "2.923 grains/gal", 1)]
    [InlineData("hardness", "0.5 mmol/L", 1)]
    [InlineData("hardness", "20.04 mg/L as Ca", 1)]
    [InlineData("hardness", "28.04 mg/L as CaO", 1)]
    public void HardnessAndAlkalinityAreReadOnEveryBasis(string key, string value, double milliequivalents)
    {
        var water = Read($$"""{"format": 1, "{{key}}": "{{value}}"}""");
        var read = (key == "hardness" ? water.Hardness : water.Alkalinity)!.Value;
        Assert.Equal(milliequivalents, read.Low.MilliequivalentsPerLitre, 1e-3);
        Assert.Equal(read.Low, read.High);
        Assert.NotEmpty(water.Estimates);
    }

    // 50 mg/L of nitrate is 11.3 mg/L of nitrate nitrogen, and 250 mg/L of sulfate 83.5 mg/L of sulfur (WHO, Guidelines for
    // drinking-water quality, states both nitrate figures; recalled; the sulfate pair is arithmetic).
    [Theory]
    [InlineData("NO3", "50 mg/L", "NO3-", 0.8064)]
    [InlineData("NO3", "50 mg/L as NO3", "NO3-", 0.8064)]
    [InlineData("NO3", "11.295 mg/L as N", "NO3-", 0.8064)]
    [InlineData("NO3-N", "11.295 mg/L", "NO3-", 0.8064)]
    [InlineData("SO4", "250 mg/L", "SO4-2", 2.6025)]
    [InlineData("SO4", "83.45 mg/L as S", "SO4-2", 2.6025)]
    [InlineData("S", "83.45 mg/L", "SO4-2", 2.6025)]
    [InlineData("Ca", "40.078 mg/L", "Ca+2", 1)]
    [InlineData("Ca", "100.087 mg/L as CaCO3", "Ca+2", 1)]
    [InlineData("Ca", "2 meq/L", "Ca+2", 1)]
    [InlineData("Mg", "100.087 mg/L as CaCO3", "Mg+2", 1)]
    [InlineData("Mg", "1 mmol/L", "Mg+2", 1)]
    [InlineData("HCO3", "61.016 mg/L", "CO3-2", 1)]
    [InlineData("HCO3", "50.043 mg/L as CaCO3", "CO3-2", 1)]
    [InlineData("HCO3", "1 meq/L", "CO3-2", 1)]
    [InlineData("CO3", "2 meq/L", "CO3-2", 1)]
    [InlineData("NH4", "14.007 mg/L as N", "NH4+", 1)]
    [InlineData("PO4", "94.97 mg/L", "H2PO4-", 1)]
    [InlineData("P", "30.974 mg/L", "H2PO4-", 1)]
    [InlineData("B", "10.81 mg/L", "B(OH)3", 1)]
    [InlineData("Si", "60.083 mg/L as SiO2", "H4SiO4", 1)]
    public void IonsBecomeMolesOfTheirComponent(string key, string value, string component, double millimoles)
    {
        var read = Assert.Single(Read($$"""{"format": 1, "ions": {"{{key}}": "{{value}}"} }""").Values);
        Assert.Equal(component, read.Component);
        Assert.Equal(key, read.Key.Value);
        Assert.Equal(millimoles, read.Concentration.Low.MillimolesPerLitre, millimoles * 2e-4);
    }

    [Fact]
    public void AYearlyRangeKeepsBothEnds()
    {
        var water = Read("""{"format": 1, "ec": "450..650 µS/cm", "pH": "7.2..7.8", "ions": {"SO4": "60..90 mg/L"}}""");
        Assert.Equal((0.45, 0.65), (water.Ec!.Value.Low.MillisiemensPerCentimetre, water.Ec.Value.High.MillisiemensPerCentimetre));
        Assert.Equal((7.2, 7.8), (water.Ph!.Value.Low, water.Ph.Value.High));
        var sulfate = Assert.Single(water.Values).Concentration;
        Assert.Equal(1.5, sulfate.High.MolesPerLitre / sulfate.Low.MolesPerLitre, 1e-12);
        Assert.Empty(water.Estimates);
    }

    [Fact]
    public void APublishedWaterIsInBalanceAndItsConductivityEstimatesIt()
    {
        // Geographical characterization of greenhouse irrigation water, HortTechnology 7 (1997) 49, median of 4306 samples (abstract):
        // EC 0.4 dS/m, alkalinity 130 as CaCO3, Ca 40, Mg 11, SO4-S 8, Na 13, Cl 14 mg/L.
        var water = Read("""
            {"format": 1, "ec": "0.4 dS/m", "alkalinity": "130 mg/L as CaCO3",
             "ions": {"Ca": "40 mg/L", "Mg": "11 mg/L", "SO4": "8 mg/L as S", "Na": "13 mg/L", "Cl": "14 mg/L"}}
            """);
        Assert.Equal(["All alkalinity is taken as bicarbonate."], water.Estimates);
        Assert.Equal(Charge(water, +1), Charge(water, -1), 0.05);

        var estimate = Read("""{"format": 1, "ec": "0.4 dS/m"}""");
        Assert.Equal(Charge(water, +1), Charge(estimate, +1), 0.2 * Charge(water, +1));
        Assert.Equal(Charge(estimate, +1), Charge(estimate, -1), 1e-9);
    }

    [Fact]
    public void HardnessAndAlkalinityAloneMakeAnEstimateThatSaysSo()
    {
        var water = Read("""{"format": 1, "hardness": "4 meq/L", "alkalinity": "3 meq/L", "ec": "0.5 mS/cm"}""");
        Assert.Equal(["CO3-2", "Ca+2", "Cl-", "Mg+2", "Na+"], water.Values.Select(v => v.Component).Order(StringComparer.Ordinal));
        Assert.Equal(3, water.Values.Single(v => v.Component == "Ca+2").Concentration.Low.MillimolesPerLitre * 2, 1e-9);
        Assert.Equal(Charge(water, +1), Charge(water, -1), 1e-9);
        Assert.Equal(5, Charge(water, +1), 1e-9);
        Assert.Contains(water.Estimates, e => e.Contains("75 % calcium", StringComparison.Ordinal));
        Assert.Contains(water.Estimates, e => e.Contains("bicarbonate", StringComparison.Ordinal));
        Assert.Contains(water.Estimates, e => e.Contains("chloride", StringComparison.Ordinal));
    }

    [Fact]
    public void MagnesiumIsWhatTheHardnessLeaves()
    {
        var water = Read("""{"format": 1, "hardness": "4 meq/L", "ions": {"Ca": "3 meq/L"}}""");
        Assert.Equal(0.5, water.Values.Single(v => v.Component == "Mg+2").Concentration.Low.MillimolesPerLitre, 1e-9);
    }

    [Theory]
    [InlineData("\"alkalinity\": «\"180 mg/L\"»", ProblemKind.AmbiguousUnit)]
    [InlineData("\"alkalinity\": «\"3 mmol/L\"»", ProblemKind.AmbiguousUnit)]
    [InlineData("\"hardness\": «\"180 ppm\"»", ProblemKind.AmbiguousUnit)]
    [InlineData("\"hardness\": \"180 mg/L as «CaC03»\"", ProblemKind.UnknownUnit)]
    [InlineData("\"hardness\": «\"180 mS/cm\"»", ProblemKind.WrongDimension)]
    [InlineData("\"ec\": \"700 «ppm»\"", ProblemKind.AmbiguousUnit)]
    [InlineData("\"ec\": «\"0.5\"»", ProblemKind.NumberWithoutUnit)]
    [InlineData("\"ec\": «\"-0.5 mS/cm\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"ec\": \"0.5 mS/cm\", \"pH\": «\"7.2..78\"»", ProblemKind.ImplausibleAmount)]
    [InlineData("\"ions\": {\"Ca\": \"82 mg/L as «N»\"}", ProblemKind.UnknownUnit)]
    [InlineData("\"ions\": {\"Ca\": «\"-82 mg/L\"»}", ProblemKind.ImplausibleAmount)]
    [InlineData("\"ions\": {\"Fe\": «\"< 0.02 mg/L\"»}", ProblemKind.WrongShape)]
    [InlineData("\"ions\": {\"B\": «\"3 meq/L\"»}", ProblemKind.WrongDimension)]
    [InlineData("\"ions\": {\"SO4\": \"60 mg/L\", «\"S\"»: \"20 mg/L\"}", ProblemKind.DuplicateKey)]
    public void WhatAnAnalysisLeavesOpenIsReported(string members, ProblemKind kind) =>
        InMemoryShop.Of(("well.water.json", $$"""{"format": 1, {{members}}}""")).Single(kind);

    /// <summary>What could not be read is not computed with: the water says so, and gives no figures as stated.</summary>
    [Theory]
    [InlineData("\"ions\": {\"Ca\": \"40 mg/L\"}, \"alkalinity\": \"3 meq/L\", \"hardness\": \"2 meq/L\", \"ec\": \"0.5 mS/cm\"", true)]
    [InlineData("\"ions\": {\"HCO3\": \"61 mg/L\", \"CO3\": \"3 mg/L\"}", true)]
    [InlineData("\"ions\": []", false)]
    [InlineData("\"ions\": {\"Ca\": \"lots\"}", false)]
    [InlineData("\"ions\": {\"Ca\": \"-1 mg/L\"}", false)]
    [InlineData("\"ions\": {\"Fe\": \" <0.02 mg/L\"}", false)]
    [InlineData("\"ions\": {\"SO4\": \"60 mg/L\", \"S\": \"20 mg/L\"}", false)]
    [InlineData("\"alkalinity\": \"-1 meq/L\"", false)]
    [InlineData("\"hardness\": \"much\"", false)]
    [InlineData("\"hardness\": \"180 mg/L\"", false)]
    public void AWaterSaysWhetherItCouldBeRead(string members, bool whole)
    {
        var water = Assert.Single(InMemoryShop.Of(("w.water.json", $$"""{"format": 1, {{members}}}""")).Load().Waters);
        Assert.Equal((whole, whole), (water.IsComplete, water.Stated is not null));
    }

    /// <summary>Carbonate and bicarbonate are one component and two ions: both count.</summary>
    [Fact]
    public void CarbonateAndBicarbonateAreBothCounted()
    {
        var water = Read("""{"format": 1, "ions": {"HCO3": "3 meq/L", "CO3": "1 meq/L"}}""");
        Assert.Equal(["HCO3", "CO3"], water.Values.Select(v => v.Key.Value));
        Assert.Equal([3, 0.5], water.Values.Select(v => Math.Round(v.Concentration.Low.MillimolesPerLitre, 9)));
    }

    [Fact]
    public void WhatIsStatedStandsBesideWhatIsEstimated()
    {
        var stated = Read("""{"format": 1, "name": "Well", "ions": {"Ca": "40.078..80.156 mg/L"}, "alkalinity": "1..2 meq/L", "EC": "0.3 mS/cm"}""");
        Assert.Equal("Well", stated.Name);
        var ion = Assert.Single(stated.Stated!.Ions);
        Assert.Equal(("Ca", "Ca+2", 2), (ion.Key, ion.Component, ion.Charge));
        Assert.Equal((2, 4), (Math.Round(ion.Equivalents.Low.MilliequivalentsPerLitre, 9), Math.Round(ion.Equivalents.High.MilliequivalentsPerLitre, 9)));
        Assert.Equal((1, 2), (stated.Alkalinity!.Value.Low.MilliequivalentsPerLitre, stated.Alkalinity.Value.High.MilliequivalentsPerLitre));
        Assert.Equal("/alkalinity", stated.Alkalinity.Place.Pointer.Value);
        Assert.Equal(("/ions", PlacePart.Key), (stated.Stated.IonsPlace!.Pointer.Value, stated.Stated.IonsPlace.Part));
        Assert.Equal("w", Read("""{"format": 1, "ions": {}}""").Name);
    }

    /// <summary>By hand: 1 mg as bicarbonate is 1/61.02 meq, as CaCO3 1/50.04; CaO 28.04, Ca 20.04.</summary>
    [Theory]
    [InlineData("\"alkalinity\": «\"180 mg/L\"»", 61.02 / 50.04, "180 mg/L as CaCO3|180 mg/L as HCO3")]
    [InlineData("\"hardness\": «\"180 ppm\"»", 50.04 / 20.04, "180 ppm as CaCO3|180 ppm as CaO|180 ppm as Ca")]
    [InlineData("\"alkalinity\": «\"3 mmol/L\"»", 2, "")]
    public void WhatAValueCountsAsIsAskedWithTheFactorBetween(string members, double factor, string suggestions)
    {
        var problem = InMemoryShop.Of(("w.water.json", $$"""{"format": 1, {{members}}}""")).Single(ProblemKind.AmbiguousUnit);
        Assert.Equal(factor, problem.Values.Single(v => v.Name == "factor").Value, 2e-3);
        Assert.Equal(suggestions, string.Join('|', problem.Suggestions));
    }

    [Theory]
    [InlineData("2 mmol/L as CaCO3", 4)]
    [InlineData("2 mmol/L as HCO3", 2)]
    public void MolesOnABasisCarryItsCharges(string value, double milliequivalents) =>
        Assert.Equal(milliequivalents, Read($$"""{"format": 1, "alkalinity": "{{value}}"}""").Alkalinity!.Value.Low.MilliequivalentsPerLitre, 1e-9);

    [Fact]
    public void TwoNamesOfOneIonAreNamedBoth()
    {
        var problem = InMemoryShop.Of(("w.water.json", """{"format": 1, "ions": {"SO4": "60 mg/L", «"S"»: "20 mg/L"}}""")).Single(ProblemKind.DuplicateKey);
        Assert.Equal("/ions/SO4", Assert.Single(problem.Related).Place.Pointer.Value);
    }

    [Theory]
    [InlineData("\"pH\": 15", false)]
    [InlineData("\"pH\": \"-1..7\"", false)]
    [InlineData("\"pH\": \"0..14\"", true)]
    [InlineData("\"pH\": 7.4", true)]
    public void APhIsAPhOrNone(string member, bool read) => Assert.Equal(
        read, Assert.Single(InMemoryShop.Of(("w.water.json", $$"""{"format": 1, {{member}}}""")).Load().Waters).Ph is not null);

    [Fact]
    public void DetectionLimitsAreOfferedAsRanges()
    {
        var problem = InMemoryShop.Of(("w.water.json", """{"format": 1, "ions": {"Fe": «"<0.02 mg/L"»}}""")).Single(ProblemKind.WrongShape);
        Assert.Equal(["0..0.02 mg/L"], problem.Suggestions);
    }

    [Fact]
    public void BuiltInWatersArePure() =>
        Assert.All(BuiltInWaters.Names, n => Assert.Empty(BuiltInWaters.Find(n)!.Values));

    private static WaterDocument Read(string text) => Assert.Single(InMemoryShop.Of(("w.water.json", text)).Clean().Waters);

    /// <summary>meq/L of one sign, the carbonate component counted as bicarbonate.</summary>
    private static double Charge(WaterDocument water, int sign) => water.Values.Sum(v => v.Concentration.Low.MillimolesPerLitre * v.Component switch
    {
        "Ca+2" or "Mg+2" => sign > 0 ? 2 : 0,
        "Na+" => sign > 0 ? 1 : 0,
        "SO4-2" => sign < 0 ? 2 : 0,
        _ => sign < 0 ? 1 : 0,
    });
}

using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Recipes.Tests.Quantities;

/// <summary>Unit factors against published tables, to the digits printed there.</summary>
public sealed class UnitFactorTests
{
    // NIST Special Publication 811 (2008), appendix B.8, to seven digits as printed (recalled).
    [Theory]
    [InlineData("1 lb", Dimension.Mass, 453.5924)]
    [InlineData("1 oz", Dimension.Mass, 28.34952)]
    [InlineData("1 grain", Dimension.Mass, 0.06479891)]
    [InlineData("1 US gal", Dimension.Volume, 3.785412)]
    [InlineData("1 UK gal", Dimension.Volume, 4.54609)]
    [InlineData("1 US fl oz", Dimension.Volume, 0.02957353)]
    [InlineData("1 UK fl oz", Dimension.Volume, 0.02841306)]
    [InlineData("1 oz/US gal", Dimension.MassConcentration, 7.489152)]
    [InlineData("1 oz/UK gal", Dimension.MassConcentration, 6.236023)]
    [InlineData("1 lb/US gal", Dimension.MassConcentration, 119.8264)]
    [InlineData("1 lb/UK gal", Dimension.MassConcentration, 99.77637)]
    [InlineData("1 grain/US gal", Dimension.MassConcentration, 0.01711806)]
    public void CustomaryUnitsAgreeWithThePublishedTable(string text, Dimension dimension, double baseUnits) =>
        Assert.Equal(baseUnits, Read(text, dimension).Low, baseUnits * 5e-7);

    // SI Brochure, 9th edition: prefixes (table 7) and the litre, tonne, day beside the SI (table 8).
    [Theory]
    [InlineData("1 t", Dimension.Mass, 1e6)]
    [InlineData("1 kg", Dimension.Mass, 1e3)]
    [InlineData("1 mg", Dimension.Mass, 1e-3)]
    [InlineData("1 µg", Dimension.Mass, 1e-6)]
    [InlineData("1 μg", Dimension.Mass, 1e-6)]
    [InlineData("1 ug", Dimension.Mass, 1e-6)]
    [InlineData("1 ng", Dimension.Mass, 1e-9)]
    [InlineData("1 m³", Dimension.Volume, 1000)]
    [InlineData("1 m3", Dimension.Volume, 1000)]
    [InlineData("1 hL", Dimension.Volume, 100)]
    [InlineData("1 dL", Dimension.Volume, 0.1)]
    [InlineData("1 cL", Dimension.Volume, 0.01)]
    [InlineData("1 ml", Dimension.Volume, 1e-3)]
    [InlineData("1 µL", Dimension.Volume, 1e-6)]
    [InlineData("1 mmol", Dimension.Amount, 1e-3)]
    [InlineData("1 µmol", Dimension.Amount, 1e-6)]
    [InlineData("1 mmol/L", Dimension.AmountConcentration, 1e-3)]
    [InlineData("1 µmol/L", Dimension.AmountConcentration, 1e-6)]
    [InlineData("1 M", Dimension.AmountConcentration, 1)]
    [InlineData("1 mM", Dimension.AmountConcentration, 1e-3)]
    [InlineData("1 meq/L", Dimension.ChargeConcentration, 1e-3)]
    [InlineData("1 me/l", Dimension.ChargeConcentration, 1e-3)]
    [InlineData("1 mg/L", Dimension.MassConcentration, 1e-3)]
    [InlineData("1 g per litre", Dimension.MassConcentration, 1)]
    [InlineData("1 g/100 L", Dimension.MassConcentration, 0.01)]
    [InlineData("1 kg/1000 L", Dimension.MassConcentration, 1)]
    [InlineData("1 kg/m³", Dimension.MassConcentration, 1)]
    [InlineData("1 g/mL", Dimension.Density, 1)]
    [InlineData("1 kg/L", Dimension.Density, 1)]
    [InlineData("1 mg/kg", Dimension.MassFraction, 1e-6)]
    [InlineData("1 % w/w", Dimension.MassFraction, 0.01)]
    [InlineData("1 % w/v", Dimension.MassConcentration, 10)]
    [InlineData("1 % v/v", Dimension.VolumeFraction, 0.01)]
    [InlineData("1 g/mol", Dimension.MolarMass, 1)]
    [InlineData("1 dS/m", Dimension.Conductivity, 1)]
    [InlineData("1 µS/cm", Dimension.Conductivity, 1e-3)]
    [InlineData("1 S/m", Dimension.Conductivity, 10)]
    [InlineData("1 week", Dimension.Duration, 7)]
    [InlineData("1 days", Dimension.Duration, 1)]
    [InlineData("1 year", Dimension.Duration, 365.25)]
    [InlineData("0 °C", Dimension.Temperature, 0)]
    [InlineData("1 mL/L", Dimension.Dose, 1e-3)]
    public void MetricUnitsFollowTheirPrefixes(string text, Dimension dimension, double baseUnits) =>
        Assert.Equal(baseUnits, Read(text, dimension).Low, Math.Abs(baseUnits) * 1e-14);

    // Fixed points of the two scales: water freezes at 32 °F and boils at 212 °F; both meet at -40.
    [Theory]
    [InlineData("32 °F", 0)]
    [InlineData("212 °F", 100)]
    [InlineData("-40 °F", -40)]
    [InlineData("86 F", 30)]
    public void FahrenheitMeetsTheFixedPoints(string text, double celsius) =>
        Assert.Equal(celsius, Read(text, Dimension.Temperature).Low, 1e-12);

    // 1 °dH = 0.17832 mmol/L and 1 °fH = 0.1 mmol/L of alkaline earths (DIN 38409-6 as commonly quoted; recalled). meq/L is twice that.
    [Theory]
    [InlineData("1 °dH", 2 * 0.17832e-3, 2e-4)]
    [InlineData("1 °fH", 2 * 0.1e-3, 1e-3)]
    public void DegreesOfHardnessAgreeWithThePublishedFigures(string text, double equivalentsPerLitre, double relative) =>
        Assert.Equal(equivalentsPerLitre, Read(text, Dimension.HardnessDegree).Low, equivalentsPerLitre * relative);

    // "1 grain per gallon equals 17.1 mg/L": US water-hardness practice, printed on every softener; the factor itself is NIST SP 811.
    [Theory]
    [InlineData("1 grain/gal")]
    [InlineData("1 grains per gallon")]
    [InlineData("1 gpg")]
    public void GrainsPerGallonCountAsCalciumCarbonate(string text)
    {
        var quantity = Read(text, Dimension.MassConcentration);
        Assert.Equal(0.0171, quantity.Low, 5e-5);
        Assert.Equal("CaCO3", quantity.Basis);
    }

    [Fact]
    public void OneInAThousandServes250LitresFrom250Millilitres()
    {
        // Common practice, no source.
        var dose = Read("1:1000", Dimension.Dose).Dose;
        Assert.Equal(250, (dose * Read("250 L", Dimension.Volume).Volume).Millilitres, 1e-9);
        Assert.Equal(1, (dose * Read("1 m³", Dimension.Volume).Volume).Litres, 1e-12);
        Assert.Equal(Read("1 mL/L", Dimension.Dose).Low, dose.LitresPerLitre, 1e-18);
    }

    [Fact]
    public void OneMillilitrePerLitreIs38MillilitresPerUsGallon()
    {
        // Common practice, no source.
        var dose = Read("1 mL/L", Dimension.Dose).Dose;
        Assert.Equal(3.8, (dose * Read("1 US gal", Dimension.Volume).Volume).Millilitres, 0.05);
        Assert.Equal(dose.LitresPerLitre, Read("3.785411784 mL/US gal", Dimension.Dose).Low, 1e-15);
    }

    [Fact]
    public void OneOuncePerHundredGallonsIs75MilligramsPerLitre()
    {
        // Common practice, no source: 1 oz in 100 US gallons is 75 ppm.
        Assert.Equal(75, Read("1 oz/100 US gal", Dimension.MassConcentration).MassConcentration.MilligramsPerLitre, 0.2);
        Assert.Equal(62.4, Read("1 oz/100 gal (UK)", Dimension.MassConcentration).MassConcentration.MilligramsPerLitre, 0.1);
    }

    [Fact]
    public void NoSpellingStandsForTwoUnits()
    {
        // The tables are dictionaries, which refuse doubles; what is ambiguous must not also be a unit of its own.
        Assert.All(UnitTable.Ambiguous, a => Assert.False(
            UnitTable.BySymbol.ContainsKey(a.Spelling) || UnitTable.ByWord.ContainsKey(a.Spelling), a.Spelling));
        Assert.All(UnitTable.Ambiguous.SelectMany(a => a.Readings), r => Assert.IsType<UnitReading.Known>(UnitParser.Parse(r)));
    }

    [Fact]
    public void EverySpellingReadsBackAsItsUnit() =>
        Assert.All(
            UnitTable.Units.SelectMany(u => (u.Symbols ?? []).Concat(u.Words ?? []).Append(u.Symbol).Select(s => (Spelling: s, u.Symbol))),
            p => Assert.Equal(p.Symbol, Assert.IsType<UnitReading.Known>(UnitParser.Parse(p.Spelling)).Symbol));

    private static Quantity Read(string text, Dimension dimension)
    {
        Assert.True(QuantityReader.TryRead(text, new Due([dimension], ["-"]), out var quantity, out var fault), fault?.Message);
        return quantity;
    }
}

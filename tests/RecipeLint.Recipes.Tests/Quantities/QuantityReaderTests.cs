using System.Globalization;
using CsCheck;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Quantities;

public sealed class QuantityReaderTests
{
    /// <summary>Amounts as they stand on slips of paper: each is told how to write it.</summary>
    [Theory]
    [InlineData("1 1/2 oz", "1.5 oz")]
    [InlineData("24 g.", "'g'")]
    [InlineData("24 \uFF47", "'g'")]
    [InlineData("24 gms", "'g'")]
    [InlineData("5 lt", "'L'")]
    [InlineData("2x12 g", "'24 g'")]
    [InlineData("3 × 0.5 kg", "'1.5 kg'")]
    public void AnAmountWrittenOtherwiseIsToldHowToWriteIt(string text, string told)
    {
        Assert.False(QuantityReader.TryRead(text, Due.Portion, out _, out var fault));
        Assert.Contains(told, fault!.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("24 g", 24)]
    [InlineData("24g", 24)]
    [InlineData("  24   g ", 24)]
    [InlineData("24\u00A0g", 24)]
    [InlineData("24\u202Fg", 24)]
    [InlineData("1e-3 kg", 1)]
    [InlineData("1.5E2 mg", 0.15)]
    [InlineData(".5 g", 0.5)]
    [InlineData("+24 grams", 24)]
    [InlineData("\u221224 g", -24)]
    [InlineData("1\u202F000 g", 1000)]
    [InlineData("1\u00A0234\u00A0567.5 g", 1234567.5)]
    [InlineData("2 LBS", 907.18474)]
    public void MassesAreRead(string text, double grams) => Assert.Equal(grams, Read(text, Due.Mass).Mass.Grams, Math.Abs(grams) * 1e-14);

    [Theory]
    [InlineData("4..30 °C", 4, 30)]
    [InlineData("4 .. 30 °C", 4, 30)]
    [InlineData("4 °C..30 °C", 4, 30)]
    [InlineData("-5..5 °C", -5, 5)]
    [InlineData("20 °C", 20, 20)]
    [InlineData("50 °F..86 °F", 10, 30)]
    [InlineData("50..86 °F", 10, 30)]
    public void TemperatureRangesAreRead(string text, double low, double high)
    {
        var range = Read(text, Due.Temperatures).Temperatures;
        Assert.Equal(low, range.Low.Celsius, 1e-12);
        Assert.Equal(high, range.High.Celsius, 1e-12);
    }

    [Theory]
    [InlineData("150 mg/L ± 10 %", 0.10)]
    [InlineData("150 mg/L +/- 10 %", 0.10)]
    [InlineData("150 mg/L ±10%", 0.10)]
    [InlineData("150 mg/L ± 15 mg/L", 0.10)]
    [InlineData("150 mg/L ± 15", 0.10)]
    [InlineData("150 ± 15 mg/L", 0.10)]
    [InlineData("150 ± 10 % mg/L", 0.10)]
    [InlineData("150 mg/L ± 0.015 g/L", 0.10)]
    [InlineData("150 ppm ± 8 %", 0.08)]
    [InlineData("150 mg/L as P2O5 ± 8 %", 0.08)]
    [InlineData("150 mg/L ± 8 % as P2O5", 0.08)]
    public void TolerancesOfConcentrationsBecomeAShareOfTheValue(string text, double share)
    {
        var quantity = Read(text, Due.Analyte with { AllowTolerance = true, Bases = ["P2O5"] });
        Assert.Equal(150, quantity.MassConcentration.MilligramsPerLitre, 1e-9);
        Assert.Equal(share, quantity.Tolerance!.Value.Relative!.Value, 1e-12);
        Assert.Equal(text.Contains(" as ", StringComparison.Ordinal) ? "P2O5" : null, quantity.Basis);
    }

    [Theory]
    [InlineData("5.8 ± 0.2", 5.8, 0.2)]
    [InlineData("5.8 +/- 0.2", 5.8, 0.2)]
    [InlineData("5.8", 5.8, null)]
    public void TolerancesOfPlainNumbersStayAbsolute(string text, double value, double? half)
    {
        var quantity = Read(text, Due.Ph);
        Assert.Equal(value, quantity.Number);
        Assert.Equal(half, quantity.Tolerance?.Absolute);
    }

    [Theory]
    [InlineData("pH 3.0", 3.0, null)]
    [InlineData("pH 3.0 ± 0.2", 3.0, 0.2)]
    [InlineData("ph3", 3.0, null)]
    public void APhStepNamesItsTarget(string text, double value, double? half)
    {
        var quantity = Read(text, Due.PhStep);
        Assert.Equal(value, quantity.Number);
        Assert.Equal(half, quantity.Tolerance?.Absolute);
    }

    [Theory]
    [InlineData("± 0.5 %", 0.005, null)]
    [InlineData("0.5 %", 0.005, null)]
    [InlineData("± 0.1 mL", null, 1e-4)]
    [InlineData("+/- 0.1 mL", null, 1e-4)]
    public void LoneTolerancesAreRead(string text, double? relative, double? litres)
    {
        Assert.True(QuantityReader.TryReadTolerance(text, Dimension.Volume, out var tolerance, out _));
        Assert.Equal(new Tolerance(relative, litres), tolerance);
    }

    [Fact]
    public void DropsAreCountedAndTeaspoonsCarryTheirUncertainty()
    {
        Assert.Equal(3, Read("3 drops", Due.Portion).Drops);
        var spoon = Read("2 tsp", Due.Portion);
        Assert.Equal(10, spoon.Volume.Millilitres, 1e-12);
        Assert.Equal(0.10, spoon.Tolerance?.Relative);
        Assert.Equal(0.02, Read("2 tsp ± 2 %", Due.Portion).Tolerance!.Value.Relative!.Value, 1e-15);
    }

    [Theory]
    [InlineData("7,5 g", "7.5 g", "75 g", 10)]
    [InlineData("1,000 g", "1 g", "1000 g", 1000)]
    [InlineData("1.000 g", "1 g", "1000 g", 1000)]
    [InlineData("12.500 g", "12.5 g", "12500 g", 1000)]
    [InlineData("1 000 g", "1 g", "1000 g", 1000)]
    [InlineData("0,25 g", "0.25 g", "25 g", 100)]
    [InlineData("12\u202F50 g", "12.50 g", "1250 g", 100)]
    public void ACommaHasTwoReadingsWithAFactorBetweenThem(string text, string decimalText, string groupedText, double factor)
    {
        var fault = Refused(text, Due.Mass, ProblemKind.AmbiguousNumber);
        Assert.Equal([decimalText, groupedText], fault.Suggestions);
        Assert.Equal(factor, fault.Values.Single(v => v.Name == "factor").Value, 1e-9);
        Assert.All(fault.Suggestions, s => Read(s, Due.Mass));
    }

    [Theory]
    [InlineData("1,234.5 g", "1234.5 g")]
    [InlineData("1.234,5 g", "1234.5 g")]
    [InlineData("1,000,000 mg", "1000000 mg")]
    [InlineData("1.000.000 mg", "1000000 mg")]
    [InlineData("1'000 g", "1000 g")]
    public void GroupedDigitsAreNeverJoinedSilently(string text, string repaired) =>
        Assert.Equal([repaired], Refused(text, Due.Mass, ProblemKind.AmbiguousNumber).Suggestions);

    [Theory]
    [InlineData("5 gal", "5 US gal", "5 UK gal", 1.201)]
    [InlineData("5 fl oz", "5 US fl oz", "5 UK fl oz", 1.041)]
    [InlineData("5 gallons", "5 US gal", "5 UK gal", 1.201)]
    public void BareGallonsAndFluidOuncesHaveTwoReadings(string text, string american, string british, double factor)
    {
        var fault = Refused(text, Due.Volume, ProblemKind.AmbiguousUnit);
        Assert.Equal([american, british], fault.Suggestions);
        Assert.Equal(factor, fault.Values.Single().Value, 5e-4);
    }

    [Fact]
    public void ABareGallonInsideAQuotientHasTwoReadings() =>
        Assert.Equal(["4 mL/US gal", "4 mL/UK gal"], Refused("4 mL/gal", Due.Dose, ProblemKind.AmbiguousUnit).Suggestions);

    [Fact]
    public void ConductivityInPpmHasTwoScales()
    {
        // 1400 ppm is 2.8 mS/cm on a meter of 500 ppm per mS/cm and 2.0 on one of 700 (common practice, no source).
        var fault = Refused("1400 ppm", Due.Conductivity, ProblemKind.AmbiguousUnit);
        Assert.Equal(["2.8 mS/cm", "2 mS/cm"], fault.Suggestions);
        Assert.Equal(1.4, fault.Values.Single().Value, 1e-12);
        Assert.Empty(Refused("700..900 ppm", Due.Conductivity, ProblemKind.AmbiguousUnit).Suggestions);
    }

    [Fact]
    public void WhateverIsSuggestedCanBeRead()
    {
        (string Text, Due Due)[] refused =
        [
            ("500 ppm", Due.Portion), ("700 ppm", Due.Conductivity), ("5 gal", Due.Volume), ("7,5 g", Due.Mass), ("1 000 g", Due.Mass), ("4-30 °C", Due.Temperatures),
            ("24", Due.Portion), ("24 ML", Due.Portion), ("24 g or so", Due.Mass), ("½ L", Due.Volume), ("1/2 L", Due.Volume), ("38 %", Due.Strength), ("1 %", Due.Dose),
            ("5 gr", Due.Mass), ("2 tons", Due.Mass), ("4 mL/gal", Due.Dose), ("1 oz/100 gal", Due.Portion), ("0.5", Due.Conductivity), ("6", Due.Duration), ("20", Due.Assay),
        ];
        Assert.All(refused, r =>
        {
            Assert.False(QuantityReader.TryRead(r.Text, r.Due, out _, out var fault), r.Text);
            Assert.NotEmpty(fault.Suggestions);
            Assert.All(fault.Suggestions, s => Read(s, r.Due));
        });
    }

    [Fact]
    public void PpmIsMgPerLitreInThinSolutionsOnly()
    {
        Assert.Equal(50, Read("50 ppm", Due.Analyte).MassConcentration.MilligramsPerLitre, 1e-12);
        Assert.Equal(5e-6, Read("5 ppm", Due.Content).MassFraction.Value, 1e-18);
        Refused("50 ppm", Due.Portion, ProblemKind.AmbiguousUnit);
        Refused("50 ppm", Due.Volume, ProblemKind.WrongDimension);
    }

    [Fact]
    public void ABarePerCentNeedsABasisUnlessOnlyOneIsUsual()
    {
        Assert.Equal(0.99, Read("99 %", Due.Assay).MassFraction.Value, 1e-15);
        Assert.Equal(["38 % w/w", "38 % w/v"], Refused("38 %", Due.Strength, ProblemKind.AmbiguousUnit).Suggestions);
        Assert.Equal(["1 % v/v"], Refused("1 %", Due.Dose, ProblemKind.AmbiguousUnit).Suggestions);
        Assert.Equal(0.01, Read("1 % v/v", Due.Dose).Dose.LitresPerLitre);
    }

    [Theory]
    [InlineData("24", ProblemKind.NumberWithoutUnit, 0, 2)]
    [InlineData("24 foo", ProblemKind.UnknownUnit, 3, 3)]
    [InlineData("24 ML", ProblemKind.UnknownUnit, 3, 2)]
    [InlineData("2 L", ProblemKind.WrongDimension, 0, 3)]
    [InlineData("1:100", ProblemKind.WrongDimension, 0, 5)]
    [InlineData("some", ProblemKind.WrongShape, 0, 4)]
    [InlineData("", ProblemKind.WrongShape, 0, 0)]
    [InlineData("½ g", ProblemKind.WrongShape, 0, 1)]
    [InlineData("1/2 g", ProblemKind.WrongShape, 0, 3)]
    [InlineData("٢٤ g", ProblemKind.WrongShape, 0, 4)]
    [InlineData("1.2.3 g", ProblemKind.WrongShape, 0, 5)]
    [InlineData("4-5 g", ProblemKind.WrongShape, 1, 1)]
    [InlineData("4..5 g", ProblemKind.WrongShape, 0, 6)]
    [InlineData("24 g approx", ProblemKind.WrongShape, 5, 6)]
    [InlineData("24 g ± 2 %", ProblemKind.WrongShape, 5, 5)]
    [InlineData("24 g as CaCO3", ProblemKind.WrongShape, 8, 5)]
    [InlineData("NaN g", ProblemKind.WrongShape, 0, 5)]
    [InlineData("Infinity g", ProblemKind.WrongShape, 0, 10)]
    [InlineData("1e999 g", ProblemKind.ImplausibleAmount, 0, 5)]
    [InlineData("1e-999 g", ProblemKind.ImplausibleAmount, 0, 6)]
    [InlineData("1e308 t", ProblemKind.ImplausibleAmount, 0, 7)]
    [InlineData("1e17 g", ProblemKind.ImplausibleAmount, 0, 6)]
    [InlineData("1e-40 g", ProblemKind.ImplausibleAmount, 0, 7)]
    public void WhatIsNotAMassIsRefusedAtItsPlace(string text, ProblemKind kind, int start, int length)
    {
        var fault = Refused(text, Due.Mass, kind);
        Assert.Equal((start, length), (fault.Start, fault.Length));
    }

    [Theory]
    [InlineData("24", "24 g")]
    [InlineData("24 ML", "24 mL")]
    [InlineData("24 kgs", "24 kg")]
    [InlineData("24 mililitres", "24 mL")]
    [InlineData("½ g", "0.5 g")]
    [InlineData("1½ g", "1.5 g")]
    [InlineData("1/2 L", "0.5 L")]
    [InlineData("24 g approx", "24 g")]
    [InlineData("1 mg/l1", null)]
    public void ARepairIsOfferedWhereOneIsLikely(string text, string? repaired)
    {
        Assert.False(QuantityReader.TryRead(text, Due.Portion, out _, out var fault));
        Assert.Equal(repaired, fault.Suggestions is [var first, ..] ? first : null);
    }

    [Theory]
    [InlineData("4-30 °C", "4..30 °C")]
    [InlineData("4 – 30 °C", "4..30 °C")]
    public void AHyphenIsNoRange(string text, string repaired) =>
        Assert.Equal([repaired], Refused(text, Due.Temperatures, ProblemKind.WrongShape).Suggestions);

    [Fact]
    public void ARangeRunsUpwards() => Refused("30..4 °C", Due.Temperatures, ProblemKind.WrongShape);

    [Theory]
    [InlineData("± 1e308 mL", Dimension.Volume)]
    [InlineData("± 1e17 L", Dimension.Volume)]
    [InlineData("1e-40 g", Dimension.Mass)]
    [InlineData("± 1e308", Dimension.Number)]
    [InlineData("± 1e308 mS/cm", Dimension.Conductivity)]
    public void AToleranceAloneIsBoundedLikeAnAmount(string text, Dimension dimension)
    {
        Assert.False(QuantityReader.TryReadTolerance(text, dimension, out var tolerance, out var fault));
        Assert.Equal((null, ProblemKind.ImplausibleAmount), (tolerance, fault.Kind));
    }

    [Fact]
    public void AToleranceWiderThanTheValueIsImplausible() =>
        Refused("150 mg/L ± 200 %", Due.Analyte with { AllowTolerance = true }, ProblemKind.ImplausibleAmount);

    [Fact]
    public void ABasisThatDoesNotFitIsRefusedWithTheOnesThatDo()
    {
        var due = Due.Hardness with { Bases = ["CaCO3"] };
        Assert.Equal("CaCO3", Read("180 mg/L as CaCO3", due).Basis);
        Assert.Equal(["180 mg/L as CaCO3"], Refused("180 mg/L as caco3", due, ProblemKind.UnknownUnit).Suggestions);
    }

    [Fact]
    public void AMassWhereAVolumeIsDueSaysBoth()
    {
        var fault = Refused("2 oz", Due.Volume, ProblemKind.WrongDimension);
        Assert.Contains("a mass", fault.Message, StringComparison.Ordinal);
        Assert.Contains("a volume", fault.Message, StringComparison.Ordinal);
        Assert.Contains("US fl oz", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheMachineSLanguageChangesNothing()
    {
        // The projects run in invariant mode, where no other culture can be loaded; one made by hand still puts its separators,
        // signs and digits into code that forgets to ask for the invariant one.
        var before = CultureInfo.CurrentCulture;
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        foreign.NumberFormat.NumberDecimalSeparator = ",";
        foreign.NumberFormat.NumberGroupSeparator = ".";
        foreign.NumberFormat.NegativeSign = "\u061C-";
        try
        {
            CultureInfo.CurrentCulture = foreign;
            Assert.Equal(1.5, Read("1.5 MILLILITRES", Due.Volume).Volume.Millilitres, 1e-15);
            Assert.Equal(-5, Read("-5 °C", Due.Temperatures).Temperatures.Low.Celsius);
            Assert.Equal(0.5, Read("0.5e0 g", Due.Mass).Mass.Grams);
            Assert.Contains("'1.4 mS/cm'", Refused("700 ppm", Due.Conductivity, ProblemKind.AmbiguousUnit).Message, StringComparison.Ordinal);
            Assert.Equal(["0.5 g"], Refused("1/2 g", Due.Mass, ProblemKind.WrongShape).Suggestions);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void AnyTextIsReadOrRefusedWithAPlaceInsideIt()
    {
        string[] pieces =
        [
            "1", "0", "24", ".", ",", " ", "..", "±", "+/-", "-", "e", "E9", "%", "g", "mL", "/", "L", "gal", "°C", "as", "CaCO3", ":", "½", "\u00A0",
            "ppm", "w/w", "per", "(", ")", "µ", "drops", "meq", "pH", "'", "\0", "\uD800", "𝟙", "٢",
        ];
        var piece = Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]);
        var any = Gen.OneOf(Gen.String, piece.Array[0, 9].Select(p => string.Concat(p)), piece.Array[0, 9].Select(p => string.Join(' ', p)));
        Due[] dues = [Due.Mass, Due.Portion, Due.Dose, Due.Temperatures, Due.Conductivity, Due.PhStep, Due.Strength, Due.Hardness with { Bases = ["CaCO3"] }];
        Gen.Select(any, Gen.Int[0, dues.Length - 1].Select(i => dues[i])).Sample(
            (text, due) =>
            {
                if (QuantityReader.TryRead(text, due, out var quantity, out var fault))
                {
                    Assert.True(double.IsFinite(quantity.Low) && double.IsFinite(quantity.High) && quantity.Low <= quantity.High);
                    Assert.Contains(quantity.Dimension, due.Accepts);
                    return;
                }

                Assert.True(fault.Start >= 0 && fault.Length >= 0 && fault.Start + fault.Length <= text.Length, $"{fault} in '{text}'");
                Assert.Matches("[.?]$", fault.Message);
                Assert.All(fault.Values, v => Assert.True(double.IsFinite(v.Value)));
            },
            iter: 20_000);
    }

    private static Quantity Read(string text, Due due)
    {
        Assert.True(QuantityReader.TryRead(text, due, out var quantity, out var fault), $"{text}: {fault?.Message}");
        return quantity;
    }

    private static QuantityFault Refused(string text, Due due, ProblemKind kind)
    {
        Assert.False(QuantityReader.TryRead(text, due, out _, out var fault), text);
        Assert.Equal(kind, fault.Kind);
        return fault;
    }
}

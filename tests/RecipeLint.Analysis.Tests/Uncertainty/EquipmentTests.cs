using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;

namespace RecipeLint.Analysis.Tests.Uncertainty;

public sealed class EquipmentTests
{
    // Worked figures of a testing laboratory on ISO 7886-1 table 1 (smtl.co.uk, "Syringe accuracy estimates for ISO 7886-1", 2016).
    [Theory]
    [InlineData("1 mL", "0.2 mL", 0.019)]
    [InlineData("1 mL", "1 mL", 0.05)]
    [InlineData("10 mL", "4 mL", 0.19)]
    [InlineData("10 mL", "10 mL", 0.40)]
    public void ASyringeKeepsISO78861(string size, string expelled, double millilitres) =>
        Assert.Equal(millilitres, EquipmentLimits.VolumeError(MeasureKind.Syringe, Bench.VolumeOf(size), Bench.VolumeOf(expelled)).Millilitres, 9);

    // ASTM E1272-02(2012), table 1, class B: the table kept here (ISO 4788) promises nothing better than that standard asks for.
    [Theory]
    [InlineData(5, 0.10)]
    [InlineData(10, 0.20)]
    [InlineData(25, 0.34)]
    [InlineData(50, 0.50)]
    [InlineData(100, 1.00)]
    [InlineData(250, 2.00)]
    [InlineData(500, 4.00)]
    public void ACylinderIsNoBetterThanASTME1272ClassB(double capacity, double limit)
    {
        var ours = EquipmentLimits.VolumeError(MeasureKind.Cylinder, Volume.FromMillilitres(capacity), Volume.FromMillilitres(capacity / 2)).Millilitres;
        Assert.InRange(ours, limit, 2 * limit);
    }

    // EURACHEM/CITAC QUAM:2012 A1: ± 0.1 mL for a class A flask of 100 mL; ASTM E288: class B within twice that.
    [Fact]
    public void AFlaskOf100MLIsTwiceTheClassAOfQuamA1() =>
        Assert.Equal(2 * 0.1, EquipmentLimits.VolumeError(MeasureKind.Flask, Bench.VolumeOf("100 mL"), Bench.VolumeOf("100 mL")).Millilitres, 9);

    [Fact]
    public void ASizeBetweenTwoPublishedOnesGetsTheLargerLimitAndOneAboveKeepsItsPart()
    {
        Assert.Equal(5, Limit("300 mL"), 9);
        Assert.Equal(50, Limit("5 L"), 9);
        static double Limit(string size) => EquipmentLimits.VolumeError(MeasureKind.Cylinder, Bench.VolumeOf(size), Bench.VolumeOf("1 mL")).Millilitres;
    }

    // OIML R 76-1:2006, table 6, class III: 0.5 e up to 500 e, 1 e up to 2000 e, 1.5 e up to 10 000 e; in service twice that (3.5.2).
    [Theory]
    [InlineData("500 g", 1)]
    [InlineData("501 g", 2)]
    [InlineData("2 kg", 2)]
    [InlineData("2001 g", 3)]
    public void AScaleKeepsClassIIIInService(string load, double steps) =>
        Assert.Equal(steps, EquipmentLimits.ScaleError(Quillmere.MassOf(load), Quillmere.MassOf("1 g")).Grams, 9);

    // USP <41> (as summarised by a balance maker): s is never taken below 0.41 d, so 2 s / m <= 0.10 % asks for 820 d at the least. A scale that
    // repeats perfectly is left with just that: the rounding at tare and at gross.
    [Fact]
    public void APerfectScaleStillHasTheMinimumWeightOfUSP41()
    {
        var own = new Weighing(Quillmere.Scale("s", "1 g", repeatability: "0 g"), Quillmere.MassOf("820 g")).OwnError;
        Assert.Equal(0.41, own.Grams, 2);
        Assert.Equal(820, 2 * Math.Round(own.Grams, 2) / 0.0010, 6);
    }

    // Molybdate for one litre of a thousandfold stock, 0.12 g: about 12 % standard uncertainty on a pocket scale (arithmetic of 0.015 / 0.12,
    // plus the display and the calibration).
    [Fact]
    public void ATinyWeightOnAPocketScaleIsHopeless()
    {
        var weighing = new Weighing(Quillmere.Shop.FindScale("pocket-scale")!, Quillmere.MassOf("0.12 g"));
        Assert.Equal(0.015, weighing.Repeatability.Grams, 9);
        Assert.InRange(weighing.RelativeExpanded!.Value, 2 * 0.125, 2 * 0.14);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.05)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void TheSmallestWeightIsJustGoodEnough(double limit)
    {
        var scale = Quillmere.Shop.FindScale("fine-scale")!;
        var smallest = Weighing.SmallestWithin(scale, limit);
        Assert.True(new Weighing(scale, smallest * 1.000001).RelativeExpanded <= limit * 1.0000011);
        Assert.True(new Weighing(scale, smallest * 0.9).RelativeExpanded > limit);
        Assert.Throws<ArgumentOutOfRangeException>(() => Weighing.SmallestWithin(scale, 0));
    }

    [Fact]
    public void AVesselCountsAgainstTheCapacity()
    {
        var weighing = new Weighing(Quillmere.Shop.FindScale("pocket-scale")!, Quillmere.MassOf("3 g"));
        Assert.Equal(ScaleLoad.Within, weighing.Load(null));
        Assert.Equal(ScaleLoad.OverWithVessel, weighing.Load(Quillmere.MassOf("210 g")));
        Assert.Equal(ScaleLoad.Over, new Weighing(weighing.Scale, Quillmere.MassOf("201 g")).Load(null));
        Assert.Equal(ScaleLoad.Unknown, new Weighing(Quillmere.Scale("s", "1 g"), Quillmere.MassOf("201 g")).Load(null));

        var facts = WeighingFact.Of(Quillmere.Facts.FindStock("trace.stock.json")!);
        Assert.Equal(["potassium-sorbate", "manganese-sulfate-h2o", "zinc-sulfate-7h2o", "copper-sulfate-5h2o", "boric-acid"], facts.Select(f => f.AdditionId));
        Assert.All(facts, f => Assert.Equal(ScaleLoad.OverWithVessel, f.Load));
    }

    [Fact]
    public void StrokesAddTheirCommonErrorAndAverageTheirOwn()
    {
        var four = Pouring.Of(Quillmere.Syringe60, Bench.VolumeOf("240 mL"), 4);
        Assert.Equal(4 * 2.4 / Math.Sqrt(3), four.SharedError.Millilitres, 9);
        Assert.Equal(2 * 1 / Math.Sqrt(12), four.OwnError.Millilitres, 9);
        Assert.Equal(4, Pouring.Of(Quillmere.Syringe60, Bench.VolumeOf("240 mL")).Fillings);
        Assert.Equal(5, Pouring.Of(Quillmere.Syringe60, Bench.VolumeOf("241 mL")).Fillings);
    }

    [Fact]
    public void AStatedToleranceOfASyringeDoesNotShrinkBelowHalfItsSize()
    {
        Assert.Equal(0.04 * 30, Pouring.Of(Quillmere.Syringe60, Bench.VolumeOf("5 mL")).Limit.Millilitres, 9);
        Assert.Equal(0.04 * 45, Pouring.Of(Quillmere.Syringe60, Bench.VolumeOf("45 mL")).Limit.Millilitres, 9);
        var jug = Quillmere.Measure("jug", MeasureKind.Jug, "1 L", tolerance: new Tolerance(0.02, null));
        Assert.Equal(20, Pouring.Of(jug, Bench.VolumeOf("200 mL")).Limit.Millilitres, 9);
    }

    [Theory]
    [InlineData("98-99.5 % (laboratory/technical crystals)", 0.02)]
    [InlineData("98-101 % (20.5-20.9 % B)", 0.02)]
    [InlineData("99 % (54 % Mo)", 0.01)]
    [InlineData("99.5-100.5 %", 0.005)]
    [InlineData("13 % Fe (theory 13.26 %)", null)]
    [InlineData("sold by its label, see calcium-nitrate-fertiliser", null)]
    [InlineData("6-7 % Fe", null)]
    public void ATypicalAssayIsReadOnlyWhereItIsOne(string text, double? half)
    {
        var read = MeasurementErrors.TypicalHalfWidth(text);
        Assert.Equal(half is null, read is null);
        Assert.Equal(half ?? 0, read ?? 0, 12);
    }
}

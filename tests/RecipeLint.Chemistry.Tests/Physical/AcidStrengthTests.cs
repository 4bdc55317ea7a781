using CsCheck;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Physical;

public sealed class AcidStrengthTests
{
    // CRC Handbook, Concentrative Properties of Aqueous Solutions, 20 °C: the printed mol/L of rows in the table.
    [Theory]
    [InlineData("HNO3", 38, 1.2335, 7.439)]
    [InlineData("HNO3", 10, 1.0543, 1.673)]
    [InlineData("H3PO4", 40, 1.2536, 5.117)]
    [InlineData("H2SO4", 98, 1.8361, 18.346)]
    [InlineData("H2SO4", 38, 1.2855, 4.981)]
    [InlineData("HCl", 36, 1.1791, 11.642)]
    [InlineData("CH3COOH", 5, 1.0052, 0.837)]
    [InlineData("KOH", 10, 1.0873, 1.938)]
    [InlineData("NaOH", 40, 1.4299, 14.3)]
    [InlineData("NH3", 24, 0.9102, 12.826)]
    public void PrintedRowsAreGivenBack(string formula, double massPercent, double gramsPerMl, double molPerLitre)
    {
        var reading = AcidStrength.Find(formula)!.AtMassPercent(massPercent);
        Assert.Equal(gramsPerMl, reading.DensityGramsPerMl!.Value, 1e-9);
        Assert.Equal(molPerLitre, reading.MolPerLitre!.Value, 6e-4 * molPerLitre);
        Assert.Empty(reading.EstimateBecause);
    }

    // Between the rows: the cubic through the four CRC rows around, (-a + 9b + 9c - d)/16.
    [Theory]
    [InlineData("HNO3", 23, 1.13413)] // rows 20, 22, 24, 26 %
    [InlineData("H3PO4", 31, 1.18742)] // rows 28, 30, 32, 34 %
    [InlineData("KOH", 45, 1.44453)] // rows 42, 44, 46, 48 %
    public void BetweenRowsTheCurveIsSmooth(string formula, double massPercent, double gramsPerMl) =>
        Assert.Equal(gramsPerMl, AcidStrength.Find(formula)!.AtMassPercent(massPercent).DensityGramsPerMl!.Value, 3e-5);

    // Worked examples: mol in a measured volume, from the densities of Laliberté 2009 at 20 °C; the CRC table used here differs by up to 0.66 % (KOH).
    [Theory]
    [InlineData("HNO3", 38, 20, 0.1487)]
    [InlineData("HNO3", 60, 10, 0.1302)]
    [InlineData("H3PO4", 75, 10, 0.1206)]
    [InlineData("H3PO4", 85, 10, 0.1465)]
    [InlineData("H3PO4", 59, 10, 0.0852)]
    [InlineData("H2SO4", 38, 10, 0.0499)]
    [InlineData("KOH", 45, 10, 0.1166)]
    public void WorkedExamples(string formula, double massPercent, double ml, double mol) =>
        Assert.Equal(mol, AcidStrength.Find(formula)!.AtMassPercent(massPercent).MolPerLitre!.Value * ml / 1000, 0.008 * mol);

    // Laliberté 2009 at 25 °C; at 20 °C it lies up to 0.3 % from the CRC table this starts from (KOH the most).
    [Theory]
    [InlineData("HNO3", 60, 1.3604)]
    [InlineData("H3PO4", 85, 1.6849)]
    [InlineData("H2SO4", 38, 1.2830)]
    [InlineData("HCl", 31.5, 1.1530)]
    [InlineData("KOH", 10, 1.0888)]
    [InlineData("NH3", 24.5, 0.9051)]
    [InlineData("H2O2", 30, 1.1097)]
    public void WarmerIsLighter(string formula, double massPercent, double gramsPerMlAt25)
    {
        var warm = AcidStrength.Find(formula)!.AtMassPercent(massPercent, 25).DensityGramsPerMl!.Value;
        Assert.Equal(gramsPerMlAt25, warm, 0.0033);
        Assert.True(warm < AcidStrength.Find(formula)!.AtMassPercent(massPercent).DensityGramsPerMl);
    }

    // Vinegar says grams of acetic acid per 100 mL at 20 °C (FDA CPG Sec. 525.825): 5 % is 50 g/L and 0.833 mol/L, and 4.97 % by mass.
    [Fact]
    public void VinegarIsReadByVolume()
    {
        var vinegar = AcidStrength.Find("acetic acid")!.AtGramsPerLitre(50);
        Assert.Equal(0.833, vinegar.MolPerLitre!.Value, 0.0005);
        Assert.Equal(4.974, vinegar.MassPercent!.Value, 0.002);
    }

    [Fact]
    public void StrengthFromMolarityIsTheInverse() => Gen.Select(Gen.Int[0, AcidStrength.All.Count - 1], Gen.Double[0.001, 1], Gen.Double[5, 40]).Sample((which, share, t) =>
    {
        var table = AcidStrength.All[which];
        var there = table.AtMassPercent(share * table.MaxMassPercent, t);
        var byMol = table.AtMolPerLitre(there.MolPerLitre!.Value * (1 - 1e-12), t);
        return Math.Abs(byMol.MassPercent!.Value - there.MassPercent!.Value) < 1e-8;
    });

    [Fact]
    public void OutsideTheTableNothingIsGiven()
    {
        var nitric = AcidStrength.Find("nitric acid")!;
        Assert.NotNull(nitric.AtMassPercent(71).NotGivenBecause);
        Assert.NotNull(nitric.AtMassPercent(-1).NotGivenBecause);
        Assert.NotNull(nitric.AtMassPercent(double.NaN).NotGivenBecause);
        Assert.NotNull(nitric.AtMassPercent(10, 60).NotGivenBecause);
        Assert.NotNull(nitric.AtMolPerLitre(30).NotGivenBecause);
        Assert.Null(AcidStrength.Find("perchloric acid"));
        Assert.NotEmpty(AcidStrength.Find("H2SO4")!.AtMassPercent(96, 30).EstimateBecause);
        Assert.NotEmpty(AcidStrength.Find("citric acid")!.AtMassPercent(10, 30).EstimateBecause);
        Assert.Equal(Water.DensityGramsPerMl(20), nitric.AtMassPercent(0).DensityGramsPerMl!.Value, 1e-12);
    }
}

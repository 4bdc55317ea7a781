using System.Text;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>Physical properties on grids of temperature and strength, with what is said where they are an estimate or not given.</summary>
public sealed class PhysicalReadingTests
{
    private static readonly double[] Celsius = [-0.01, 0, 5, 10, 20, 25, 40, 45, 45.01, 60, 100, 100.01, double.NaN];

    [Fact]
    public void WaterAndOsmosisAreSo()
    {
        var text = new StringBuilder("# °C: g/mL and mL/mol of water; MPa of water activities 1, 0.999, 0.98, 0.8\n");
        foreach (var t in Celsius)
        {
            var inRange = t is >= 0 and <= 100;
            if (!inRange) Assert.Throws<ArgumentOutOfRangeException>(() => Water.DensityGramsPerMl(t));
            text.Append($"{Hold.Number(t)}: ").Append(inRange ? $"{Hold.Number(Water.DensityGramsPerMl(t))} {Hold.Number(Water.MolarVolumeMl(t))}" : "none");
            foreach (var a in (double[])[1, 0.999, 0.98, 0.8]) text.Append($" {Hold.Number(Osmosis.PotentialMPa(a, t))}");
            text.Append('\n');
        }

        text.Append("# water activity: freezing point, °C\n");
        foreach (var a in (double[])[1.01, 1, 0.9999, 0.999, 0.99, 0.97, 0.95, 0.9, 0.85, 0.83, 0.825, 0.823, 0.82, 0.8, 0.5, 0, -1, double.NaN])
            text.Append($"{Hold.Number(a)}: {Hold.Number(Osmosis.FreezingPointC(a))}\n");
        Hold.As("water.txt", text);
    }

    [Fact]
    public void HydrolysisIsSo()
    {
        var text = new StringBuilder("# pH, °C: days of half of the pyrophosphate; share of it and of sulfamate that has turned after 30 days\n");
        foreach (var ph in (double[])[-1, 0, 1, 2.3, 4, 5.4, 7, 10, 12])
        {
            foreach (var t in (double[])[5, 25, 50])
            {
                text.Append($"{Hold.Number(ph)}, {Hold.Number(t)}: {Hold.Number(PyrophosphateHydrolysis.HalfLifeDays(ph, t))} ");
                text.Append($"{Hold.Number(PyrophosphateHydrolysis.ShareTurned(ph, t, 30))} {Hold.Number(SulfamateHydrolysis.ShareTurned(ph, t, 30))}\n");
            }
        }

        Hold.As("hydrolysis.txt", text);
    }

    /// <summary>The table at its points, half way between two, before its first and beyond its last; nothing for other acids.</summary>
    [Theory]
    [InlineData("HCl", 1, 45.61)]
    [InlineData("HCl", 0.5, 45.61)]
    [InlineData("HCl", 1.8875, (45.61 + 19.87) / 2)]
    [InlineData("HCl", 37, 2.167)]
    [InlineData("HCl", 1000, 2.167)]
    [InlineData("HNO3", 0, 33.28)]
    [InlineData("HNO3", 0.25, 33.28 - ((33.28 - 19.73) / 4))]
    [InlineData("HNO3", 18.5, 0.665)]
    [InlineData("CH3COOH", 10.1755, (1.540 + 1.393) / 2)]
    [InlineData("H2SO4", 0, 74.7)]
    [InlineData("H2SO4", 1.798, 37.35)]
    [InlineData("H3PO4", 1.798, 6.0)]
    [InlineData("C6H8O7", 1, null)]
    public void AnAcidStillGivesSoMuch(string acid, double water, double? kilojoules)
    {
        var left = HeatOfDilution.Left(FormulaParser.Parse(acid), water);
        Assert.Equal(kilojoules is null, left is null);
        Assert.Equal(kilojoules ?? 0, left ?? 0, 1e-9);
    }

    [Fact]
    public void AcidsWarmSo()
    {
        var text = new StringBuilder("# acid: K by which the hottest mixture with water is warmer, for shares by mass\n");
        foreach (var acid in (string[])["H2SO4", "HNO3", "HCl", "H3PO4", "CH3COOH", "C6H8O7"])
        {
            text.Append(acid).Append(':');
            foreach (var share in (double[])[0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98, 1])
                text.Append($" {share}: {Hold.Number(HeatOfDilution.WarmsBy(FormulaParser.Parse(acid), share))}");
            text.Append('\n');
        }

        Hold.As("acid-heat.txt", text);
    }

    [Fact]
    public void HeatsOfSolutionAreSo()
    {
        var text = new StringBuilder();
        foreach (var heat in HeatOfSolution.All)
        {
            var batch = BatchTemperature.AfterDissolving([new DissolvedMass(heat.Formula, 150)], 1000, 18);
            text.Append($"{heat.Formula}: {Hold.Number(heat.GramsPerMol)} g/mol, {Hold.Number(heat.KilojoulesPerMol)} kJ/mol, {heat.CrystalWater} H2O");
            text.Append($"{(heat.Recalled ? ", recalled" : "")}; ").Append(Said(batch)).Append('\n');
        }

        text.Append(Said(BatchTemperature.AfterDissolving([new("KNO3", 100), new("NH4NO3", 100), new("urea", 5)], 1000, 20))).Append('\n');
        foreach (var (grams, water, celsius) in (ReadOnlySpan<(double, double, double)>)
            [(0, 1000, 0), (100, 1000, 100), (100, 1000, -0.1), (100, 1000, 100.1), (100, 0, 20), (100, double.PositiveInfinity, 20),
            (double.PositiveInfinity, 1000, 20), (-1, 1000, 20), (202.2, 1000, 20), (202.3, 1000, 20), (1e308, 1e-3, 20), (300, 1000, 5)])
        {
            text.Append($"{Hold.Number(grams)} g KNO3, {Hold.Number(water)} g, {Hold.Number(celsius)} °C: ");
            text.Append(Said(BatchTemperature.AfterDissolving([new("KNO3", grams)], water, celsius))).Append('\n');
        }

        Hold.As("heats.txt", text);
    }

    [Theory]
    [InlineData("Ca(NO3)2·4H2O", true)]
    [InlineData("Ca(NO3)2 * 4H2O", true)]
    [InlineData("Ca(NO3)2•4H2O", true)]
    [InlineData("ca(no3)2.4h2o", false)]
    [InlineData("Ca(NO3)2.5H2O", false)]
    public void AHeatIsFoundBySpellings(string formula, bool found) => Assert.Equal(found, HeatOfSolution.Find(formula) is not null);

    [Fact]
    public void AcidStrengthsAreSo()
    {
        var text = new StringBuilder("# °C, mass per cent: g/mL, mol/L, g/L\n");
        foreach (var table in AcidStrength.All)
        {
            text.Append($"\n{table.Name} {table.Formula}, {Hold.Number(table.GramsPerMol)} g/mol, up to {Hold.Number(table.MaxMassPercent)} %\n");
            foreach (var t in (double[])[0, 20, 30, 45])
            {
                foreach (var share in (double[])[0, 0.03, 0.5, 0.87, 1])
                {
                    var reading = table.AtMassPercent(share * table.MaxMassPercent, t);
                    text.Append($"{t}, {Hold.Number(reading.MassPercent)}: {Hold.Number(reading.DensityGramsPerMl)} ");
                    text.Append($"{Hold.Number(reading.MolPerLitre)} {Hold.Number(reading.GramsPerLitre)} ");
                    text.Append(string.Join("; ", reading.EstimateBecause)).Append('\n');
                }
            }
        }

        Hold.As("acids.txt", text);
    }

    private static string Said(BatchTemperature batch) => Hold.Line(
        ("by", batch.ChangeKelvin), ("to", batch.EndTemperatureC), ("kJ", batch.HeatTakenKilojoules),
        ("because", string.Join("; ", batch.EstimateBecause)), ("not given:", batch.NotGivenBecause));
}

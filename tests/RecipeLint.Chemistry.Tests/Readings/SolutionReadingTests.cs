using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Physical;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>Density, volume and conductivity of the solutions of solutions.list, mol per kg of water by species, at several temperatures.</summary>
public sealed class SolutionReadingTests
{
    private static readonly Dictionary<string, double> Others = new() { ["Dye-"] = 400, ["Sugar"] = 342, ["Nought"] = 0, ["Odd+2"] = double.NaN };

    [Fact]
    public void EverySolutionIsSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("solutions.list"))
        {
            var molality = Molality(row);
            text.Append($"\n[{row}]\n");
            foreach (var t in (double[])[0, 10, 25, 45, 60])
            {
                var density = SolutionDensity.Of(molality, t, Others);
                text.Append($"{t} °C: {Hold.Number(density.GramsPerMl)} g/mL");
                if (density.State is { } s)
                {
                    text.Append($", {Hold.Number(s.LitresPerKgWater)} L/kg, I {Hold.Number(s.IonicStrengthMolPerKg)}, ");
                    text.Append($"dissolved {Hold.Number(s.DissolvedMassFraction)}, unmeasured {string.Join(' ', density.SpeciesWithoutVolume)}");
                }

                text.Append($"; {string.Join("; ", density.EstimateBecause)} {density.NotGivenBecause}\n");
                var conducts = SolutionConductivity.Of(molality, t);
                text.Append($"  {Hold.Number(conducts.MilliSiemensPerCm)} mS/cm, I {Hold.Number(conducts.IonicStrengthMolPerKg)}; ");
                text.Append($"{string.Join("; ", conducts.EstimateBecause)} {conducts.NotGivenBecause}\n");
            }
        }

        Hold.As("solutions.txt", text);
    }

    /// <summary>A litre holds what a kilogram of water and its solutes fill, and the other way round.</summary>
    [Fact]
    public void LitresAndKilogramsAreSo()
    {
        var text = new StringBuilder();
        foreach (var row in Hold.List("solutions.list"))
        {
            var amounts = Molality(row);
            text.Append($"[{row}]");
            foreach (var t in (double[])[10, 60])
            {
                var (litres, kilograms) = (SolutionDensity.ToMolarity(amounts, t, Others), SolutionDensity.ToMolality(amounts, t, Others));
                text.Append($" {Hold.Number(litres.Amounts?.Values.First())}{litres.NotGivenBecause}");
                text.Append($" {Hold.Number(kilograms.Amounts?.Values.First())}{kilograms.NotGivenBecause};");
            }

            text.Append('\n');
        }

        Hold.As("litres.txt", text);
    }

    [Fact]
    public void AnAmountIsDueForEverySpecies()
    {
        Assert.Equal("molalities", Assert.Throws<ArgumentException>(() => SolutionVolume.For(["K+", "Cl-"]).Evaluate([1], 20)).ParamName);
        Assert.Equal("molarities", Assert.Throws<ArgumentException>(
            () => SolutionVolume.For(["K+", "Cl-"]).KilogramsWaterPerLitre([1], 20)).ParamName);
        Assert.Equal("molalities", Assert.Throws<ArgumentException>(() => SolutionConductivity.For(["K+", "Cl-"]).Evaluate([1], 20)).ParamName);
        Assert.StartsWith("One molality for each species is needed.", Assert.Throws<ArgumentException>(
            () => SolutionConductivity.For(["K+", "Cl-"]).Evaluate([1], 20)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => SolutionVolume.For(null!));
        Assert.Throws<ArgumentNullException>(() => SolutionConductivity.Of(null!, 25));
        Assert.Throws<ArgumentNullException>(() => SolutionDensity.Of(null!, 25));
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(100.01)]
    [InlineData(double.NaN)]
    public void OutsideWaterNothingIsGiven(double celsius)
    {
        var volume = SolutionVolume.For(["K+", "Cl-"]);
        Assert.Equal(default, volume.Evaluate([1, 1], celsius));
        Assert.Null(volume.KilogramsWaterPerLitre([1, 1], celsius));
        Assert.Equal((0, 0, false), (default(VolumeState).DensityGramsPerMl, default(VolumeState).DissolvedMassFraction, default(VolumeState).IsGiven));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AnAmountThatIsNoneGivesNothing(double amount)
    {
        Assert.False(SolutionVolume.For(["K+", "Cl-"]).Evaluate([1, amount], 20).IsGiven);
        Assert.Null(SolutionVolume.For(["K+", "Cl-"]).KilogramsWaterPerLitre([1, amount], 20));
        Assert.Equal("the amounts are not those of a solution", SolutionConductivity.For(["K+", "Cl-"]).Evaluate([1, amount], 20).NotGivenBecause);
        var density = SolutionDensity.Of(new Dictionary<string, double> { ["K+"] = amount }, 20);
        Assert.Equal((null, "the amount of K+ is not a number of moles"), (density.GramsPerMl, density.NotGivenBecause));
        Assert.Equal(
            "the amount of K+ is not a number of moles", SolutionDensity.ToMolality(new Dictionary<string, double> { ["K+"] = amount }, 20).NotGivenBecause);
    }

    /// <summary>The solvent counts as nothing wherever it stands, also with an amount that would be none.</summary>
    [Fact]
    public void WaterIsTheSolvent() => Assert.Equal(
        SolutionVolume.For(["K+", "Cl-"]).Evaluate([1, 1], 20), SolutionVolume.For(["K+", "H2O", "Cl-"]).Evaluate([1, double.NaN, 1], 20));

    [Theory]
    [InlineData("K+", 1)]
    [InlineData("SO4-2", -2)]
    [InlineData("Fe(EDTA)-", -1)]
    [InlineData("H2(EDTA)-2", -2)]
    [InlineData("Mo7O24-6", -6)]
    [InlineData("X+12", 12)]
    [InlineData("X+123", 0)]
    [InlineData("CaSO4", 0)]
    [InlineData("Urea", 0)]
    [InlineData("24", 0)]
    [InlineData("+", 1)]
    [InlineData("", 0)]
    public void TheChargeStandsAtTheEnd(string name, int charge) => Assert.Equal(charge, SpeciesName.Charge(name));

    private static Dictionary<string, double> Molality(string row) => row.Split(", ").Select(p => p.Split(' '))
        .ToDictionary(p => p[0], p => double.Parse(p[1], CultureInfo.InvariantCulture));
}

namespace RecipeLint.Chemistry.Physical;

/// <summary>Liquid water at 1 atm. Density after G. S. Kell, J. Chem. Eng. Data 20 (1975) 97.</summary>
public static class Water
{
    /// <summary>Coldest and warmest temperature of the density equation, °C.</summary>
    public const double MinTemperatureC = 0, MaxTemperatureC = 100;

    /// <summary>Molar mass in g/mol.</summary>
    public static double GramsPerMol => PhysicalConstants.WaterGramsPerMol;

    /// <summary>Density in g/mL at <paramref name="temperatureC"/>, 0 to 100 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 °C, or not a number.</exception>
    public static double DensityGramsPerMl(double temperatureC)
    {
        if (!InRange(temperatureC))
            throw new ArgumentOutOfRangeException(
                nameof(temperatureC), temperatureC, "The density of water is known here from 0 to 100 °C.");
        return Density(temperatureC);
    }

    /// <summary>Molar volume in mL/mol at <paramref name="temperatureC"/>, 0 to 100 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 °C, or not a number.</exception>
    public static double MolarVolumeMl(double temperatureC) => GramsPerMol / DensityGramsPerMl(temperatureC);

    internal static bool InRange(double temperatureC) => temperatureC is >= MinTemperatureC and <= MaxTemperatureC;

    internal static double Density(double t)
    {
        ReadOnlySpan<double> c = PhysicalConstants.WaterDensity;
        var kgPerM3 = (((((((((c[5] * t) + c[4]) * t) + c[3]) * t) + c[2]) * t) + c[1]) * t) + c[0];
        return kgPerM3 / (1 + (PhysicalConstants.WaterDensityDivisor * t)) / 1000;
    }
}

namespace RecipeLint.Chemistry.Physical;

/// <summary>Osmotic quantities of a solution from its water activity.</summary>
public static class Osmosis
{
    // CODATA 2018, exact since the 2019 revision of the SI.
    private const double GasConstantJPerMolK = 8.31446261815324;

    /// <summary>
    /// Osmotic pressure in MPa, −(RT/V)·ln a, with V the molar volume of pure water at that temperature.
    /// Zero for pure water, positive for a solution.
    /// </summary>
    /// <param name="waterActivity">Above 0, at most 1.</param>
    /// <param name="temperatureC">0 to 100 °C.</param>
    /// <returns>Null when an argument lies outside its range: some activity models print activities above 1 in very strong solutions.</returns>
    public static double? PressureMPa(double waterActivity, double temperatureC) =>
        waterActivity is > 0 and <= 1 && Water.InRange(temperatureC)
            ? -GasConstantJPerMolK * (temperatureC + 273.15) / Water.MolarVolumeMl(temperatureC) * Math.Log(waterActivity) + 0.0
            : null;

    /// <summary>Osmotic potential in MPa: the osmotic pressure with its sign reversed, at most zero.</summary>
    /// <inheritdoc cref="PressureMPa"/>
    public static double? PotentialMPa(double waterActivity, double temperatureC) => 0.0 - PressureMPa(waterActivity, temperatureC);
}

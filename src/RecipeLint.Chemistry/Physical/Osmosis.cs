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
    /// <returns>Null when an argument lies outside its range: some activity models print activities above 1 in very strong
    /// solutions.</returns>
    public static double? PressureMPa(double waterActivity, double temperatureC) =>
        waterActivity is > 0 and <= 1 && Water.InRange(temperatureC)
            ? -GasConstantJPerMolK * (temperatureC + 273.15) / Water.MolarVolumeMl(temperatureC) * Math.Log(waterActivity) + 0.0
            : null;

    /// <summary>
    /// Temperature in °C at which ice and a solution are in equilibrium: ln a = -(H0 - c T0)/R (1/T - 1/T0) - c/R ln(T0/T), with the heat
    /// of fusion H0 of ice at T0 = 273.15 K and the difference c of the heat capacities of water and ice.
    /// </summary>
    /// <param name="waterActivity">At about 0 °C, above 0 and at most 1; it changes little down to the freezing point.</param>
    /// <returns>At most zero; null when the activity lies outside its range or ice would form only below -20 °C, where the activities of 0
    /// °C say nothing.</returns>
    public static double? FreezingPointC(double waterActivity)
    {
        const double lowest = -20;
        if (waterActivity is not (> 0 and <= 1) || LogOfIce(lowest) > Math.Log(waterActivity)) return null;
        double low = lowest, high = 0;
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (LogOfIce(middle) < Math.Log(waterActivity)) low = middle; else high = middle;
        }
        return high;
    }

    // CRC Handbook of Chemistry and Physics: 6.01 kJ/mol; 76.0 and 37.9 J/(mol K) for water and ice at 0 °C (recalled).
    private const double FusionJPerMol = 6010, HeatCapacityJPerMolK = 38.1, IcePointK = 273.15;

    /// <summary>ln of the activity of water that is in equilibrium with ice at a temperature in °C.</summary>
    private static double LogOfIce(double celsius)
    {
        var kelvin = celsius + IcePointK;
        return -(FusionJPerMol - HeatCapacityJPerMolK * IcePointK) / GasConstantJPerMolK * (1 / kelvin - 1 / IcePointK)
            - HeatCapacityJPerMolK / GasConstantJPerMolK * Math.Log(IcePointK / kelvin);
    }

    /// <summary>Osmotic potential in MPa: the osmotic pressure with its sign reversed, at most zero.</summary>
    /// <inheritdoc cref="PressureMPa"/>
    public static double? PotentialMPa(double waterActivity, double temperatureC) => 0.0 - PressureMPa(waterActivity, temperatureC);
}

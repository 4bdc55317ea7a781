namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Carbon dioxide as a gas that is not quite ideal.</summary>
internal static class CarbonDioxideGas
{
    // CODATA 2018, R in cm3 atm/(mol K).
    private const double GasConstant = 82.05737;

    private const double ReferenceKelvin = 298.15;

    /// <summary>
    /// ln of the fugacity in atm: ln p + B p/(R T), the second virial coefficient B = -127 - 288 x - 118 x² cm3/mol, x = 298.15 K/T - 1
    /// (CRC Handbook of Chemistry and Physics, virial coefficients of selected gases, recalled): 0.7 % less than the pressure at 0 °C and
    /// 1 atm, nothing to speak of in air.
    /// </summary>
    /// <param name="atm">Partial pressure, above 0 and at most 10 atm.</param>
    /// <param name="kelvin">273.15 to 318.15 K.</param>
    public static double LnFugacity(double atm, double kelvin)
    {
        var x = (ReferenceKelvin / kelvin) - 1;
        var virial = -127 - (288 * x) - (118 * x * x);
        return Math.Log(atm) + (virial * atm / (GasConstant * kelvin));
    }
}

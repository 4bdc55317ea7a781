namespace RecipeLint.Chemistry.Physical;

/// <summary>
/// How fast sulfamate takes up water and turns to ammonium and sulfate: it does so as the acid only, so not at all where the pH is near
/// neutral, and slowly in the cold. A registration dossier (read) gives 4.58e-5 per hour at pH 2.5 and 50 °C, of first order in hydrogen
/// ions, and calls it nothing from pH 4 on and below 60 °C; with the acidity constant of sulfamic acid that is the rate of the acid itself.
/// The heat of activation is that of S. H. Maron and A. R. Berens, J. Am. Chem. Soc. 72 (1950) 3571 (its opening read, the figure of 30.5
/// kcal/mol recalled). An estimate to a factor of three.
/// </summary>
public static class SulfamateHydrolysis
{
    private const double PerHourMeasured = 4.58e-5, MeasuredPh = 2.5, MeasuredCelsius = 50;

    /// <summary>Acidity constant of sulfamic acid as in the constants (CRC Handbook, recalled); hardly changed by temperature.</summary>
    private const double AcidPk = 1.0;

    private const double ActivationJoulesPerMole = 127_600, GasConstant = 8.314462618, Kelvin = 273.15, HoursPerDay = 24;

    /// <summary>Share, 0 to 1, that has turned after so many days.</summary>
    /// <param name="ph">Any.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="days">0 or more.</param>
    public static double ShareTurned(double ph, double celsius, double days)
    {
        var warmth = ActivationJoulesPerMole / GasConstant * ((1 / (MeasuredCelsius + Kelvin)) - (1 / (celsius + Kelvin)));
        var perHour = PerHourMeasured * Acid(ph) / Acid(MeasuredPh) * Math.Exp(warmth);
        return 1 - Math.Exp(-perHour * HoursPerDay * days);
    }

    private static double Acid(double ph) => 1 / (1 + Math.Pow(10, ph - AcidPk));
}

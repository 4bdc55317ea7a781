namespace RecipeLint.Chemistry.Physical;

/// <summary>
/// How fast condensed phosphate takes up water and turns to orthophosphate: slowly near neutral, in weeks where it is sour. Half-lives of
/// tripolyphosphate in a solution of ammonium polyphosphate, which is taken for pyrophosphate too: 34 days at pH 2.3 and 174 at pH 5.4,
/// both at 25 °C, 12.7 kJ/mol of activation (T. M. McBeath, E. Lombi, M. J. McLaughlin and E. K. Bünemann, J. Plant Nutr. Soil Sci. 170
/// (2007) 387, abstract read). An estimate to a factor of three; enzymes of growing things are faster by far.
/// </summary>
public static class PyrophosphateHydrolysis
{
    private const double SourPh = 2.3, DaysWhereSour = 34, MilderPh = 5.4, DaysWhereMilder = 174, MeasuredCelsius = 25;

    private const double ActivationJoulesPerMole = 12_700, GasConstant = 8.314462618, Kelvin = 273.15;

    /// <summary>pH beyond which the straight line through the two measured points is not carried.</summary>
    private const double LowestPh = 1, HighestPh = 10;

    /// <summary>Days after which half of it is left; outside the measured pH by the straight line of its logarithm.</summary>
    /// <param name="ph">Any; held within 1 to 10.</param>
    /// <param name="celsius">Temperature, °C.</param>
    public static double HalfLifeDays(double ph, double celsius)
    {
        var perPh = Math.Log(DaysWhereMilder / DaysWhereSour) / (MilderPh - SourPh);
        var warmth = ActivationJoulesPerMole / GasConstant * ((1 / (celsius + Kelvin)) - (1 / (MeasuredCelsius + Kelvin)));
        return DaysWhereSour * Math.Exp((perPh * (Math.Clamp(ph, LowestPh, HighestPh) - SourPh)) + warmth);
    }

    /// <summary>Share, 0 to 1, that has turned after so many days.</summary>
    public static double ShareTurned(double ph, double celsius, double days) => 1 - Math.Pow(2, -days / HalfLifeDays(ph, celsius));
}

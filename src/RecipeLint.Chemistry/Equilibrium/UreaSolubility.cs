namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// How much urea water holds. Urea is no component of the constants, so nothing follows it out of solution; past this the model says that
/// it does not. Urea and ammonium nitrate hold each other: 44 to 45 % of the nitrate with 35 % of urea are clear down to -2 °C in a fifth
/// of their weight of water (Fertilizer Manual, UNIDO and IFDC 1998, as quoted in open pages), and solutions of both at 50 °C hold one and
/// a half times to nearly twice what either does alone (Tudorovskaya &amp; Margolis 1966, as collected in the IUPAC-NIST Solubility Data
/// Series 66). Between the two a straight line that stays below every measured point.
/// </summary>
public static class UreaSolubility
{
    /// <summary>How urea is called among the inert solutes.</summary>
    public const string Name = "urea";

    private const double GramsPerMole = 60.056;

    /// <summary>
    /// What a mole of one per mole of water adds to the solubility of the other, as a share of it: at 0 °C so that the solution of 45 and
    /// 35 % is just saturated there; at 50 °C 0.8 to 1.3 were measured of the nitrate and 1.0 to 1.8 of urea.
    /// </summary>
    private const double NitrateAtZero = 1.75, NitratePerKelvin = -0.027, UreaAtZero = 3.18, UreaPerKelvin = -0.05;

    // 67, 85, 108, 134 and 167 g per 100 g of water at 0, 10, 20, 30 and 40 °C: handbook tables (recalled).
    private static readonly double[] _gramsPer100Grams = [67, 85, 108, 134, 167];

    /// <summary>mol per kg of water, between the tabulated temperatures by a straight line, beyond 40 °C by the last of them.</summary>
    public static double MolPerKg(double celsius)
    {
        var place = Math.Clamp((int)(celsius / 10), 0, _gramsPer100Grams.Length - 2);
        double low = _gramsPer100Grams[place], high = _gramsPer100Grams[place + 1];
        return (low + ((high - low) * ((celsius / 10) - place))) * 10 / GramsPerMole;
    }

    /// <summary>mol per kg of water beside ammonium nitrate.</summary>
    /// <param name="celsius">0 to 45 °C.</param>
    /// <param name="totals">What else is dissolved, mol per kg of water.</param>
    public static double MolPerKg(double celsius, ComponentTotals totals) =>
        MolPerKg(celsius)
        * (1 + (Math.Min(totals[Component.Ammonium], totals[Component.Nitrate])
            * (UreaAtZero + (UreaPerKelvin * celsius)) / Problem.MolWater));

    /// <summary>Whether a solution holds more urea than water does beside what else is in it.</summary>
    public static bool IsPassed(Equilibrium state, ComponentTotals totals) => state.Molality(Name) > MolPerKg(state.Celsius, totals);

    /// <summary>By what share more ammonium nitrate dissolves beside so much urea (mol per kg of water).</summary>
    internal static double NitrateHeldByUrea(double ureaMolPerKg, double celsius) =>
        ureaMolPerKg * (NitrateAtZero + (NitratePerKelvin * celsius)) / Problem.MolWater;
}

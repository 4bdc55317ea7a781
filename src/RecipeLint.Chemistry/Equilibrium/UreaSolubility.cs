namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// How much urea pure water holds. Urea is no component of the constants, so nothing follows it out of solution; past this the model says
/// that it does not. With ammonium nitrate more stays dissolved, which is why it is a doubt and no verdict.
/// </summary>
public static class UreaSolubility
{
    /// <summary>How urea is called among the inert solutes.</summary>
    public const string Name = "urea";

    private const double GramsPerMole = 60.056;

    // 67, 85, 108, 134 and 167 g per 100 g of water at 0, 10, 20, 30 and 40 °C: handbook tables (recalled).
    private static readonly double[] _gramsPer100Grams = [67, 85, 108, 134, 167];

    /// <summary>mol per kg of water, between the tabulated temperatures by a straight line, beyond 40 °C by the last of them.</summary>
    public static double MolPerKg(double celsius)
    {
        var place = Math.Clamp((int)(celsius / 10), 0, _gramsPer100Grams.Length - 2);
        double low = _gramsPer100Grams[place], high = _gramsPer100Grams[place + 1];
        return (low + ((high - low) * ((celsius / 10) - place))) * 10 / GramsPerMole;
    }
}

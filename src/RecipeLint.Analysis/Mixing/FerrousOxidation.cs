namespace RecipeLint.Analysis.Mixing;

/// <summary>How fast the air turns iron(II) that nothing protects into rust.</summary>
public static class FerrousOxidation
{
    /// <summary>
    /// How long a vessel stands until the next thing goes in, minutes: weighing and dissolving it (common practice, no source).
    /// </summary>
    public const double StandingMinutes = 30;

    /// <summary>g of ferric hydroxide from one mol of iron.</summary>
    public const double RustGramsPerMole = 106.87;

    /// <summary>k of the rate law, L² mol⁻² atm⁻¹ min⁻¹ near 20 °C.</summary>
    public const double Rate = 8.0e13;

    /// <summary>Oxygen in air, atm.</summary>
    public const double OxygenAtm = 0.21;

    /// <summary>-log10 of the ion product of water at 20 °C.</summary>
    public const double WaterProduct = 14.17;

    /// <summary>
    /// Share of iron(II) oxidised, 0 to 1. -d[Fe(II)]/dt = k [Fe(II)] p(O2) [OH-]², k = 8.0e13 L² mol⁻² atm⁻¹ min⁻¹ near 20 °C: W. Stumm
    /// and G. F. Lee, Ind. Eng. Chem. 53 (1961) 143, and P. C. Singer and W. Stumm, Science 167 (1970) 1121; recalled. Holds above about
    /// pH 5; below it the share is next to nothing either way.
    /// </summary>
    /// <param name="ph">Of the solution in contact with the air.</param>
    /// <param name="minutes">At or above 0.</param>
    public static double Share(double ph, double minutes) =>
        1 - Math.Exp(-Rate * OxygenAtm * Math.Pow(10, 2 * (ph - WaterProduct)) * minutes);
}

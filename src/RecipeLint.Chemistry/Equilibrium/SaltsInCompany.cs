namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Where mixtures were measured to hold much more of a salt than its product in pure water allows: by how much the product of totals may
/// be past that of the pure solution. Every figure is kept on the low side of what was measured, and nothing is said where nothing was.
/// </summary>
internal static class SaltsInCompany
{
    private const string MonoammoniumPhosphate = "MAP", AmmoniumNitrate = "Ammonium nitrate";

    /// <summary>
    /// Beside hydrogen phosphate ammonium dihydrogen phosphate dissolves as if only the fourth power of the share that is dihydrogen
    /// phosphate counted: of the product at saturation in NH4H2PO4-(NH4)2HPO4-H2O one power is that share itself, and 3.0 to 3.7 more were
    /// measured at 0 °C (Kaganskiy &amp; Babenko 1971) and 3.2 at 40 °C (Voogd), both as collected in the IUPAC-NIST Solubility Data
    /// Series 66.
    /// </summary>
    private const double PowersOfDihydrogenPhosphate = 3;

    /// <summary>log10 by which the product of totals of a saturated mixture lies above that of the pure solution; 0 where nothing is
    /// known to hold more.</summary>
    /// <param name="solid">A soluble salt.</param>
    /// <param name="input">The mixture.</param>
    /// <param name="clear">Its equilibrium before anything falls out.</param>
    public static double LogHeld(Solid solid, SolutionInput input, Equilibrium clear) => solid.Name switch
    {
        MonoammoniumPhosphate => -PowersOfDihydrogenPhosphate * clear.LogProtonated[Components.Find(Component.Phosphate)]
            * AmmoniumShare(input.Totals),
        AmmoniumNitrate => 2 * Math.Log10(1 + UreaSolubility.NitrateHeldByUrea(UreaIn(input), input.Celsius)),
        _ => 0,
    };

    /// <summary>Potassium and sodium were not measured: they hold nothing.</summary>
    private static double AmmoniumShare(ComponentTotals totals)
    {
        var ammonium = totals[Component.Ammonium];
        return ammonium / (ammonium + totals[Component.Potassium] + totals[Component.Sodium]);
    }

    private static double UreaIn(SolutionInput input)
    {
        double sum = 0;
        foreach (var ion in input.InertIons) if (ion.Name == UreaSolubility.Name) sum += ion.MolPerKg;
        return sum;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Where mixtures were measured to hold much more of a salt than its product in pure water allows: by how much the product of totals may
/// be past that of the pure solution. Every figure is kept on the low side of what was measured, and nothing is said where nothing was.
/// </summary>
internal static class SaltsInCompany
{
    private const string MonoammoniumPhosphate = "MAP", MonopotassiumPhosphate = "MKP", AmmoniumNitrate = "Ammonium nitrate",
        PotassiumSulfate = "Arcanite";

    /// <summary>
    /// Beside hydrogen phosphate ammonium dihydrogen phosphate dissolves as if only the fourth power of the share that is dihydrogen
    /// phosphate counted: of the product at saturation in NH4H2PO4-(NH4)2HPO4-H2O one power is that share itself, and 3.0 to 3.7 more were
    /// measured at 0 °C (Kaganskiy &amp; Babenko 1971) and 3.2 at 40 °C (Voogd), both as collected in the IUPAC-NIST Solubility Data
    /// Series 66. Beside sodium nothing was measured: it holds nothing.
    /// </summary>
    private const double PowersOfDihydrogenPhosphate = 3;

    /// <summary>
    /// As for ammonium above: 1.65 mol/L of KH2PO4 with 1.35 of K2HPO4 are sold as a clear solution, kept at 20 to 25 °C, which may have
    /// to be heated to dissolve (USP, Potassium Phosphates Compounded Injection, 2025). 2.5 powers more hold it at 20 °C.
    /// </summary>
    private const double PowersBesidePotassium = 2.5;

    /// <summary>
    /// Beside magnesium sulfate potassium sulfate dissolves better: where it and picromerite saturate together at 25 °C, with
    /// 1.48 mol/kg of magnesium, the product of totals is 10^0.56 times that of the pure solution (Harvie, Moller and Weare 1984).
    /// log10 for each mol/kg, and up to how many.
    /// </summary>
    private const double PerMolMagnesiumSulfate = 0.3, MostMagnesiumSulfate = 1.5;

    /// <summary>
    /// log10 by which the product of totals of a saturated mixture lies above that of the pure solution; 0 where nothing is known to hold
    /// more.
    /// </summary>
    /// <param name="solid">A soluble salt.</param>
    /// <param name="input">The mixture.</param>
    /// <param name="totals">What the mixture was put together from.</param>
    /// <param name="logProtonated">log10 of the share of each component that still has its protons.</param>
    public static double LogHeld(Solid solid, SolutionInput input, ComponentTotals totals, double[] logProtonated)
    {
        var log = LogHeldByUrea(solid, input);
        var phosphate = Components.Find(Component.Phosphate);
        if (HeldByPair(solid) is { } pair)
            log += pair.PerMol * Math.Min(pair.Most, Math.Min(input.Totals.MolPerKg[pair.First], input.Totals.MolPerKg[pair.Second]));
        if (PowersOfProtonShare(solid, phosphate, totals) is > 0 and var powers) log -= powers * logProtonated[phosphate];
        return log;
    }

    /// <summary>The same for urea alone.</summary>
    public static double LogHeldByUrea(Solid solid, SolutionInput input) => solid.Name == AmmoniumNitrate
        ? 2 * Math.Log10(1 + UreaSolubility.NitrateHeldByUrea(UreaIn(input), input.Celsius))
        : 0;

    /// <summary>The salt beside which more of another is held: its two components, the lesser of which counts.</summary>
    /// <param name="First">By its number in the table, or here.</param>
    /// <param name="Second">The other.</param>
    /// <param name="PerMol">log10 for each mol/kg of it.</param>
    /// <param name="Most">mol/kg from which on it holds no more.</param>
    internal readonly record struct Pair(int First, int Second, double PerMol, double Most);

    /// <summary>Null where nothing is known to hold more of a salt.</summary>
    public static Pair? HeldByPair(Solid solid) => solid.Name == PotassiumSulfate
        ? new Pair(
            Components.Find(Component.Magnesium), Components.Find(Component.Sulfate), PerMolMagnesiumSulfate, MostMagnesiumSulfate)
        : null;

    /// <summary>
    /// How often the share of a component that still has its protons counts, beside once for each time the formula has it.
    /// </summary>
    /// <param name="solid">A soluble salt.</param>
    /// <param name="component">By its number in the table.</param>
    /// <param name="totals">What the mixture was put together from.</param>
    public static double PowersOfProtonShare(Solid solid, int component, ComponentTotals totals)
    {
        if (solid.Name is not (MonoammoniumPhosphate or MonopotassiumPhosphate)) return 0;
        if (component != Components.Find(Component.Phosphate)) return 0;
        double ammonium = totals[Component.Ammonium], potassium = totals[Component.Potassium];
        return (PowersOfDihydrogenPhosphate * ammonium + PowersBesidePotassium * potassium)
            / (ammonium + potassium + totals[Component.Sodium]);
    }

    private static double UreaIn(SolutionInput input)
    {
        double sum = 0;
        foreach (var ion in input.InertIons) if (ion.Name == UreaSolubility.Name) sum += ion.MolPerKg;
        return sum;
    }
}

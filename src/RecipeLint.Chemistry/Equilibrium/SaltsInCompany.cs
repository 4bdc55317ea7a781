using System.Collections.Frozen;

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Where mixtures were measured to hold more of a salt than its product in pure water allows, or less: by how much the product of totals
/// may be past that of the pure solution. Every figure is kept on the low side of what was measured, and nothing is said where nothing was.
/// </summary>
internal static class SaltsInCompany
{
    private const string MonoammoniumPhosphate = "MAP", MonopotassiumPhosphate = "MKP", AmmoniumNitrate = "Ammonium nitrate",
        PotassiumSulfate = "Arcanite", PotassiumNitrate = "Niter", SodiumNitrate = "Nitratine", AmmoniumChloride = "Salammoniac";

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
    /// Which salt dissolves how much better, or worse, beside which other. What holds more is kept below what was found, what holds less is
    /// not; each as a line over the mol/kg of the other salt, at some temperatures.
    /// </summary>
    private static readonly FrozenDictionary<string, Company[]> _companies = ((Company[])
        [
            // Where it and picromerite saturate together at 25 °C, with 1.48 mol/kg of magnesium, the product of totals is 10^0.56 times
            // that of the pure solution (Harvie, Moller and Weare 1984).
            new(PotassiumSulfate, Component.Magnesium, Component.Sulfate, 1.5, [(25, 0.3, 0)]),

            // The extended UNIQUAC model, fitted to measured isotherms of these systems (K. Thomsen, thesis, Technical University of
            // Denmark 1997; its parameters as a public database has them, read), computed with the solubilities of the pure salts used
            // here. Lines below 0.85 of the log10 computed up to the highest mol/kg: 1.2 and 2.0 mol/kg of potassium nitrate hold 0.38 and
            // 0.34 of sulfate at 10 °C where the product gives 0.26 and 0.16.
            new(PotassiumSulfate, Component.Potassium, Component.Nitrate, 5,
                [(0, 0.2378, 0), (10, 0.191, 0), (20, 0.1529, 0), (30, 0.1231, 0), (40, 0.101, 0.1), (45, 0.0901, 0.1)]),
            new(PotassiumSulfate, Component.Potassium, Component.Chloride, 4,
                [(0, 0.1274, 0.3), (10, 0.0935, 0.7), (20, 0.0633, 1.2), (25, 0.0541, 1.7), (40, 0.0056, 3)]),
            new(PotassiumNitrate, Component.Ammonium, Component.Nitrate, 8,
                [(0, 0.0968, 0), (10, 0.067, 0.1), (20, 0.0435, 0.6), (30, 0.0295, 2.4), (40, 0.0191, 5.3), (45, 0.0088, 7)]),
            new(PotassiumNitrate, Component.Sodium, Component.Nitrate, 8,
                [(0, 0.1185, 0), (10, 0.0902, 0), (20, 0.0675, 0.1), (30, 0.0504, 0.4), (40, 0.0403, 1.1), (45, 0.0352, 1.3)]),
            new(AmmoniumChloride, Component.Ammonium, Component.Nitrate, 15, [(0, 0.0246, 0), (10, 0.0235, 0), (40, 0.0217, 0)]),

            // The same, where the product has it too good.
            new(SodiumNitrate, Component.Sodium, Component.Chloride, 8, [(0, -0.05, 0), (45, -0.036, 0)]),

            // 0.95 and 0.56 mol/kg beside 4.7 and 6.7 mol/kg of ammonium chloride at 20 °C, where the product of totals gives 1.6 and 1.2
            // (Volkov & Sosnina 1970); half as far at 0 °C (Askenasy & Nessler 1930): IUPAC-NIST Solubility Data Series 66.
            new(MonoammoniumPhosphate, Component.Ammonium, Component.Chloride, 8, [(0, -0.027, 0), (20, -0.055, 0)]),
        ]).GroupBy(c => c.Solid).ToFrozenDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);

    /// <summary>
    /// log10 by which the product of totals of a saturated mixture lies above that of the pure solution, negative where it lies below; 0
    /// where nothing is known.
    /// </summary>
    /// <param name="solid">A soluble salt.</param>
    /// <param name="input">The mixture.</param>
    /// <param name="totals">What the mixture was put together from.</param>
    /// <param name="logProtonated">log10 of the share of each component that still has its protons.</param>
    public static double LogHeld(Solid solid, SolutionInput input, ComponentTotals totals, double[] logProtonated)
    {
        var log = LogHeldByUrea(solid, input);
        var phosphate = Components.Find(Component.Phosphate);
        foreach (var pair in HeldByPairs(solid, input.Celsius))
            log += pair.Log10(Math.Min(input.Totals.MolPerKg[pair.First], input.Totals.MolPerKg[pair.Second]));
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
    /// <param name="From">mol/kg up to which it holds none.</param>
    /// <param name="Most">mol/kg from which on it holds no more.</param>
    internal readonly record struct Pair(int First, int Second, double PerMol, double From, double Most)
    {
        /// <summary>Whether more of the lesser component, mol/kg, would hold more.</summary>
        public bool GrowsAt(double molality) => molality > From && molality < Most;

        public double Log10(double molality) => PerMol * (Math.Clamp(molality, From, Most) - From);
    }

    /// <summary>Empty where nothing is known of a salt in company.</summary>
    /// <param name="solid">A soluble salt.</param>
    /// <param name="celsius">Temperature, °C.</param>
    public static Pair[] HeldByPairs(Solid solid, double celsius) =>
        _companies.TryGetValue(solid.Name, out var companies) ? [.. companies.Select(c => c.At(celsius))] : [];

    /// <summary>A salt beside which another dissolves better or worse than the product of totals has it.</summary>
    private sealed record Company(
        string Solid, string First, string Second, double Most, (double Celsius, double PerMol, double From)[] Lines)
    {
        private readonly int _first = Components.Find(First), _second = Components.Find(Second);

        public Pair At(double celsius)
        {
            var i = 0;
            while (i < Lines.Length - 2 && celsius > Lines[i + 1].Celsius) i++;
            var (low, high) = (Lines[i], Lines[Math.Min(i + 1, Lines.Length - 1)]);
            var share = high.Celsius > low.Celsius ? Math.Clamp((celsius - low.Celsius) / (high.Celsius - low.Celsius), 0, 1) : 0;
            return new Pair(
                _first, _second, low.PerMol + (share * (high.PerMol - low.PerMol)), low.From + (share * (high.From - low.From)), Most);
        }
    }

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

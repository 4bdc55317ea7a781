namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// One consistent set of constants: log K of species and solids over temperature and interaction coefficients.
/// The reference sets (constant enthalpies) serve comparison with published calculations; users get <see cref="Product"/>.
/// </summary>
public sealed class ConstantSet
{
    private readonly TakingPartMemory _takingPart;
    private readonly int[] _places;

    private ConstantSet(string name, ReadOnlySpan<double> species, ReadOnlySpan<double> gas, SitPairs pairs,
        List<(Solid Solid, double[] LogK)> solids, bool consistentWater)
    {
        Name = name;
        SpeciesLogK = species.ToArray();
        GasLogK = gas.ToArray();
        Pairs = pairs;
        All = [.. solids.Select(s => s.Solid)];
        SolidLogK = [.. solids.SelectMany(s => s.LogK)];
        _places = Places(All);
        ConsistentWater = consistentWater;
        _takingPart = new TakingPartMemory();
    }

    private ConstantSet(string name, ConstantSet origin, double[] speciesLogK, double[] solidLogK, TakingPartMemory? takingPart = null)
    {
        Name = name;
        (SpeciesLogK, SolidLogK) = (speciesLogK, solidLogK);
        (GasLogK, Pairs, All, ConsistentWater, HasHandbook) =
            (origin.GasLogK, origin.Pairs, origin.All, origin.ConsistentWater, origin.HasHandbook);
        _places = origin._places;

        // What takes part follows from which constants there are, not from their values.
        _takingPart = takingPart ?? origin._takingPart;
    }

    /// <summary>Constant enthalpies, constant interaction coefficients.</summary>
    public static ConstantSet ReferencePlain { get; } = new("reference, plain", ThermoTables.SpeciesReference, ThermoTables.GasReference,
        SitPairs.Plain, SolidList.Reference(ThermoTables.SolidReferencePlain), consistentWater: false);

    /// <summary>Constant enthalpies, two-parameter interaction coefficients for the major salts.</summary>
    public static ConstantSet ReferenceExtended { get; } =
        new("reference, extended", ThermoTables.SpeciesReference, ThermoTables.GasReference,
        SitPairs.Extended, SolidList.Reference(ThermoTables.SolidReferenceExtended), consistentWater: false);

    /// <summary>
    /// Heat capacities where they are known, two-parameter coefficients, constants of the soluble salts before their calibration.
    /// </summary>
    internal static ConstantSet Uncalibrated { get; } = new("uncalibrated", ThermoTables.SpeciesProduct, ThermoTables.GasProduct,
        SitPairs.Product, SolidList.Product(calibrated: false), consistentWater: true);

    /// <summary>
    /// The set verdicts rest on: heat capacities where they are known, two-parameter coefficients, soluble salts calibrated.
    /// </summary>
    public static ConstantSet Product { get; } = new("product", ThermoTables.SpeciesProduct, ThermoTables.GasProduct,
        SitPairs.Product, SolidList.Product(calibrated: true), consistentWater: true)
    { HasHandbook = true };

    /// <summary>
    /// As <see cref="Product"/>, for a silicate in its own alkali: silica beyond what the alkali carries stays as grains without a
    /// charge, as soluble as amorphous silica. Ratios of 2.1 to 3.3 by mass come within 0.3 of the pH on makers' sheets; more alkaline
    /// ones (2.0 and less) come out too low, for their short chains are more highly charged than the constants have them.
    /// </summary>
    public static ConstantSet InSilicateAlkali => WithGrains.Value;

    public string Name { get; }

    /// <summary>Every solid the set has a constant for.</summary>
    public IReadOnlyList<Solid> Solids => All;

    /// <summary>The same, for loops.</summary>
    internal Solid[] All { get; }

    /// <summary>The place of a solid among all of the set; -1 for one of another set.</summary>
    internal int PlaceOf(Solid solid) =>
        solid.Table < _places.Length && _places[solid.Table] is >= 0 and var place && ReferenceEquals(All[place], solid)
            ? place
            // Two solids may share a row of the table: a set that extends another holds the other's reading of it too.
            : Array.FindIndex(All, s => ReferenceEquals(s, solid));

    /// <summary>The place of each solid by its number in the table; -1 where the set has none of that number.</summary>
    private static int[] Places(Solid[] all)
    {
        var places = new int[all.Max(s => s.Table) + 1];
        Array.Fill(places, -1);
        for (var i = 0; i < all.Length; i++) places[all[i].Table] = i;
        return places;
    }

    /// <summary>A solid by its name; null when the set has none.</summary>
    public Solid? FindSolid(string name) => Array.Find(All, s => s.Name == name);

    /// <summary>
    /// Whether any complex of a component has a constant that changes with temperature. Where none has, those of 25 °C serve at every
    /// temperature; false for a name that is no component.
    /// </summary>
    public bool ChangesWithTemperature(string component)
    {
        var wanted = Components.Find(component);
        for (var species = 0; wanted >= 0 && species < ThermoTables.SpeciesNames.Length; species++)
        {
            var terms = ThermoTables.SpeciesTerms[ThermoTables.SpeciesStart[species]..ThermoTables.SpeciesStart[species + 1]];
            if (terms.Contains((byte)wanted) && SpeciesLogK.AsSpan((6 * species) + 1, 5).ContainsAnyExcept(0.0)) return true;
        }
        return false;
    }

    /// <summary>
    /// This set with every complex of two components shifted by its own doubt: constants of one pair are mostly of one work and err
    /// together.
    /// </summary>
    /// <param name="first">A metal, or H+ for what an agent holds of acid.</param>
    /// <param name="second">The agent.</param>
    /// <param name="times">Doubts up; negative for down.</param>
    public ConstantSet ShiftComplexes(string first, string second, double times)
    {
        var shifted = (double[])SpeciesLogK.Clone();
        foreach (var species in FormationDoubt.Complexes(first, second)) shifted[6 * species] += times * ThermoTables.SpeciesDoubt[species];
        return new ConstantSet($"{Name}, {first} with {second} shifted", this, shifted, SolidLogK);
    }

    /// <summary>This set with the constant of one solid shifted, log10 units; itself when it has no such solid.</summary>
    public ConstantSet ShiftSolid(string name, double by)
    {
        var index = Array.FindIndex(All, s => s.Name == name);
        if (index < 0) return this;
        var shifted = (double[])SolidLogK.Clone();
        shifted[6 * index] += by;
        return new ConstantSet($"{Name}, {name} shifted", this, SpeciesLogK, shifted);
    }

    private ConstantSet WithGrainsOfSilica()
    {
        var grains = Array.IndexOf(ThermoTables.SpeciesNames, GrainsOfSilica);
        var silica = Array.FindIndex(All, s => s.Name == "Amorphous silica");
        var species = (double[])SpeciesLogK.Clone();
        for (var k = 0; k < 6; k++) species[(6 * grains) + k] = -SilicaInAGrain * SolidLogK[(6 * silica) + k];
        return new ConstantSet($"{Name}, silica in its alkali", this, species, SolidLogK, new TakingPartMemory());
    }

    private static readonly Lazy<ConstantSet> WithGrains = new(() => Product.WithGrainsOfSilica());

    private const string GrainsOfSilica = "Si12O24";

    private const double SilicaInAGrain = 12;

    internal double[] SpeciesLogK { get; }
    internal double[] GasLogK { get; }
    internal double[] SolidLogK { get; }
    internal SitPairs Pairs { get; }

    /// <summary>What takes part in a solution; worked out once for each choice of components, however much there is of each.</summary>
    internal TakingPart TakingPartIn(SolutionInput input) => _takingPart.Of(this, input);

    /// <summary>
    /// Whether the water activity carries the Gibbs-Duhem term of the two-parameter coefficients, which the reference leaves out.
    /// </summary>
    internal bool ConsistentWater { get; }

    /// <summary>Whether carbon dioxide counts by its fugacity, as in the product's sets; the reference takes its pressure.</summary>
    internal bool CountsFugacity => ConsistentWater;

    /// <summary>Whether its soluble salts are measured by the handbook too.</summary>
    internal bool HasHandbook { get; private init; }

    /// <summary>log10 K at a temperature from six coefficients: a + b T + c/T + d log10 T + e/T² + f T².</summary>
    internal static double LogK(ReadOnlySpan<double> c, double kelvin, double log10Kelvin) =>
        c[0] + c[1] * kelvin + c[2] / kelvin + c[3] * log10Kelvin + c[4] / (kelvin * kelvin) + c[5] * kelvin * kelvin;
}

/// <summary>
/// Interaction coefficients on the log10 scale, kg/mol, between ions numbered components first, species after: a value at 25 °C, its change
/// with log10 of the ionic strength, and its change per kelvin (none when the span is empty).
/// </summary>
internal sealed class SitPairs(
    ReadOnlySpan<ushort> first,
    ReadOnlySpan<ushort> second,
    ReadOnlySpan<double> epsilon,
    ReadOnlySpan<double> epsilonLogI,
    ReadOnlySpan<double> epsilonPerKelvin = default)
{
    private const double ReferenceKelvin = 298.15;

    public static readonly SitPairs Plain = new(ThermoTables.PlainPairFirst, ThermoTables.PlainPairSecond,
        ThermoTables.PlainPairEpsilon, ThermoTables.PlainPairEpsilonLogI);
    public static readonly SitPairs Extended = new(ThermoTables.ExtendedPairFirst, ThermoTables.ExtendedPairSecond,
        ThermoTables.ExtendedPairEpsilon, ThermoTables.ExtendedPairEpsilonLogI);
    public static readonly SitPairs Product = new(ThermoTables.ProductPairFirst, ThermoTables.ProductPairSecond,
        ThermoTables.ProductPairEpsilon, ThermoTables.ProductPairEpsilonLogI, ThermoTables.ProductPairEpsilonPerKelvin);

    public readonly ushort[] First = first.ToArray();
    public readonly ushort[] Second = second.ToArray();
    public readonly double[] EpsilonLogI = epsilonLogI.ToArray();
    private readonly double[] _epsilon = epsilon.ToArray();
    private readonly double[] _epsilonPerKelvin = epsilonPerKelvin.ToArray();

    /// <summary>The coefficient of a pair at ionic strength 1, kg/mol.</summary>
    public double Epsilon(int pair, double kelvin) =>
        _epsilonPerKelvin.Length == 0 ? _epsilon[pair] : _epsilon[pair] + _epsilonPerKelvin[pair] * (kelvin - ReferenceKelvin);
}

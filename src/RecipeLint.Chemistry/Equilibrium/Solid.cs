namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Whether a finding may rest on a solid.</summary>
public enum SolidRole
{
    /// <summary>Forms in a bottle within minutes to days.</summary>
    FormsReadily,

    /// <summary>Forms over weeks or ripens from another solid: a remark about storage at most.</summary>
    FormsSlowly,

    /// <summary>A soluble salt: judged by its calibrated constant and the handbook product together.</summary>
    SolubleSalt,

    /// <summary>Does not form at these temperatures.</summary>
    Excluded,

    /// <summary>May form, but the printed constant is not fit for a verdict.</summary>
    WeakConstant,
}

/// <summary>A solid the solution may be compared with.</summary>
public sealed class Solid
{
    internal Solid(int table, string name)
    {
        Table = table;
        Name = name;
        Terms = [.. TermsOf(table)];
        CalibratedRow = CalibratedSalts.Solids.IndexOf((ushort)table);
        Kin = MixedCrystals.KinOf(name);
        foreach (var (component, coefficient) in Terms)
            MolarMassGramsPerMole += coefficient * Components.MolarMassGramsPerMole(component);
        Composition = [.. Terms.Select(t => new KeyValuePair<string, double>(Components.Names[t.Component], t.Coefficient))];
    }

    /// <summary>Mineral or trade name.</summary>
    public string Name { get; }

    /// <summary>Formula with hydrate water after a raised dot.</summary>
    public string Formula => ThermoTables.SolidFormulas[Table];

    public SolidRole Role => (SolidRole)ThermoTables.SolidRoles[Table];

    /// <summary>Why it has that role.</summary>
    public string Because => ThermoTables.SolidReasons[Table];

    /// <summary>Where its constant comes from.</summary>
    public string Source => ThermoTables.SolidSources[Table];

    public double MolarMassGramsPerMole { get; }

    /// <summary>What people call it, "gypsum (calcium sulfate)"; its name where the data have no word.</summary>
    public string Called => Row.Called ?? Name;

    /// <summary>The rule that speaks of it when it falls out; null when no finding may rest on it.</summary>
    public string? Owner => Role is SolidRole.Excluded or SolidRole.WeakConstant ? null : Row.Owner;

    /// <summary>
    /// How far the published constants lie apart, on the scale of the saturation index of the formula as written; 0 when the activity model
    /// is the larger doubt.
    /// </summary>
    public double Spread => Row.Spread;

    /// <summary>Where the spread comes from; null when it is 0.</summary>
    public string? SpreadBecause => Row.SpreadBecause;

    /// <summary>Saturation index it needs to start without seeds over months; 0 when it starts on its own.</summary>
    public double StartsInStorage => Row.StartsInStorage;

    /// <summary>
    /// Saturation index from which it starts within minutes; infinite when it takes longer, null when the data do not say.
    /// </summary>
    public double? StartsWhileMixing => Row.StartsWhileMixing;

    /// <summary>How it behaves once the solution could take it up again; null when the data do not say.</summary>
    public Redissolution? Redissolves =>
        Row.RedissolvesSlowly is { } slowly ? new Redissolution(slowly, Row.RedissolvesBecause!, Row.RedissolvesSource!) : null;

    /// <summary>The entry of what a bottle can show; null when the data do not say.</summary>
    public string? Look => Row.Look;

    /// <summary>
    /// Whether an enthalpy or a table tells how its solubility changes with temperature. When not, the constant of 25 °C is used as it is:
    /// then no coldest or warmest moment and no warmer or colder may be said of it.
    /// </summary>
    public bool TemperatureKnown => Row.TemperatureKnown;

    /// <summary>The sources of everything said of it: constant, spread, where it starts, how it redissolves.</summary>
    public IEnumerable<string> Sources =>
        new[] { Source, Row.SpreadBecause, Row.StartsInStorageSource, Row.StartsWhileMixingSource, Row.RedissolvesSource }.OfType<string>();

    private SolidRow Row => SolidRows.All[Table];

    internal int Table { get; }

    internal (int Component, double Coefficient)[] Terms { get; }

    /// <summary>Its row among the salts with a handbook solubility; negative where it has none.</summary>
    internal int CalibratedRow { get; }

    /// <summary>Its place in <see cref="MixedCrystals"/>; negative where it has no kin.</summary>
    internal int Kin { get; }

    private static IEnumerable<(int Component, double Coefficient)> TermsOf(int table)
    {
        for (int i = ThermoTables.SolidStart[table]; i < ThermoTables.SolidStart[table + 1]; i++)
            yield return (ThermoTables.SolidTerms[i], ThermoTables.SolidCoefficients[i]);
    }

    /// <summary>The components it is made of, with their numbers; H+ may be negative.</summary>
    public IReadOnlyList<KeyValuePair<string, double>> Composition { get; }

    public override string ToString() => Name;
}

internal static class SolidList
{
    public static List<(Solid, double[])> Reference(ReadOnlySpan<double> calibrated)
    {
        var list = new List<(Solid, double[])>();
        for (var i = 0; i < ThermoTables.SolidNames.Length; i++)
            if (!double.IsNaN(ThermoTables.SolidReference[6 * i]))
                list.Add((new Solid(i, ThermoTables.SolidNames[i]), ThermoTables.SolidReference.Slice(6 * i, 6).ToArray()));
        for (var i = 0; i < ThermoTables.SolidNames.Length; i++)
            if (!double.IsNaN(calibrated[6 * i]))
                list.Add((new Solid(i, ThermoTables.SolidNames[i] + " (calibrated)"), calibrated.Slice(6 * i, 6).ToArray()));
        return list;
    }

    public static List<(Solid, double[])> Product(bool calibrated)
    {
        var list = new List<(Solid, double[])>();
        for (var i = 0; i < ThermoTables.SolidNames.Length; i++)
        {
            var logK = ThermoTables.SolidProduct.Slice(6 * i, 6).ToArray();
            if (calibrated && CalibratedSalts.Solids.IndexOf((ushort)i) is >= 0 and var k)
            {
                logK = CalibratedSalts.LogK.Slice(6 * k, 6).ToArray();
            }
            if (!double.IsNaN(logK[0])) list.Add((new Solid(i, ThermoTables.SolidNames[i]), logK));
        }
        return list;
    }
}

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
        foreach (var (component, coefficient) in Terms)
            MolarMassGramsPerMole += coefficient * Components.MolarMassGramsPerMole(component);
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

    internal int Table { get; }

    internal IEnumerable<(int Component, double Coefficient)> Terms
    {
        get
        {
            for (int i = ThermoTables.SolidStart[Table]; i < ThermoTables.SolidStart[Table + 1]; i++)
                yield return (ThermoTables.SolidTerms[i], ThermoTables.SolidCoefficients[i]);
        }
    }

    /// <summary>The components it is made of, with their numbers; H+ may be negative.</summary>
    public IReadOnlyList<KeyValuePair<string, double>> Composition =>
        [.. Terms.Select(t => new KeyValuePair<string, double>(Components.Names[t.Component], t.Coefficient))];

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
            if (calibrated && CalibratedSalts.Solids.IndexOf((ushort)i) is >= 0 and var k) logK = CalibratedSalts.LogK.Slice(6 * k, 6).ToArray();
            if (!double.IsNaN(logK[0])) list.Add((new Solid(i, ThermoTables.SolidNames[i]), logK));
        }
        return list;
    }
}

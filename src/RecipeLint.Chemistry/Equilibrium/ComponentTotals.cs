namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Amounts of components in mol per kg of water. Absent components are zero.</summary>
public sealed class ComponentTotals
{
    private readonly double[] _molPerKg = new double[Components.Count];

    public ComponentTotals() { }

    /// <param name="amounts">Component name and mol per kg of water; names that occur twice add up.</param>
    /// <exception cref="ArgumentException">A name is no component, or is H+ or H2O.</exception>
    public ComponentTotals(IEnumerable<KeyValuePair<string, double>> amounts)
    {
        foreach (var (name, value) in amounts) _molPerKg[Index(name)] += value;
    }

    private ComponentTotals(double[] molPerKg) => _molPerKg = molPerKg;

    /// <summary>mol per kg of water of a component.</summary>
    public double this[string name] => _molPerKg[Index(name)];

    internal ReadOnlySpan<double> MolPerKg => _molPerKg;

    internal static ComponentTotals Of(ReadOnlySpan<double> molPerKg) => new(molPerKg.ToArray());

    /// <summary>The same solution with every amount multiplied.</summary>
    public ComponentTotals Scale(double factor)
    {
        var scaled = (double[])_molPerKg.Clone();
        for (var i = 0; i < scaled.Length; i++) scaled[i] *= factor;
        return new ComponentTotals(scaled);
    }

    /// <summary>The same solution with one component's amount replaced.</summary>
    public ComponentTotals With(string name, double molPerKg)
    {
        var copy = (double[])_molPerKg.Clone();
        copy[Index(name)] = molPerKg;
        return new ComponentTotals(copy);
    }

    /// <summary>The components that are present, in table order.</summary>
    public IEnumerable<KeyValuePair<string, double>> Present
    {
        get
        {
            for (var i = 0; i < _molPerKg.Length; i++)
                if (_molPerKg[i] != 0) yield return new(Components.Names[i], _molPerKg[i]);
        }
    }

    private static int Index(string name) => Components.Find(name) switch
    {
        < 0 => throw new ArgumentException($"'{name}' is not a component of the equilibrium model.", nameof(name)),
        Components.Hydrogen or Components.Water => throw new ArgumentException(
            $"'{name}' is not given as an amount: it follows from charge balance or pH and from the solvent.", nameof(name)),
        var i => i,
    };
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>The pairs of dissolved ions with an interaction coefficient. Never changes.</summary>
internal sealed class IonPairs
{
    /// <summary>The two ions of each pair, by their numbers in the solution.</summary>
    public readonly int[] First, Second;

    /// <summary>The change of the coefficient with ln of the ionic strength, kg/mol.</summary>
    public readonly double[] EpsilonLnI;

    private readonly int[] _table;

    /// <summary>
    /// The row of derivatives each ion has: its own number for a component, one of the further rows for a complex of a pair, else -1.
    /// </summary>
    public readonly int[] Row;

    /// <summary>Number of rows.</summary>
    public readonly int Rows;

    public IonPairs(SitPairs pairs, Stoichiometry s)
    {
        Span<int> place = stackalloc int[Components.Count + ThermoTables.SpeciesNames.Length];
        place.Fill(-1);
        for (var a = 0; a < s.ComponentCount; a++) place[s.TableComponent[a]] = a;
        for (var i = 0; i < s.ComplexCount; i++) place[Components.Count + s.TableSpecies[i]] = s.ComponentCount + i;
        var n = 0;
        for (var p = 0; p < pairs.First.Length; p++) if (place[pairs.First[p]] >= 0 && place[pairs.Second[p]] >= 0) n++;
        (First, Second, EpsilonLnI, _table) = (new int[n], new int[n], new double[n], new int[n]);
        n = 0;
        for (var p = 0; p < pairs.First.Length; p++)
        {
            int a = place[pairs.First[p]], b = place[pairs.Second[p]];
            if (a < 0 || b < 0) continue;
            (First[n], Second[n]) = (a, b);
            _table[n] = p;
            EpsilonLnI[n++] = pairs.EpsilonLogI[p];
        }

        Row = new int[s.ComponentCount + s.ComplexCount];
        for (var a = 0; a < s.ComponentCount; a++) Row[a] = a;
        Row.AsSpan(s.ComponentCount).Fill(-1);
        Rows = s.ComponentCount;
        for (var p = 0; p < First.Length; p++)
        {
            if (Row[First[p]] < 0) Row[First[p]] = Rows++;
            if (Row[Second[p]] < 0) Row[Second[p]] = Rows++;
        }
    }

    /// <summary>The coefficient of each pair in natural logarithms at ionic strength 1, kg/mol.</summary>
    public void EpsilonAt(SitPairs pairs, double kelvin, double[] epsilon)
    {
        for (var p = 0; p < epsilon.Length; p++) epsilon[p] = pairs.Epsilon(_table[p], kelvin) * Problem.Ln10;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Which activity coefficients are unknowns of <see cref="FullNewton"/>: those of components, and those of complexes of which there is more
/// than a trace. A trace changes nothing but itself, so its coefficient may lag a move behind.
/// </summary>
internal sealed class UnknownCoefficients(Problem problem, Iterate at)
{
    /// <summary>Molality, mol/kg, below which a complex is a trace.</summary>
    private const double Trace = 1e-5;

    /// <summary>Number of the unknown of each component and complex, -1 for the others.</summary>
    public int[] Row { get; private set; } = [];

    public int Count { get; private set; }

    /// <summary>Chooses anew.</summary>
    /// <param name="gamma">ln of the coefficients as the iteration has them.</param>
    public void Begin(double[] gamma)
    {
        if (Row.Length == 0) Row = new int[problem.Pairs.Row.Length];
        Array.Fill(Row, -1);
        Count = 0;
        Choose(gamma);
    }

    /// <summary>Takes in what has come to be more than a trace, from its coefficient at hand; whether there was any.</summary>
    public bool Choose(double[] gamma)
    {
        var paired = problem.Pairs.Row;
        var before = Count;
        for (var i = 0; i < Row.Length; i++)
        {
            if (Row[i] >= 0 || paired[i] < 0 || (i >= problem.S.ComponentCount && at.M[i] < Trace)) continue;
            Row[i] = Count++;
            gamma[i] = at.LnGamma[i];
        }

        return Count > before;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The arrays that a solve works in, of the sizes that what takes part asks for. Half of all that a run allocated were these: they are lent
/// out by <see cref="TakingPart"/>, and cleared each time, so that no answer can depend on the solve before.
/// </summary>
internal sealed class Workplace(Stoichiometry s, IonPairs pairs)
{
    private const int Unknowns = 1;

    /// <summary>Of an <see cref="Iterate"/>.</summary>
    public readonly double[] X = new double[s.ComponentCount], M = new double[s.Count], LnM = new double[s.Count];
    public readonly double[] LnGamma = new double[s.Count], GammaI = new double[s.Count];

    /// <summary>Of a <see cref="Problem"/>.</summary>
    public readonly double[] Total = new double[s.ComponentCount], LnK = new double[s.ComplexCount];
    public readonly double[] PairEpsilon = new double[pairs.First.Length];

    /// <summary>Of <see cref="Activity"/>.</summary>
    public readonly double[] Rows = new double[pairs.Rows * s.ComponentCount];
    public readonly bool[] Used = new bool[pairs.Rows];

    /// <summary>Of <see cref="NewtonEquations"/>.</summary>
    public readonly double[] Weighted = new double[(s.ComponentCount + 1) * s.ComponentCount];
    public readonly double[] ColumnI = new double[s.ComponentCount + 1], ColumnWater = new double[s.ComponentCount + 1];

    /// <summary>Of <see cref="NewtonWork"/>, as long as there are no solids.</summary>
    public readonly double[] Sum = new double[s.ComponentCount], WaterSlope = new double[s.ComponentCount];
    public readonly double[] F = new double[s.ComponentCount + Unknowns], Step = new double[s.ComponentCount + Unknowns];
    public readonly double[] Saved = new double[s.ComponentCount + Unknowns];
    public readonly double[] Jacobian = new double[(s.ComponentCount + Unknowns) * (s.ComponentCount + Unknowns)];
    public readonly int[] Pivots = new int[s.ComponentCount + Unknowns];

    /// <summary>Of <see cref="Descent"/>.</summary>
    public readonly double[] Gradient = new double[s.ComponentCount], Hessian = new double[s.ComponentCount * s.ComponentCount];
    public readonly double[] DescentStep = new double[s.ComponentCount], DescentFrom = new double[s.ComponentCount];

    public void Clear()
    {
        foreach (var array in (ReadOnlySpan<double[]>)
            [
                X, M, LnM, LnGamma, GammaI, Total, LnK, PairEpsilon, Rows, Weighted, ColumnI, ColumnWater, Sum, WaterSlope, F, Step, Saved,
                Jacobian, Gradient, Hessian, DescentStep, DescentFrom,
            ])
        {
            Array.Clear(array);
        }

        Array.Clear(Used);
        Array.Clear(Pivots);
    }
}

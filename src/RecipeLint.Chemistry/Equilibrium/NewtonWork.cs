namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The arrays and sums that residuals, derivatives and steps share; they live as long as the solve and grow with the set of solids.
/// </summary>
internal sealed class NewtonWork(Stoichiometry s, Workplace place)
{
    /// <summary>Number of unknowns: ln m of the components, ln I, and beside solids their amounts and ln of the water.</summary>
    public int Size { get; private set; }

    /// <summary>Residuals, derivatives row by row, step, state before the step, and row exchanges of the factors.</summary>
    public double[] F { get; private set; } = place.F;
    public double[] Jacobian { get; private set; } = place.Jacobian;
    public double[] Step { get; private set; } = place.Step;
    public double[] Saved { get; private set; } = place.Saved;
    public int[] Pivots { get; private set; } = place.Pivots;

    /// <summary>What is dissolved of each component, mol per kg of water.</summary>
    public readonly double[] Sum = place.Sum;

    /// <summary>ln of the water activity by ln m of each component.</summary>
    public readonly double[] WaterSlope = place.WaterSlope;

    /// <summary>The two sides of the proton condition, mol per kg of initial water, and their sum when the iteration began.</summary>
    public double Positive, Negative, ProtonScale;

    /// <summary>Ionic strength of the molalities at hand, mol/kg.</summary>
    public double IonicFound;

    public int IonicRow => s.ComponentCount;

    public void Prepare(int solids)
    {
        Size = s.ComponentCount + 1 + (solids > 0 ? solids + 1 : 0);
        if (F.Length >= Size) return;
        F = new double[Size];
        Step = new double[Size];
        Saved = new double[Size];
        Jacobian = new double[Size * Size];
        Pivots = new int[Size];
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Where the iteration stands: the unknowns ln m of the free components, ln I and ln of the water left, and what follows from them.
/// Molalities and activity coefficients are numbered as in <see cref="Stoichiometry"/>.
/// </summary>
internal sealed class Iterate(Problem problem)
{
    // Wider than anything that can be a solution; they only keep a wild iterate finite.
    public const double LargestLnMolality = 200, LowestI = 1e-10, HighestI = 200;

    /// <summary>ln m of the free components.</summary>
    public readonly double[] X = problem.Work.X;

    /// <summary>Molalities of everything dissolved and their logarithms (complexes and components only).</summary>
    public readonly double[] M = problem.Work.M, LnM = problem.Work.LnM;

    /// <summary>ln of the activity coefficients and their derivatives by the ionic strength.</summary>
    public readonly double[] LnGamma = problem.Work.LnGamma, GammaI = problem.Work.GammaI;

    public double LnI, LnAw, LnW;

    public double Ionic => Math.Exp(LnI);

    /// <summary>kg of water left of one kilogram.</summary>
    public double WaterKg => Math.Exp(LnW);

    /// <summary>ln of the activity of a component.</summary>
    public double LnActivity(int component) => X[component] + LnGamma[component];

    /// <summary>Molalities of the free components from their logarithms.</summary>
    public void FreeMolalities()
    {
        for (var a = 0; a < X.Length; a++) M[a] = Math.Exp(Math.Min(X[a], LargestLnMolality));
    }

    /// <summary>With the gas at a given pressure ln m of carbonate is bound to that of H+.</summary>
    public void TieGas()
    {
        var gas = problem.S.Gas;
        if (gas >= 0) X[gas] = problem.GasLnTarget + LnAw - 2 * LnActivity(0) - LnGamma[gas];
    }

    /// <summary>ln of the ion activity product of a solid over its constant.</summary>
    public double LnSaturation(ActiveSolid s)
    {
        var ln = s.Water * LnAw - s.LnK;
        for (var t = 0; t < s.Term.Length; t++) ln += s.Coefficient[t] * (X[s.Term[t]] + LnGamma[s.Term[t]]);
        return ln;
    }

    /// <summary>Moves ln I towards the ionic strength of the molalities at hand.</summary>
    public void HoldIonicStrength(double weight, double largestChange)
    {
        double strength = 0;
        for (var i = 0; i < M.Length; i++) strength += problem.S.Charge[i] * problem.S.Charge[i] * Math.Min(M[i], 50);
        var target = Math.Log(Math.Clamp(strength / 2, 1e-8, 20));
        LnI += Math.Clamp(weight * (target - LnI), -largestChange, largestChange);
    }
}

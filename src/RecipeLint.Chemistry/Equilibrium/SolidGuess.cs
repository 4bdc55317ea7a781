namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// A first guess at the set of solids from the convex problem with solids as steep species, for solutions the step-by-step search
/// loses its way in.
/// </summary>
internal sealed class SolidGuess(
    Problem problem, Iterate at, Activity activity, Beginning beginning, Descent descent, SolidEquations solids)
{
    public bool Make(List<ActiveSolid> candidates, double stiffness)
    {
        descent.Stiffness = stiffness;
        solids.Present.Clear();
        beginning.Anew(7);
        descent.Soft = candidates;
        try
        {
            for (var round = 0; round < 12; round++)
            {
                beginning.Low();
                if (!descent.Run(400)) return false;
                var before = at.LnI;
                at.HoldIonicStrength(round < 4 ? 1.0 : 0.4, largestChange: 1.2);
                activity.Coefficients();
                if (Math.Abs(at.LnI - before) < 0.01) break;
            }
        }
        finally
        {
            descent.Soft = [];
        }
        foreach (var s in candidates.Where(s => s.Amount > 1e-7).OrderByDescending(s => s.Amount).ThenBy(s => s.Index))
            if (Combination(s) is null) solids.Present.Add(s); else s.Amount = 0;
        foreach (var s in candidates) if (!solids.Present.Contains(s)) s.Amount = 0;
        return true;
    }

    /// <summary>How a solid is made up of those present, water aside; null when it is not.</summary>
    public double[]? Combination(ActiveSolid entering)
    {
        var columns = solids.Present.Count;
        if (columns == 0) return null;
        var target = Vector(entering);
        var vectors = solids.Present.Select(Vector).ToArray();
        var a = new double[columns * columns];
        var b = new double[columns];
        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < columns; j++) a[i * columns + j] = Dot(vectors[i], vectors[j]);
            b[i] = Dot(vectors[i], target);
        }
        if (!DenseLu.Solve(a, b, columns)) return null;
        var rest = (double[])target.Clone();
        for (var j = 0; j < columns; j++) for (var i = 0; i < rest.Length; i++) rest[i] -= b[j] * vectors[j][i];
        return Dot(rest, rest) < 1e-12 * Dot(target, target) ? b : null;
    }

    private double[] Vector(ActiveSolid s)
    {
        var v = new double[problem.S.ComponentCount];
        for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] != problem.S.Gas) v[s.Term[t]] = s.Coefficient[t];
        if (problem.S.Gas >= 0) v[0] = s.Proton;
        return v;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// With activity coefficients held, equilibrium is where F = sum of molalities - sum of totals times ln m is least, and F is convex: Newton
/// with a line search on it gets near the answer from anywhere, which the faster logarithmic form does not when one large polymer rules two
/// sums.
/// </summary>
internal sealed class Descent(Problem problem, Iterate at, Activity activity)
{
    private readonly Stoichiometry _s = problem.S;

    /// <summary>
    /// Solids as species of a very steep law: amount = (activity product / constant)^stiffness. Convex like the rest of F, and near
    /// enough to all-or-nothing to show which solids there are.
    /// </summary>
    public double Stiffness { get; set; } = 40;

    /// <summary>The solids that are treated so; none while a clear solution is sought.</summary>
    public List<ActiveSolid> Soft { get; set; } = [];

    /// <summary>Moves down F until no sum differs from its total by more than a share; false when it does not get there.</summary>
    public bool Run(int limit, double near = 0.02)
    {
        var n = _s.ComponentCount;
        var place = problem.Work;
        var (gradient, hessian, step, from) = (place.Gradient, place.Hessian, place.DescentStep, place.DescentFrom);
        activity.Molalities();
        var value = Objective();
        for (var k = 0; k < limit; k++)
        {
            var worst = Gradient(gradient);
            if (worst < near) return true;
            Hessian(hessian);
            SoftHessian(hessian);
            for (var a = 0; a < n; a++) step[a] = problem.IsBalanced(a) ? -gradient[a] : 0;
            if (!DenseLu.Solve(hessian, step, n)) return false;
            double largest = 0, slope = 0;
            for (var a = 0; a < n; a++)
            {
                largest = Math.Max(largest, Math.Abs(step[a]));
                slope += gradient[a] * step[a];
            }
            if (!(slope < 0)) return worst < 0.5;
            if (!Follow(step, from, Math.Min(1, 6 / largest), slope, ref value)) return worst < 0.5;
        }
        return false;
    }

    /// <summary>Goes along a step until F has fallen; false when forty halvings did not make it fall.</summary>
    private bool Follow(double[] step, double[] from, double length, double slope, ref double value)
    {
        at.X.CopyTo(from, 0);
        for (var halving = 0; ; halving++)
        {
            for (var a = 0; a < step.Length; a++) at.X[a] = from[a] + length * step[a];
            at.TieGas();
            at.FreeMolalities();
            activity.Molalities();
            var now = Objective();
            if (now <= value + 1e-4 * length * slope) { value = now; return true; }
            if (halving == 40) return false;
            length *= 0.5;
        }
    }

    private double Objective()
    {
        double sum = 0;
        for (var i = 0; i < _s.ComponentCount + _s.ComplexCount; i++) sum += at.M[i];
        for (var a = 0; a < _s.ComponentCount; a++)
            if (problem.IsBalanced(a)) sum -= at.X[a] * (a == 0 ? problem.ProtonTotal : problem.Total[a]);
        foreach (var s in Soft)
        {
            s.Amount = Math.Exp(Math.Min(Stiffness * at.LnSaturation(s), Iterate.LargestLnMolality));
            sum += s.Amount / Stiffness;
        }
        return sum;
    }

    /// <summary>Derivatives of F by ln m; returns the largest as a share of what it is the difference of.</summary>
    private double Gradient(double[] gradient)
    {
        Array.Clear(gradient);
        double protons = 0;
        for (var i = 0; i < _s.ComponentCount + _s.ComplexCount; i++)
        {
            gradient[0] += _s.Proton[i] * at.M[i];
            protons += Math.Abs(_s.Proton[i]) * at.M[i];
        }
        gradient[0] -= problem.ProtonTotal;
        foreach (var s in Soft)
        {
            gradient[0] += s.Proton * s.Amount;
            protons += Math.Abs(s.Proton) * s.Amount;
        }
        double worst = problem.FixedPh is null ? Math.Abs(gradient[0]) / (protons + Math.Abs(problem.ProtonTotal)) : 0;
        for (var a = 1; a < _s.ComponentCount; a++)
        {
            if (!problem.IsBalanced(a)) continue;
            var sum = _s.Sum(a, at.M);
            foreach (var s in Soft)
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) sum += s.Coefficient[t] * s.Amount;
            gradient[a] = sum - problem.Total[a];
            worst = Math.Max(worst, Math.Abs(gradient[a]) / (sum + problem.Total[a]));
        }
        if (problem.FixedPh is not null) gradient[0] = 0;
        return worst;
    }

    private void Hessian(double[] hessian)
    {
        int n = _s.ComponentCount, g = _s.Gas;
        _s.Products(hessian, at.M);
        for (var a = 0; a < n; a++) hessian[a * n + a] += at.M[a] + 1e-12 * Math.Abs(a == 0 ? problem.ProtonTotal : problem.Total[a]);
        if (g >= 0)
        {
            // ln m of the gas follows that of H+ with the slope of its charge.
            hessian[0] += _s.Charge[g] * (2 * hessian[g * n] + _s.Charge[g] * hessian[g * n + g]);
            for (var a = 1; a < n; a++) hessian[a] = hessian[a * n] += _s.Charge[g] * hessian[g * n + a];
        }
        for (var a = 0; a < n; a++)
        {
            if (problem.IsBalanced(a)) continue;
            for (var b = 0; b < n; b++) hessian[a * n + b] = hessian[b * n + a] = 0;
            hessian[a * n + a] = 1;
        }
    }

    private void SoftHessian(double[] hessian)
    {
        var n = _s.ComponentCount;
        foreach (var s in Soft)
        {
            var w = Stiffness * s.Amount;
            var h = problem.FixedPh is null ? s.Proton : 0;
            hessian[0] += w * h * h;
            for (var t = 0; t < s.Term.Length; t++)
            {
                var a = s.Term[t];
                if (!problem.IsBalanced(a) || a == 0) continue;
                hessian[a * n] += w * h * s.Coefficient[t];
                hessian[a] += w * h * s.Coefficient[t];
                for (var u = 0; u < s.Term.Length; u++)
                {
                    var b = s.Term[u];
                    if (problem.IsBalanced(b) && b != 0) hessian[a * n + b] += w * s.Coefficient[t] * s.Coefficient[u];
                }
            }
        }
    }
}

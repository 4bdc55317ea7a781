namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    // Solids as species of a very steep law: amount = (activity product / constant)^stiffness. Convex like the rest of F, and near
    // enough to all-or-nothing to show which solids there are.
    private double _stiffness = 40;
    private List<ActiveSolid> _soft = [];
    private (double[] Gradient, double[] Hessian, double[] Step, double[] From)? _descent;

    /// <summary>
    /// With activity coefficients held, equilibrium is where F = sum of molalities - sum of totals times ln m is least, and F is convex:
    /// Newton with a line search on it gets near the answer from anywhere, which the faster logarithmic form does not when one large
    /// polymer rules two sums.
    /// </summary>
    private bool Descend(int limit, double near = 0.02)
    {
        var n = _nc;
        var (gradient, hessian, step, from) = _descent ??= (new double[n], new double[n * n], new double[n], new double[n]);
        Molalities();
        var value = Objective();
        for (var k = 0; k < limit; k++)
        {
            var worst = Gradient(gradient);
            if (worst < near) return true;
            Hessian(hessian);
            SoftHessian(hessian);
            for (var a = 0; a < n; a++) step[a] = Free(a) ? -gradient[a] : 0;
            if (!DenseLu.Solve(hessian, step, n)) return false;
            double largest = 0, slope = 0;
            for (var a = 0; a < n; a++)
            {
                largest = Math.Max(largest, Math.Abs(step[a]));
                slope += gradient[a] * step[a];
            }
            if (!(slope < 0)) return worst < 0.5;
            var length = Math.Min(1, 6 / largest);
            _x.CopyTo(from, 0);
            for (var halving = 0; ; halving++)
            {
                for (var a = 0; a < n; a++) _x[a] = from[a] + length * step[a];
                TieGas();
                for (var a = 0; a < n; a++) _m[a] = Math.Exp(Math.Min(_x[a], LargestLnMolality));
                Molalities();
                var now = Objective();
                if (now <= value + 1e-4 * length * slope) { value = now; break; }
                if (halving == 40) return worst < 0.5;
                length *= 0.5;
            }
        }
        return false;
    }

    private bool Free(int a) => a == 0 ? _fixedPh is null : a != _gasComponent;

    /// <summary>With the gas at a given pressure ln m of carbonate is bound to that of H+.</summary>
    private void TieGas()
    {
        if (_gasComponent >= 0) _x[_gasComponent] = _gasLnTarget + _lnAw - 2 * (_x[0] + _lnGamma[0]) - _lnGamma[_gasComponent];
    }

    private double Objective()
    {
        double sum = 0;
        for (var i = 0; i < _nc + _ns; i++) sum += _m[i];
        for (var a = 0; a < _nc; a++) if (Free(a)) sum -= _x[a] * (a == 0 ? _protonTotal : _total[a]);
        foreach (var s in _soft)
        {
            s.Amount = Math.Exp(Math.Min(_stiffness * LnSaturation(s), LargestLnMolality));
            sum += s.Amount / _stiffness;
        }
        return sum;
    }

    private double Gradient(double[] gradient)
    {
        Array.Clear(gradient);
        double protons = 0;
        for (var i = 0; i < _nc + _ns; i++)
        {
            gradient[0] += _proton[i] * _m[i];
            protons += Math.Abs(_proton[i]) * _m[i];
        }
        gradient[0] -= _protonTotal;
        foreach (var s in _soft)
        {
            gradient[0] += s.Proton * s.Amount;
            protons += Math.Abs(s.Proton) * s.Amount;
        }
        double worst = _fixedPh is null ? Math.Abs(gradient[0]) / (protons + Math.Abs(_protonTotal)) : 0;
        for (var a = 1; a < _nc; a++)
        {
            if (!Free(a)) continue;
            var sum = _m[a];
            for (var q = _incidenceStart[a]; q < _incidenceStart[a + 1]; q++) sum += _incidenceCoefficient[q] * _m[_nc + _incidence[q]];
            foreach (var s in _soft)
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) sum += s.Coefficient[t] * s.Amount;
            gradient[a] = sum - _total[a];
            worst = Math.Max(worst, Math.Abs(gradient[a]) / (sum + _total[a]));
        }
        if (_fixedPh is not null) gradient[0] = 0;
        return worst;
    }

    private void SoftHessian(double[] hessian)
    {
        var n = _nc;
        foreach (var s in _soft)
        {
            var w = _stiffness * s.Amount;
            var h = _fixedPh is null ? s.Proton : 0;
            hessian[0] += w * h * h;
            for (var t = 0; t < s.Term.Length; t++)
            {
                var a = s.Term[t];
                if (!Free(a) || a == 0) continue;
                hessian[a * n] += w * h * s.Coefficient[t];
                hessian[a] += w * h * s.Coefficient[t];
                for (var u = 0; u < s.Term.Length; u++)
                {
                    var b = s.Term[u];
                    if (Free(b) && b != 0) hessian[a * n + b] += w * s.Coefficient[t] * s.Coefficient[u];
                }
            }
        }
    }

    private void Hessian(double[] hessian)
    {
        int n = _nc, g = _gasComponent;
        Products(hessian);
        for (var a = 0; a < n; a++) hessian[a * n + a] += _m[a] + 1e-12 * Math.Abs(a == 0 ? _protonTotal : _total[a]);
        if (g >= 0)
        {
            // ln m of the gas follows that of H+ with the slope of its charge.
            hessian[0] += _z[g] * (2 * hessian[g * n] + _z[g] * hessian[g * n + g]);
            for (var a = 1; a < n; a++) hessian[a] = hessian[a * n] += _z[g] * hessian[g * n + a];
        }
        for (var a = 0; a < n; a++)
        {
            if (Free(a)) continue;
            for (var b = 0; b < n; b++) hessian[a * n + b] = hessian[b * n + a] = 0;
            hessian[a * n + a] = 1;
        }
    }

    /// <summary>For every two components the sum over complexes of molality times both numbers: symmetric, row by row.</summary>
    private void Products(Span<double> products)
    {
        var n = _nc;
        products = products[..(n * n)];
        products.Clear();
        ReadOnlySpan<double> molality = _m.AsSpan(_nc, _ns), coefficient = _coefficient;
        ReadOnlySpan<int> term = _term, start = _start;
        for (var i = 0; i < molality.Length; i++)
        {
            var m = molality[i];
            if (m == 0) continue;
            int from = start[i], to = start[i + 1];
            for (var t = from; t < to; t++)
            {
                var w = coefficient[t] * m;
                var row = products.Slice(term[t] * n, n);
                for (var u = from; u <= t; u++) row[term[u]] += w * coefficient[u];
            }
        }
        for (var a = 1; a < n; a++) for (var b = 0; b < a; b++) products[b * n + a] = products[a * n + b];
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    // Wider than anything that can be a solution; they only keep a wild iterate finite.
    private const double LargestLnMolality = 200, LowestI = 1e-10, HighestI = 200, LargestLnGamma = 60;

    private readonly double[] _x, _m, _lnM, _lnGamma, _gammaI;
    private double _lnI, _lnAw, _lnW;

    private double Ionic => Math.Exp(_lnI);

    /// <summary>
    /// Activity coefficients and water activity by SIT from the molalities at hand and the ionic strength unknown, then the molalities
    /// of the complexes from them. Repeats the pair: what one round leaves shrinks by the small share the complexes have in the sums.
    /// </summary>
    private void Evaluate(int rounds)
    {
        for (var a = 0; a < _nc; a++)
        {
            _lnM[a] = _x[a];
            _m[a] = Math.Exp(Math.Min(_x[a], LargestLnMolality));
        }
        var water = Math.Exp(_lnW);
        for (var i = 0; i < _inertMol.Length; i++) _m[_nc + _ns + i] = _inertMol[i] / water;
        for (var r = 0; r < rounds; r++)
        {
            Activities();
            Molalities();
        }
    }

    private void Molalities()
    {
        Span<double> activity = stackalloc double[_nc];
        for (var a = 0; a < activity.Length; a++) activity[a] = _x[a] + _lnGamma[a];
        ReadOnlySpan<int> term = _term;
        ReadOnlySpan<double> coefficient = _coefficient, gamma = _lnGamma.AsSpan(_nc, _ns), lnK = _lnK, water = _water;
        Span<double> m = _m.AsSpan(_nc, _ns), lnM = _lnM.AsSpan(_nc, _ns);
        var from = 0;
        for (var i = 0; i < lnM.Length; i++)
        {
            var ln = lnK[i] - gamma[i] + water[i] * _lnAw;
            var to = _start[i + 1];
            for (var t = from; t < to; t++) ln += coefficient[t] * activity[term[t]];
            from = to;
            lnM[i] = ln;
            m[i] = Exp(ln);
        }
    }

    /// <summary>Molality from its logarithm; below 1e-32 mol/kg a species counts for nothing in any sum.</summary>
    private static double Exp(double ln) => ln < -74 ? 0 : Math.Exp(Math.Min(ln, LargestLnMolality));

    private void Activities()
    {
        const double b = 1.5;
        double ionic = Ionic, root = Math.Sqrt(ionic), t = 1 + b * root, lnI = _lnI;
        var d = Ln10 * _debyeHueckel * root / t;
        var slope = Ln10 * _debyeHueckel / (2 * root * t * t);
        double sum = 0;
        for (var i = 0; i < _nt; i++)
        {
            var z2 = _z[i] * _z[i];
            _lnGamma[i] = -z2 * d;
            _gammaI[i] = -z2 * slope;
            sum += _m[i];
        }
        double interaction = 0;
        for (var p = 0; p < _pairA.Length; p++)
        {
            int i = _pairA[p], j = _pairB[p];
            double e = (_pairE1[p] + _pairE2[p] * lnI), mi = _m[i], mj = _m[j];
            _lnGamma[i] += e * mj;
            _lnGamma[j] += e * mi;
            interaction += e * mi * mj;
            if (_pairE2[p] == 0) continue;
            var e2 = _pairE2[p] / ionic;
            _gammaI[i] += e2 * mj;
            _gammaI[j] += e2 * mi;
            if (_set.ConsistentWater) interaction += _pairE2[p] / 2 * mi * mj;
        }
        var osmotic = -2 * Ln10 * _debyeHueckel / (b * b * b) * (t - 2 * Math.Log(t) - 1 / t);
        var lnAw = -(sum + osmotic + interaction) / MolWater;
        _lnAw = Math.Clamp(lnAw, -5, 2);
        for (var i = 0; i < _nc + _ns; i++)
        {
            _lnGamma[i] = Math.Clamp(_lnGamma[i], -LargestLnGamma, LargestLnGamma);
        }
    }

    /// <summary>
    /// Rows of the derivatives of ln gamma by the unknowns ln m: exact for pairs with a component, first order for pairs with a complex.
    /// </summary>
    private void GammaRows()
    {
        Array.Clear(_gammaRows);
        Array.Clear(_gammaUsed);
        var lnI = _lnI;
        for (var p = 0; p < _pairA.Length; p++)
        {
            int i = _pairA[p], j = _pairB[p];
            var e = (_pairE1[p] + _pairE2[p] * lnI);
            AddMolalityRow(_pairedRow[i], j, e);
            AddMolalityRow(_pairedRow[j], i, e);
        }
    }

    private void AddMolalityRow(int paired, int ion, double epsilon)
    {
        var em = epsilon * _m[ion];
        if (Math.Abs(em) < 1e-9) return;
        _gammaUsed[paired] = true;
        var row = paired * _nc;
        if (ion < _nc) { _gammaRows[row + ion] += em; return; }
        for (var t = _start[ion - _nc]; t < _start[ion - _nc + 1]; t++) _gammaRows[row + _term[t]] += em * _coefficient[t];
    }
}

using System.Runtime.CompilerServices;

namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    private readonly double[] _gammaRows, _weighted, _sum, _waterSlope, _columnI, _columnWater;
    private readonly bool[] _gammaUsed;
    private double[] _jacobian = [], _f = [], _step = [], _saved = [];
    private double _positive, _negative, _ionicFound;
    private int _n;

    /// <summary>Newton steps taken so far, over all attempts.</summary>
    public int Iterations { get; private set; }

    /// <summary>
    /// Residuals in logarithms: every component's sum against its total, the proton condition, I, solids and water. Returns the largest.
    /// </summary>
    private double Residuals()
    {
        var water = Math.Exp(_lnW);
        ReadOnlySpan<double> molality = _m, charge = _z, proton = _proton, coefficient = _coefficient;
        ReadOnlySpan<int> term = _term, start = _start;
        Span<double> sum = _sum;
        molality[..sum.Length].CopyTo(sum);
        double pos = 0, neg = 0, strength = 0;
        for (var i = 0; i < _nc; i++) Count(i, molality[i], charge, proton, ref pos, ref neg, ref strength);
        for (var i = 0; i < _ns; i++)
        {
            var m = molality[_nc + i];
            if (m == 0) continue;
            Count(_nc + i, m, charge, proton, ref pos, ref neg, ref strength);
            for (var t = start[i]; t < start[i + 1]; t++) sum[term[t]] += coefficient[t] * m;
        }
        for (var i = _nc + _ns; i < _nt; i++) strength += _z[i] * _z[i] * _m[i];
        _ionicFound = Math.Clamp(strength / 2, LowestI, HighestI);

        var protons = _protonTotal;
        foreach (var s in ActiveSolids) protons -= s.Proton * s.Amount;
        _positive = water * pos + Math.Max(-protons, 0);
        _negative = water * neg + Math.Max(protons, 0);
        _f[0] = _fixedPh is { } ph ? _x[0] + _lnGamma[0] + ph * Ln10 : Math.Log(_positive / _negative);
        for (var a = 1; a < _nc; a++)
            _f[a] = a == _gasComponent
                ? _x[a] + _lnGamma[a] + 2 * (_x[0] + _lnGamma[0]) - _lnAw - _gasLnTarget
                : Math.Log(_sum[a] * water / Remaining(a));
        _f[_nc] = Math.Log(_ionicFound) - _lnI;
        SolidResiduals(water);
        double worst = 0;
        for (var i = 0; i < _n; i++)
        {
            var v = HasSolids && i < _nc ? Imbalance(i, water) : Math.Abs(_f[i]);
            if (!(v <= worst)) worst = v;
        }
        return worst;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Count(int i, double m, ReadOnlySpan<double> charge, ReadOnlySpan<double> proton, ref double pos, ref double neg, ref double strength)
    {
        strength += charge[i] * charge[i] * m;
        var h = proton[i] * m;
        pos += Math.Max(h, 0);
        neg -= Math.Min(h, 0);
    }

    /// <summary>
    /// What a component's balance lacks as a share of its total. Beside solids the logarithm of the little that is left is known only as
    /// well as the total is, so it cannot be asked to vanish.
    /// </summary>
    private double Imbalance(int a, double water) => a == _gasComponent ? Math.Abs(_f[a])
        : a == 0 ? Math.Abs(_positive - _negative) / (_positive + _negative + Math.Abs(_protonTotal))
        : Math.Abs(_sum[a] * water - LeftOver(a)) / _total[a];

    private void Jacobian()
    {
        GammaRows();
        var n = _n;
        Array.Clear(_jacobian, 0, n * n);
        Array.Clear(_weighted);
        Array.Clear(_columnI);
        Array.Clear(_columnWater);
        Array.Clear(_waterSlope);
        double ionic = Ionic, water = Math.Exp(_lnW);
        double overPos = water / _positive, overNeg = water / _negative, overI = 0.5 / _ionicFound;
        for (var a = 0; a < _nc; a++)
        {
            _waterSlope[a] += _m[a];
            if (a > 0 && a != _gasComponent) _jacobian[a * n + a] += _m[a] / _sum[a];
            _jacobian[_nc * n + a] += _z[a] * _z[a] * _m[a] * overI;
            var h = _proton[a];
            if (h != 0 && _fixedPh is null) _jacobian[a] += h * _m[a] * (h > 0 ? overPos : overNeg);
        }
        Span<int> rows = stackalloc int[10];
        Span<double> weights = stackalloc double[10];
        for (var i = 0; i < _ns; i++)
        {
            var k = _nc + i;
            var m = _m[k];
            if (m == 0) continue;
            var count = 0;
            var h = _fixedPh is null ? _proton[k] * m * (_proton[k] > 0 ? overPos : overNeg) : 0;
            if (Math.Abs(h) > 1e-14) { rows[count] = 0; weights[count++] = h; }
            var z = _z[k] * _z[k] * m * overI;
            if (z > 1e-14) { rows[count] = _nc; weights[count++] = z; }
            int from = _start[i], to = _start[i + 1];
            for (var t = from; t < to; t++)
            {
                var a = _term[t];
                if (a == 0 || a == _gasComponent) continue;
                var w = _coefficient[t] * m / _sum[a];
                if (w > 1e-14) { rows[count] = a; weights[count++] = w; }
            }
            if (count == 0) continue;
            var paired = _pairedRow[k];
            for (var t = from; t < to; t++) _waterSlope[_term[t]] += m * _coefficient[t];
            for (var q = 0; q < count; q++)
            {
                var row = rows[q];
                var w = weights[q];
                for (var t = from; t < to; t++) _weighted[row * _nc + _term[t]] += w * _coefficient[t];
                _columnI[row] -= w * _gammaI[k];
                _columnWater[row] += w * _water[i];
                if (paired >= 0 && _gammaUsed[paired]) DenseLu.AddScaled(_jacobian.AsSpan(row * n, _nc), _gammaRows.AsSpan(paired * _nc, _nc), -w);
            }
        }
        for (var a = 0; a < _nc; a++) _waterSlope[a] *= -1 / MolWater;
        if (_fixedPh is not null) _weighted[0] = 1;
        if (_gasComponent >= 0)
        {
            _weighted[_gasComponent * _nc] = 2;
            _weighted[_gasComponent * _nc + _gasComponent] = 1;
            _columnWater[_gasComponent] = -1;
        }
        for (var row = 0; row <= _nc; row++)
        {
            var target = _jacobian.AsSpan(row * n, _nc);
            var column = _columnI[row];
            for (var a = 0; a < _nc; a++)
            {
                var w = _weighted[row * _nc + a];
                if (w == 0) continue;
                target[a] += w;
                if (_gammaUsed[a] && Math.Abs(w) > 1e-14) DenseLu.AddScaled(target, _gammaRows.AsSpan(a * _nc, _nc), w);
                column += w * _gammaI[a];
            }
            if (_columnWater[row] != 0) DenseLu.AddScaled(target, _waterSlope, _columnWater[row]);
            _jacobian[row * n + _nc] = column * ionic;
        }
        _jacobian[_nc * n + _nc] -= 1;
        SolidJacobian(water, ionic);
    }

    /// <summary>
    /// Damped Newton from the state at hand. Steps are cut to a trust length, so that solid amounts stay possible, and halved while they
    /// do not lower the residual.
    /// </summary>
    private bool Newton(int limit)
    {
        Prepare();
        Evaluate(1);
        var worst = Residuals();
        var merit = Merit();
        int polish = 0, stalled = 0;
        for (var k = 0; k < limit || (worst < 1e-3 && k < limit + 20); k++)
        {
            if (!double.IsFinite(merit)) return false;
            Iterations++;
            Jacobian();
            for (var i = 0; i < _n; i++) _step[i] = -_f[i];
            if (!DenseLu.Solve(_jacobian, _step, _n, _n))
            {
                // A ligand and a metal in exactly equal amounts make two rows alike: a slightly larger diagonal picks the short step.
                Jacobian();
                for (var i = 0; i < _n; i++) { _step[i] = -_f[i]; _jacobian[i * _n + i] += i == _nc ? -1e-9 : 1e-9; }
                if (!DenseLu.Solve(_jacobian, _step, _n, _n)) return false;
            }
            var length = StepLength();
            Save();
            double before = merit, worstBefore = worst;
            for (var halving = 0; ; halving++)
            {
                Move(length);
                Evaluate(1);
                worst = Residuals();
                merit = Merit();
                // A metal and a ligand in equal amounts: the way to the answer leads over a low ridge, which the first steps may take whole.
                if (merit <= before * (1 - 1e-4 * length) || worstBefore < 1e-10 || (k < 12 && worst < 0.5)) break;
                if (halving == 5) { stalled++; break; }
                length *= 0.5;
            }
            if (stalled > 12 || (worst > 30 && k > 1)) return false;
            if (worst < 1e-12)
            {
                Evaluate(1);
                worst = Residuals();
                merit = Merit();
                if (worst < 2e-12) return true;
            }
            if (worstBefore < 1e-10 && worst > 0.3 * worstBefore)
            {
                if (worst < 1e-10 && ++polish > 1) return Settled();
            }
        }
        return false;
    }

    /// <summary>Whether activity coefficients and molalities agree with each other, and do not only return every second round.</summary>
    private bool Settled()
    {
        Evaluate(1);
        return Residuals() < 1e-10;
    }

    private double Merit()
    {
        double sum = 0;
        for (var i = 0; i < _n; i++) sum += _f[i] * _f[i];
        return sum;
    }

    private double StepLength()
    {
        double largest = 0;
        for (var a = 0; a < _nc; a++) largest = Math.Max(largest, Math.Abs(_step[a]));
        var length = Math.Min(1, 12 / largest);
        var i = Math.Abs(_step[_nc]);
        if (i > 0) length = Math.Min(length, 1.5 / i);
        return SolidStepLength(length);
    }

    private void Save()
    {
        _x.CopyTo(_saved, 0);
        _saved[_nc] = _lnI;
        SaveSolids();
    }

    private void Move(double length)
    {
        for (var a = 0; a < _nc; a++) _x[a] = _saved[a] + length * _step[a];
        _lnI = Math.Clamp(_saved[_nc] + length * _step[_nc], Math.Log(LowestI), Math.Log(HighestI));
        MoveSolids(length);
    }
}

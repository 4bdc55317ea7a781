using System.Runtime.CompilerServices;

namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    /// <summary>Share of a sum below which a species' activity coefficient is not worth a term in the derivatives; residuals leave nothing out.</summary>
    private const double Negligible = 1e-6;

    private readonly double[] _gammaRows, _weighted, _sum, _waterSlope, _columnI, _columnWater;
    private readonly bool[] _gammaUsed;
    private int[] _pivots = [];
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
        _f[0] = _fixedPh is { } ph ? _x[0] + _lnGamma[0] + ph * Ln10 : ProtonBalance();
        for (var a = 1; a < _nc; a++)
            _f[a] = a == _gasComponent
                ? _x[a] + _lnGamma[a] + 2 * (_x[0] + _lnGamma[0]) - _lnAw - _gasLnTarget
                : Balance(a, water);
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
        Products(_weighted);
        double ionic = Ionic, water = Math.Exp(_lnW);
        var (overPos, overNeg) = ProtonSlopes(water);
        double overI = 0.5 / _ionicFound;
        Span<double> protonRow = _weighted.AsSpan(0, _nc), ionicRow = _weighted.AsSpan(_nc * _nc, _nc), share = stackalloc double[_nc];
        for (var a = 0; a < _nc; a++)
        {
            share[a] = a > 0 && a != _gasComponent ? BalanceSlope(a, water) : 0;
            _jacobian[a * n + a] += _m[a] * share[a];
            _jacobian[_nc * n + a] += _z[a] * _z[a] * _m[a] * overI;
            var h = _proton[a];
            if (h != 0 && _fixedPh is null) _jacobian[a] += h * _m[a] * (h > 0 ? overPos : overNeg);
            foreach (ref var w in _weighted.AsSpan(a * _nc, _nc)) w *= share[a];
        }
        if (_fixedPh is not null) overPos = overNeg = 0;
        ReadOnlySpan<double> molality = _m.AsSpan(_nc, _ns), charge = _z.AsSpan(_nc, _ns), proton = _proton.AsSpan(_nc, _ns), slopes = _gammaI.AsSpan(_nc, _ns);
        ReadOnlySpan<double> coefficient = _coefficient, hydration = _water;
        ReadOnlySpan<int> term = _term, start = _start, paired = _pairedRow.AsSpan(_nc, _ns);
        Span<double> protons = stackalloc double[_ns], squares = stackalloc double[_ns];
        double columnProton = 0, columnSquare = 0, wetProton = 0, wetSquare = 0;
        for (var i = 0; i < molality.Length; i++)
        {
            var m = molality[i];
            double h = proton[i] * m * (proton[i] > 0 ? overPos : overNeg), z = charge[i] * charge[i] * m * overI;
            (protons[i], squares[i]) = (h, z);
            columnProton -= h * slopes[i];
            columnSquare -= z * slopes[i];
            wetProton += h * hydration[i];
            wetSquare += z * hydration[i];
            if (paired[i] < 0 || !_gammaUsed[paired[i]]) continue;
            var row = _gammaRows.AsSpan(paired[i] * _nc, _nc);
            if (Math.Abs(h) > Negligible) DenseLu.AddScaled(_jacobian.AsSpan(0, _nc), row, -h);
            if (z > Negligible) DenseLu.AddScaled(_jacobian.AsSpan(_nc * n, _nc), row, -z);
            for (var t = start[i]; t < start[i + 1]; t++)
            {
                var w = coefficient[t] * m * share[term[t]];
                if (Math.Abs(w) > Negligible) DenseLu.AddScaled(_jacobian.AsSpan(term[t] * n, _nc), row, -w);
            }
        }
        for (var a = 0; a < _nc; a++)
        {
            ReadOnlySpan<int> with = _incidence.AsSpan(_incidenceStart[a], _incidenceStart[a + 1] - _incidenceStart[a]);
            ReadOnlySpan<double> times = _incidenceCoefficient.AsSpan(_incidenceStart[a], with.Length);
            double sum = 0, sloped = 0, wet = 0, byProton = 0, bySquare = 0;
            for (var q = 0; q < with.Length; q++)
            {
                var i = with[q];
                double v = times[q], part = v * molality[i];
                sum += part;
                sloped += part * slopes[i];
                wet += part * hydration[i];
                byProton += v * protons[i];
                bySquare += v * squares[i];
            }
            _waterSlope[a] = _m[a] + sum;
            _columnI[a] = -share[a] * sloped;
            _columnWater[a] = share[a] * wet;
            protonRow[a] = byProton;
            ionicRow[a] = bySquare;
        }
        (_columnI[0], _columnI[_nc], _columnWater[0], _columnWater[_nc]) = (columnProton, columnSquare, wetProton, wetSquare);
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
                if (_gammaUsed[a] && Math.Abs(w) > Negligible) DenseLu.AddScaled(target, _gammaRows.AsSpan(a * _nc, _nc), w);
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
        _protonScale = 0;
        var worst = Residuals();
        var merit = Merit();
        int polish = 0, stalled = 0;
        bool keep = false, factored = false;
        var worstBefore = double.PositiveInfinity;
        for (var k = 0; k < limit || (worst < 1e-3 && k < limit + 20); k++)
        {
            if (!double.IsFinite(merit)) return false;
            Iterations++;
            // Near the answer the last factors serve again, as long as each step with them gains well over a decade.
            keep = factored && worst < 1e-2 && worst < (keep ? 0.03 : 0.3) * worstBefore;
            factored = Step(keep);
            if (!factored) return false;
            var length = StepLength();
            Save();
            var before = merit;
            worstBefore = worst;
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

    /// <summary>The Newton step from the residuals at hand, with new derivatives or with those of the step before.</summary>
    private bool Step(bool keepFactors)
    {
        for (var i = 0; i < _n; i++) _step[i] = -_f[i];
        if (!keepFactors)
        {
            Jacobian();
            if (!DenseLu.Factor(_jacobian, _pivots, _n)) return ShortStep();
        }
        return DenseLu.Substitute(_jacobian, _pivots, _step, _n) || ShortStep();
    }

    /// <summary>A ligand and a metal in exactly equal amounts make two rows alike: a slightly larger diagonal picks the short step.</summary>
    private bool ShortStep()
    {
        Jacobian();
        for (var i = 0; i < _n; i++) { _step[i] = -_f[i]; _jacobian[i * _n + i] += i == _nc ? -1e-9 : 1e-9; }
        return DenseLu.Factor(_jacobian, _pivots, _n) && DenseLu.Substitute(_jacobian, _pivots, _step, _n);
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

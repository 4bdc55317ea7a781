namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    /// <summary>A solid that is in equilibrium with the solution, with its amount in mol per kg of initial water.</summary>
    internal sealed class ActiveSolid
    {
        public required int Index { get; init; }
        public required int[] Term { get; init; }
        public required double[] Coefficient { get; init; }
        public required double Water { get; init; }
        public required double Proton { get; init; }
        public required double LnK { get; init; }
        public double Amount { get; set; }
        public double Saved { get; set; }

        /// <summary>Shift of ln K while the solver approaches a hard case; 0 in any result.</summary>
        public double Offset { get; set; }
    }

    internal List<ActiveSolid> ActiveSolids { get; } = [];

    private bool HasSolids => ActiveSolids.Count > 0;

    internal void Prepare()
    {
        _n = _nc + 1 + (HasSolids ? ActiveSolids.Count + 1 : 0);
        if (_f.Length >= _n) return;
        _f = new double[_n];
        _step = new double[_n];
        _saved = new double[_n];
        _jacobian = new double[_n * _n];
        _pivots = new int[_n];
    }

    /// <summary>A solid of the constant set as this problem sees it; null when a component is missing.</summary>
    internal ActiveSolid? Describe(int index)
    {
        var solid = _set.Solids[index];
        var terms = new List<int>();
        var coefficients = new List<double>();
        double water = 0, proton = 0;
        foreach (var (component, v) in solid.Terms)
        {
            if (component == Components.Water) { water = v; continue; }
            var a = _local[component];
            if (a < 0) return null;
            if (a == 0) proton += v;
            else if (a == _gasComponent) proton += v * _z[a];
            terms.Add(a);
            coefficients.Add(v);
        }
        return new ActiveSolid
        {
            Index = index,
            Term = [.. terms],
            Coefficient = [.. coefficients],
            Water = water,
            Proton = proton,
            LnK = Ln10 * ConstantSet.LogK(_set.SolidLogK.AsSpan(6 * index, 6), _kelvin, _log10Kelvin),
        };
    }

    /// <summary>ln of the ion activity product over the constant.</summary>
    internal double LnSaturation(ActiveSolid s)
    {
        var ln = s.Water * _lnAw - s.LnK;
        for (var t = 0; t < s.Term.Length; t++) ln += s.Coefficient[t] * (_x[s.Term[t]] + _lnGamma[s.Term[t]]);
        return ln;
    }

    /// <summary>
    /// Share of a total that is added to both sides of its balance beside solids. What they leave of a component is a small difference of
    /// large amounts: below this share its logarithm is noise, and nothing needs it, because the solid's constant decides what is left.
    /// </summary>
    private const double Blur = 1e-10;

    /// <summary>Below this ratio of what should be left to what is dissolved the logarithm goes on as a straight line, through zero and beyond.</summary>
    private const double Straight = 0.1;

    /// <summary>Residual of a component's balance: the logarithm of what is dissolved over what the solids leave of its total.</summary>
    private double Balance(int a, double water)
    {
        if (!HasSolids) return Math.Log(_sum[a] * water / _total[a]);
        double dissolved = _sum[a] * water + Blur * _total[a], ratio = (LeftOver(a) + Blur * _total[a]) / dissolved;
        return ratio > Straight ? -Math.Log(ratio) : 1 - Math.Log(Straight) - ratio / Straight;
    }

    /// <summary>Derivative of a balance by the molality dissolved.</summary>
    private double BalanceSlope(int a, double water)
    {
        if (!HasSolids) return 1 / _sum[a];
        double dissolved = _sum[a] * water + Blur * _total[a], ratio = (LeftOver(a) + Blur * _total[a]) / dissolved;
        return (ratio > Straight ? 1 : ratio / Straight) * water / dissolved;
    }

    /// <summary>Derivative of a balance by the amount bound in solids.</summary>
    private double BoundSlope(int a, double water)
    {
        double dissolved = _sum[a] * water + Blur * _total[a], left = LeftOver(a) + Blur * _total[a];
        return 1 / (left > Straight * dissolved ? left : Straight * dissolved);
    }

    private double LeftOver(int a)
    {
        var left = _total[a];
        foreach (var s in ActiveSolids)
            for (var t = 0; t < s.Term.Length; t++)
                if (s.Term[t] == a) left -= s.Coefficient[t] * s.Amount;
        return left;
    }

    private double WaterInSpecies()
    {
        double sum = MolWater;
        for (var i = 0; i < _ns; i++) sum += _water[i] * _m[_nc + i];
        return sum;
    }

    private void SolidResiduals(double water)
    {
        if (!HasSolids) return;
        var at = _nc + 1;
        foreach (var s in ActiveSolids) _f[at++] = LnSaturation(s) - s.Offset;
        var total = water * WaterInSpecies();
        foreach (var s in ActiveSolids) total += s.Water * s.Amount;
        _f[at] = total > 0 ? Math.Log(total / _waterTotal) : 10;
    }

    private void SolidJacobian(double water, double ionic)
    {
        if (!HasSolids) return;
        int n = _n, first = _nc + 1, waterRow = n - 1, waterColumn = n - 1;
        var overProton = 1 / ProtonSpread();
        if (_fixedPh is null) _jacobian[waterColumn] = (_positive - _negative + ProtonsLeft()) * overProton;
        for (var a = 1; a < _nc; a++) if (a != _gasComponent) _jacobian[a * n + waterColumn] = _sum[a] * BalanceSlope(a, water);
        for (var k = 0; k < ActiveSolids.Count; k++)
        {
            var s = ActiveSolids[k];
            var row = _jacobian.AsSpan((first + k) * n, n);
            double column = 0;
            for (var t = 0; t < s.Term.Length; t++)
            {
                var a = s.Term[t];
                row[a] += s.Coefficient[t];
                DenseLu.AddScaled(row[.._nc], _gammaRows.AsSpan(a * _nc, _nc), s.Coefficient[t]);
                column += s.Coefficient[t] * _gammaI[a];
                if (a > 0 && a != _gasComponent) _jacobian[a * n + first + k] = s.Coefficient[t] * BoundSlope(a, water);
            }
            if (s.Water != 0) DenseLu.AddScaled(row[.._nc], _waterSlope, s.Water);
            row[_nc] = column * ionic;
            if (_fixedPh is null) _jacobian[first + k] = s.Proton * overProton;
        }
        double total = water * WaterInSpecies(), all = total;
        foreach (var s in ActiveSolids) all += s.Water * s.Amount;
        if (!(all > 0)) all = _waterTotal;
        for (var i = 0; i < _ns; i++)
        {
            var w = _water[i] * _m[_nc + i] * water / all;
            if (w == 0) continue;
            for (var t = _start[i]; t < _start[i + 1]; t++) _jacobian[waterRow * n + _term[t]] += w * _coefficient[t];
        }
        for (var k = 0; k < ActiveSolids.Count; k++) _jacobian[waterRow * n + first + k] = ActiveSolids[k].Water / all;
        _jacobian[waterRow * n + waterColumn] = total / all;
    }

    private double _protonScale;

    /// <summary>
    /// Residual of the proton condition: the logarithm of one side over the other. Beside solids, which may change its sign, an inverse
    /// hyperbolic sine of the difference takes its place: a straight line near zero, a logarithm far from it.
    /// </summary>
    private double ProtonBalance()
    {
        if (!HasSolids) return Math.Log(_positive / _negative);
        if (_protonScale == 0) _protonScale = _positive + _negative;
        return Math.Asinh((_positive - _negative) / _protonScale);
    }

    private double ProtonSpread()
    {
        var open = _positive - _negative;
        return Math.Sqrt(open * open + _protonScale * _protonScale);
    }

    /// <summary>Derivatives of the proton condition by the molalities on its two sides.</summary>
    private (double Positive, double Negative) ProtonSlopes(double water) => HasSolids
        ? (water / ProtonSpread(), water / ProtonSpread())
        : (water / _positive, water / _negative);

    private double ProtonsLeft()
    {
        var protons = _protonTotal;
        foreach (var s in ActiveSolids) protons -= s.Proton * s.Amount;
        return protons;
    }

    /// <summary>Share of a total from which on a step may not use up what is left of it; what is less may pass through zero.</summary>
    private const double Guarded = 1e-3;

    /// <summary>Cuts a step so that no component of which there is plenty is used up to more than 98 % and water changes by half at most.</summary>
    private double SolidStepLength(double length)
    {
        if (!HasSolids) return length;
        for (var a = 1; a < _nc; a++)
        {
            if (a == _gasComponent) continue;
            double used = 0;
            for (var k = 0; k < ActiveSolids.Count; k++)
            {
                var s = ActiveSolids[k];
                for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] == a) used += s.Coefficient[t] * _step[_nc + 1 + k];
            }
            var left = LeftOver(a);
            if (left > Guarded * _total[a] && used * length > 0.98 * left) length = 0.98 * left / used;
        }
        var w = Math.Abs(_step[_n - 1]);
        if (w * length > 0.7) length = 0.7 / w;
        return length;
    }

    private void SaveSolids()
    {
        if (!HasSolids) return;
        foreach (var s in ActiveSolids) s.Saved = s.Amount;
        _saved[_n - 1] = _lnW;
    }

    private void MoveSolids(double length)
    {
        if (!HasSolids) return;
        for (var k = 0; k < ActiveSolids.Count; k++) ActiveSolids[k].Amount = ActiveSolids[k].Saved + length * _step[_nc + 1 + k];
        _lnW = _saved[_n - 1] + length * _step[_n - 1];
    }
}

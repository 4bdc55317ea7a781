namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// The equations in logarithms at an iterate: every component's balance, the proton condition and the ionic strength; and their
/// derivatives.
/// </summary>
internal sealed class NewtonEquations(Problem problem, Iterate at, Activity activity, SolidEquations solids, NewtonWork work)
{
    /// <summary>
    /// Share of a sum below which a species' activity coefficient is not worth a term in the derivatives; residuals leave nothing out.
    /// </summary>
    private const double Negligible = 1e-6;

    private readonly Stoichiometry _s = problem.S;

    // Derivatives by ln gamma and by ln of the water activity: a row for each component and one for the ionic strength.
    private readonly double[] _weighted = problem.Work.Weighted;
    private readonly double[] _columnI = problem.Work.ColumnI, _columnWater = problem.Work.ColumnWater;

    /// <summary>
    /// Residuals in logarithms: every component's sum against its total, the proton condition, I, solids and water. Returns the largest.
    /// </summary>
    public double Residuals()
    {
        var water = at.WaterKg;
        var (pos, neg, strength) = Sums();
        work.IonicFound = Math.Clamp(strength / 2, Iterate.LowestI, Iterate.HighestI);
        var protons = solids.ProtonsLeft();
        work.Positive = water * pos + Math.Max(-protons, 0);
        work.Negative = water * neg + Math.Max(protons, 0);
        var f = work.F;
        f[0] = problem.FixedPh is { } ph ? at.X[0] + at.LnGamma[0] + ph * Problem.Ln10 : solids.ProtonBalance();
        for (var a = 1; a < _s.ComponentCount; a++)
            f[a] = a == _s.Gas
                ? at.X[a] + at.LnGamma[a] + 2 * (at.X[0] + at.LnGamma[0]) - at.LnAw - problem.GasLnTarget
                : solids.Balance(a, water);
        f[_s.ComponentCount] = Math.Log(work.IonicFound) - at.LnI;
        solids.Residuals(water);
        double worst = 0;
        for (var i = 0; i < work.Size; i++)
        {
            var v = solids.Any && i < _s.ComponentCount ? Imbalance(i, water) : Math.Abs(f[i]);
            if (!(v <= worst)) worst = v;
        }
        return worst;
    }

    /// <summary>
    /// What is dissolved of each component into the work's sums; returns both sides of the proton condition and twice the ionic strength.
    /// </summary>
    private (double Positive, double Negative, double Strength) Sums()
    {
        int free = _s.ComponentCount, complexes = _s.ComplexCount;
        ReadOnlySpan<double> molality = at.M, coefficient = _s.Coefficient;
        ReadOnlySpan<int> term = _s.Term, start = _s.Start;
        Span<double> sum = work.Sum;
        molality[..sum.Length].CopyTo(sum);
        var bound = molality.Slice(free, complexes);
        var from = 0;
        for (var i = 0; i < bound.Length; i++)
        {
            var m = bound[i];
            var to = start[i + 1];
            if (m != 0) for (var t = from; t < to; t++) sum[term[t]] += coefficient[t] * m;
            from = to;
        }
        var (pos, neg) = Lanes.Sides(_s.Proton, molality[..(free + complexes)]);
        return (pos, neg, Lanes.Dot(_s.ChargeSquared, molality));
    }

    /// <summary>
    /// What a component's balance lacks as a share of its total. Beside solids the logarithm of the little that is left is known only as
    /// well as the total is, so it cannot be asked to vanish.
    /// </summary>
    private double Imbalance(int a, double water) => a == _s.Gas || (a == 0 && problem.FixedPh is not null) ? Math.Abs(work.F[a])
        : a == 0 ? Math.Abs(work.Positive - work.Negative) / (work.Positive + work.Negative + Math.Abs(problem.ProtonTotal))
        : Math.Abs(work.Sum[a] * water - solids.LeftOver(a)) / problem.Total[a];

    /// <summary>The derivatives of the residuals by the unknowns.</summary>
    public void Jacobian()
    {
        activity.Derive();
        Array.Clear(work.Jacobian, 0, work.Size * work.Size);
        _s.Products(_weighted, at.M);
        double ionic = at.Ionic, water = at.WaterKg;
        var (overPositive, overNegative) = solids.ProtonSlopes(water);
        var overI = 0.5 / work.IonicFound;
        Span<double> share = stackalloc double[_s.ComponentCount];
        FreeComponents(share, water, overPositive, overNegative, overI);
        if (problem.FixedPh is not null) overPositive = overNegative = 0;
        Span<double> protons = stackalloc double[_s.ComplexCount], squares = stackalloc double[_s.ComplexCount];
        Complexes(share, protons, squares, overPositive, overNegative, overI);
        ByComponent(share, protons, squares);
        if (problem.FixedPh is not null) _weighted[0] = 1;
        if (_s.Gas >= 0)
        {
            _weighted[_s.Gas * _s.ComponentCount] = 2;
            _weighted[_s.Gas * _s.ComponentCount + _s.Gas] = 1;
            _columnWater[_s.Gas] = -1;
        }
        ThroughActivities(ionic);
        work.Jacobian[_s.ComponentCount * work.Size + _s.ComponentCount] -= 1;
        solids.Jacobian(water, ionic);
    }

    /// <summary>
    /// The components' own molalities, which no activity coefficient changes; what a mol adds to each logarithm goes into the shares.
    /// </summary>
    private void FreeComponents(Span<double> share, double water, double overPositive, double overNegative, double overI)
    {
        int n = work.Size, free = _s.ComponentCount;
        var jacobian = work.Jacobian;
        for (var a = 0; a < free; a++)
        {
            share[a] = a > 0 && a != _s.Gas ? solids.BalanceSlope(a, water) : 0;
            jacobian[a * n + a] += at.M[a] * share[a];
            jacobian[free * n + a] += _s.Charge[a] * _s.Charge[a] * at.M[a] * overI;
            var h = _s.Proton[a];
            if (h != 0 && problem.FixedPh is null) jacobian[a] += h * at.M[a] * (h > 0 ? overPositive : overNegative);
            foreach (ref var w in _weighted.AsSpan(a * free, free)) w *= share[a];
        }
    }

    /// <summary>Complex by complex: what each counts for protons and ionic strength, and what its own activity coefficient does.</summary>
    private void Complexes(
        ReadOnlySpan<double> share, Span<double> protons, Span<double> squares, double overPositive, double overNegative, double overI)
    {
        int n = work.Size, free = _s.ComponentCount, complexes = _s.ComplexCount;
        ReadOnlySpan<double> molality = at.M.AsSpan(free, complexes), charge = _s.Charge.AsSpan(free, complexes);
        ReadOnlySpan<double> proton = _s.Proton.AsSpan(free, complexes), slopes = at.GammaI.AsSpan(free, complexes);
        ReadOnlySpan<double> coefficient = _s.Coefficient, hydration = _s.Water;
        ReadOnlySpan<int> term = _s.Term, start = _s.Start, paired = problem.Pairs.Row.AsSpan(free, complexes);
        var jacobian = work.Jacobian;
        double[] rows = activity.Rows;
        bool[] used = activity.Used;
        double columnProton = 0, columnSquare = 0, wetProton = 0, wetSquare = 0;
        for (var i = 0; i < molality.Length; i++)
        {
            var m = molality[i];
            double h = proton[i] * m * (proton[i] > 0 ? overPositive : overNegative), z = charge[i] * charge[i] * m * overI;
            (protons[i], squares[i]) = (h, z);
            columnProton -= h * slopes[i];
            columnSquare -= z * slopes[i];
            wetProton += h * hydration[i];
            wetSquare += z * hydration[i];
            if (paired[i] < 0 || !used[paired[i]]) continue;
            var row = rows.AsSpan(paired[i] * free, free);
            if (Math.Abs(h) > Negligible) DenseLu.AddScaled(jacobian.AsSpan(0, free), row, -h);
            if (z > Negligible) DenseLu.AddScaled(jacobian.AsSpan(free * n, free), row, -z);
            for (var t = start[i]; t < start[i + 1]; t++)
            {
                var w = coefficient[t] * m * share[term[t]];
                if (Math.Abs(w) > Negligible) DenseLu.AddScaled(jacobian.AsSpan(term[t] * n, free), row, -w);
            }
        }
        (_columnI[0], _columnI[free], _columnWater[0], _columnWater[free]) = (columnProton, columnSquare, wetProton, wetSquare);
    }

    /// <summary>
    /// Component by component: what all its complexes add to the columns of ionic strength and water and to the rows of protons and ionic
    /// strength.
    /// </summary>
    private void ByComponent(ReadOnlySpan<double> share, ReadOnlySpan<double> protons, ReadOnlySpan<double> squares)
    {
        int free = _s.ComponentCount, complexes = _s.ComplexCount;
        ReadOnlySpan<double> molality = at.M.AsSpan(free, complexes), slopes = at.GammaI.AsSpan(free, complexes), hydration = _s.Water;
        Span<double> protonRow = _weighted.AsSpan(0, free), ionicRow = _weighted.AsSpan(free * free, free);
        var waterSlope = work.WaterSlope;
        for (var a = 0; a < free; a++)
        {
            ReadOnlySpan<int> with = _s.Incidence.AsSpan(_s.IncidenceStart[a], _s.IncidenceStart[a + 1] - _s.IncidenceStart[a]);
            ReadOnlySpan<double> times = _s.IncidenceCoefficient.AsSpan(_s.IncidenceStart[a], with.Length);
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
            waterSlope[a] = (at.M[a] + sum) * (-1 / Problem.MolWater);
            if (a > 0)
            {
                _columnI[a] = -share[a] * sloped;
                _columnWater[a] = share[a] * wet;
            }
            protonRow[a] = byProton;
            ionicRow[a] = bySquare;
        }
    }

    /// <summary>The chain rule through activity coefficients and water activity.</summary>
    private void ThroughActivities(double ionic)
    {
        int n = work.Size, free = _s.ComponentCount;
        double[] rows = activity.Rows, gammaI = at.GammaI;
        bool[] used = activity.Used;
        for (var row = 0; row <= free; row++)
        {
            var target = work.Jacobian.AsSpan(row * n, free);
            var column = _columnI[row];
            for (var a = 0; a < free; a++)
            {
                var w = _weighted[row * free + a];
                if (w == 0) continue;
                target[a] += w;
                if (used[a] && Math.Abs(w) > Negligible) DenseLu.AddScaled(target, rows.AsSpan(a * free, free), w);
                column += w * gammaI[a];
            }
            if (_columnWater[row] != 0) DenseLu.AddScaled(target, work.WaterSlope, _columnWater[row]);
            work.Jacobian[row * n + free] = column * ionic;
        }
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Newton on everything at once: beside the unknowns of <see cref="Newton"/> also the activity coefficients of all ions with interaction
/// coefficients and the water activity, so that none of them lags a round behind. In strong solutions full of ion pairs that lag swings
/// with a growing ratio and no damping helps. Larger and slower by the step, so asked where the quick way fails.
/// </summary>
internal sealed class FullNewton(
    Problem problem, Iterate at, Activity activity, NewtonEquations equations, SolidEquations solids, NewtonWork work)
{
    /// <summary>Longest step in ln of a molality or an activity coefficient, and in ln of the ionic strength.</summary>
    private const double LongestStep = 4, LongestIonicStep = 0.7;

    private const int Halvings = 10;

    /// <summary>What is too little in ln of a coefficient to be followed.</summary>
    private const double NoEffect = 1e-9;

    /// <summary>
    /// Steps this much shorter than Newton's own, one after the other, lead nowhere: the iteration creeps along where what is left of a
    /// component is next to nothing, and another beginning arrives sooner.
    /// </summary>
    private const double Creeping = 0.005;

    private const int MostCreeping = 4;

    private readonly Stoichiometry _s = problem.S;
    private readonly UnknownCoefficients _unknown = new(problem, at);
    private double[] _gamma = [], _f = [], _matrix = [], _step = [], _from = [];
    private int[] _pivots = [];
    private double _lnAw;

    /// <summary>Place of the first activity coefficient, of the water activity, of the first solid and of the water left.</summary>
    private int Gammas => _s.ComponentCount + 1;

    private int Wet => Gammas + _unknown.Count;
    private int FirstSolid => Wet + 1;
    private int Size => FirstSolid + (solids.Any ? solids.Present.Count + 1 : 0);

    /// <summary>Newton steps taken so far, over all attempts.</summary>
    public int Iterations { get; private set; }

    /// <summary>From the state at hand; false when it does not arrive within so many steps.</summary>
    public bool Run(int limit)
    {
        Prepare();
        activity.Evaluate(1);
        at.LnGamma.CopyTo(_gamma, 0);
        _unknown.Begin(_gamma);
        _lnAw = at.LnAw;
        work.ProtonScale = 0;
        var (worst, merit) = Residuals();
        var creeping = 0;
        var creep = new Creep(merit);
        for (var k = 0; k < limit && creeping < MostCreeping; k++)
        {
            if (!double.IsFinite(merit)) return false;
            Iterations++;
            if (_unknown.Choose(_gamma)) (worst, merit) = Residuals();
            Derivatives();
            for (var i = 0; i < Size; i++) _step[i] = -_f[i];
            if (!DenseLu.Factor(_matrix, _pivots, Size) || !DenseLu.Substitute(_matrix, _pivots, _step, Size)) return false;
            var before = worst;
            if (!Follow(ref worst, ref merit, out var length)) return before < 1e-10;
            creeping = length < Creeping ? creeping + 1 : 0;
            if (worst < 2e-12 || (worst < 1e-10 && worst > 0.3 * before)) return true;
            if (solids.Any && creep.Goes(k, merit)) return false;
        }

        return false;
    }

    private void Prepare()
    {
        work.Prepare(solids.Present.Count);
        var most = Gammas + problem.Pairs.Rows + 2 + solids.Present.Count;
        if (_f.Length >= most) return;
        most += 8;
        if (_gamma.Length == 0) _gamma = new double[_s.Count];
        (_f, _step, _from, _pivots) = (new double[most], new double[most], new double[most], new int[most]);
        _matrix = new double[most * most];
    }

    /// <summary>Goes along the step until the residuals have fallen; false when no halving made them fall.</summary>
    private bool Follow(ref double worst, ref double merit, out double length)
    {
        length = StepLength();
        Save();
        double best = merit, now = worst;
        for (var halving = 0; halving <= Halvings; halving++)
        {
            Move(length);
            (now, var sum) = Residuals();
            if (sum <= best * (1 - 1e-4 * length) || (worst < 1e-10 && now < 1e-10))
            {
                (worst, merit) = (now, sum);
                return true;
            }

            length *= 0.5;
        }

        Move(0);
        Residuals();
        return false;
    }

    private double StepLength()
    {
        var largest = Math.Abs(_step[Wet]);
        for (var a = 0; a < _s.ComponentCount; a++) largest = Math.Max(largest, Math.Abs(_step[a]));
        for (var r = 0; r < _unknown.Count; r++) largest = Math.Max(largest, Math.Abs(_step[Gammas + r]));
        var length = Math.Min(1, LongestStep / largest);
        var ionic = Math.Abs(_step[_s.ComponentCount]);
        if (ionic > 0) length = Math.Min(length, LongestIonicStep / ionic);
        _step.AsSpan(0, _s.ComponentCount).CopyTo(work.Step);
        for (var k = 0; FirstSolid + k < Size; k++) work.Step[work.IonicRow + 1 + k] = _step[FirstSolid + k];
        return solids.StepLength(length);
    }

    private void Save()
    {
        at.X.CopyTo(_from, 0);
        _from[_s.ComponentCount] = at.LnI;
        for (var i = 0; i < _unknown.Row.Length; i++) if (_unknown.Row[i] is >= 0 and var r) _from[Gammas + r] = _gamma[i];
        _from[Wet] = _lnAw;
        solids.Save();
    }

    private void Move(double length)
    {
        for (var a = 0; a < _s.ComponentCount; a++) at.X[a] = _from[a] + length * _step[a];
        var lnI = _from[_s.ComponentCount] + length * _step[_s.ComponentCount];
        at.LnI = Math.Clamp(lnI, Math.Log(Iterate.LowestI), Math.Log(Iterate.HighestI));
        for (var i = 0; i < _unknown.Row.Length; i++)
            if (_unknown.Row[i] is >= 0 and var r) _gamma[i] = _from[Gammas + r] + length * _step[Gammas + r];
        _lnAw = _from[Wet] + length * _step[Wet];
        solids.Move(length);
    }

    /// <summary>The largest of all residuals, and the sum of their squares.</summary>
    private (double Worst, double Merit) Residuals()
    {
        Molalities();
        var worst = equations.Residuals();
        work.F.AsSpan(0, Gammas).CopyTo(_f);
        for (var k = 0; FirstSolid + k < Size; k++) _f[FirstSolid + k] = work.F[Gammas + k];
        activity.Coefficients();
        for (var i = 0; i < _unknown.Row.Length; i++) if (_unknown.Row[i] is >= 0 and var r) _f[Gammas + r] = _gamma[i] - at.LnGamma[i];
        _f[Wet] = _lnAw - at.LnAw;
        double merit = 0;
        for (var i = 0; i < Size; i++) merit += _f[i] * _f[i];
        for (var i = Gammas; i < FirstSolid; i++) worst = Math.Max(worst, Math.Abs(_f[i]));
        Restore();
        return (double.IsFinite(merit) ? worst : double.PositiveInfinity, merit);
    }

    /// <summary>Everything dissolved from the unknowns: mass action with the activity coefficients that are unknowns themselves.</summary>
    private void Molalities()
    {
        at.LnAw = _lnAw;
        for (var a = 0; a < _s.ComponentCount; a++)
        {
            at.LnM[a] = at.X[a];
            at.M[a] = Math.Exp(Math.Min(at.X[a], Iterate.LargestLnMolality));
        }

        var water = at.WaterKg;
        for (var i = 0; i < problem.InertMol.Length; i++) at.M[_s.ComponentCount + _s.ComplexCount + i] = problem.InertMol[i] / water;

        // Of what has no interactions the coefficient follows from the ionic strength alone; of traces it may come from a move before.
        activity.Coefficients();
        Restore();
        activity.Molalities();
    }

    private void Restore()
    {
        for (var i = 0; i < _unknown.Row.Length; i++) if (_unknown.Row[i] >= 0) at.LnGamma[i] = _gamma[i];
        at.LnAw = _lnAw;
    }

    /// <summary>The derivatives of all residuals by all unknowns.</summary>
    private void Derivatives()
    {
        Array.Clear(_matrix, 0, Size * Size);
        double water = at.WaterKg, overIonic = 0.5 / work.IonicFound;
        var (overPositive, overNegative) = solids.ProtonSlopes(water);
        for (var i = 0; i < _s.ComponentCount + _s.ComplexCount; i++)
        {
            var m = at.M[i];
            if (m == 0) continue;
            AddLnM(_s.ComponentCount, i, m * _s.ChargeSquared[i] * overIonic);
            AddLnM(Wet, i, m / Problem.MolWater);
            var h = _s.Proton[i];
            if (h != 0 && problem.FixedPh is null) AddLnM(0, i, h * m * (h > 0 ? overPositive : overNegative));
            if (i < _s.ComponentCount)
            {
                if (IsSummed(i)) AddLnM(i, i, m * solids.BalanceSlope(i, water));
                continue;
            }

            var complex = i - _s.ComponentCount;
            for (var t = _s.Start[complex]; t < _s.Start[complex + 1]; t++)
                if (IsSummed(_s.Term[t])) AddLnM(_s.Term[t], i, _s.Coefficient[t] * m * solids.BalanceSlope(_s.Term[t], water));
            if (solids.Any && _s.Water[complex] != 0) AddLnM(Size - 1, i, _s.Water[complex] * m * water / solids.WaterOfAll(water));
        }

        _matrix[_s.ComponentCount * Size + _s.ComponentCount] -= 1;
        GivenActivities();
        Interactions();
        if (solids.Any) OfSolids(water, overIonic);
    }

    private bool IsSummed(int component) => component > 0 && component != _s.Gas;

    /// <summary>Adds so many times the derivatives of ln m of something dissolved to a row.</summary>
    private void AddLnM(int row, int species, double times)
    {
        var target = _matrix.AsSpan(row * Size, Size);
        if (species < _s.ComponentCount)
        {
            target[species] += times;
            return;
        }

        var complex = species - _s.ComponentCount;
        for (var t = _s.Start[complex]; t < _s.Start[complex + 1]; t++) AddActivity(target, _s.Term[t], times * _s.Coefficient[t]);
        if (_unknown.Row[species] >= 0) target[Gammas + _unknown.Row[species]] -= times;
        else target[_s.ComponentCount] -= times * at.GammaI[species] * at.Ionic;
        target[Wet] += times * _s.Water[complex];
    }

    /// <summary>Adds so many times the derivatives of ln a of a component to a row.</summary>
    private void AddActivity(Span<double> target, int component, double times)
    {
        target[component] += times;
        target[Gammas + _unknown.Row[component]] += times;
    }

    /// <summary>The rows of a given pH and of a gas.</summary>
    private void GivenActivities()
    {
        if (problem.FixedPh is not null) AddActivity(_matrix.AsSpan(0, Size), 0, 1);
        if (_s.Gas < 0) return;
        var row = _matrix.AsSpan(_s.Gas * Size, Size);
        AddActivity(row, _s.Gas, 1);
        AddActivity(row, 0, 2);
        row[Wet] -= 1;
    }

    /// <summary>The rows of the activity coefficients and of the water activity; its sum of molalities is there already.</summary>
    private void Interactions()
    {
        var pairs = problem.Pairs;
        double ionic = at.Ionic, lnI = at.LnI, overWater = 1 / Problem.MolWater, byIonic = OsmoticSlope(ionic);
        for (var i = 0; i < _unknown.Row.Length; i++)
        {
            if (_unknown.Row[i] is not (>= 0 and var r)) continue;
            _matrix[(Gammas + r) * Size + Gammas + r] += 1;
            _matrix[(Gammas + r) * Size + _s.ComponentCount] -= at.GammaI[i] * ionic;
        }

        for (var p = 0; p < pairs.First.Length; p++)
        {
            int i = pairs.First[p], j = pairs.Second[p];
            double mi = at.M[i], mj = at.M[j], e2 = pairs.EpsilonLnI[p], e = problem.PairEpsilon[p] + e2 * lnI;
            if (_unknown.Row[j] >= 0 && mi * Math.Abs(e) > NoEffect) AddLnM(Gammas + _unknown.Row[j], i, -e * mi);
            if (_unknown.Row[i] >= 0 && mj * Math.Abs(e) > NoEffect) AddLnM(Gammas + _unknown.Row[i], j, -e * mj);
            var both = (problem.Set.ConsistentWater ? e + e2 / 2 : e) * mi * mj * overWater;
            if (Math.Abs(both) < NoEffect) continue;
            AddLnM(Wet, i, both);
            AddLnM(Wet, j, both);
            byIonic += e2 * mi * mj;
        }

        _matrix[Wet * Size + Wet] += 1;
        _matrix[Wet * Size + _s.ComponentCount] += byIonic * overWater;
    }

    /// <summary>Derivative of the Debye and Hueckel part of the water activity by ln I, mol/kg.</summary>
    private double OsmoticSlope(double ionic)
    {
        const double b = Activity.IonSize;
        var root = Math.Sqrt(ionic);
        var share = b * root / (1 + b * root);
        return -Problem.Ln10 * problem.LimitingSlope * share * share * root / (b * b);
    }

    private void OfProtonShares(ActiveSolid s, int row)
    {
        Span<double> slopes = stackalloc double[_s.ComponentCount + _s.ComplexCount];
        if (!solids.SlopesOfProtonShares(s, slopes)) return;
        for (var i = 0; i < slopes.Length; i++) if (slopes[i] != 0) AddLnM(row, i, slopes[i]);
    }

    /// <summary>The rows of the solids, and what their amounts and the water left change in the rows of the others.</summary>
    private void OfSolids(double water, double overIonic)
    {
        int wetColumn = Size - 1;
        for (var k = 0; k < solids.Present.Count; k++)
        {
            var s = solids.Present[k];
            var row = _matrix.AsSpan((FirstSolid + k) * Size, Size);
            for (var t = 0; t < s.Term.Length; t++)
            {
                AddActivity(row, s.Term[t], s.Coefficient[t]);
                if (!IsSummed(s.Term[t])) continue;
                _matrix[s.Term[t] * Size + FirstSolid + k] += s.Coefficient[t] * solids.BoundSlope(s.Term[t], water);
            }

            row[Wet] += s.Water;
            if (s.LnPure is not null) solids.Weigh(s, row, _s.ComponentCount, FirstSolid);
            if (s.Protonated.Length > 0) OfProtonShares(s, FirstSolid + k);
            if (problem.FixedPh is null) _matrix[FirstSolid + k] += s.Proton * solids.OverProton;
            _matrix[wetColumn * Size + FirstSolid + k] += s.Water / solids.WaterOfAll(water);
        }

        if (problem.FixedPh is null) _matrix[wetColumn] += (work.Positive - work.Negative + solids.ProtonsLeft()) * solids.OverProton;
        for (var a = 1; a < _s.ComponentCount; a++)
            if (a != _s.Gas) _matrix[a * Size + wetColumn] += work.Sum[a] * solids.BalanceSlope(a, water);
        for (var i = _s.ComponentCount + _s.ComplexCount; i < _s.Count; i++)
        {
            _matrix[_s.ComponentCount * Size + wetColumn] -= _s.ChargeSquared[i] * at.M[i] * overIonic;
            _matrix[Wet * Size + wetColumn] -= at.M[i] / Problem.MolWater;
        }

        _matrix[wetColumn * Size + wetColumn] += water * _s.WaterIn(at.M) / solids.WaterOfAll(water);
    }
}

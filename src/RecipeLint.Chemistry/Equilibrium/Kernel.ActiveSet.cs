namespace RecipeLint.Chemistry.Equilibrium;

internal sealed partial class Kernel
{
    private const double Supersaturated = 1e-9;

    public double WaterKg => Math.Exp(_lnW);

    /// <summary>mol per kg of the water left, by component.</summary>
    public ComponentTotals RemainingTotals()
    {
        Span<double> totals = stackalloc double[Components.Count];
        for (var a = 1; a < _nc; a++) totals[_component[a]] = _sum[a];
        return ComponentTotals.Of(totals);
    }

    /// <summary>
    /// Active-set search: the most supersaturated solid joins, one whose amount turns negative leaves, until neither happens. A solid that
    /// is a combination of those present replaces the one it uses up first, so the phase rule holds at every step. Begins from the state
    /// of the clear solution.
    /// </summary>
    public bool SolveWithSolids(List<ActiveSolid> candidates)
    {
        ActiveSolids.Clear();
        if (Search(candidates)) return true;
        foreach (var stiffness in (ReadOnlySpan<double>)[40, 300, 8])
        {
            _stiffness = stiffness;
            if (Guess(candidates) && Search(candidates)) return true;
        }
        return false;
    }

    private bool Search(List<ActiveSolid> candidates)
    {
        var barred = new HashSet<int>();
        var seen = new HashSet<string>();
        if (HasSolids)
        {
            var guessed = Standing();
            if (!(SolveActive() && Leave(null, barred, guessed))) return false;
        }
        for (var round = 0; round < 60 + 4 * candidates.Count; round++)
        {
            if (MostSupersaturated(candidates, barred) is not { } entering) return true;
            Enter(entering);
            var before = Standing();
            if (!SolveActive() || !Leave(entering, barred, before)) return false;
            if (ActiveSolids.Contains(entering)) barred.Clear();
            if (!seen.Add(string.Join(',', ActiveSolids.Select(s => s.Index).Order()) + "|" + string.Join(',', barred.Order()))) return false;
        }
        return false;
    }

    private bool Leave(ActiveSolid? entering, HashSet<int> barred, Stand possible)
    {
        while (MostNegative() is { } leaving)
        {
            if (!SolveWithout(leaving, possible)) return false;
            // A solid that was shown out in the round it came in would come back at once: it waits until another has joined.
            if (ReferenceEquals(leaving, entering)) barred.Add(leaving.Index);
        }
        return true;
    }

    /// <summary>
    /// The solution without a solid whose amount came out negative: begun where that amount is, else on the way there from the last
    /// possible state at the point where it passes through zero, else at that state.
    /// </summary>
    private bool SolveWithout(ActiveSolid leaving, Stand possible)
    {
        var here = Standing();
        double from = possible.Amount(leaving), share = from > 0 ? from / (from - leaving.Amount) : 0;
        ActiveSolids.Remove(leaving);
        if (!HasSolids) _lnW = 0;
        leaving.Amount = 0;
        if (SolveActive()) return true;
        StandAt(possible, here, share);
        if (SolveActive()) return true;
        StandAt(possible, here, 0);
        return SolveActive();
    }

    /// <summary>Where the iteration stands: unknowns and amounts.</summary>
    private readonly record struct Stand(double[] X, double LnI, double LnW, (ActiveSolid Solid, double Amount)[] Amounts)
    {
        public double Amount(ActiveSolid solid)
        {
            foreach (var (s, amount) in Amounts) if (ReferenceEquals(s, solid)) return amount;
            return 0;
        }
    }

    private Stand Standing() => new((double[])_x.Clone(), _lnI, _lnW, [.. ActiveSolids.Select(s => (s, s.Amount))]);

    /// <summary>Moves to a point between two states, for the solids present now.</summary>
    private void StandAt(Stand from, Stand to, double share)
    {
        double Between(double a, double b) => a + share * (b - a);
        for (var a = 0; a < _nc; a++) _x[a] = Between(from.X[a], to.X[a]);
        _lnI = Between(from.LnI, to.LnI);
        _lnW = HasSolids ? Between(from.LnW, to.LnW) : 0;
        foreach (var s in ActiveSolids) s.Amount = Math.Max(0, Between(from.Amount(s), to.Amount(s)));
        for (var a = 0; a < _nc; a++) _m[a] = Math.Exp(Math.Min(_x[a], LargestLnMolality));
        Evaluate(4);
    }

    /// <summary>
    /// A first guess at the set of solids from the convex problem with solids as steep species, for solutions the step-by-step search
    /// loses its way in.
    /// </summary>
    private bool Guess(List<ActiveSolid> candidates)
    {
        ActiveSolids.Clear();
        Begin(7);
        _soft = candidates;
        try
        {
            for (var round = 0; round < 12; round++)
            {
                BeginLow();
                if (!Descend(400)) return false;
                var before = _lnI;
                HoldIonicStrength(round < 4 ? 1.0 : 0.4, largestChange: 1.2);
                Activities();
                if (Math.Abs(_lnI - before) < 0.01) break;
            }
        }
        finally
        {
            _soft = [];
        }
        foreach (var s in candidates.Where(s => s.Amount > 1e-7).OrderByDescending(s => s.Amount).ThenBy(s => s.Index))
            if (Combination(s) is null) ActiveSolids.Add(s); else s.Amount = 0;
        foreach (var s in candidates) if (!ActiveSolids.Contains(s)) s.Amount = 0;
        return true;
    }

    private ActiveSolid? MostSupersaturated(List<ActiveSolid> candidates, HashSet<int> barred)
    {
        ActiveSolid? best = null;
        var highest = 0.0;
        foreach (var s in candidates)
        {
            if (barred.Contains(s.Index) || ActiveSolids.Contains(s)) continue;
            double ln = LnSaturation(s), ions = 0;
            if (ln < Supersaturated) continue;
            foreach (var v in s.Coefficient) ions += Math.Abs(v);
            // Per ion, so that a formula written with twice the atoms gains nothing.
            if (ln / ions > highest) (highest, best) = (ln / ions, s);
        }
        return best;
    }

    private ActiveSolid? MostNegative()
    {
        ActiveSolid? worst = null;
        foreach (var s in ActiveSolids)
            if (s.Amount < 0 && (worst is null || s.Amount < worst.Amount)) worst = s;
        return worst;
    }

    private void Enter(ActiveSolid entering)
    {
        entering.Amount = 0;
        if (Combination(entering) is { } shares)
        {
            var first = -1;
            var least = double.PositiveInfinity;
            for (var k = 0; k < shares.Length; k++)
            {
                if (shares[k] <= 1e-9) continue;
                var reach = ActiveSolids[k].Amount / shares[k];
                if (reach < least) (least, first) = (reach, k);
            }
            if (first >= 0)
            {
                entering.Amount = least;
                for (var k = 0; k < shares.Length; k++) ActiveSolids[k].Amount -= shares[k] * least;
                ActiveSolids[first].Amount = 0;
                ActiveSolids.RemoveAt(first);
            }
        }
        ActiveSolids.Add(entering);
    }

    /// <summary>How a solid is made up of those present, water aside; null when it is not.</summary>
    private double[]? Combination(ActiveSolid entering)
    {
        int columns = ActiveSolids.Count;
        if (columns == 0) return null;
        var a = new double[columns, columns];
        var b = new double[columns];
        var target = Vector(entering);
        var vectors = ActiveSolids.Select(Vector).ToArray();
        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < columns; j++) a[i, j] = Dot(vectors[i], vectors[j]);
            b[i] = Dot(vectors[i], target);
        }
        var flat = new double[columns * columns];
        for (var i = 0; i < columns; i++) for (var j = 0; j < columns; j++) flat[i * columns + j] = a[i, j];
        if (!DenseLu.Solve(flat, b, columns)) return null;
        var rest = (double[])target.Clone();
        for (var j = 0; j < columns; j++) for (var i = 0; i < rest.Length; i++) rest[i] -= b[j] * vectors[j][i];
        return Dot(rest, rest) < 1e-12 * Dot(target, target) ? b : null;
    }

    private double[] Vector(ActiveSolid s)
    {
        var v = new double[_nc];
        for (var t = 0; t < s.Term.Length; t++) if (s.Term[t] != _gasComponent) v[s.Term[t]] = s.Coefficient[t];
        if (_gasComponent >= 0) v[0] = s.Proton;
        return v;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>
    /// Newton with the solids present. When it fails from where it stands, the constants of the solids are moved from the present
    /// activity products to their values by degrees.
    /// </summary>
    private bool SolveActive()
    {
        var start = (double[])_x.Clone();
        double lnI = _lnI, lnW = _lnW;
        var amounts = ActiveSolids.Select(s => s.Amount).ToArray();
        if (Newton(80)) return true;
        foreach (var steps in (ReadOnlySpan<int>)[5, 40])
        {
            start.CopyTo(_x, 0);
            (_lnI, _lnW) = (lnI, lnW);
            for (var k = 0; k < amounts.Length; k++) ActiveSolids[k].Amount = amounts[k];
            Evaluate(4);
            var gaps = ActiveSolids.Select(LnSaturation).ToArray();
            var reached = true;
            for (var step = 1; reached && step <= steps; step++)
            {
                for (var k = 0; k < gaps.Length; k++) ActiveSolids[k].Offset = gaps[k] * (1 - (double)step / steps);
                reached = Newton(80);
            }
            foreach (var s in ActiveSolids) s.Offset = 0;
            if (reached) return true;
        }
        return false;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Active-set search: the most supersaturated solid joins, one whose amount turns negative leaves, until neither happens. A solid that
/// is a combination of those present replaces the one it uses up first, so the phase rule holds at every step.
/// </summary>
internal sealed class SolidSearch(Problem problem, Iterate at, Activity activity, Newton newton, SolidEquations solids, SolidGuess guess)
{
    private const double Supersaturated = 1e-9;

    /// <summary>Rounds of activities and molalities after each move where the quick way failed.</summary>
    private const int Patient = 4;

    /// <summary>Part of the water that is left from one degree of evaporation to the next, first and where that is too far.</summary>
    private const double Degree = 0.75, SmallDegree = 0.93;

    /// <summary>Finds the set, beginning from the state of the clear solution.</summary>
    public bool Run(List<ActiveSolid> candidates)
    {
        solids.Present.Clear();
        var clear = Standing();
        if (Search(candidates)) return true;
        foreach (var stiffness in (ReadOnlySpan<double>)[40, 300, 8])
        {
            // A guess of no solid at all is the clear solution, from which the search has just lost its way, and it is not solved.
            if (guess.Make(candidates, stiffness) && solids.Any && Search(candidates)) return true;
        }
        return Evaporate(candidates, clear, Degree) || Evaporate(candidates, clear, SmallDegree);
    }

    /// <summary>
    /// Begins with so much water that nothing falls out and takes it away by degrees: of one degree to the next few solids join or leave,
    /// and the way never leads through the strong, supersaturated solution in which the step-by-step search lost itself.
    /// </summary>
    private bool Evaporate(List<ActiveSolid> candidates, Stand clear, double degree)
    {
        try
        {
            var times = Math.Clamp(Math.Exp(clear.LnI), 2, 40) * 8;
            problem.Thin(times);
            solids.Present.Clear();
            foreach (var s in candidates) s.Amount = 0;
            StandAt(clear, clear, 0);
            Shift(times);
            if (!newton.Run(80, Patient)) return false;
            while (true)
            {
                if (!Search(candidates)) return false;
                if (times == 1) return true;
                var next = Math.Max(1, times * degree);
                problem.Thin(next);
                Shift(next / times);
                times = next;
                if (!solids.Any && !newton.Run(80, Patient)) return false;
            }
        }
        finally
        {
            problem.Thin(1);
        }
    }

    /// <summary>Moves to so many times the water: what is free thins, and beside solids stays as saturated as it was.</summary>
    private void Shift(double times)
    {
        var ln = Math.Log(times);
        at.LnW += ln;
        if (!solids.Any)
        {
            at.LnW = problem.LnThinned;
            for (var a = 0; a < problem.S.ComponentCount; a++) at.X[a] -= ln;
            at.LnI -= ln;
        }

        at.FreeMolalities();
        activity.Evaluate(Patient);
    }

    private bool Search(List<ActiveSolid> candidates)
    {
        var barred = new HashSet<int>();
        var seen = new HashSet<string>();
        if (solids.Any)
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
            if (solids.Present.Contains(entering)) barred.Clear();
            if (!seen.Add(string.Join(',', solids.Present.Select(s => s.Index).Order()) + "|" + string.Join(',', barred.Order())))
            {
                return false;
            }
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
        solids.Present.Remove(leaving);
        if (!solids.Any) at.LnW = problem.LnThinned;
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

    private Stand Standing() => new((double[])at.X.Clone(), at.LnI, at.LnW, [.. solids.Present.Select(s => (s, s.Amount))]);

    /// <summary>Moves to a point between two states, for the solids present now.</summary>
    private void StandAt(Stand from, Stand to, double share)
    {
        double Between(double a, double b) => a + share * (b - a);
        for (var a = 0; a < problem.S.ComponentCount; a++) at.X[a] = Between(from.X[a], to.X[a]);
        at.LnI = Between(from.LnI, to.LnI);
        at.LnW = solids.Any ? Between(from.LnW, to.LnW) : problem.LnThinned;
        foreach (var s in solids.Present) s.Amount = Math.Max(0, Between(from.Amount(s), to.Amount(s)));
        at.FreeMolalities();
        activity.Evaluate(4);
    }

    private ActiveSolid? MostSupersaturated(List<ActiveSolid> candidates, HashSet<int> barred)
    {
        ActiveSolid? best = null;
        var highest = 0.0;
        foreach (var s in candidates)
        {
            if (barred.Contains(s.Index) || solids.Present.Contains(s)) continue;
            double ln = solids.Saturation(s), ions = 0;
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
        foreach (var s in solids.Present)
            if (s.Amount < 0 && (worst is null || s.Amount < worst.Amount)) worst = s;
        return worst;
    }

    private void Enter(ActiveSolid entering)
    {
        entering.Amount = 0;
        if (guess.Combination(entering) is { } shares)
        {
            var first = -1;
            var least = double.PositiveInfinity;
            for (var k = 0; k < shares.Length; k++)
            {
                if (shares[k] <= 1e-9) continue;
                var reach = solids.Present[k].Amount / shares[k];
                if (reach < least) (least, first) = (reach, k);
            }
            if (first >= 0)
            {
                entering.Amount = least;
                for (var k = 0; k < shares.Length; k++) solids.Present[k].Amount -= shares[k] * least;
                solids.Present[first].Amount = 0;
                solids.Present.RemoveAt(first);
            }
        }
        solids.Present.Add(entering);
    }

    /// <summary>
    /// Newton with the solids present. When it fails from where it stands, it is tried with more patience, and then the constants of the
    /// solids are moved from the present activity products to their values by degrees.
    /// </summary>
    private bool SolveActive()
    {
        var start = (double[])at.X.Clone();
        double lnI = at.LnI, lnW = at.LnW;
        var amounts = solids.Present.Select(s => s.Amount).ToArray();
        if (newton.Run(80)) return true;
        foreach (var steps in (ReadOnlySpan<int>)[1, 5, 40])
        {
            start.CopyTo(at.X, 0);
            (at.LnI, at.LnW) = (lnI, lnW);
            for (var k = 0; k < amounts.Length; k++) solids.Present[k].Amount = amounts[k];
            activity.Evaluate(Patient);
            var gaps = solids.Present.Select(solids.Saturation).ToArray();
            var reached = true;
            for (var step = 1; reached && step <= steps; step++)
            {
                for (var k = 0; k < gaps.Length; k++) solids.Present[k].Offset = gaps[k] * (1 - (double)step / steps);
                reached = newton.Run(80, Patient);
            }
            foreach (var s in solids.Present) s.Offset = 0;
            if (reached) return true;
        }
        return false;
    }
}

namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>
/// Active-set search: the most supersaturated solid joins, one whose amount turns negative leaves, until neither happens. A solid that
/// is a combination of those present replaces the one it uses up first, so the phase rule holds at every step.
/// </summary>
internal sealed class SolidSearch(
    Problem problem, Iterate at, Activity activity, Newton newton, FullNewton full, SolidEquations solids, SolidGuess guess)
{
    /// <summary>
    /// Share of the water that crystals have to leave: with less, what is left between them is no solution any more (common practice, no
    /// source). Close to there several hydrates crystallise together, each drying out the others' solution, until all has set.
    /// </summary>
    public const double LeastWater = 0.25;

    private const double Supersaturated = 1e-9, StillPast = 1e-6;

    /// <summary>Part of the water that is left from one degree of evaporation to the next, and where that is too far to go on.</summary>
    private const double LongestDegree = 0.5, ShortestDegree = 0.995;

    /// <summary>Water that comes to a solution from one step of dilution to the next, times.</summary>
    private const double Dilution = 6;

    private const int MostDegrees = 150;

    /// <summary>Whether a set of solids that is not solved at once is worth the long way there: everything quicker was tried.</summary>
    private bool _patient;

    /// <summary>Whether a set of solids on the way of the last search left too little water.</summary>
    private bool _dried;

    /// <summary>
    /// Two states with fewer solids were not met, nor where nothing falls out of less than the ionic strength from which on only totals are
    /// asked; and of the two that with the smaller weight of the calibrated index is the one of higher energy.
    /// </summary>
    private const int FewestOfTwoStates = 3;

    private const double LargestShareOfTwoStates = 0.1;

    /// <summary>Share of a Gibbs energy that rounding leaves.</summary>
    private const double Alike = 1e-9;

    /// <summary>
    /// Where the search was lost: how much of its strength the solution had by then, and the share of its water that was left; 0 where it
    /// did not get anywhere.
    /// </summary>
    public double Reached { get; private set; }

    public double ShareOfWater { get; private set; }

    /// <summary>Newton steps of a look at another set of solids that did not lead to the answer.</summary>
    public int SecondLook { get; private set; }

    /// <summary>Finds the set, beginning from the state of the clear solution.</summary>
    public bool Run(List<ActiveSolid> candidates)
    {
        solids.Present.Clear();
        var clear = Standing();
        if (Search(candidates))
        {
            if (MayBeOneOfTwo(clear)) Lower(candidates, clear);
            return true;
        }

        return Evaporate(candidates, clear) || (!IsDry && Patiently(candidates, clear));
    }

    /// <summary>Whether what crystallises took up the water where the search was lost.</summary>
    public bool IsDry => Reached > 0 && ShareOfWater < LeastWater;

    private bool MayBeOneOfTwo(Stand clear) =>
        solids.Present.Count >= FewestOfTwoStates
        && clear.LnI > Math.Log(SaltVerdicts.HighestIonicStrength)
        && SaltVerdicts.CalibratedShare(at.Ionic) < LargestShareOfTwoStates;

    /// <summary>What is left to try: the search once more by the long way, from the clear solution and from guesses at the set.</summary>
    private bool Patiently(List<ActiveSolid> candidates, Stand clear)
    {
        _patient = true;
        Restore(candidates, clear, 1);
        if (Search(candidates)) return true;
        foreach (var stiffness in (ReadOnlySpan<double>)[40, 300, 8])
        {
            // A guess of no solid at all is the clear solution, from which the search has just lost its way, and it is not solved.
            if (guess.Make(candidates, stiffness) && solids.Any && Search(candidates)) return true;
        }

        return false;
    }

    /// <summary>
    /// In strong mixtures two sets of solids can each meet every equation, and which of them the search meets first hangs on where it
    /// begins. The set that is left when water is taken from the dilute solution is looked at too; of the two the one of lower Gibbs
    /// energy stays.
    /// </summary>
    private void Lower(List<ActiveSolid> candidates, Stand clear)
    {
        var found = Standing();
        var energy = GibbsEnergy();
        var before = newton.Iterations + full.Iterations;
        if (Evaporate(candidates, clear) && GibbsEnergy() < energy - Alike * Math.Abs(energy)) return;
        SecondLook = newton.Iterations + full.Iterations - before;
        Restore(candidates, found, 1);
        SolveActive();
    }

    /// <summary>
    /// Gibbs energy over R T of the solution and what fell out, mol per kg of initial water, up to what is the same for every state of the
    /// same amounts: each component by its potential in the solution, each solid by its constant.
    /// </summary>
    private double GibbsEnergy()
    {
        double all = 0, water = problem.WaterTotal;
        if (problem.IsBalanced(0)) all += solids.ProtonsLeft() * at.LnActivity(0);
        for (var a = 1; a < problem.S.ComponentCount; a++)
        {
            if (problem.IsBalanced(a)) all += solids.LeftOver(a) * at.LnActivity(a);
        }
        foreach (var s in solids.Present)
        {
            all += s.Amount * s.LnK;
            water -= s.Amount * s.Water;
        }
        for (var i = 0; i < problem.InertMol.Length; i++)
        {
            var place = problem.S.ComponentCount + problem.S.ComplexCount + i;
            if (problem.InertMol[i] > 0) all += problem.InertMol[i] * (Math.Log(problem.InertMol[i]) - at.LnW + at.LnGamma[place]);
        }
        return all + water * at.LnAw;
    }

    /// <summary>
    /// Begins with so much water that nothing falls out and takes it away by degrees: of one degree to the next few solids join or leave,
    /// and the way never leads through the strong, supersaturated solution in which the step-by-step search lost itself. A degree that is
    /// too far is taken in smaller ones.
    /// </summary>
    private bool Evaporate(List<ActiveSolid> candidates, Stand clear)
    {
        try
        {
            var times = Dilute(candidates, clear);
            if (times == 0) return false;
            var good = Standing();
            double reached = times, degree = LongestDegree;
            for (var round = 0; round < MostDegrees && degree < ShortestDegree; round++)
            {
                if ((solids.Any || Solve()) && Search(candidates))
                {
                    if (times == 1) return true;
                    (good, reached) = (Standing(), times);
                    if (at.WaterKg < LeastWater * times) break;
                    degree = Math.Max(LongestDegree, degree * degree);
                }
                else
                {
                    if (_dried)
                    {
                        (Reached, ShareOfWater) = (1 / times, 0);
                        return false;
                    }

                    Restore(candidates, good, reached);
                    // Of the way that was left, which ends at the solution itself: else the same step would be tried again.
                    degree = Math.Sqrt(Math.Max(degree, times / reached));
                }

                times = Math.Max(1, reached * degree);
                Shift(times, reached);
            }

            (Reached, ShareOfWater) = (1 / reached, Math.Exp(good.LnW) / reached);
            return false;
        }
        finally
        {
            problem.Thin(1);
        }
    }

    /// <summary>
    /// The clear solution with more and more water, until nothing falls out; returns how much, 0 when the way there was lost.
    /// </summary>
    private double Dilute(List<ActiveSolid> candidates, Stand clear)
    {
        var last = Math.Clamp(Math.Exp(clear.LnI), 2, 40) * 8;
        Restore(candidates, clear, 1);
        double times = 1;
        while (times < last)
        {
            var next = Math.Min(last, times * Dilution);
            Shift(next, times);
            if (!Solve()) return 0;
            times = next;
        }

        return times;
    }

    private bool Solve()
    {
        var here = Standing();
        if (newton.Run(80)) return true;
        Return(here);
        return full.Run(60);
    }

    /// <summary>Back to a state and the water it had.</summary>
    private void Restore(List<ActiveSolid> candidates, Stand stand, double times)
    {
        problem.Thin(times);
        solids.Present.Clear();
        foreach (var s in candidates) s.Amount = 0;
        solids.Present.AddRange(stand.Amounts.Select(a => a.Solid));
        Return(stand);
    }

    /// <summary>Moves to so many times the water: what is free thins, and beside solids stays as saturated as it was.</summary>
    private void Shift(double times, double before)
    {
        problem.Thin(times);
        var ln = Math.Log(times / before);
        at.LnW += ln;
        if (!solids.Any)
        {
            at.LnW = problem.LnThinned;
            for (var a = 0; a < problem.S.ComponentCount; a++) at.X[a] -= ln;
            at.LnI -= ln;
        }

        foreach (ref var m in at.M.AsSpan()) m *= solids.Any ? 1 : before / times;
        activity.Evaluate(1);
    }

    private bool Search(List<ActiveSolid> candidates)
    {
        var barred = new HashSet<int>();
        var seen = new HashSet<string>();
        _dried = false;
        if (solids.Any)
        {
            var guessed = Standing();
            if (!(SolveActive() && Leave(null, barred, guessed))) return false;
        }
        for (var round = 0; round < 60 + 4 * candidates.Count; round++)
        {
            if (MostSupersaturated(candidates, barred) is not { } entering) return IsSettled(candidates, barred);
            Enter(entering);
            var before = Standing();
            if (!SolveActive() || !Leave(entering, barred, before)) return false;
            if (at.WaterKg < LeastWater * Math.Exp(problem.LnThinned)) _dried = true;
            if (solids.Present.Contains(entering)) barred.Clear();
            if (!seen.Add(string.Join(',', solids.Present.Select(s => s.Index).Order()) + "|" + string.Join(',', barred.Order())))
            {
                return false;
            }
        }
        return false;
    }

    /// <summary>
    /// False where a solid that was shown out is still past its limit: the state is another one, and this way does not lead there.
    /// </summary>
    private bool IsSettled(List<ActiveSolid> candidates, HashSet<int> barred) =>
        barred.Count == 0 || MostSupersaturated(candidates, []) is not { } waiting || solids.Saturation(waiting) < StillPast;

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
    /// The solution without a solid whose amount came out negative: begun on the way there from the last possible state at the point where
    /// the amount passes through zero, else where it is, which leaves the balances open, else at that state.
    /// </summary>
    private bool SolveWithout(ActiveSolid leaving, Stand possible)
    {
        var here = Standing();
        double from = possible.Amount(leaving), share = from > 0 ? from / (from - leaving.Amount) : 0;
        solids.Present.Remove(leaving);
        if (!solids.Any) at.LnW = problem.LnThinned;
        leaving.Amount = 0;
        StandAt(possible, here, share);
        if (SolveActive()) return true;
        StandAt(here, here, 0);
        if (SolveActive()) return true;
        StandAt(possible, here, 0);
        return SolveActive();
    }

    /// <summary>Where the iteration stands: unknowns, molalities and amounts.</summary>
    private readonly record struct Stand(double[] X, double[] M, double LnI, double LnW, (ActiveSolid Solid, double Amount)[] Amounts)
    {
        public double Amount(ActiveSolid solid)
        {
            foreach (var (s, amount) in Amounts) if (ReferenceEquals(s, solid)) return amount;
            return 0;
        }
    }

    private Stand Standing() => new([.. at.X], [.. at.M], at.LnI, at.LnW, [.. solids.Present.Select(s => (s, s.Amount))]);

    /// <summary>Moves to a point between two states, for the solids present now.</summary>
    private void StandAt(Stand from, Stand to, double share)
    {
        double Between(double a, double b) => a + share * (b - a);
        for (var a = 0; a < problem.S.ComponentCount; a++) at.X[a] = Between(from.X[a], to.X[a]);
        at.LnI = Between(from.LnI, to.LnI);
        at.LnW = solids.Any ? Between(from.LnW, to.LnW) : problem.LnThinned;
        foreach (var s in solids.Present) s.Amount = Math.Max(0, Between(from.Amount(s), to.Amount(s)));
        // Complexes begin where they were: in strong solutions they are not found again from activities alone.
        for (var i = 0; i < at.M.Length; i++) at.M[i] = Between(from.M[i], to.M[i]);
        activity.Evaluate(1);
    }

    private ActiveSolid? MostSupersaturated(List<ActiveSolid> candidates, HashSet<int> barred)
    {
        ActiveSolid? best = null;
        var highest = 0.0;
        Span<double> past = stackalloc double[candidates.Count];
        solids.Saturations(candidates, past);
        for (var k = 0; k < past.Length; k++)
        {
            double ln = past[k], ions = 0;
            var s = candidates[k];
            if (ln < Supersaturated || barred.Contains(s.Index) || solids.Present.Contains(s)) continue;
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

    /// <summary>Newton with the solids present. When it fails from where it stands, everything is solved at once.</summary>
    private bool SolveActive()
    {
        var start = Standing();
        if (newton.Run(80)) return true;
        Return(start);
        if (full.Run(60)) return true;
        if (!_patient) return false;
        Return(start);
        return new MovedConstants(solids, full).Run(() =>
        {
            var here = Standing();
            return () => Return(here);
        });
    }

    /// <summary>Back to where the iteration stood with the same solids.</summary>
    private void Return(Stand stand)
    {
        StandAt(stand, stand, 0);
        foreach (var s in solids.Present) s.Amount = stand.Amount(s);
    }
}

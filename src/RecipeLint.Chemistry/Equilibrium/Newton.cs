namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>Damped Newton on the equations in logarithms.</summary>
internal sealed class Newton(
    Problem problem, Iterate at, Activity activity, NewtonEquations equations, SolidEquations solids, NewtonWork work)
{
    /// <summary>A step that leaves more than this share of the residual is slow.</summary>
    private const double Slow = 0.3;

    private const int UsualRounds = 2;

    /// <summary>Ionic strength, mol/kg, below which ion pairs hardly act on each other and one round does.</summary>
    private const double Dilute = 0.2;

    /// <summary>From so many slow steps on activities and molalities are brought into agreement more often after each move.</summary>
    private const int SlowStepsBorne = 2;

    // Activity coefficients are taken from molalities one round old. Where ion pairs act on each other that lag, and not Newton, sets the
    // pace, and in strong sulfates the iteration swings with a ratio near -1; a further round after the move takes most of it away and
    // costs less than the step that it saves.
    private int _rounds = UsualRounds;

    /// <summary>Newton steps taken so far, over all attempts.</summary>
    public int Iterations { get; private set; }

    /// <summary>
    /// Damped Newton from the state at hand. Steps are cut to a trust length, so that solid amounts stay possible, and halved while they
    /// do not lower the residual.
    /// </summary>
    /// <param name="limit">Steps it may take; a few more when it is near.</param>
    /// <param name="rounds">How often activities and molalities are brought into agreement after a move to begin with.</param>
    public bool Run(int limit, int rounds = UsualRounds)
    {
        work.Prepare(solids.Present.Count);
        activity.Evaluate(1);
        work.ProtonScale = 0;
        var worst = equations.Residuals();
        var merit = Merit();
        int polish = 0, stalled = 0, slow = 0;
        _rounds = rounds == UsualRounds && at.Ionic < Dilute ? 1 : rounds;
        bool keep = false, factored = false;
        var creep = new Creep(merit);
        var worstBefore = double.PositiveInfinity;
        for (var k = 0; k < limit || (worst < 1e-3 && k < limit + 20); k++)
        {
            if (!double.IsFinite(merit)) return false;
            Iterations++;
            // Near the answer the last factors serve again, as long as each step with them gains well over a decade.
            keep = factored && worst < 1e-2 && worst < (keep ? 0.03 : 0.3) * worstBefore;
            factored = Step(keep);
            if (!factored) return false;
            worstBefore = worst;
            if (!Descend(ref worst, ref merit, k)) stalled++;
            if (worst > Slow * worstBefore && ++slow > SlowStepsBorne) _rounds = Math.Max(_rounds, slow > 3 * SlowStepsBorne ? 4 : 2);
            if (stalled > 12 || (worst > 30 && k > 1) || (solids.Any && creep.Goes(k, merit))) return false;
            if (worst < 1e-12)
            {
                activity.Evaluate(1);
                worst = equations.Residuals();
                merit = Merit();
                if (worst < 2e-12) return true;
            }
            if (worstBefore < 1e-10 && worst > 0.3 * worstBefore && worst < 1e-10 && ++polish > 1) return Settled();
        }
        return false;
    }

    /// <summary>Takes the step, halved while it does not lower the residual; false when five halvings did not help.</summary>
    private bool Descend(ref double worst, ref double merit, int k)
    {
        var length = StepLength();
        Save();
        double before = merit, worstBefore = worst;
        for (var halving = 0; ; halving++)
        {
            Move(length);
            activity.Evaluate(_rounds);
            worst = equations.Residuals();
            merit = Merit();
            // A metal and a ligand in equal amounts: the way to the answer leads over a low ridge, which the first steps may take whole.
            if (merit <= before * (1 - 1e-4 * length) || worstBefore < 1e-10 || (k < 12 && worst < 0.5)) return true;
            if (halving == 5) return false;
            length *= 0.5;
        }
    }

    /// <summary>The Newton step from the residuals at hand, with new derivatives or with those of the step before.</summary>
    private bool Step(bool keepFactors)
    {
        for (var i = 0; i < work.Size; i++) work.Step[i] = -work.F[i];
        if (!keepFactors)
        {
            equations.Jacobian();
            if (!DenseLu.Factor(work.Jacobian, work.Pivots, work.Size)) return ShortStep();
        }
        return DenseLu.Substitute(work.Jacobian, work.Pivots, work.Step, work.Size) || ShortStep();
    }

    /// <summary>
    /// A ligand and a metal in exactly equal amounts make two rows alike: a slightly larger diagonal picks the short step.
    /// </summary>
    private bool ShortStep()
    {
        equations.Jacobian();
        for (var i = 0; i < work.Size; i++)
        {
            work.Step[i] = -work.F[i];
            work.Jacobian[i * work.Size + i] += i == work.IonicRow ? -1e-9 : 1e-9;
        }
        return DenseLu.Factor(work.Jacobian, work.Pivots, work.Size)
            && DenseLu.Substitute(work.Jacobian, work.Pivots, work.Step, work.Size);
    }

    /// <summary>Whether activity coefficients and molalities agree with each other, and do not only return every second round.</summary>
    private bool Settled()
    {
        activity.Evaluate(1);
        return equations.Residuals() < 1e-10;
    }

    private double Merit()
    {
        double sum = 0;
        for (var i = 0; i < work.Size; i++) sum += work.F[i] * work.F[i];
        return sum;
    }

    private double StepLength()
    {
        double largest = 0;
        for (var a = 0; a < problem.S.ComponentCount; a++) largest = Math.Max(largest, Math.Abs(work.Step[a]));
        var length = Math.Min(1, 12 / largest);
        var i = Math.Abs(work.Step[work.IonicRow]);
        if (i > 0) length = Math.Min(length, 1.5 / i);
        return solids.StepLength(length);
    }

    private void Save()
    {
        at.X.CopyTo(work.Saved, 0);
        work.Saved[work.IonicRow] = at.LnI;
        solids.Save();
    }

    private void Move(double length)
    {
        for (var a = 0; a < problem.S.ComponentCount; a++) at.X[a] = work.Saved[a] + length * work.Step[a];
        at.LnI = Math.Clamp(
            work.Saved[work.IonicRow] + length * work.Step[work.IonicRow], Math.Log(Iterate.LowestI), Math.Log(Iterate.HighestI));
        solids.Move(length);
    }
}

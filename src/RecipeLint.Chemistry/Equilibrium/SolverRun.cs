namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>One solve, put together: the problem and everything that works on it.</summary>
internal sealed class SolverRun : IDisposable
{
    private const int FirstTurns = 8, MostTurns = 40;

    private readonly Beginning _beginning;
    private readonly Sweep _sweep;
    private readonly Activity _activity;
    private readonly NewtonWork _work;
    private int _onTheWay;

    public readonly Problem Problem;
    public readonly Iterate At;
    public readonly Newton Newton;
    public readonly FullNewton Full;
    public readonly Descent Descent;
    public readonly SolidEquations Solids;
    public readonly SolidSearch Search;

    /// <summary>Newton steps taken so far, over all attempts but a second look that led to nothing else.</summary>
    public int Iterations => Newton.Iterations + Full.Iterations - Search.SecondLook;

    /// <summary>Newton steps taken so far, those of weaker solutions on the way among them.</summary>
    public int Effort => Newton.Iterations + Full.Iterations + _onTheWay;

    /// <summary>What is dissolved of a component by the last residuals, mol per kg of the water left.</summary>
    public double Dissolved(int component) => _work.Sum[component];

    public SolverRun(ConstantSet set, SolutionInput input)
    {
        Problem = new Problem(set, input);
        At = new Iterate(Problem);
        _activity = new Activity(Problem, At);
        _work = new NewtonWork(Problem.S, Problem.Work);
        Solids = new SolidEquations(Problem, At, _activity, _work);
        var equations = new NewtonEquations(Problem, At, _activity, Solids, _work);
        Newton = new Newton(Problem, At, _activity, equations, Solids, _work);
        Full = new FullNewton(Problem, At, _activity, equations, Solids, _work);
        Descent = new Descent(Problem, At, _activity);
        _beginning = new Beginning(Problem, At, _activity, Descent);
        _sweep = new Sweep(Problem, At, _activity);
        var guess = new SolidGuess(Problem, At, _activity, _beginning, Descent, Solids);
        Search = new SolidSearch(Problem, At, _activity, Newton, Full, Solids, guess);
    }

    public void Dispose() => Problem.Release();

    /// <summary>
    /// Solves the solution without solids. The first attempt serves nearly every solution. For hard ones the convex problem with
    /// activity coefficients held and the full Newton take turns: what they find, they find in the first turns, else it is sooner reached
    /// from a weaker solution.
    /// </summary>
    public bool Clear(SolutionInput input) =>
        (input.StartFrom is { } neighbour && Near(neighbour)) || Clear(input.StartPh, FirstTurns) || Thickened(input);

    /// <summary>The strongest that was solved on the way to a solution that was not, as a share of it; 0 when none was.</summary>
    public double Reached { get; private set; }

    /// <summary>
    /// For solutions that no way leads into at once: the same at a sixteenth of its strength, and from there stronger by degrees, each from
    /// the one before.
    /// </summary>
    private bool Thickened(SolutionInput input)
    {
        const double weakest = 1.0 / 16, degree = 1.3, smallest = 1.005;
        Equilibrium? before = null;
        double share = weakest, step = degree;
        while (true)
        {
            var weaker = input with
            {
                Totals = input.Totals.Scale(share),
                InertIons = [.. input.InertIons.Select(i => i with { MolPerKg = i.MolPerKg * share })],
                StartFrom = null,
            };
            using var other = share == 1 ? null : new SolverRun(Problem.Set, weaker);
            var run = other ?? this;
            var found = before is null ? run.Clear(input.StartPh, MostTurns) : run.Beside(before);
            _onTheWay += other?.Effort ?? 0;
            if (found)
            {
                if (share == 1) return true;
                (before, Reached) = (new ResultWriter(run, weaker).Result(), share);
            }
            else
            {
                step = Math.Sqrt(step);
                if (before is null || step < smallest) return false;
            }

            share = Math.Min(1, Reached * step);
        }
    }

    /// <summary>Lets solids form, from the state of the clear solution, which is conserved.</summary>
    /// <param name="candidates">What may form.</param>
    /// <param name="holdPh">A given pH is held meanwhile.</param>
    public bool WithSolids(List<ActiveSolid> candidates, bool holdPh)
    {
        Problem.ConserveProtonsAndWater(At, holdPh);
        return Search.Run(candidates);
    }

    private bool Clear(double startPh, int turns)
    {
        _beginning.Anew(startPh);
        _sweep.Run(2);
        _activity.Coefficients();
        if (Descent.Run(30, near: 0.05)) At.HoldIonicStrength(1, 30);
        double[] heldX = [.. At.X], heldM = [.. At.M];
        var begun = At.LnI;
        if (Newton.Run(60)) return true;
        Return(begun);
        if (Full.Run(60)) return true;
        _beginning.Anew(7);
        for (var round = 0; round < turns; round++)
        {
            _beginning.Low();
            if (!Descent.Run(300)) return false;
            At.HoldIonicStrength(round < 4 ? 1.0 : 0.4, largestChange: 1.2);
            At.X.CopyTo(heldX, 0);
            At.M.CopyTo(heldM, 0);
            var strength = At.LnI;
            if (Newton.Run(30)) return true;
            Return(strength);
        }
        return false;

        void Return(double lnI)
        {
            heldX.CopyTo(At.X, 0);
            heldM.CopyTo(At.M, 0);
            At.LnI = lnI;
            _activity.Coefficients();
        }
    }

    /// <summary>From the state of a weaker solution on the way to a strong one.</summary>
    private bool Beside(Equilibrium weaker) => Near(weaker) || (_beginning.From(weaker) && Full.Run(30));

    /// <summary>Newton from the state of a neighbour; false when it has not all the components or the way from it is too far.</summary>
    public bool Near(Equilibrium neighbour) =>
        neighbour.Converged && _beginning.From(neighbour) && Newton.Run(15) && HighlyChargedShare() < 0.1;

    /// <summary>
    /// Share of ions of charge 4 and more in the ionic strength. Where they carry it the model may have two states, and only the common
    /// beginning makes sure that it is always the same one.
    /// </summary>
    private double HighlyChargedShare()
    {
        double sum = 0;
        var z = Problem.S.Charge;
        for (var i = 0; i < z.Length; i++) if (Math.Abs(z[i]) >= 4) sum += z[i] * z[i] * At.M[i];
        return sum / 2 / At.Ionic;
    }
}

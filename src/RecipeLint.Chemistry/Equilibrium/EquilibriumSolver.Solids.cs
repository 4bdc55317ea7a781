namespace RecipeLint.Chemistry.Equilibrium;

public sealed partial class EquilibriumSolver
{
    /// <summary>
    /// Share of the water that crystals may bind before what is left is no solution any more (common practice, no source).
    /// </summary>
    private const double MostOfTheWater = 0.75;

    /// <summary>
    /// Lets solids form until none of those allowed is supersaturated: which, how much, and the solution that is left. Protons and water
    /// are conserved, so the pH follows; a charge gap left by a given pH is carried through unchanged.
    /// </summary>
    /// <param name="input">The solution; <see cref="SolutionInput.FixedPh"/> is the pH before anything falls out, or the one held.</param>
    /// <param name="allowed">Solids that may form, in any order: the order never matters.</param>
    public PrecipitationResult Precipitate(SolutionInput input, IEnumerable<Solid> allowed)
    {
        if (Reject(input) is { } reason) return new PrecipitationResult(new Equilibrium(reason, 0), reason);
        var run = new SolverRun(Constants, input);
        if (!run.Clear(input))
        {
            var lost = Lost(input, run.Reached);
            return new PrecipitationResult(new Equilibrium(lost, run.Newton.Iterations), lost);
        }
        var writer = new ResultWriter(run, input);
        var initial = writer.Result();
        var indices = new SortedSet<int>();
        foreach (var solid in allowed)
        {
            var index = IndexOf(solid);
            if (index < 0) return new PrecipitationResult(initial, $"{solid.Name} is not a solid of the constant set '{Constants.Name}'.");
            indices.Add(index);
        }
        var candidates = new List<ActiveSolid>();
        foreach (var index in indices) if (run.Problem.Describe(index, initial) is { } s) candidates.Add(s);
        if (!run.WithSolids(candidates, input.HoldPh))
            return new PrecipitationResult(initial, TakesTheWater(run.Problem, candidates)
                ? "What crystallises would take up nearly all the water as crystal water: too little is left to call it a solution."
                : "The set of solids in equilibrium with this solution was not found: the iteration did not converge.");
        var deposits = new List<Deposit>();
        foreach (var s in run.Solids.Present)
            if (s.Amount > 0) deposits.Add(new Deposit(Constants.Solids[s.Index], s.Amount));
        deposits.Sort((a, b) => IndexOf(a.Solid).CompareTo(IndexOf(b.Solid)));
        return new PrecipitationResult(initial, writer.Result(), deposits, writer.Remaining(), run.At.WaterKg);
    }

    /// <summary>Whether the hydrates that may form, the wettest first, would bind most of the water there is.</summary>
    private static bool TakesTheWater(Problem problem, List<ActiveSolid> candidates)
    {
        var left = (double[])problem.Total.Clone();
        double taken = 0;
        foreach (var solid in candidates.Where(s => s.LnPure is not null && s.Water > 0).OrderByDescending(s => s.Water))
        {
            var amount = Enumerable.Range(0, solid.Term.Length).Min(t => left[solid.Term[t]] / solid.Coefficient[t]);
            for (var t = 0; t < solid.Term.Length; t++) left[solid.Term[t]] -= solid.Coefficient[t] * amount;
            taken += solid.Water * amount;
        }

        return taken > MostOfTheWater * Problem.MolWater;
    }

    /// <summary>As <see cref="Precipitate(SolutionInput, IEnumerable{Solid})"/> with every solid of the given roles.</summary>
    public PrecipitationResult Precipitate(SolutionInput input, params ReadOnlySpan<SolidRole> roles)
    {
        var allowed = new List<Solid>();
        foreach (var solid in Constants.Solids) if (roles.Contains(solid.Role)) allowed.Add(solid);
        return Precipitate(input, allowed);
    }

    private int IndexOf(Solid solid)
    {
        var list = Constants.Solids;
        for (var i = 0; i < list.Count; i++) if (ReferenceEquals(list[i], solid)) return i;
        return -1;
    }
}

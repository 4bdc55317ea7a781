namespace RecipeLint.Chemistry.Equilibrium;

public sealed partial class EquilibriumSolver
{
    /// <summary>
    /// Lets solids form until none of those allowed is supersaturated: which, how much, and the solution that is left. Protons and water
    /// are conserved, so the pH follows; a charge gap left by a given pH is carried through unchanged.
    /// </summary>
    /// <param name="input">The solution; <see cref="SolutionInput.FixedPh"/> is the pH before anything falls out.</param>
    /// <param name="allowed">Solids that may form, in any order: the order never matters.</param>
    public PrecipitationResult Precipitate(SolutionInput input, IEnumerable<Solid> allowed)
    {
        if (Reject(input) is { } reason) return new PrecipitationResult(new Equilibrium(reason, 0), reason);
        var kernel = new Kernel(Constants, input);
        if (!kernel.Solve(input))
        {
            var lost = Lost(input);
            return new PrecipitationResult(new Equilibrium(lost, kernel.Iterations), lost);
        }
        var initial = kernel.Result(input);
        var indices = new SortedSet<int>();
        foreach (var solid in allowed)
        {
            var index = IndexOf(solid);
            if (index < 0) return new PrecipitationResult(initial, $"{solid.Name} is not a solid of the constant set '{Constants.Name}'.");
            indices.Add(index);
        }
        var candidates = new List<Kernel.ActiveSolid>();
        foreach (var index in indices) if (kernel.Describe(index) is { } s) candidates.Add(s);
        kernel.ConserveProtonsAndWater();
        if (!kernel.SolveWithSolids(candidates))
            return new PrecipitationResult(initial, "The set of solids in equilibrium with this solution was not found: the iteration did not converge.");
        var deposits = new List<Deposit>();
        foreach (var s in kernel.ActiveSolids)
            if (s.Amount > 0) deposits.Add(new Deposit(Constants.Solids[s.Index], s.Amount));
        deposits.Sort((a, b) => IndexOf(a.Solid).CompareTo(IndexOf(b.Solid)));
        return new PrecipitationResult(initial, kernel.Result(input), deposits, kernel.RemainingTotals(), kernel.WaterKg);
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

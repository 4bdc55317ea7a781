using System.Globalization;

namespace RecipeLint.Chemistry.Equilibrium;

public sealed partial class EquilibriumSolver
{
    private const string TakesTheWater =
        "What crystallises would take up nearly all the water as crystal water: too little is left to call it a solution.";

    /// <summary>
    /// Lets solids form until none of those allowed is supersaturated: which, how much, and the solution that is left. Protons and water
    /// are conserved, so the pH follows; a charge gap left by a given pH is carried through unchanged.
    /// </summary>
    /// <param name="input">The solution; <see cref="SolutionInput.FixedPh"/> is the pH before anything falls out, or the one held.</param>
    /// <param name="allowed">Solids that may form, in any order: the order never matters.</param>
    public PrecipitationResult Precipitate(SolutionInput input, IEnumerable<Solid> allowed)
    {
        if (Reject(input) is { } reason) return new PrecipitationResult(new Equilibrium(reason, 0), reason);
        using var run = new SolverRun(Constants, input);
        if (!run.Clear(input))
        {
            var lost = Lost(input, run.Reached);
            return new PrecipitationResult(new Equilibrium(lost, run.Iterations), lost) { Effort = run.Effort };
        }
        var writer = new ResultWriter(run, input);
        var initial = writer.Result();
        Span<bool> may = stackalloc bool[Constants.All.Length];
        may.Clear();
        foreach (var solid in allowed)
        {
            var index = Constants.PlaceOf(solid);
            if (index < 0) return new PrecipitationResult(initial, $"{solid.Name} is not a solid of the constant set '{Constants.Name}'.");
            may[index] = true;
        }
        var candidates = new List<ActiveSolid>();
        for (var index = 0; index < may.Length; index++)
            if (may[index] && run.Problem.Describe(index, input) is { } s) candidates.Add(s);
        var why = !run.WithSolids(candidates, input.HoldPh) ? Lost(input, run.Search)
            : run.At.WaterKg < SolidSearch.LeastWater ? Leaves(run.At.WaterKg)
            : null;
        if (why is not null) return new PrecipitationResult(initial, why) { Effort = run.Effort };
        var deposits = new List<Deposit>();
        foreach (var s in run.Solids.Present)
            if (s.Amount > 0) deposits.Add(new Deposit(Constants.Solids[s.Index], s.Amount));
        deposits.Sort((a, b) => Constants.PlaceOf(a.Solid).CompareTo(Constants.PlaceOf(b.Solid)));
        return new PrecipitationResult(initial, writer.Result(), deposits, writer.Remaining(), run.At.WaterKg) { Effort = run.Effort };
    }

    /// <summary>What is said of a state that was found, and is crystals with some brine between them.</summary>
    private static string Leaves(double water) => water < 0.01 ? TakesTheWater : string.Create(CultureInfo.InvariantCulture,
        $"What crystallises would take up all but {Math.Floor(100 * water):0} % of the water as crystal water: what is left is crystals "
            + $"wet with brine, too little to call it a solution.");

    private static string Lost(SolutionInput input, SolidSearch search) =>
        search.IsDry ? TakesTheWater
        : search.Reached > 0
        ? string.Create(CultureInfo.InvariantCulture,
            $"The set of solids in equilibrium with this solution was not found: it is too strong for the model, which goes up to "
                + $"{Math.Floor(100 * search.Reached):0} % of its strength.")
        : $"The set of solids in equilibrium with this solution was not found: {WithoutEnd(input)}";

    /// <summary>As <see cref="Precipitate(SolutionInput, IEnumerable{Solid})"/> with every solid of the given roles.</summary>
    public PrecipitationResult Precipitate(SolutionInput input, params ReadOnlySpan<SolidRole> roles)
    {
        var allowed = new List<Solid>();
        foreach (var solid in Constants.Solids) if (roles.Contains(solid.Role)) allowed.Add(solid);
        return Precipitate(input, allowed);
    }
}

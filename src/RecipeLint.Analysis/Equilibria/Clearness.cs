using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>What keeps a solution from staying clear.</summary>
/// <param name="Solid">The solid.</param>
/// <param name="Mass">g per litre that falls out; null for a soluble salt that is only close to saturation.</param>
public sealed record Clouding(Solid Solid, MassConcentration? Mass);

/// <summary>Whether a solution stays clear, or why that could not be told.</summary>
/// <param name="Cloudings">Empty when it stays clear.</param>
/// <param name="Failure">Null when the solver gave an answer.</param>
public sealed record Clearness(IReadOnlyList<Clouding> Cloudings, string? Failure)
{
    /// <summary>
    /// Less than this of a solid is not counted as a deposit: about what turns a litre faintly hazy (common practice, no source).
    /// </summary>
    public const double VisibleGramsPerLitre = 0.01;

    public bool IsClear => Failure is null && Cloudings.Count == 0;

    /// <summary>The solution before anything falls out; null when the solver gave no answer.</summary>
    public Equilibrium? Solution { get; init; }

    /// <summary>
    /// The highest saturation index of a readily forming solid or a soluble salt, for a salt the mean of its two measures: 0 is saturated.
    /// Negative infinity when no such solid has all its ions here.
    /// </summary>
    public double HighestIndex { get; init; } = double.NegativeInfinity;

    /// <summary>
    /// Looks for solids that form readily in more than a trace and for soluble salts that are not clearly below saturation.
    /// </summary>
    /// <param name="only">Looks for this solid alone; null for all.</param>
    /// <param name="startFrom">A state of nearly the same solution to begin at: it saves time and changes no answer.</param>
    public static Clearness Of(SolutionMix mix, double celsius, Solid? only = null, Equilibrium? startFrom = null)
    {
        if (mix.Failure is { } failure)
        {
            return new Clearness([], failure);
        }

        var solver = EquilibriumSolver.Product;
        var input = mix.Input(celsius) with { StartFrom = startFrom };
        var clear = solver.Solve(input);
        if (!clear.Converged)
        {
            return new Clearness([], clear.Failure);
        }

        var salts = SaltVerdicts.Of(input, clear);
        var found = new List<Clouding>();
        var readily = clear.Solids.Where(s => s.Solid.Role == SolidRole.FormsReadily).ToList();
        if (readily.Any(s => s.Index > 0 && (only is null || s.Solid == only)))
        {
            var settled = solver.Precipitate(input with { StartFrom = clear }, readily.Select(s => s.Solid));
            if (!settled.Converged)
            {
                return new Clearness([], settled.Failure);
            }

            foreach (var deposit in settled.Deposits.Where(d => only is null || d.Solid == only))
            {
                var grams = deposit.GramsPerKgInitialWater * mix.KilogramsWaterPerLitre;
                if (grams >= VisibleGramsPerLitre)
                {
                    found.Add(new Clouding(deposit.Solid, new MassConcentration(grams)));
                }
            }
        }

        foreach (var salt in salts.Where(v => v.Solid.Role == SolidRole.SolubleSalt && v.State != SaltState.Clear && (only is null || v.Solid == only)))
        {
            found.Add(new Clouding(salt.Solid, null));
        }

        var highest = readily.Select(s => s.Index)
            .Concat(salts.Where(v => v.Solid.Role == SolidRole.SolubleSalt).Select(v => v.MeanIndex()))
            .DefaultIfEmpty(double.NegativeInfinity)
            .Max();
        return new Clearness(found, null) { Solution = clear, HighestIndex = highest };
    }
}

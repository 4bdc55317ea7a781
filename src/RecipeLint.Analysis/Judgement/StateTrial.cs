using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>What a change does to a solution, computed before it is advised: the one place that says whether it helps.</summary>
/// <param name="Helps">True when what was to go is gone and nothing else of weight comes.</param>
/// <param name="Instead">What falls out instead; null when nothing does.</param>
/// <param name="Mass">How much of it, in a litre of the solution before the change.</param>
public sealed record StateTrial(bool Helps, Solid? Instead, MassConcentration Mass)
{
    /// <summary>More of what was there already than this counts as something that comes (common practice, no source).</summary>
    private const double MoreThan = 1.1;

    /// <summary>The pH that was tried; null where none was.</summary>
    public double? Ph { get; init; }

    /// <summary>What acid does to the contents beside what falls out; null for nothing.</summary>
    public AcidHarm? Harm { get; init; }

    /// <summary>The iron chelate that lets its iron go at that pH; null for none.</summary>
    public ChelateWindow? LetsGo { get; init; }

    /// <summary>What falls out before and after, the most first: not what was to go, and not made worse.</summary>
    public IReadOnlyList<Solid> Stays { get; init; } = [];

    /// <summary>A change that is known to be of no use without a computation.</summary>
    public static StateTrial Fails { get; } = new(false, null, default);

    /// <summary>At another pH, with an alkali that is not named. Null where that cannot be computed.</summary>
    /// <param name="wanted">What has to go; empty where the deposit is none that the engine computes.</param>
    public static StateTrial? WithAlkali(SolutionState before, double ph, IReadOnlyList<Solid> wanted, DepositLimits limits) =>
        Compare(before, AtPh(before, ph), wanted, limits) is { } trial ? trial with { Ph = ph } : null;

    /// <summary>At another temperature, °C.</summary>
    /// <inheritdoc cref="WithAlkali"/>
    public static StateTrial? AtTemperature(SolutionState before, double celsius, IReadOnlyList<Solid> wanted, DepositLimits limits) =>
        Compare(
            before,
            StateSolver.Solve(before.Mix, new StateRequest(before.Moment, new Temperature(celsius), before.OpenToAir, [])), wanted, limits);

    /// <summary>With pure water.</summary>
    /// <param name="litres">Of water to a litre of the solution, above 0.</param>
    /// <inheritdoc cref="WithAlkali"/>
    public static StateTrial? WithWater(SolutionState before, double litres, IReadOnlyList<Solid> wanted, DepositLimits limits) =>
        Compare(
            before,
            StateSolver.Solve(
                before.Mix.Times(1 / (1 + litres)), new StateRequest(before.Moment, before.Temperature, before.OpenToAir, [])),
            wanted, limits, 1 + litres);

    internal static SolutionState AtPh(SolutionState before, double ph) => StateSolver.Solve(
        before.Mix, new StateRequest(before.Moment, before.Temperature, before.OpenToAir, []) { SetPh = ph });

    /// <param name="times">Litres into which a litre has become.</param>
    internal static StateTrial? Compare(
        SolutionState before, SolutionState after, IReadOnlyList<Solid> wanted, DepositLimits limits, double times = 1)
    {
        if (!before.IsSolved || !after.IsSolved)
        {
            return null;
        }

        // A gel or salt that was not there, or more of one that was.
        var (was, now) = (Counted(before, limits), Counted(after, limits));
        var worse = now.Find(d => times * d.Mass.GramsPerLitre
            > MoreThan * (was.Find(w => w.Solid == d.Solid)?.Mass.GramsPerLitre ?? 0));
        return new StateTrial(
            worse is null && !now.Exists(d => wanted.Contains(d.Solid)),
            worse?.Solid,
            new MassConcentration(times * (worse?.Mass.GramsPerLitre ?? 0)))
        {
            Stays = [.. now.Where(d => d.Solid != worse?.Solid && !wanted.Contains(d.Solid)).Select(d => d.Solid)],
        };
    }

    private static List<SolidDeposit> Counted(SolutionState state, DepositLimits limits) =>
        [.. DepositJudgement.Of(state, limits).Deposits.SelectMany(d => d.Deposits)];
}

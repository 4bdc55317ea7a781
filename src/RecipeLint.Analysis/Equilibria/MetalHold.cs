using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>A share of all of a metal, 0 to 1, and how low and how high it may be for what is not known of the constants.</summary>
public readonly record struct HeldShare(double Share, double Low, double High);

/// <summary>
/// Who holds each metal of a solution if its pH were set to one value after the other at the temperature it is filled at: its chelating
/// agents, none of them, or what has fallen out. The doubt is that of the constants alone, by the law of propagation (JCGM 100:2008,
/// equation 10) with the effect of each shift computed and not linearised: the constants of a metal with an agent, those of an agent
/// with acid and that of a solid each err by themselves. Solved when asked for; nothing that judges a recipe asks.
/// </summary>
public sealed class MetalHold
{
    public const double LowestPh = 3, HighestPh = 9, PhStep = 0.25;

    /// <summary>Stands for an agent where no agent holds the metal.</summary>
    public const string NoAgent = "no chelate";

    /// <summary>Stands for an agent where the metal is not in solution.</summary>
    public const string FallenOut = "fallen out";

    /// <summary>A pair of which less than this share of both partners is bound cannot move a share that anybody sees.</summary>
    private const double Unnoticeable = 1e-4;

    private static readonly string[] Fed =
        [
            Component.FerricIron, Component.FerrousIron, Component.Manganese, Component.Zinc, Component.Copper, Component.Nickel,
            Component.Cobalt,
        ];

    private readonly List<IReadOnlyList<SolutionState>> _shifted;

    private MetalHold(SolutionMix mix, IReadOnlyList<double> ph, IReadOnlyList<SolutionState> states)
    {
        (Ph, States) = (ph, states);
        Metals = [.. Fed.Where(m => mix.Totals[m] > 0)];
        var memory = new Dictionary<Shift, (EquilibriumSolver Down, EquilibriumSolver Up)>();
        _shifted = [.. states.Select((s, i) => Shifted(mix, At(ph[i]), s, memory))];
    }

    /// <summary>What the pH is set to, rising, before anything falls out.</summary>
    public IReadOnlyList<double> Ph { get; }

    /// <summary>The state at each pH; where it could not be solved, the pH is left out.</summary>
    public IReadOnlyList<SolutionState> States { get; }

    /// <summary>Trace metals that are there, by component name.</summary>
    public IReadOnlyList<string> Metals { get; }

    /// <summary>Null without a chelating agent, or where the mix cannot be computed.</summary>
    public static MetalHold? Of(SolutionMix mix)
    {
        if (mix.Failure is not null || !Components.Chelators.Any(c => mix.Totals[c] > 0))
        {
            return null;
        }

        var (reached, states) = (new List<double>(), new List<SolutionState>());
        for (var ph = LowestPh; ph <= HighestPh; ph += PhStep)
        {
            var state = StateSolver.Solve(mix, At(ph));
            if (state.IsSolved)
            {
                reached.Add(ph);
                states.Add(state);
            }
        }

        return states.Count < 2 ? null : new MetalHold(mix, reached, states);
    }

    /// <summary>Agents that hold this share of a metal at some pH, what they hold most of first.</summary>
    public IReadOnlyList<string> AgentsOf(string metal, double leastShare) =>
    [
        .. States.SelectMany(s => s.Chelates).Where(c => c.Metal == metal && c.OfMetal > leastShare)
            .GroupBy(c => c.Agent, StringComparer.Ordinal)
            .OrderByDescending(g => g.Max(c => c.OfMetal))
            .Select(g => g.Key),
    ];

    /// <summary>The share of a holder at one of the states.</summary>
    /// <param name="index">Of the state.</param>
    /// <param name="holder">An agent, <see cref="NoAgent"/> or <see cref="FallenOut"/>.</param>
    public HeldShare Share(int index, string metal, string holder)
    {
        var share = ShareOf(States[index], metal, holder);
        double down = 0, up = 0;
        for (var i = 0; i < _shifted[index].Count; i += 2)
        {
            // One error goes one way: of its two shifts the one that takes the share further down, and the one that takes it further up.
            var (one, other) =
                (ShareOf(_shifted[index][i], metal, holder) - share, ShareOf(_shifted[index][i + 1], metal, holder) - share);
            var (least, most) = (Math.Min(0, Math.Min(one, other)), Math.Max(0, Math.Max(one, other)));
            down += least * least;
            up += most * most;
        }

        return new HeldShare(share, Math.Max(0, share - Math.Sqrt(down)), Math.Min(1, share + Math.Sqrt(up)));
    }

    /// <summary>Share of all of a metal, 0 to 1, that a holder has in one state.</summary>
    public static double ShareOf(SolutionState state, string metal, string holder)
    {
        var total = state.Mix.Totals[metal] * state.KilogramsWaterPerLitre;
        if (state.Metals.FirstOrDefault(m => m.Metal == metal) is not { } found || !(total > 0))
        {
            return holder == FallenOut ? 1 : 0;
        }

        var dissolved = Math.Clamp(found.Dissolved.MolesPerLitre / total, 0, 1);
        return holder switch
        {
            FallenOut => Math.Clamp(1 - dissolved, 0, 1),
            NoAgent => Math.Clamp(found.Unchelated.MolesPerLitre / total, 0, 1),
            _ => dissolved * state.Chelates.Where(c => c.Metal == metal && c.Agent == holder).Sum(c => c.OfMetal),
        };
    }

    private static StateRequest At(double ph) =>
        new(StateMoment.Tank, new Temperature(SolutionMix.FilledAtCelsius), false, []) { SetPh = ph };

    /// <summary>The state once more with each error down and up; of what cannot be solved so, the state itself.</summary>
    private static List<SolutionState> Shifted(
        SolutionMix mix,
        StateRequest request,
        SolutionState state,
        Dictionary<Shift, (EquilibriumSolver Down, EquilibriumSolver Up)> memory)
    {
        request = request with { StartFrom = state.Clear };
        var result = new List<SolutionState>();
        foreach (var shift in ShiftsOf(state))
        {
            if (!memory.TryGetValue(shift, out var solvers))
            {
                memory[shift] = solvers = (new EquilibriumSolver(shift.Of(-1)), new EquilibriumSolver(shift.Of(1)));
            }

            foreach (var solver in new[] { solvers.Down, solvers.Up })
            {
                var moved = StateSolver.Solve(mix, request with { Solver = solver });
                result.Add(moved.IsSolved ? moved : state);
            }
        }

        return result;
    }

    /// <summary>What can move the shares of a state.</summary>
    private static IEnumerable<Shift> ShiftsOf(SolutionState state)
    {
        var pairs = state.Chelates.Where(c => c.OfMetal > Unnoticeable || c.OfAgent > Unnoticeable).ToList();
        foreach (var pair in pairs)
        {
            yield return new Shift(pair.Metal, pair.Agent);
        }

        foreach (var agent in pairs.Select(p => p.Agent).Distinct(StringComparer.Ordinal))
        {
            yield return new Shift(Component.Hydrogen, agent);
        }

        foreach (var deposit in state.Deposits.Where(d => d.Solid.Spread > 0))
        {
            yield return new Shift(deposit.Solid.Name, null);
        }
    }

    /// <summary>One error: of the constants of two components with each other, or of a solid where there is no second.</summary>
    private readonly record struct Shift(string First, string? Second)
    {
        public ConstantSet Of(int sign) => Second is { } second
            ? ConstantSet.Product.ShiftComplexes(First, second, sign)
            : ConstantSet.Product.ShiftSolid(First, sign * ConstantSet.Product.FindSolid(First)!.Spread);
    }
}

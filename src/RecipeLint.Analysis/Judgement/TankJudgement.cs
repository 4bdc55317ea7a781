using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Judgement;

/// <summary>
/// What falls out of a final solution. A trace metal counts by the share that the plants lose, anything else by its weight; all owners are
/// judged with the limits of the one rule on tanks.
/// </summary>
public static class TankJudgement
{
    private const double LowestPh = 4, PhStep = 0.05;

    /// <summary>
    /// From this share of the iron on a chelating agent is meant for it: why it lets go is a matter of the rules on chelates.
    /// </summary>
    private const double MeantForIron = 0.1;

    private static readonly string[] TraceMetals =
    [
        Component.FerrousIron, Component.FerricIron, Component.Manganese, Component.Zinc, Component.Copper,
    ];

    /// <summary>
    /// Silica gel that sets within the hours of a spray, g/L; less of it hangs as a haze for weeks (common practice, no source).
    /// </summary>
    private const double SilicaWithinHours = 1;

    private const string SlowSilica = "Amorphous silica";

    private static readonly string[] Iron = [Component.FerrousIron, Component.FerricIron];

    /// <summary>
    /// With a pH adjustment the adjusted tank is what the plants get; what it was before lasts minutes. A spray for leaves is used within
    /// hours, before it has come to rest with the air.
    /// </summary>
    public static IReadOnlyList<SolutionState> MomentsOf(RecipeFacts recipe)
    {
        var chemistry = recipe.Chemistry;
        SolutionState[] states = chemistry.TankAdjusted is { } adjusted ? [adjusted]
            : recipe.Recipe.IsForLeaves ? [chemistry.Tank]
            : [chemistry.Tank, chemistry.TankInAir];
        return [.. states.Where(s => s.IsSolved)];
    }

    /// <summary>One deposit for each owner of which anything falls out, whether it counts or not, in the order of their names.</summary>
    public static IReadOnlyList<TankDeposit> LookedAt(RecipeFacts recipe, OwnerLimits limits) =>
        LookedAt(recipe, MomentsOf(recipe), limits);

    /// <summary>What counts of a tank at one moment, whatever it was put in for; the most first.</summary>
    /// <param name="state">Solved; of the tank of this recipe, whatever its air, age or pH.</param>
    public static IReadOnlyList<JudgedDeposit> At(RecipeFacts recipe, SolutionState state, OwnerLimits limits) =>
        [.. LookedAt(recipe, [state], limits).Select(d => d.Deposit).Where(d => d.Counts).OrderByDescending(d => d.GramsPerLitre)];

    /// <summary>The same at moments of the tank of this recipe that somebody chose; all solved.</summary>
    public static IReadOnlyList<TankDeposit> LookedAt(RecipeFacts recipe, IReadOnlyList<SolutionState> states, OwnerLimits limits) =>
        [
            .. DepositOwner.Listed
                .Where(o => states.Any(s => s.Deposits.Any(d => d.Solid.Owner == o.Name)))
                .Select(o => WorstOf(recipe, o.Name, states, limits))
                .OfType<TankDeposit>(),
        ];

    /// <summary>
    /// The worst of the moments at which it counts, for it may count by its weight at one and not by its metal at another; else of all.
    /// </summary>
    private static TankDeposit? WorstOf(RecipeFacts recipe, string owner, IReadOnlyList<SolutionState> states, OwnerLimits limits)
    {
        TankDeposit? Of(IReadOnlyList<SolutionState> among) =>
            DepositJudgement.Worst(among, s => s.Owner == owner, new DepositOwner(owner, Metals: TraceMetals), limits) is { } deposit
                ? TankJudgement.Of(recipe, deposit, limits)
                : null;
        var counting = states.Where(s => Of([s]) is { Counts: true }).ToList();
        return Of(counting.Count > 0 ? counting : states);
    }

    /// <summary>The deposits that count.</summary>
    public static IReadOnlyList<TankDeposit> Of(RecipeFacts recipe, OwnerLimits limits) =>
        [.. LookedAt(recipe, limits).Where(d => d.Counts)];

    private static TankDeposit Of(RecipeFacts recipe, JudgedDeposit deposit, OwnerLimits limits)
    {
        var metal = TraceMetals.MaxBy(m => JudgedDeposit.ShareOf(m, deposit.State, deposit.Deposits))!;
        var share = JudgedDeposit.ShareOf(metal, deposit.State, deposit.Deposits);
        var past = deposit.Tests.Where(t => t.Bar == DepositBar.PastTheLimit);

        // Lime that takes a trace of manganese along is still lime.
        if (!(share > 0) || (share < limits.MetalShare && PlainGramsPerLitre(deposit) >= limits.Visible))
        {
            return new TankDeposit(
                deposit with
                {
                    Loss = null,
                    Tests = [.. past, new DepositTest(DepositBar.EnoughToSee, deposit.GramsPerLitre, limits.Visible)],
                },
                true)
            {
                IsInTime = !recipe.Recipe.IsForLeaves || deposit.Solid.Name != SlowSilica || deposit.GramsPerLitre >= SilicaWithinHours,
            };
        }

        var left = Iron.Contains(metal) && Moles(recipe, Components.Chelators) >= MeantForIron * Moles(recipe, Iron);
        return new TankDeposit(
            deposit with
            {
                Loss = (metal, share),
                Tests = [.. past, new DepositTest(DepositBar.EnoughOfTheMetal, Rounding.SixDigits(100 * share), 100 * limits.MetalShare)],
            },
            !left);
    }

    /// <summary>g/L of what falls out without a trace metal in it.</summary>
    private static double PlainGramsPerLitre(JudgedDeposit deposit) => Rounding.SixDigits(deposit.Deposits
        .Where(d => !d.Solid.Composition.Any(c => TraceMetals.Contains(c.Key)))
        .Sum(d => d.Mass.GramsPerLitre));

    private static double Moles(RecipeFacts recipe, IReadOnlyList<string> components) =>
        components.Sum(c => recipe.ComponentMoles.GetValueOrDefault(c));

    /// <summary>
    /// The highest pH below the present one at which no solid of the same owner is past its limit; null when there is none from 4 up.
    /// </summary>
    public static double? NearestPh(JudgedDeposit deposit)
    {
        var state = deposit.State;
        var request = new StateRequest(state.Moment, state.Temperature, false, []);
        for (var pH = Math.Floor(state.PhBeforeDeposit / PhStep) * PhStep; pH >= LowestPh; pH -= PhStep)
        {
            var there = StateSolver.Clear(state.Mix, request with { SetPh = pH });
            if (there.Converged && there.Solids.All(s =>
                s.Index <= 0 || s.Solid.Role != SolidRole.FormsReadily || s.Solid.Owner != deposit.Owner.Name))
            {
                return Math.Floor((pH + 1e-9) * 10) / 10;
            }
        }

        return null;
    }
}

/// <summary>A deposit in a tank.</summary>
/// <param name="Deposit">What falls out, and the bars it has to pass.</param>
/// <param name="IsNotTheChelates">False for iron that a chelating agent was put in for: why it lets go is a matter of the rules on
/// chelates.</param>
public sealed record TankDeposit(JudgedDeposit Deposit, bool IsNotTheChelates)
{
    public bool Counts => IsNotTheChelates && IsInTime && Deposit.Counts;

    /// <summary>False for what falls out long after a spray has been used.</summary>
    public bool IsInTime { get; init; } = true;
}

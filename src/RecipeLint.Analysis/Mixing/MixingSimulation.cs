using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Mixing;

/// <summary>What becomes of a solid that is in the vessel on the way.</summary>
public enum SolidFate
{
    /// <summary>It dissolves again before the stock is finished.</summary>
    ClearsAgain,

    /// <summary>It stays, although the finished stock would hold it: it dissolves again too slowly.</summary>
    StaysAlthoughItWouldDissolve,

    /// <summary>The finished stock does not hold it either, in whatever order it is mixed.</summary>
    FallsOutOfTheStockAnyway,
}

/// <summary>A solid from its first to its last step.</summary>
/// <param name="At">The step with the most of it.</param>
/// <param name="There">The solid in that step.</param>
/// <param name="First">The step it appears in.</param>
/// <param name="Clears">The step it is gone after; null when it stays.</param>
public sealed record PassingSolid(MixingStep At, VesselSolid There, MixingStep First, MixingStep? Clears, SolidFate Fate)
{
    /// <summary>g per litre of what is in the vessel then.</summary>
    public MassConcentration Concentration => new(There.Mass.Grams / At.After.Litres);

    /// <summary>True when there is too little of it to see.</summary>
    public bool IsTrace => Concentration.GramsPerLitre < SolidDeposit.VisibleGramsPerLitre;
}

/// <summary>
/// The steps of a stock played through at the bench: the equilibrium after each, with solids that dissolve again only slowly kept once they
/// have formed. The walk is made at once and costs little; states are solved when first asked for.
/// </summary>
public sealed class MixingSimulation
{
    /// <summary>
    /// Newton steps that are spent on the steps of one stock. A stock of some twenty steps takes some hundred (counted over the examples);
    /// hundreds of salts in hardly any water can take half a minute.
    /// </summary>
    internal const int MostEffort = 3000;

    private readonly Lazy<IReadOnlyList<MixingState>> _states;
    private readonly Lazy<IReadOnlyList<IReadOnlyList<LocalExcess>>> _local;
    private readonly Lazy<MixingState> _finished;
    private readonly Lazy<IReadOnlyList<PassingSolid>> _passing;

    private MixingSimulation(StockFacts stock)
    {
        IsProcedure = stock.Stock.Steps.Any(s => s is PourStep or TopUpStep);
        Steps = MixingStep.Walk(stock);
        VesselCapacity = stock.Stock.Vessel is { } named
            ? stock.Settings.Vessels.FirstOrDefault(v => v.Name == named.Value)?.Capacity
            : null;
        var end = Steps.Count == 0 ? VesselContents.Empty : Steps[^1].After;
        Finished = end.Litres < stock.Volume.Litres ? end.WithPureWater(new Volume(stock.Volume.Litres - end.Litres)) : end;
        _states = new(Solve);
        _finished = new(() => MixingState.AtRest(Finished));
        _local = new(() => [.. Steps.Select(Local)]);
        _passing = new(FollowSolids);
    }

    /// <summary>
    /// True when the file says how the stock is mixed. One that lists only what goes in, without any water, is a composition: there is no
    /// order to judge.
    /// </summary>
    public bool IsProcedure { get; }

    public IReadOnlyList<MixingStep> Steps { get; }

    /// <summary>What the named vessel holds; null when none is named or its size is not known.</summary>
    public Volume? VesselCapacity { get; }

    /// <summary>
    /// The stock in its bottle: after the last step and, where the steps stop short of the volume it makes, filled up with pure water.
    /// </summary>
    public VesselContents Finished { get; }

    /// <summary>The state after each step, as many as <see cref="Steps"/>.</summary>
    public IReadOnlyList<MixingState> States => _states.Value;

    /// <summary>
    /// The first step that is not followed because those before it took all the work that is spent on one stock; null when all are.
    /// </summary>
    public MixingStep? NotFollowedFrom => Steps.FirstOrDefault(s => States[s.Index].IsNotFollowed);

    /// <summary>The finished stock at bench temperature as if it had been made in one stroke: what no order can avoid.</summary>
    public MixingState FinishedState => _finished.Value;

    /// <summary>What forms along the mixing line of each step, as many as <see cref="Steps"/>.</summary>
    public IReadOnlyList<IReadOnlyList<LocalExcess>> LocalExcess => _local.Value;

    /// <summary>Every solid that is in the vessel at some step, in the order they appear.</summary>
    public IReadOnlyList<PassingSolid> Passing => _passing.Value;

    /// <summary>Plays a stock through. Pure; never throws on what a stock can hold.</summary>
    public static MixingSimulation Of(StockFacts stock) => new(stock);

    private List<MixingState> Solve()
    {
        var states = new List<MixingState>(Steps.Count);
        var effort = 0;
        var locked = VesselSettling.NothingLocked;
        foreach (var step in Steps)
        {
            if (!step.Changes && states.Count > 0)
            {
                states.Add(states[^1]);
                continue;
            }

            // Each begins at the one before it, always in this order.
            var state = effort > MostEffort
                ? VesselSettling.NotFollowed(locked, step.At.Celsius)
                : VesselSettling.Settle(step.After, locked, step.At.Celsius, startFrom: states.Count == 0 ? null : states[^1].Solution);
            effort += state.Effort;
            locked = VesselSettling.LockedAfter(state, locked);
            states.Add(state);
        }

        return states;
    }

    private IReadOnlyList<LocalExcess> Local(MixingStep step)
    {
        if (ReferenceEquals(step.Before, step.After) || step.Step is PourStep or TopUpStep)
        {
            return [];
        }

        var locked = VesselSettling.NothingLocked;
        foreach (var state in States.Take(step.Index))
        {
            locked = VesselSettling.LockedAfter(state, locked);
        }

        return LocalExcessLine.Of(step.Before, step.After, locked, States[step.Index], step.At.Celsius).Solids;
    }

    private List<PassingSolid> FollowSolids()
    {
        var result = new List<PassingSolid>();
        foreach (var name in States.SelectMany(s => s.Solids).Select(s => s.Name).Distinct(StringComparer.Ordinal))
        {
            var there = Steps.Where(s => States[s.Index].Find(name) is not null).ToList();
            var most = there.MaxBy(s => States[s.Index].Find(name)!.Mass)!;
            var clears = there[^1].Index + 1 < Steps.Count ? Steps[there[^1].Index + 1] : null;
            var fate = FinishedState.Solids.Any(s => Same(s, there[0], name) && !IsTrace(s, Finished)) ? SolidFate.FallsOutOfTheStockAnyway
                : clears is null && States[^1].Find(name)!.Locked > Mass.Zero ? SolidFate.StaysAlthoughItWouldDissolve
                : SolidFate.ClearsAgain;
            result.Add(new PassingSolid(most, States[most.Index].Find(name)!, there[0], clears, fate));
        }

        return result;
    }

    /// <summary>The same solid, fresh or aged.</summary>
    private bool Same(VesselSolid end, MixingStep step, string name) =>
        end.Name == name || (end.Solid is { } aged && States[step.Index].Find(name)!.Solid?.Formula == aged.Formula);

    private static bool IsTrace(VesselSolid solid, VesselContents contents) =>
        solid.Mass.Grams / contents.Litres < SolidDeposit.VisibleGramsPerLitre;
}

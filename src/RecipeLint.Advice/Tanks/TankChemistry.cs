using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Tanks;

/// <summary>The solutions of a recipe in which something seen in tank, line or dripper can have formed, judged once.</summary>
public sealed class TankChemistry
{
    /// <summary>How much a drop has lost when its first crust shows (common practice, no source).</summary>
    private const double Dried = 10;

    /// <summary>°C of a black pipe in the sun (common practice, no source).</summary>
    private const double InTheSun = 40;

    private readonly List<(TankMoment Moment, (SolutionState State, IReadOnlyList<JudgedDeposit> Deposits) Judged)> _judged = [];
    private readonly OwnerLimits _tank;
    private readonly DepositLimits _limits;

    private TankChemistry(RecipeFacts recipe, Temperature? seenAt)
    {
        Recipe = recipe;
        SeenAt = seenAt;
        _tank = DepositOptions.OfTank(recipe.Settings);
        _limits = DepositOwner.Listed.Aggregate(DepositLimits.Default, (limits, owner) => limits.With(owner.Name, _tank));
    }

    public RecipeFacts Recipe { get; }

    /// <summary>What the plants get.</summary>
    public SolutionState Final => Recipe.Chemistry.Final;

    /// <summary>How cold or warm the tank stood; null for what the recipe or the shop says of it.</summary>
    public Temperature? SeenAt { get; }

    /// <inheritdoc cref="TankChemistry"/>
    public static TankChemistry Of(RecipeFacts recipe, Temperature? seenAt = null)
    {
        var chemistry = new TankChemistry(recipe, seenAt);
        foreach (var moment in Enum.GetValues<TankMoment>())
        {
            foreach (var state in chemistry.States(moment).Where(s => s is { IsSolved: true }).Distinct())
            {
                chemistry._judged.Add((moment, (state!, chemistry.Judge(moment, state!))));
            }
        }

        return chemistry;
    }

    /// <summary>
    /// What counts as a deposit at a moment, fresh iron and rusted iron each by itself; empty where there is no such moment.
    /// </summary>
    public IReadOnlyList<JudgedDeposit> DepositsAt(TankMoment moment) =>
        [.. _judged.Where(j => j.Moment == moment).SelectMany(j => j.Judged.Deposits)];

    /// <summary>What the plants get is judged as the rule on tanks judges it; concentrates that meet, a drying drop and bare water as any
    /// solution.</summary>
    private IReadOnlyList<JudgedDeposit> Judge(TankMoment moment, SolutionState state) =>
        moment is TankMoment.Poured or TankMoment.Air or TankMoment.Adjusted
            ? TankJudgement.At(Recipe, state, _tank)
            : DepositJudgement.Of(state, _limits).Deposits;

    /// <summary>The worst that the solids of a cause do, and where; the moment is null where the engine has nothing to say.</summary>
    public (SolidVerdict Solid, TankMoment? Moment) Of(TankCause cause)
    {
        var judged = cause.Moments.SelectMany(m => _judged.Where(j => j.Moment == m)).ToList();
        var verdict = BottleChemistry.Of(cause.Cause, [.. judged.Select(j => j.Judged)]);
        return (verdict, judged.Where(j => j.Judged.State == verdict.State).Select(j => (TankMoment?)j.Moment).FirstOrDefault());
    }

    /// <summary>
    /// g/L of a cause's solids that would still fall out at a moment if the water were pure and the pH set anew; null where no water is in
    /// it, and where it cannot be computed.
    /// </summary>
    public double? WithPureWater(TankCause cause, TankMoment moment)
    {
        if (Recipe.Water is not { } water || water.ComponentMoles.Count == 0 || !_judged.Exists(j => j.Moment == moment))
        {
            return null;
        }

        if (moment is TankMoment.Water or TankMoment.Warm)
        {
            return 0;
        }

        if (moment == TankMoment.Meeting)
        {
            return null;
        }

        var there = _judged.Find(j => j.Moment == moment).Judged;
        if (WithoutWater(moment is TankMoment.Adjusted or TankMoment.Drying) is not { } moles)
        {
            return null;
        }

        var mix = SolutionMix.Of(moles, Recipe.FinalVolume);
        var state = StateSolver.Solve(
            moment == TankMoment.Drying ? mix.Times(Dried) : mix,
            Request(there.State.Moment, there.State.Temperature.Celsius, moment != TankMoment.Poured));
        return state.IsSolved
            ? Rounding.SixDigits(state.Deposits.Where(d => cause.Cause.Solids.Contains(d.Solid.Name)).Sum(d => d.Mass.GramsPerLitre))
            : null;
    }

    /// <summary>
    /// What the recipe would be with pure water: the doses, and as much of the reagent as these take to the same pH. The acid that the
    /// alkalinity of the water took is not among it. Null where that amount cannot be computed.
    /// </summary>
    private ComponentMoles? WithoutWater(bool adjusted)
    {
        var doses = ComponentMoles.Sum([.. Recipe.Doses.Select(d => d.ComponentMoles)]);
        if (!adjusted || Recipe.Adjustment is not { Amount: not null, Reagent: { } reagent, TargetPh: { } target, PhBefore: { } was })
        {
            return doses;
        }

        var mix = SolutionMix.Of(doses, Recipe.FinalVolume);
        var water = new Mass(1000 * mix.KilogramsWaterPerLitre * Recipe.FinalVolume.Litres);
        var demand = PhDemand.Find(
            doses, water, reagent, target, new Temperature(SolutionMix.FilledAtCelsius), openToAir: true);
        if (demand.Reason is null)
        {
            return ComponentMoles.Sum([doses, demand.ComponentMoles]);
        }

        // Where the feed is past the pH by itself nobody puts in an acid, or a lye, that leads away from it.
        return demand.PhBefore is { } before && (before < target) != (was < target) ? doses : null;
    }

    /// <summary>Iron(II), of the water or of the feed, rusts in any tank; what the tank held until then counts beside it.</summary>
    private IEnumerable<SolutionState?> States(TankMoment moment) => moment switch
    {
        TankMoment.Water => [Water(SolutionMix.FilledAtCelsius)],
        TankMoment.Warm => [Water(InTheSun)],
        TankMoment.Poured => [There(Recipe.Chemistry.Tank, open: false)],
        TankMoment.Air => [Oxidised(There(Recipe.Chemistry.TankInAir, open: true)), There(Recipe.Chemistry.TankInAir, open: true)],
        TankMoment.Adjusted => Recipe.Chemistry.TankAdjusted is { } adjusted
            ? [Oxidised(There(adjusted, adjusted.OpenToAir)), There(adjusted, adjusted.OpenToAir)] : [],
        TankMoment.Meeting => [Meeting()],
        _ => Final.IsSolved
            ? [StateSolver.Solve(Final.Mix.Times(Dried), Request(StateMoment.TankInAir, SolutionMix.FilledAtCelsius, true))]
            : [],
    };

    /// <summary>The same at the temperature that was told.</summary>
    private SolutionState There(SolutionState state, bool open) => SeenAt is { } seen && state.IsSolved
        ? StateSolver.Solve(state.Mix, Request(state.Moment, seen.Celsius, open)) is { IsSolved: true } there ? there : state
        : state;

    private SolutionState Oxidised(SolutionState state) =>
        Recipe.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0 && state.IsSolved
            ? StateSolver.Solve(state.Mix.WithIronOxidised(), Request(
                state.Moment, state.Temperature.Celsius, true)) is { IsSolved: true } aged ? aged : state
            : state;

    private SolutionState? Water(double celsius) => Recipe.Water is { ComponentMoles.Count: > 0 } water && Recipe.WaterVolume.Litres > 0
        ? StateSolver.Solve(
            SolutionMix.Of(water.ComponentMoles, Recipe.WaterVolume).WithIronOxidised(), Request(StateMoment.TankInAir, celsius, true))
        : null;

    /// <summary>All concentrates that are dosed, in the proportion in which they are.</summary>
    private SolutionState? Meeting()
    {
        var stocks = Recipe.Doses.Where(d => d.Stock is not null && d.Volume.Litres > 0).ToList();
        return stocks.Count < 2 ? null : StateSolver.Solve(
            SolutionMix.Of(ComponentMoles.Sum([.. stocks.Select(s => s.ComponentMoles)]), new Volume(stocks.Sum(s => s.Volume.Litres))),
            Request(StateMoment.Tank, SolutionMix.FilledAtCelsius, false));
    }

    private static StateRequest Request(StateMoment moment, double celsius, bool open) => new(moment, new Temperature(celsius), open, []);
}

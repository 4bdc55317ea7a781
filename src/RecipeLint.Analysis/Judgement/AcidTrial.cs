using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Judgement;

/// <summary>What acid does to a vessel, tried before it is advised. Pure; never throws.</summary>
public static class AcidTrial
{
    /// <summary>
    /// pH units to the limit of an extract within which no acid is advised: the limits are orders of magnitude and products differ (common
    /// practice, no source).
    /// </summary>
    public const double ExtractRoom = 0.5;

    /// <summary>What stands in for an acid that is not named, and what takes the place of one that does harm.</summary>
    private const string Unnamed = "nitric-38";

    private static readonly string[] Others = ["sulfuric-37", "citric-acid-h2o"];

    /// <summary>Where the acid of a tank leads if nobody says (common practice, no source).</summary>
    private const double UsualTankPh = 5.5;

    /// <summary>Where silicate is tried if nobody says: below pH 9 the solubility of silica hardly changes (recalled).</summary>
    private const double SilicatePh = 6;

    /// <summary>What acid does to a stock, silicate first; null where nothing is known to suffer.</summary>
    /// <param name="ph">The pH it is brought to; null where nobody says, which counts as far enough for any extract.</param>
    public static AcidHarm? To(StockFacts stock, double? ph) =>
        To(stock.Chemistry.Mix, stock.Additions, ph)
        ?? (ph is { } there ? Brings(stock.Chemistry.Mixing, there) ?? Brings(stock.Chemistry.Coldest, there) : null);

    /// <summary>The same of the tank of a recipe, whose pH lies where plants bear it.</summary>
    public static AcidHarm? To(RecipeFacts recipe, double? ph) => To(
        recipe.Chemistry.Mix,
        [.. recipe.Doses.SelectMany(d => d.Stock is { } stock ? stock.Additions : d.Direct is { } direct ? [direct] : [])],
        ph ?? UsualTankPh) ?? Brings(recipe.Chemistry.Tank, ph ?? UsualTankPh);

    /// <summary>What acid throws out of a solution that holds it until then, such as benzoic acid; null for nothing of weight.</summary>
    private static AcidHarm? Brings(SolutionState state, double ph) =>
        state.IsSolved && ph < state.PhBeforeDeposit
            && Tried(state, ph, [], DepositLimits.Default) is { Instead: { } instead }
            ? new AcidHarm(instead.Called, null, false, instead)
            : null;

    private static AcidHarm? To(SolutionMix mix, IReadOnlyList<AdditionFacts> additions, double? ph)
    {
        if (additions.FirstOrDefault(a => a.ComponentMoles.GetValueOrDefault(Component.Silicate) > 0) is { } silicate && Gels(mix, ph))
        {
            return Harm(silicate, null, additions);
        }

        if (ChelateWindow.In(mix.MolesPerLitre).FirstOrDefault(w => w.AcidSettles && !(ph >= w.LowestInStock)) is { } lost
            && Supplier(additions, lost) is { } chelate)
        {
            return Harm(chelate, lost.LowestInStock, additions);
        }

        var extract = additions.FirstOrDefault(a => a.Substance.Extract?.FallsOutBelowPh is { } lowest
            && !(ph >= lowest.Value + ExtractRoom));
        return extract is null ? null : Harm(extract, extract.Substance.Extract!.FallsOutBelowPh!.Value, additions);
    }

    /// <summary>What brings the iron of a chelate, or where no addition brings both, the agent.</summary>
    private static AdditionFacts? Supplier(IReadOnlyList<AdditionFacts> additions, ChelateWindow window)
    {
        var agent = IronHolders.Chelators.First(c => c.Name == window.Agent).Component;
        return additions.Where(a => a.ComponentMoles.GetValueOrDefault(agent) > 0)
            .OrderByDescending(a => a.ComponentMoles.GetValueOrDefault(Component.FerricIron) > 0)
            .FirstOrDefault();
    }

    /// <summary>More silicate than stays dissolved once acid has taken its alkali away.</summary>
    private static bool Gels(SolutionMix mix, double? ph)
    {
        if (mix.Failure is not null)
        {
            return true;
        }

        var bench = new StateRequest(StateMoment.Mixing, new Temperature(SolutionMix.FilledAtCelsius), false, []);
        var soured = StateSolver.Clear(mix, bench with { SetPh = ph ?? SilicatePh });
        return !soured.Converged || soured.Solids.Any(s => s.Solid.Name == Forming.Silica && s.Index > 0);
    }

    private static AcidHarm Harm(AdditionFacts addition, double? below, IReadOnlyList<AdditionFacts> additions) => new(
        addition.Substance.Name.Split(" (")[0],
        below,
        additions.All(a => a.Substance.Id == addition.Substance.Id || a.Substance.IsPreservative));

    /// <summary>
    /// What acid up to a pH does to a stock at the moment something was seen in it: what suffers by it, else what goes and what comes. Null
    /// where that cannot be computed.
    /// </summary>
    /// <param name="state">A moment of the stock.</param>
    /// <param name="ph">Below that of the state.</param>
    /// <param name="wanted">What has to go; empty where the deposit is none that the engine computes.</param>
    public static StateTrial? Of(StockFacts stock, SolutionState state, double ph, IReadOnlyList<Solid> wanted, DepositLimits limits)
    {
        return To(stock.Chemistry.Mix, stock.Additions, ph) is { } harm
            ? StateTrial.Fails with { Harm = harm, Ph = ph }
            : Tried(state, ph, wanted, limits);
    }

    private static StateTrial? Tried(SolutionState state, double ph, IReadOnlyList<Solid> wanted, DepositLimits limits)
    {
        var after = Soured(state.Mix, ph) is { } soured
            ? StateSolver.Solve(soured, new StateRequest(state.Moment, state.Temperature, state.OpenToAir, []))
            : StateTrial.AtPh(state, ph);
        return StateTrial.Compare(state, after, wanted, limits) is { } trial ? trial with { Ph = ph } : null;
    }

    /// <summary>
    /// True when the solid falls out at neither end of the storage temperatures once the acid has brought the stock to the pH.
    /// </summary>
    /// <param name="ph">Below that of the stock.</param>
    public static bool StaysClear(StockFacts stock, Solid solid, double ph, DepositLimits limits)
    {
        if (stock.Chemistry.Mix is not { Failure: null } mix || Soured(mix, ph) is not { } soured)
        {
            return false;
        }

        return IsClearAtEnds(stock, soured, solid, limits);
    }

    private static bool IsClearAtEnds(StockFacts stock, SolutionMix soured, Solid solid, DepositLimits limits)
    {
        double[] ends = [stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius];
        return Array.TrueForAll(ends, at => DepositJudgement.Of(
            StateSolver.Solve(soured, Math.Clamp(at, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)), limits, solid).IsClear);
    }

    /// <summary>
    /// True when the solid falls out at neither end of the storage temperatures where sulfuric acid, and citric acid too, brings the stock
    /// to its pH in place of what does so now.
    /// </summary>
    /// <param name="acid">The additions that it takes the place of.</param>
    public static bool StaysClearWithAnother(
        StockFacts stock, IReadOnlyList<AdditionFacts> acid, Solid solid, DepositLimits limits)
    {
        if (stock.Chemistry.Mixing is not { IsSolved: true } now)
        {
            return false;
        }

        var without = SolutionMix.Of(
            ComponentMoles.Sum([stock.ComponentMoles, .. acid.Select(a => a.ComponentMoles.Times(-1))]), stock.Volume);
        return without.Failure is null && Array.TrueForAll(
            Others, id => Soured(without, now.PhBeforeDeposit, id) is { } soured && IsClearAtEnds(stock, soured, solid, limits));
    }

    /// <summary>
    /// True where each of some acids may stand in for what brings the stock to its pH now: nothing more falls out at either end of the
    /// storage temperatures than with that.
    /// </summary>
    /// <param name="acid">The additions that it takes the place of.</param>
    /// <param name="with">Ids of the catalogue.</param>
    public static bool MayReplace(StockFacts stock, IReadOnlyList<AdditionFacts> acid, IEnumerable<string> with, DepositLimits limits)
    {
        if (acid.Count == 0 || stock.Chemistry.Mixing is not { IsSolved: true } now)
        {
            return false;
        }

        var without = SolutionMix.Of(
            ComponentMoles.Sum([stock.ComponentMoles, .. acid.Select(a => a.ComponentMoles.Times(-1))]), stock.Volume);
        SolutionState[] ends = [stock.Chemistry.Coldest, stock.Chemistry.Warmest];
        return without.Failure is null && with.All(id => Soured(without, now.PhBeforeDeposit, id) is { } soured
            && Array.TrueForAll(ends, end => StateTrial.Compare(end, At(end, soured), [], limits) is { Helps: true }));

        static SolutionState At(SolutionState end, SolutionMix soured) =>
            StateSolver.Solve(soured, new StateRequest(end.Moment, end.Temperature, end.OpenToAir, []));
    }

    /// <summary>What stands in for an acid that plants need not be spared, by the catalogue.</summary>
    public static IReadOnlyList<string> MineralAcids { get; } = ["nitric-38", "sulfuric-37"];

    /// <summary>Acids in which the air leaves iron(II) alone for years, as phosphoric acid does not.</summary>
    public static IReadOnlyList<string> KeepingIron { get; } = Others;

    /// <summary>
    /// The same with acid up to a pH at 20 °C: nitric acid, whose salts all dissolve, so that what another acid brings along can only be
    /// worse. Null where no such amount is found.
    /// </summary>
    private static SolutionMix? Soured(SolutionMix mix, double ph, string with = Unnamed)
    {
        // What the air or time has made of the contents is in the totals alone, and the demand is asked of what was put in.
        if (mix.IronOxidised || mix.IsTurned || SubstanceCatalogue.BuiltIn.ById(with) is not { } acid)
        {
            return null;
        }

        var demand = PhDemand.Find(
            mix.MolesPerLitre, new Mass(mix.KilogramsWaterPerLitre * 1000), acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        return demand.Mass is null ? null
            : SolutionMix.Of(ComponentMoles.Sum([mix.MolesPerLitre, demand.ComponentMoles]), new Volume(1)) is { Failure: null } soured
                ? soured : null;
    }
}

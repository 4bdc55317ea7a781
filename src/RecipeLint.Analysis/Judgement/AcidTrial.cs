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

    /// <summary>Where the acid of a tank leads if nobody says (common practice, no source).</summary>
    private const double UsualTankPh = 5.5;

    /// <summary>Where silicate is tried if nobody says: below pH 9 the solubility of silica hardly changes (recalled).</summary>
    private const double SilicatePh = 6;

    /// <summary>What acid does to a stock, silicate first; null where nothing is known to suffer.</summary>
    /// <param name="ph">The pH it is brought to; null where nobody says, which counts as far enough for any extract.</param>
    public static AcidHarm? To(StockFacts stock, double? ph) => To(stock.Chemistry.Mix, stock.Additions, ph);

    /// <summary>The same of the tank of a recipe, whose pH lies where plants bear it.</summary>
    public static AcidHarm? To(RecipeFacts recipe, double? ph) => To(
        recipe.Chemistry.Mix,
        [.. recipe.Doses.SelectMany(d => d.Stock is { } stock ? stock.Additions : d.Direct is { } direct ? [direct] : [])],
        ph ?? UsualTankPh);

    private static AcidHarm? To(SolutionMix mix, IReadOnlyList<AdditionFacts> additions, double? ph)
    {
        if (additions.FirstOrDefault(a => a.ComponentMoles.GetValueOrDefault(Component.Silicate) > 0) is { } silicate && Gels(mix, ph))
        {
            return Harm(silicate, null, additions);
        }

        var extract = additions.FirstOrDefault(a => a.Substance.Extract?.FallsOutBelowPh is { } lowest
            && !(ph >= lowest.Value + ExtractRoom));
        return extract is null ? null : Harm(extract, extract.Substance.Extract!.FallsOutBelowPh!.Value, additions);
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
    /// True when the solid falls out at neither end of the storage temperatures once the acid has brought the stock to the pH. The acid is
    /// a mineral one whose salts all dissolve, nitric acid: what another brings along can only be worse.
    /// </summary>
    /// <param name="ph">Below that of the stock.</param>
    public static bool StaysClear(StockFacts stock, Solid solid, double ph, DepositLimits limits)
    {
        if (SubstanceCatalogue.BuiltIn.ById("nitric-38") is not { } acid || stock.Chemistry.Mix is not { Failure: null } mix)
        {
            return false;
        }

        var water = new Mass(mix.KilogramsWaterPerLitre * 1000 * stock.Volume.Litres);
        var demand = PhDemand.Find(stock.ComponentMoles, water, acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        if (demand.Mass is null)
        {
            return false;
        }

        var soured = SolutionMix.Of(ComponentMoles.Sum([stock.ComponentMoles, demand.ComponentMoles]), stock.Volume);
        double[] ends = [stock.StorageTemperature.Low.Celsius, stock.StorageTemperature.High.Celsius];
        return soured.Failure is null && Array.TrueForAll(ends, at => DepositJudgement.Of(
            StateSolver.Solve(soured, Math.Clamp(at, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius)), limits, solid).IsClear);
    }
}

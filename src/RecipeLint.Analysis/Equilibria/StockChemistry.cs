using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>A stock's solution chemistry: its states from the bench to the shelf.</summary>
public sealed class StockChemistry
{
    /// <summary>Stocks kept longer than this lose unprotected iron(II) to the air (common practice, no source).</summary>
    public const double AgedAfterDays = 14;

    private StockChemistry(SolutionMix mix, IReadOnlyList<SolutionState> states, bool isComplete)
    {
        Mix = mix;
        States = states;
        IsComplete = isComplete;
    }

    public SolutionMix Mix { get; }

    /// <summary>
    /// Share of its pyrophosphate or sulfamate that has to turn until its end is looked at too (common practice, no source).
    /// </summary>
    private const double LeastTurned = 0.05;

    /// <summary>
    /// Mixing, coldest, warmest, turned where pyrophosphate or sulfamate is there and kept for long, and aged where iron(II) is there and
    /// kept.
    /// </summary>
    public IReadOnlyList<SolutionState> States { get; }

    /// <summary>
    /// False when the stock could not be read whole or holds something of unknown composition: computed on what is known.
    /// </summary>
    public bool IsComplete { get; }

    public SolutionState Mixing => State(StateMoment.Mixing)!;

    public SolutionState Coldest => State(StateMoment.Coldest)!;

    public SolutionState Warmest => State(StateMoment.Warmest)!;

    /// <summary>Null without iron(II), and for a stock used up within two weeks.</summary>
    public SolutionState? Aged => State(StateMoment.Aged);

    public SolutionState? State(StateMoment moment) => States.FirstOrDefault(s => s.Moment == moment);

    /// <summary>Computes the chemistry of a stock. Pure; never throws on what a stock can hold.</summary>
    public static StockChemistry Of(StockFacts stock)
    {
        var mix = MixOf(stock, stock.ComponentMoles, stock.Volume);
        if (mix.Failure is not null && stock is { ComponentMoles.Count: 0, Additions: [var first, ..] })
        {
            mix = mix with { Failure = $"What '{first.Substance.Name}' sets free in water is not known here." };
        }

        var doubts = Gaps.Of(stock.IsComplete, stock.Additions.Select(a => a.Substance));
        var bench = new Temperature(SolutionMix.FilledAtCelsius);
        // Each begins at the one before it, always in this order.
        var mixing = StateSolver.Solve(mix, new StateRequest(StateMoment.Mixing, bench, false, doubts));
        var coldest = StateSolver.Solve(
            mix, new StateRequest(StateMoment.Coldest, stock.StorageTemperature.Low, false, doubts) { StartFrom = mixing.Clear });
        var warmest = StateSolver.Solve(
            mix, new StateRequest(StateMoment.Warmest, stock.StorageTemperature.High, false, doubts) { StartFrom = coldest.Clear });
        var states = new List<SolutionState> { mixing, coldest, warmest };
        if (Turned(stock, mix, warmest) is { } turned)
        {
            states.Add(StateSolver.Solve(turned, new StateRequest(
                StateMoment.Turned, stock.StorageTemperature.High, false, doubts)));
        }

        if (stock.ComponentMoles.GetValueOrDefault(Component.FerrousIron) > 0
            && !(stock.Stock.Keep?.For is { } shelf && shelf.Value.Days <= AgedAfterDays))
        {
            IReadOnlyList<string> aged = stock.Stock.Keep?.For is null
                ? [.. doubts, "No storage time is stated: it is taken as long enough for the air to oxidise all iron(II)."]
                : doubts;
            states.Add(StateSolver.Solve(mix.WithIronOxidised(), new StateRequest(StateMoment.Aged, bench, false, aged)));
        }

        return new StockChemistry(mix, states, doubts.Count == 0);
    }

    /// <summary>
    /// A stock, or nearly the same one, as a mix that knows its silicates and what nobody states the ions of. A pH that is measured and set
    /// stands whatever else is in it.
    /// </summary>
    /// <param name="moles">Components of the whole batch.</param>
    /// <param name="volume">What it is filled up to at 20 °C.</param>
    internal static SolutionMix MixOf(StockFacts stock, ComponentMoles moles, Volume volume)
    {
        var mix = SolutionMix.Of(moles, volume).WithSilicates(stock.Additions.Select(a => a.ComponentMoles), volume);
        return stock.Adjustments.Count > 0 ? mix
            : mix with { UnreadPerLitre = PhDoubt.Unread(stock.Additions.Select(a => (a, 1.0)), stock.Volume) };
    }

    /// <summary>
    /// What time makes of it at its warmest: pyrophosphate turns to orthophosphate, sulfamate to ammonium and sulfate. Null without any,
    /// where no time is stated and where it is too little to matter.
    /// </summary>
    private static SolutionMix? Turned(StockFacts stock, SolutionMix mix, SolutionState warmest)
    {
        if (stock.Stock.Keep?.For is not { } shelf || !warmest.IsSolved)
        {
            return null;
        }

        var (ph, celsius, days) = (warmest.Ph, warmest.Temperature.Celsius, shelf.Value.Days);
        var turned = mix;
        if (mix.Totals[Component.Pyrophosphate] > 0
            && PyrophosphateHydrolysis.ShareTurned(ph, celsius, days) is >= LeastTurned and var phosphate)
        {
            turned = turned.WithPyrophosphateTurned(phosphate);
        }

        if (mix.Totals[Component.Sulfamate] > 0 && SulfamateHydrolysis.ShareTurned(ph, celsius, days) is >= LeastTurned and var sulfamate)
        {
            turned = turned.WithSulfamateTurned(sulfamate);
        }

        return turned.IsTurned ? turned : null;
    }
}

/// <summary>What makes a computed composition incomplete, in words.</summary>
internal static class Gaps
{
    public static IReadOnlyList<string> Of(bool isComplete, IEnumerable<Substance> substances)
    {
        var gaps = new List<string>();
        if (!isComplete)
        {
            gaps.Add("Something could not be read: the state is computed without it.");
        }

        var unknown = substances.Where(s => s.Dissolves.Count == 0)
            .Select(s => s.Name)
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .ToList();
        if (unknown.Count > 0)
        {
            gaps.Add(
                $"What {string.Join(", ", unknown.Select(n => $"'{n}'"))} dissolves into is not known: the state is computed without it.");
        }

        return gaps;
    }
}

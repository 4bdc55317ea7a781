using RecipeLint.Analysis.Mixing;

namespace RecipeLint.Analysis.Hazards;

/// <summary>One step of a stock as the gate sees it.</summary>
/// <param name="Standing">What the vessel holds once the step is done.</param>
/// <param name="Meeting">What happens where the step's stream enters.</param>
internal sealed record HazardMoment(MixingStep Step, HazardReport Standing, IReadOnlyList<Hazard> Meeting);

/// <summary>The steps of a stock as written, each before the gate.</summary>
internal static class HazardWalk
{
    /// <summary>In the order of the steps. Pure; never throws on what a stock can hold.</summary>
    public static IReadOnlyList<HazardMoment> Of(StockFacts stock, HazardLimits? limits = null) =>
    [
        .. stock.Mixing.Steps.Zip(Holding.AfterEach(stock), (step, holding) => new HazardMoment(
            step, HazardGate.Of(holding, limits), HazardGate.Meeting(step.Before, step.After, limits))),
    ];
}

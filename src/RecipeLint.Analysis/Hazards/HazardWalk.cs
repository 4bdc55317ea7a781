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
    public static IReadOnlyList<HazardMoment> Of(StockFacts stock, HazardLimits? limits = null)
    {
        var unread = UnreadStep.Of(stock);
        return
        [
            .. stock.Mixing.Steps.Zip(Holding.AfterEach(stock), (step, holding) => new HazardMoment(
                step, HazardGate.Of(holding, limits),
                [.. HazardGate.Meeting(step.Before, step.After, limits), .. Heat(unread, step, limits ?? HazardLimits.Default)])),
        ];
    }

    /// <summary>What is only a name to us gets hot as well: burnt lime.</summary>
    private static IEnumerable<Hazard> Heat(IReadOnlyList<UnreadStep> unread, MixingStep step, HazardLimits limits) => unread
        .Where(u => u.Index == step.Index)
        .SelectMany(u => u.Items)
        .Where(i => i.Is(HazardRole.Quicklime))
        .Select(i => MeetingHazards.Heat(
            Holding.Of(step.Before.Additions.Select(Held.Of), Math.Max(step.Before.Litres, 1e-6)), i, limits))
        .OfType<Hazard>();
}

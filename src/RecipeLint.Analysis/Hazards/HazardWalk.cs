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
                [.. HazardGate.Meeting(step.Before, step.After, limits), .. Named(unread, step, limits ?? HazardLimits.Default)])),
        ];
    }

    /// <summary>What is only a name to us gets hot as well, burnt lime, and burns dry with an oxidising salt.</summary>
    private static IEnumerable<Hazard> Named(IReadOnlyList<UnreadStep> unread, MixingStep step, HazardLimits limits)
    {
        var there = step.Before.Additions.Select(Held.Of).ToList();
        foreach (var named in unread.Where(u => u.Index == step.Index).SelectMany(u => u.Items))
        {
            if (named.Is(HazardRole.Quicklime)
                && MeetingHazards.Heat(Holding.Of(there, Math.Max(step.Before.Litres, 1e-6)), named, limits) is { } heat)
            {
                yield return heat;
            }

            if (named.Is(HazardRole.Fuel) && step.After.FreeWaterGrams <= 0
                && there.Select(t => MeetingHazards.Dry(t, named, limits)).FirstOrDefault(d => d is not null) is { } fire)
            {
                yield return fire;
            }
        }
    }
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>What scales and measures can do.</summary>
internal static class WeighingRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new BelowScaleResolution(),
        new BelowMinimumWeight(),
        new OverScaleCapacity(),
        new ElementTooUncertain(),
        new MeasureTooCoarse(),
        new DoseWithoutMargin(),
        new DosesShiftTheVolume(),
        new SharedDosingSyringe(),
        new BatchOutlastsShelfLife(),
        new VesselTooCoarse(),
    ];
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>What falls out of solution.</summary>
internal static class PrecipitationRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new CalciumWithSulfate(),
        new PhosphateInTraceStock(),
    ];
}

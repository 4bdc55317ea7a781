using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>What keeps a stock from spoiling.</summary>
internal static class PreservationRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new CarbonWithoutPreservative(),
    ];
}

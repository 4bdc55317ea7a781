using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Preservation;

/// <summary>What keeps a stock from spoiling, and the pH that does it.</summary>
internal static class PreservationRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new CarbonWithoutPreservative(),
        new PreservativeTooWeak(),
        new PreservativeTooStrong(),
        new PreservativeWithOxidiser(),
        new NoAcidInTraceStock(),
        new StockPhOutsideRange(),
        new WeakAcidVolatile(),
        new ShelfLifeTooLong(),
    ];
}

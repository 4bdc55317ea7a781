using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>What the crop gets.</summary>
internal static class PlantRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new ElementLow(),
        new ElementHigh(),
        new ElementToxic(),
        new RatioOutOfRange(),
        new TargetMissed(),
        new ElementMissing(),
        new ChargeImbalance(),
        new EcOutsideWindow(),
        new PhOutsideWindow(),
        new SodiumOrChlorideLoad(),
        new AlkalinityNotNeutralised(),
        new AcidBringsTooMuch(),
        new WaterUnfit(),
        new ContaminantLoad(),
    ];
}

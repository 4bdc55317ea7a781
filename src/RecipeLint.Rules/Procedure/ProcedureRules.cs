using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>How a stock is mixed and labelled, RL0601 to RL0699.</summary>
internal static class ProcedureRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new MetalBeforeChelateOrAcid(),
        new ConcentrateOntoConcentrate(),
        new SlowDissolverLast(),
        new TooLittleWaterToDissolve(),
        new ToppedUpPastVolume(),
        new NoFinalVolumeStep(),
        new NoFilterAfterTechnicalSulfate(),
        new CoolsOnDissolving(),
        new LabelIncomplete(),
        new LabelContradictsContents(),
        new StocksLookAlike(),
        new MissingRinseForSmallWeight(),
        new VesselTooSmall(),
        new FallsOutWhileMixing(),
    ];
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Precipitation;

/// <summary>What falls out of solution.</summary>
internal static class PrecipitationRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new CalciumWithSulfate(),
        new CalciumWithPhosphate(),
        new PhosphateInTraceStock(),
        new IronWithPhosphate(),
        new MagnesiumAmmoniumPhosphate(),
        new SilicateWithAcidOrMetal(),
        new CarbonateInStock(),
        new MolybdateWithCalcium(),
        new MetalHydroxide(),
        new CalciumWithCitrate(),
        new SaltPastItsSolubility(),
        new DoubleSalt(),
        new ChelatingAcidDropsOut(),
        new PreservativeDropsOut(),
        new IronWithBenzoate(),
        new AnyOtherSolid(),
        new TankPrecipitate(),
        new SolutionNotJudged(),
    ];
}

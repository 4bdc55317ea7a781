using RecipeLint.Rules;

namespace RecipeLint.Reports.Handbook;

/// <summary>Something a person sees, and the rules worth reading then.</summary>
/// <param name="Danger">What to do first where the sign may mean harm; null elsewhere.</param>
internal sealed record Sign(string Seen, IReadOnlyList<string> Rules, string? Danger = null)
{
    /// <summary>
    /// The way in for somebody who stands before a bottle. That a sign points to a cause is common practice, no source; the rules compute.
    /// </summary>
    public static IReadOnlyList<Sign> All { get; } =
    [
        new("White sludge or crust in a bottle", [RuleNames.CalciumWithSulfate, RuleNames.CalciumWithPhosphate,
            RuleNames.CarbonateInStock, RuleNames.MagnesiumAmmoniumPhosphate, RuleNames.DoubleSalt]),
        new(
            "Crystals after a cold night",
            [RuleNames.SaltPastItsSolubility, RuleNames.PreservativeDropsOut, RuleNames.ChelatingAcidDropsOut, RuleNames.DoubleSalt]),
        new(
            "Rust-brown floc or film",
            [RuleNames.UnprotectedFerrousIron, RuleNames.ChelateShort, RuleNames.IronWithPhosphate, RuleNames.MetalHydroxide]),
        new(
            "A pale or blue-green floc among the trace metals",
            [RuleNames.NoAcidInTraceStock, RuleNames.PhosphateInTraceStock, RuleNames.MetalHydroxide, RuleNames.WeakAcidVolatile]),
        new("Jelly, or lumps that will not dissolve", [RuleNames.SilicateWithAcidOrMetal, RuleNames.TooLittleWaterToDissolve,
            RuleNames.SlowDissolverLast, RuleNames.CoolsOnDissolving]),
        new(
            "Mould, slime or a sour smell",
            [RuleNames.CarbonWithoutPreservative, RuleNames.PreservativeTooWeak, RuleNames.WeakAcidVolatile]),
        new("The tank clouds, or drippers crust over", [RuleNames.TankPrecipitate, RuleNames.AlkalinityNotNeutralised,
            RuleNames.ConcentrateOntoConcentrate, RuleNames.SharedDosingSyringe]),
        new("Young leaves turn yellow between the veins", [RuleNames.ChelateOutsideItsPh, RuleNames.ChelateInLight,
            RuleNames.PhOutsideWindow, RuleNames.ElementLow, RuleNames.ChelateRobbed]),
        new(
            "Leaf edges burn",
            [RuleNames.EcOutsideWindow, RuleNames.SodiumOrChlorideLoad, RuleNames.ElementToxic, RuleNames.RatioOutOfRange]),
        new("Every batch comes out different", [RuleNames.BelowScaleResolution, RuleNames.BelowMinimumWeight, RuleNames.MeasureTooCoarse,
            RuleNames.VesselTooCoarse, RuleNames.NoFinalVolumeStep]),
        new("Half or twice what was wanted", [RuleNames.TargetMissed, RuleNames.AmbiguousSubstance, RuleNames.AmbiguousUnit,
            RuleNames.DoseContradictsDilution, RuleNames.ImpossibleAnalysis]),
        new(
            "A bottle swells, fizzes, fumes or smells of chlorine",
            [
                RuleNames.HypochloriteWithAcid, RuleNames.HypochloriteWithAmmonium, RuleNames.NitricWithOrganic,
                RuleNames.OxidiserWithOrganic, RuleNames.ShelfLifeTooLong,
            ],
            "Do not open, shake or move it. Leave, keep others away, air the room from outside if you can, and follow the safety data "
                + "sheets or call the emergency service."),
    ];
}

using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>What can hurt the person who mixes, RL0701 to RL0799.</summary>
internal static class PeopleRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new WaterOntoAcid(),
        new NitricWithOrganic(),
        new HypochloriteWithAcid(),
        new HypochloriteWithAmmonium(),
        new OxidiserWithOrganic(),
        new HazardousSubstanceWithoutCaution(),
        new ReprotoxicNotice(),
        new AquaticHazardNotice(),
        new ConcentrateToDrain(),
    ];
}

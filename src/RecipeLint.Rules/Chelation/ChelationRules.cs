using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>What keeps iron in solution, and what takes it out again.</summary>
internal static class ChelationRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new ChelateShort(),
        new ChelateRobbed(),
        new ChelateOutsideItsPh(),
        new UnprotectedFerrousIron(),
        new FerrousIronInFeed(),
        new ChelateInLight(),
        new ChelateNitrogenCounted(),
    ];
}

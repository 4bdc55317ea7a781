using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Documents;
using RecipeLint.Rules.People;
using RecipeLint.Rules.Plant;
using RecipeLint.Rules.Precipitation;
using RecipeLint.Rules.Preservation;
using RecipeLint.Rules.Procedure;
using RecipeLint.Rules.Weighing;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// Every rule of the program, written down by hand so that it survives trimming; a test proves that none is missing.
/// Each family lists its own.
/// </summary>
public static class RuleList
{
    public static IReadOnlyList<Rule> All { get; } =
    [
        .. DocumentRules.All,
        .. PrecipitationRules.All,
        .. ChelationRules.All,
        .. PreservationRules.All,
        .. WeighingRules.All,
        .. PlantRules.All,
        .. ProcedureRules.All,
        .. PeopleRules.All,
    ];
}

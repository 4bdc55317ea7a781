using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A scale, measure, vessel or site the shop's settings do not list.</summary>
internal sealed class UnknownEquipment() : ProblemRule(
    "unknown-equipment",
    "Without it the judgements on weighing and storing rest on defaults. Correct the name, or describe it in the settings.",
    Harm.Damage,
    ProblemKind.UnknownEquipment), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

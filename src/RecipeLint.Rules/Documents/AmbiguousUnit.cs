using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that means two things, such as the gallon.</summary>
internal sealed class AmbiguousUnit() : ProblemRule(
    "ambiguous-unit",
    "Between two readings of an amount nothing is chosen. Write the unit out in full.",
    Harm.Loss,
    ProblemKind.AmbiguousUnit), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context, everSafe: false);
}

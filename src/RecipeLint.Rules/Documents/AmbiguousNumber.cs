using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A comma that can be a decimal mark or a thousands mark.</summary>
internal sealed class AmbiguousNumber() : ProblemRule(
    "ambiguous-number",
    "Between two readings of an amount nothing is chosen. Write decimals with a point and leave out thousands marks.",
    Harm.Loss,
    ProblemKind.AmbiguousNumber), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

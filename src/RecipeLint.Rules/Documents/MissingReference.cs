using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A reference to a file that is not there or could not be read.</summary>
internal sealed class MissingReference() : ProblemRule(
    "missing-reference",
    "What the file would bring is missing from every figure. Correct the name or the folder, or add the file.",
    Harm.Loss,
    ProblemKind.MissingReference), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context, everSafe: false);
}

using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A reference to a file outside the repository.</summary>
internal sealed class ReferenceLeavesRepository() : ProblemRule(
    "reference-leaves-repository",
    "Such a file is there on one computer and missing on the next. Copy it into the repository and refer to the copy.",
    Harm.Loss,
    ProblemKind.ReferenceLeavesRepository), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A label that cannot be true: over 100 %, or its parts exceed their total.</summary>
internal sealed class ImpossibleAnalysis() : ProblemRule(
    "impossible-analysis",
    "Every recipe with this product would inherit the fault. Copy the guaranteed analysis again with its basis.",
    Harm.Loss,
    ProblemKind.ImpossibleAnalysis), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context, everSafe: false);
}

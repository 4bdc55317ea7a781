using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A key no format of ours knows, mostly a misspelt one.</summary>
internal sealed class UnknownKey() : ProblemRule(
    "unknown-key",
    "An unknown key would be ignored, and what it says with it. Correct the spelling, or move the text into a \"note\".",
    Harm.Loss,
    ProblemKind.UnknownKey), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

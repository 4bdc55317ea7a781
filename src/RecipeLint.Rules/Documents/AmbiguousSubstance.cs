using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A name that fits several substances, mostly two hydrates of one salt.</summary>
internal sealed class AmbiguousSubstance() : ProblemRule(
    "ambiguous-substance",
    "Which one is meant decides how much of each element goes in. Read the label and write the substance with its crystal water.",
    Harm.Loss,
    ProblemKind.AmbiguousSubstance), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

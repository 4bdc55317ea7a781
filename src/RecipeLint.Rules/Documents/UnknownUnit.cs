using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that is not in the table of units.</summary>
internal sealed class UnknownUnit() : ProblemRule(
    "unknown-unit",
    "Without a known unit the amount is missing from every total. Write it in a unit such as g, mg, mL or L.",
    Harm.Loss,
    ProblemKind.UnknownUnit), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

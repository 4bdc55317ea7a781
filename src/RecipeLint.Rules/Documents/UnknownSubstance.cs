using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A substance that is neither in the catalogue nor in the shop's own list.</summary>
internal sealed class UnknownSubstance() : ProblemRule(
    "unknown-substance",
    "What it would bring is missing from every figure. Correct the name, or describe the product in a substances file.",
    Harm.Loss,
    ProblemKind.UnknownSubstance), IProposesRepairs
{
    /// <summary>Of a price's name nothing is mixed wrongly: a cost is counted wrongly.</summary>
    protected override Harm HarmOf(Problem problem) =>
        problem.Place.Pointer.Tokens is ["prices", ..] ? Harm.Damage : base.HarmOf(problem);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

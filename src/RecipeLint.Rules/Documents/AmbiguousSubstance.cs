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
    /// <summary>Of a price's name nothing is mixed wrongly: a cost is counted wrongly.</summary>
    protected override Harm HarmOf(Problem problem) =>
        problem.Place.Pointer.Tokens is ["prices", ..] ? Harm.Damage : base.HarmOf(problem);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

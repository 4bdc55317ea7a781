using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A scale, measure, vessel or site the shop's settings do not list.</summary>
internal sealed class UnknownEquipment() : ProblemRule(
    "unknown-equipment",
    "Without it the judgements on weighing and storing rest on defaults. Correct the name, or describe it in the settings.",
    Harm.Damage,
    ProblemKind.UnknownEquipment), IProposesRepairs
{
    /// <summary>
    /// A word that nearly is a known one was meant to be it: what hangs on it goes unread, as with any other misspelt name.
    /// </summary>
    protected override Harm HarmOf(Problem problem) => problem.Suggestions.Count > 0 ? Harm.Loss : base.HarmOf(problem);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

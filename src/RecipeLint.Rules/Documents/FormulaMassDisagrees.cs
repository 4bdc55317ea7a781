using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A stated molar mass that does not follow from the stated formula.</summary>
internal sealed class FormulaMassDisagrees() : ProblemRule(
    "formula-mass-disagrees",
    "One of the two is wrong, and it decides how much of each element a gram brings. Copy both from the label again.",
    Harm.Loss,
    ProblemKind.FormulaMassDisagrees), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        context.Item(finding.Place)?.KeySpan is null
            ? []
            : [Repair.Chemistry(
                "by-formula",
                "Take out the stated molar mass; the formula decides.",
                new JsonEdit.Remove(finding.Place with { Range = null }))];
}

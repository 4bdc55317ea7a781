using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Bytes that are not plain UTF-8.</summary>
internal sealed class WrongEncoding() : ProblemRule(
    "wrong-encoding",
    "Signs such as µ and ° would be read wrongly, and amounts with them. Save the file as UTF-8 without byte order mark.",
    Harm.Loss,
    ProblemKind.WrongEncoding), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.Workspace.Sources.GetValueOrDefault(finding.Place.File) is { HadByteOrderMark: true, Tree: not null }
            && finding.Place.Range is { Length: 0 })
        {
            yield return Repair.Safe(
                "drop-mark", "Save the file without its byte order mark.", new JsonEdit.DropByteOrderMark(finding.Place));
        }
    }
}

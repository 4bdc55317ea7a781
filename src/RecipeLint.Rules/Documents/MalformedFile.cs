using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Text that is not one JSON value: cut off, a comma too many, or far too long to be a recipe.</summary>
internal sealed class MalformedFile() : ProblemRule(
    "malformed-file",
    "Nothing behind that place can be read or judged. Mend the text, or take the last complete version of the file.",
    Harm.Loss,
    ProblemKind.MalformedFile,
    ProblemKind.FileTooLarge), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        // A comma too many does not keep the file from being read; whatever does is past mending by a machine.
        if (context.Workspace.Sources.GetValueOrDefault(finding.Place.File) is { Tree: not null } source
            && finding.Place.Range is { Length: 1 } range && source.Excerpt(range) == ",")
        {
            yield return Repair.Safe("drop-comma", "Take out the comma that nothing follows.", new JsonEdit.ReplaceText(finding.Place, ""));
        }
    }
}

using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A comment, which JSON does not have; it belongs into a note.</summary>
internal sealed class CommentInFile() : ProblemRule(
    "comment-in-file",
    "Other programs refuse a JSON file with comments, and the remark is lost when one writes it again. Move it into a \"note\".",
    Harm.Damage,
    ProblemKind.CommentInFile), IProposesRepairs
{
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        [Repair.Safe("into-note", "Move the comment into the note of what it speaks of.", new JsonEdit.CommentToNote(finding.Place))];
}

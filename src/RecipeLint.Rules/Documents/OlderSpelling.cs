using RecipeLint.Analysis;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A key as an earlier version of the format had it.</summary>
internal sealed class OlderSpelling : WorkspaceRule, IProposesRepairs
{
    public override string Name => "older-spelling";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var (file, source) in facts.Workspace.Sources)
        {
            var kind = DocumentKinds.FromFileName(file);
            foreach (var key in OlderKeys.All.Where(k => k.Kind == kind && source.Tree?.Root[k.Old] is not null))
            {
                yield return context.Find(
                    Place.Whole(file).Child(key.Old).Key,
                    key.Old,
                    $"The key \"{key.Old}\" is how an earlier version of the format wrote what is \"{key.Now}\" today; it is read all the "
                        + "same. Two spellings of one thing look like two things to whoever copies from this file. "
                        + $"Write \"{key.Now}\", or let '--fix' write it.",
                    Harm.Habit,
                    Odds.Certain) with
                {
                    Suggestions = [key.Now],
                };
            }
        }
    }

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        finding.Suggestions is [var now] && context.Item(Place.Whole(finding.Place.File).Child(now)) is null
            ? [Repair.Safe("as-today", $"Write \"{now}\" for \"{finding.IdPath}\".", new JsonEdit.RenameKey(finding.Place, now))]
            : [];
}

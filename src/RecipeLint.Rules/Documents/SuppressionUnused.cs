using RecipeLint.Recipes.Patching;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A suppression that keeps nothing out of the report.</summary>
internal sealed class SuppressionUnused : SuppressionRule, IProposesRepairs
{
    public override string Name => "suppression-unused";

    public override IEnumerable<Finding> Judge(IReadOnlyList<SuppressionUse> uses, RuleContext context)
    {
        foreach (var (suppression, outcome, finding) in uses)
        {
            var where = suppression.IdPath is { Length: > 0 } at ? $"at '{at}' in '{suppression.File}'" : $"in '{suppression.File}'";
            var idPath = SuppressionUse.IdPathOf(suppression);
            switch (outcome)
            {
                case SuppressionOutcome.MatchedNothing:
                    yield return context.Find(
                        suppression.Place,
                        idPath,
                        $"The suppression of '{suppression.Rule}' {where} covers nothing: this run found no such thing there. "
                        + "Left standing, it would hide the next one without anybody having looked at it. Delete it, or correct its file "
                            + "or place.",
                        Harm.Habit,
                        Odds.Certain);
                    break;
                case SuppressionOutcome.NoNumber:
                    yield return context.Find(
                        suppression.Place.Child("accepted"),
                        idPath + "/accepted",
                        $"The suppression of '{suppression.Rule}' {where} accepts a value, but the finding "
                            + $"'{finding!.Rule.Title.TrimEnd('.')}' carries no number "
                        + "to compare it with. The finding is therefore reported. Remove 'accepted' if you mean to accept it whatever it "
                            + "says.",
                        Harm.Habit,
                        Odds.Certain);
                    break;
            }
        }
    }

    /// <summary>The entry, or only the value it accepts, whichever the finding stands at.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        [Repair.Safe(
            "take-out",
            finding.Place.Pointer.Tokens[^1] == "accepted" ? "Take out the accepted value." : "Take out the suppression.",
            new JsonEdit.Remove(finding.Place))];
}

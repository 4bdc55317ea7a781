using System.Globalization;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A suppression whose last day has passed.</summary>
internal sealed class SuppressionExpired : SuppressionRule, IProposesRepairs
{
    public override string Name => "suppression-expired";

    public override IEnumerable<Finding> Judge(IReadOnlyList<SuppressionUse> uses, RuleContext context)
    {
        foreach (var (suppression, _, finding) in uses.Where(u => u.Outcome == SuppressionOutcome.Expired))
        {
            var day = suppression.Expires!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            var then = finding is null
                ? "Nothing in that file needs it any more, so delete the entry."
                : "The finding it covered is reported again. Mend the cause, or look at it afresh and set a new date with a reason.";
            yield return context.Find(
                suppression.Place.Child("expires"),
                SuppressionUse.IdPathOf(suppression) + "/expires",
                $"The suppression of '{suppression.Rule}' in '{suppression.File}' held until {day}, and that day has passed. {then}",
                Harm.Damage,
                Odds.Certain);
        }
    }

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        var pointer = finding.Place.Pointer.Value;
        var entry = finding.Place with { Pointer = new JsonPointer(pointer[..pointer.LastIndexOf('/')]) };
        yield return Repair.Chemistry("take-out", "Take out the suppression; what it covered is reported already.", new JsonEdit.Remove(entry));
    }
}

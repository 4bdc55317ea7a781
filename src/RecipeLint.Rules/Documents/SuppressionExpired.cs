using System.Globalization;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A suppression whose last day has passed, or comes within a fortnight while it still covers something.</summary>
internal sealed class SuppressionExpired : SuppressionRule, IProposesRepairs
{
    /// <summary>Two weeks to act in (common practice, no source).</summary>
    private const int DaysAhead = 14;

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

        foreach (var (suppression, _, _) in uses.Where(u => u.Outcome is SuppressionOutcome.Held or SuppressionOutcome.GotWorse))
        {
            if (context.Today is { } today
                && suppression.Expires is { } last
                && last.DayNumber - today.DayNumber is >= 0 and <= DaysAhead and var left)
            {
                yield return context.Find(
                    suppression.Place.Child("expires"),
                    SuppressionUse.IdPathOf(suppression) + "/expires",
                    $"The suppression of '{suppression.Rule}' in '{suppression.File}' holds "
                    + string.Create(
                        CultureInfo.InvariantCulture, $"until {last:yyyy-MM-dd}, {(left == 0 ? "today" : Say.Days(left) + " from now")}. ")
                    + "After that day the finding it covers is reported again. Mend the cause by then, or set a new date with a reason.",
                    Harm.Habit,
                    Odds.Certain);
            }
        }
    }

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        var pointer = finding.Place.Pointer.Value;
        var entry = finding.Place with { Pointer = new JsonPointer(pointer[..pointer.LastIndexOf('/')]) };
        yield return Repair.Chemistry(
            "take-out", "Take out the suppression; what it covered is reported already.", new JsonEdit.Remove(entry));
    }
}

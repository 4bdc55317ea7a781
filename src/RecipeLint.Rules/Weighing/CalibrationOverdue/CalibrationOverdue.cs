using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>A scale or meter whose calibration no longer holds.</summary>
internal sealed class CalibrationOverdue : WorkspaceRule
{
    public override string Name => "calibration-overdue";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        if (context.Today is not { } today)
        {
            yield break;
        }

        foreach (var calibration in LintEngine.ShopsOf(facts.Workspace)
            .SelectMany(s => s.Calibrations)
            .Distinct()
            .Where(c => c.Due < today))
        {
            var late = today.DayNumber - calibration.Due.DayNumber;
            yield return context.Find(
                calibration.Place,
                string.Create(CultureInfo.InvariantCulture, $"'{calibration.Name}' was calibrated on {calibration.Done:yyyy-MM-dd}, ")
                + string.Create(CultureInfo.InvariantCulture, $"which held until {calibration.Due:yyyy-MM-dd}: {Say.Days(late)} ago. ")
                + "Every uncertainty here rests on the accuracy it had then. Check it against a weight, buffer or standard you trust, and "
                    + "write the new day.",
                Harm.Habit,
                Odds.Certain,
                Certainty.Practice);
        }
    }
}

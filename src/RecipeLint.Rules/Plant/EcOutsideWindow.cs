using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>The computed conductivity against the recipe's own target, else against the window of the crop.</summary>
public sealed class EcOutsideWindow : RecipeRule, IProposesRepairs
{
    public override string Name => "ec-outside-window";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete || recipe.Chemistry is not { IsComplete: true, Final: { IsSolved: true, Conductivity: { At25: { } at25 } conductivity } })
        {
            yield break;
        }

        var found = Rounding.SixDigits(at25.MillisiemensPerCentimetre);
        if (RecipePlaces.Target(recipe, "EC") is { Number: > 0 and { } asked } target)
        {
            var allowed = target.Tolerance?.HalfWidth(asked) ?? (asked * context.Number("tolerance") / 100);
            if (Rounding.SixDigits(Math.Abs(found - asked)) > Rounding.SixDigits(allowed))
            {
                yield return Missed(target, found, asked, allowed, conductivity.EstimateBecause.Count > 0, context);
                yield break;
            }
        }

        // Where a main nutrient is missing altogether, the low EC follows from that.
        if (recipe.Profile.Ec is not var (low, high) || (!Bound.IsUnder(found, low) && !Bound.IsOver(found, high)) || (found < low && Nutrients.LacksAMainNutrient(recipe)))
        {
            yield break;
        }

        var limit = found > high ? high : low;
        var factor = limit / found;
        var place = RecipePlaces.TargetOrDoses(recipe, "EC");
        yield return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#EC",
            $"The final solution computes to {Say.Number(found)} mS/cm at 25 °C; the '{recipe.Profile.Name}' profile runs from {Say.Number(low)} to {Say.Number(high)} mS/cm. "
            + (found > high
                ? "Salt holds back the water the roots want, and leaf edges burn on a bright day. "
                : "The proportions may be right, but there is too little of everything for a growing crop. ")
            + $"All doses times {Say.Number(factor)} would bring it to the {(found > high ? "upper" : "lower")} end, as far as the doses and not the water make it.",
            certainty: recipe.Profile.WindowsArePractice ? Certainty.Practice : Certainty.Estimate) with
        {
            Measured = new Measured("EC", found, limit, "mS/cm"),
            Values = [new NamedValue("EC", found, "mS/cm"), new NamedValue("limit", limit, "mS/cm")],
            Related = recipe.Water?.Water is { Ec: { } ec } ? [new RelatedPlace(ec.Place, "conductivity of the source water")] : [],
        };
    }

    private static Finding Missed(Target target, double found, double asked, double allowed, bool estimate, RuleContext context) =>
        context.Find(
            target.Place,
            $"The final solution computes to {Say.Number(found)} mS/cm at 25 °C where {Say.Number(asked)} mS/cm is wanted (allowed ±{Say.Number(allowed)}). "
            + "Either a dose or the target is wrong, or the figure was meant on another scale or at another temperature. "
            + "Compare the doses with the recipe the target comes from.",
            certainty: estimate ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("EC", found, asked, "mS/cm"),
            Values = [new NamedValue("EC", found, "mS/cm"), new NamedValue("target", asked, "mS/cm")],
        };

    /// <summary>All doses in one proportion.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is { } recipe && finding.Measured is { } ec)
        {
            // Conductivity follows the doses nearly, not quite, in proportion. A target has two sides, a window is passed on one.
            var ratio = ec.Limit / ec.Value;
            yield return finding.Values.Any(v => v.Name == "target")
                ? new RepairProposal.Ladder(new[] { 1, 1.05, 1.1, 0.95, 1.15, 0.9, 1.2 }.Select(p => Contributions.AllDoses(context, recipe, Math.Pow(ratio, p))).OfType<Repair>())
                : new RepairProposal.Tuned(f => Contributions.AllDoses(context, recipe, f), 1, ec.Value > ec.Limit ? 0.2 : 5);
        }
    }
}

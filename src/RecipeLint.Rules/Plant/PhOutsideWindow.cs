using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>
/// The pH the recipe aims at against the window of the crop, and whether it gets there. A feed without adjustment is hardly buffered and
/// rests near pH 5, so it is judged only where roots would be harmed.
/// </summary>
public sealed class PhOutsideWindow : RecipeRule, IProposesRepairs
{
    public override string Name => "ph-outside-window";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var target = RecipePlaces.Target(recipe, "pH");
        var wrong = Aims(recipe, target).Where(a => !IsInside(recipe, a.Value)).DistinctBy(a => a.Value).ToList();
        foreach (var aim in wrong)
        {
            yield return AimedWrong(recipe, Rounding.SixDigits(aim.Value), aim.Place, context);
        }

        if (wrong.Count > 0 || !recipe.IsComplete)
        {
            yield break;
        }

        if (recipe.Adjustment is { Amount: null, Reagent: not null, TargetPh: { } aimed, PhBefore: { } before } stuck)
        {
            yield return Unreachable(stuck.Place, stuck.Reagent.Name, aimed, before, context);
        }
        else if (recipe.Chemistry is { IsComplete: true, Final: { IsSolved: true, Ph: var ph } })
        {
            var found = Rounding.SixDigits(ph);
            if (target is { Number: { } asked })
            {
                var allowed = target.Tolerance?.HalfWidth(asked) ?? context.Number("tolerance");
                if (Rounding.SixDigits(Math.Abs(found - asked)) > allowed)
                {
                    yield return Missed(recipe, target, found, asked, allowed, context);
                }
            }
            else if (Harmful(found, context) is { } limit && !(AlkalinityNotNeutralised.Left(recipe) > 1 && found > limit))
            {
                yield return Extreme(recipe, found, limit, context);
            }
        }
    }

    internal static IEnumerable<Located<double>> Aims(RecipeFacts recipe, Target? target)
    {
        if (recipe.Recipe.Adjust?.Target is { } adjusted)
        {
            yield return adjusted;
        }

        if (target is { Number: { } stated })
        {
            yield return new Located<double>(stated, target.Place);
        }
    }

    private static bool IsInside(RecipeFacts recipe, double ph) => recipe.Profile.Ph is not var (low, high) || (ph >= low && ph <= high);

    private static double? Harmful(double ph, RuleContext context) =>
        ph < context.Number("lowest") ? context.Number("lowest") : ph > context.Number("highest") ? context.Number("highest") : null;

    private static Finding AimedWrong(RecipeFacts recipe, double aimed, Place place, RuleContext context)
    {
        var (low, high) = recipe.Profile.Ph!.Value;
        var limit = aimed > high ? high : low;
        return context.Find(
            place,
            $"The recipe aims at pH {Say.Number(aimed)}; the '{recipe.Profile.Name}' profile runs from {Say.Number(low)} to {Say.Number(high)}. "
            + (aimed > high
                ? "Iron, manganese and phosphate are hard to take up there. "
                : "Roots suffer and calcium and magnesium are hard to take up there. ")
            + $"Aim between {Say.Number(low)} and {Say.Number(high)}.",
            certainty: recipe.Profile.WindowsArePractice ? Certainty.Practice : Certainty.Computed) with
        {
            Measured = new Measured("pH", aimed, limit, ""),
            Values = [new NamedValue("pH", aimed, ""), new NamedValue("limit", limit, "")],
        };
    }

    private static Finding Unreachable(Place place, string reagent, double aimed, double before, RuleContext context) =>
        context.Find(
            place,
            $"pH {Say.Number(aimed)} cannot be reached with {reagent}: the solution already stands at pH {Say.Number(before)}. "
            + (before < aimed ? "An acid or a neutral salt only takes it further down. " : "An alkali or a neutral salt only takes it further up. ")
            + $"Name {(before < aimed ? "an alkali, such as potassium hydroxide," : "an acid, such as nitric acid,")} or leave the pH as it is.",
            certainty: Certainty.Estimate) with
        {
            Measured = new Measured("pH", Rounding.SixDigits(before), aimed, ""),
            Values = [new NamedValue("pH before", Rounding.SixDigits(before), ""), new NamedValue("pH", aimed, "")],
        };

    private static Finding Missed(RecipeFacts recipe, Target target, double found, double asked, double allowed, RuleContext context) =>
        context.Find(
            target.Place,
            $"The final solution computes to pH {Say.Number(found)} at rest with the air where pH {Say.Number(asked)} ±{Say.Number(allowed)} is wanted. "
            + (recipe.Adjustment is null ? "Nothing in the recipe sets the pH. " : "The reagent is dosed for another pH. ")
            + (recipe.Adjustment is null
                ? $"Write an 'adjust' with {(found < asked ? "an alkali" : "an acid")}, so that what it brings is counted too."
                : "Make the target and 'adjust' agree."),
            recipe.Adjustment is null ? Level.Note : null,
            Certainty.Estimate) with
        {
            Measured = new Measured("pH", found, asked, ""),
            Values = [new NamedValue("pH", found, ""), new NamedValue("target", asked, "")],
        };

    private static Finding Extreme(RecipeFacts recipe, double found, double limit, RuleContext context)
    {
        var place = RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{IdPath.Of(context.Facts.Workspace, place)}#pH",
            $"The final solution computes to pH {Say.Number(found)} at rest with the air, past {Say.Number(limit)}, and the recipe does not adjust it. "
            + (found < limit ? "Root tips die back there, and calcium is not taken up. " : "Iron, manganese and phosphate drop out or stay locked there. ")
            + $"Write an 'adjust' with {(found < limit ? "an alkali, or use a water whose alkalinity takes up the acid" : "an acid")}.",
            certainty: Certainty.Estimate) with
        {
            Measured = new Measured("pH", found, limit, ""),
            Values = [new NamedValue("pH", found, ""), new NamedValue("limit", limit, "")],
        };
    }

    /// <summary>The aim inside the window, or a reagent that gets there.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { Profile: var profile } recipe || finding.Measured is not { } ph)
        {
            yield break;
        }

        // The nearest pH inside the window, to one digit; where the recipe states what it wants, that.
        var wanted = RecipePlaces.Target(recipe, "pH")?.Number ?? recipe.Recipe.Adjust?.Target?.Value ?? ph.Limit;
        var inside = profile.Ph is var (low, high) ? Math.Clamp(wanted, low, high) : wanted;
        if (Amounts.With(context, finding.Place, inside) is var (edit, text))
        {
            yield return Repair.Chemistry("aim-inside", $"Aim at pH {text}.", edit);
        }

        foreach (var reagent in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59", "koh-10", "naoh-10" }.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            yield return Waters.Adjust(context, recipe, inside, reagent);
        }
    }
}

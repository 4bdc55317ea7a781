using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>An element off its target, with the usual slip named when one fits.</summary>
public sealed class TargetMissed : RecipeRule, IProposesRepairs
{
    public override string Name => "target-missed";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        foreach (var target in recipe.Recipe.Targets)
        {
            if (target.Concentration is not { } wanted || wanted.GramsPerLitre <= 0)
            {
                continue;
            }

            var key = target.Key.Value;
            var found = recipe.MilligramsPerLitre(key);
            var asked = wanted.MilligramsPerLitre;
            var allowed = target.Tolerance?.HalfWidth(asked) ?? (asked * context.Number("tolerance") / 100);
            var off = found - asked;
            if (Rounding.SixDigits(Math.Abs(off)) <= Rounding.SixDigits(allowed))
            {
                continue;
            }

            var slip = UsualSlips.Name(recipe, context.Facts.Workspace.Catalogue, key, found / asked, context.Number("slipTolerance") / 100);
            var message = $"{key} comes to {Say.Number(found)} mg/L where {Say.Number(asked)} mg/L is wanted ({(off > 0 ? "+" : "-")}{Say.Percent(Math.Abs(off) / asked)}, allowed ±{Say.Percent(allowed / asked)}). "
                + (slip is null
                    ? "The crop gets what is mixed, not what is wanted. Change the additions listed here or the target."
                    : slip.Sentence + " Check that before changing anything else.");
            var sources = ElementRatio.LargestSources(recipe, key).Take(3);
            yield return context.Find(target.Place, message) with
            {
                Related = slip?.Related is { } related ? [related, .. sources.Where(s => s.Place != related.Place)] : [.. sources],
                Measured = new Measured(key, found, asked, "mg/L"),
                Values =
                [
                    new NamedValue("found", found, "mg/L"),
                    new NamedValue("target", asked, "mg/L"),
                    new NamedValue("factor", found / asked, ""),
                ],
            };
        }
    }

    /// <summary>Another hydrate or basis where that is the slip; else more or less of what brings most of it.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
    [
        .. Contributions.OtherHydrates(finding, context),
        .. Contributions.OtherBasis(finding, context),
        .. Contributions.ToLimit(finding, context),
    ];
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>The reagent that sets the pH brings so much of its own nutrient that the feed is no longer what its salts say.</summary>
public sealed class AcidBringsTooMuch : RecipeRule, IProposesRepairs
{
    public override string Name => "acid-brings-too-much";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete || recipe.Adjustment is not { Amount: not null, Reagent: { } reagent } adjustment)
        {
            yield break;
        }

        var largest = context.Number("share") / 100;
        foreach (var key in ReagentShare.Keys.Where(k => RecipePlaces.Target(recipe, k) is null))
        {
            var all = Rounding.SixDigits(recipe.MilligramsPerLitre(key));
            var brought = Rounding.SixDigits(ReagentShare.MilligramsPerLitre(recipe, key));
            if (brought <= 0)
            {
                continue;
            }

            var over = ReagentShare.PushesOverTheRange(recipe, key);
            var share = Rounding.SixDigits(brought / all);
            if (!over && share <= largest)
            {
                continue;
            }

            var start = $"Bringing the pH to {Say.Number(adjustment.TargetPh ?? 0)} with {reagent.Name} adds {Say.Number(brought)} mg/L {key}";
            var high = recipe.Profile.Find(key)?.SufficientHigh ?? 0;
            var message = over
                ? $"{start} and lifts it to {Say.Number(all)} mg/L, over the {Say.Number(high)} mg/L where the usual range of the '{recipe.Profile.Name}' profile ends. "
                    + $"The water takes so much reagent that it feeds the crop as well. Split the demand between two reagents, or take that much {key} out of the salts."
                : $"{start}, {Say.Percent(share)} of all the {key} in the feed. "
                    + $"The amount follows the alkalinity of the water, so {key} drifts whenever the water does. Count it in the recipe and check it against the water of each season.";
            yield return context.Find(
                adjustment.Place,
                $"{IdPath.Of(context.Facts.Workspace, adjustment.Place)}#{key}",
                message,
                over ? null : Level.Note,
                over && recipe.Profile.Find(key) is { IsPractice: false } ? Certainty.Computed : Certainty.Practice) with
            {
                Measured = over ? new Measured(key, all, high, "mg/L") : new Measured($"share of {key} from the reagent", share * 100, largest * 100, "%"),
                Values = [new NamedValue(key, all, "mg/L"), new NamedValue($"{key} from the reagent", brought, "mg/L")],
                Related = recipe.Water?.Water is { Alkalinity: { } alkalinity } ? [new RelatedPlace(alkalinity.Place, "this alkalinity is what the reagent works against")] : [],
            };
        }
    }

    /// <summary>Another acid, or purer water.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { Recipe.Adjust.Target: { } target } recipe)
        {
            yield break;
        }

        foreach (var acid in new[] { "nitric-38", "phosphoric-59", "sulfuric-37", "citric-acid-h2o", "hydrochloric-10" })
        {
            yield return Waters.Adjust(context, recipe, target.Value, acid);
        }

        foreach (var water in new[] { "rain", "reverse-osmosis" })
        {
            if (Waters.Pure(recipe, water) is { } pure)
            {
                yield return pure;
            }
        }
    }
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>More sodium or chloride than the crop takes up, from the water and the salts together.</summary>
public sealed class SodiumOrChlorideLoad : RecipeRule, IProposesRepairs
{
    public override string Name => "sodium-or-chloride-load";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        foreach (var (key, name) in new[] { ("Na", "sodium"), ("Cl", "chloride") })
        {
            var found = Rounding.SixDigits(recipe.MilligramsPerLitre(key));
            if (recipe.Profile.Find(key) is not { SufficientHigh: { } high } range || !Bound.IsOver(found, high) || Bound.IsOver(found, range.ToxicAbove))
            {
                continue;
            }

            var heavy = Bound.IsOver(found, Nutrients.Excessive(range));
            var limit = heavy ? Nutrients.Excessive(range)!.Value : high;
            var fact = recipe.Elements[key];
            var fromWater = fact.Contributions.Where(c => c.Source == "water").Sum(c => c.Concentration.MilligramsPerLitre);

            // A water that is unfit for that very reason is said once, at the water.
            if (!heavy && recipe.Water?.Water is { } water && WaterLimits.Breaches(water).Any(b => b.Limit.Key == key))
            {
                continue;
            }

            var message = $"The final solution holds {Say.Number(found)} mg/L {name}, over the {Say.Number(limit)} mg/L that the '{recipe.Profile.Name}' profile {(heavy ? "bears" : "is usually given")}; "
                + $"{Say.Number(fromWater)} mg/L come with the water and {Say.Number(found - fromWater)} mg/L with the doses. "
                + $"Roots take up little of it, so in a solution that is used again it piles up until it harms. "
                + (fromWater > found / 2 ? "Blend the water with rain or reverse-osmosis water, or drain more often." : $"Replace the salt that brings it with one free of {name}.");
            var place = RecipePlaces.TargetOrDoses(recipe, key);
            yield return context.Find(
                place,
                $"{IdPath.Of(context.Facts.Workspace, place)}#{key}",
                message,
                heavy ? null : Level.Note,
                range.IsPractice ? Certainty.Practice : Certainty.Computed) with
            {
                Related = [.. ElementRatio.LargestSources(recipe, key).Take(3)],
                Measured = new Measured(key, found, limit, "mg/L"),
                Values = [new NamedValue(key, found, "mg/L"), new NamedValue($"{key} from the water", fromWater, "mg/L"), new NamedValue("limit", limit, "mg/L")],
            };
        }
    }

    /// <summary>Purer water, or a salt without it.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        foreach (var water in new[] { "rain", "reverse-osmosis" })
        {
            if (Waters.Pure(recipe, water) is { } pure)
            {
                yield return pure;
            }
        }

        foreach (var addition in finding.Related.Select(r => context.AdditionAt(r.Place)).OfType<AdditionFacts>())
        {
            foreach (var other in Additions.OtherSalts(context, addition))
            {
                yield return other;
            }
        }

        foreach (var less in Contributions.ToLimit(finding, context))
        {
            yield return less;
        }
    }
}

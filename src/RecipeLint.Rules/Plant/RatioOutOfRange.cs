using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Two elements in a proportion that the crop profile does not allow.</summary>
public sealed class RatioOutOfRange : RecipeRule
{
    public override string Name => "ratio-out-of-range";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (!recipe.IsComplete)
        {
            yield break;
        }

        foreach (var range in recipe.Profile.Ratios)
        {
            if (ElementRatio.Of(recipe, range) is not { } ratio)
            {
                continue;
            }

            var found = Rounding.SixDigits(ratio);
            if ((found >= range.Low && found <= range.High) || ElementRatio.FollowsFromAnElement(recipe, range))
            {
                continue;
            }

            var high = found > range.High;
            var (more, less) = high ? (range.Numerator, range.Denominator) : (range.Denominator, range.Numerator);
            var message = $"{range.Numerator} to {range.Denominator} is {Say.Number(found)} by {range.Basis}; the '{recipe.Profile.Name}' profile keeps it between {Say.Number(range.Low)} and {Say.Number(range.High)}. "
                + $"Too much {more} hinders the uptake of {less}, so the crop can go short of it although the amount looks right. Lower {more} or raise {less}.";
            var place = recipe.Recipe.Place.Child("doses").Key;
            yield return context.Find(place, $"{IdPath.Of(context.Facts.Workspace, place)}#{range.Numerator}:{range.Denominator}", message) with
            {
                Related = [.. ElementRatio.LargestSources(recipe, more).Take(2)],
                Measured = new Measured($"{range.Numerator}:{range.Denominator}", found, high ? range.High : range.Low, ""),
                Values = [new NamedValue($"{range.Numerator}:{range.Denominator}", found, ""), new NamedValue("limit", high ? range.High : range.Low, "")],
            };
        }
    }
}

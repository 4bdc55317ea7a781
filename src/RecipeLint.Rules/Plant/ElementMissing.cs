using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>Essential nutrients that no dose and no water brings, all named at once.</summary>
public sealed class ElementMissing : RecipeRule
{
    public override string Name => "element-missing";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var missing = recipe.IsComplete && recipe.Doses.Count > 0 ? Nutrients.Missing(recipe) : [];
        if (missing.Count == 0)
        {
            yield break;
        }

        var waterSaysLittle = recipe.Water?.Water is { Estimates.Count: > 0 };
        yield return context.Find(
            RecipePlaces.Doses(recipe),
            $"Nothing brings {Say.List(missing)} into '{recipe.Recipe.Name}': neither a dose nor the water '{recipe.Water?.Name}'. "
            + "Plants cannot finish their life without any one of them, and what is used up first stops growth. "
            + (waterSaysLittle
                ? "Add what carries them, or name a full analysis of the water if that brings them."
                : "Add the dose that carries them; a feed for one purpose only, such as a calcium supplement, can be accepted with a suppression.")) with
        {
            Measured = new Measured("missing nutrients", missing.Count, 0, ""),
            Values = [.. missing.Select(key => new NamedValue(key, 0, "mg/L"))],
        };
    }
}

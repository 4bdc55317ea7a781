using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Plant;

/// <summary>Where in a recipe a finding on its final solution stands.</summary>
internal static class RecipePlaces
{
    /// <summary>The key "doses": what is said of the solution as a whole.</summary>
    public static Place Doses(RecipeFacts recipe) => recipe.Recipe.Place.Child("doses").Key;

    /// <summary>The target of a key, else the doses.</summary>
    public static Place TargetOrDoses(RecipeFacts recipe, string key) => Target(recipe, key)?.Place ?? Doses(recipe);

    /// <summary>The recipe's target for an element, "EC" or "pH"; null when it states none.</summary>
    public static Target? Target(RecipeFacts recipe, string key) => recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == key);
}

using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>What is said where a shop gives its product an id that is taken.</summary>
internal static class IdClashProblem
{
    public static Problem Of(IdClash clash, ShopSubstance own, ShopSubstance? other)
    {
        var taken = other is null ? $"a name of '{clash.Existing.Id}' in the built-in catalogue" : $"taken in '{other.Place.File}'";
        return new Problem(
            ProblemKind.DuplicateKey,
            own.Place.Child("id"),
            $"The id '{Wording.Shorten(clash.Added.Id)}' is {taken}, so a recipe could mean either. Give this product an id of its own.")
        {
            Related = other is null ? [] : [new RelatedPlace(other.Place.Child("id"), "first used here")],
        };
    }
}

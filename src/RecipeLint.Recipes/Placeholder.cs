namespace RecipeLint.Recipes;
internal static class Placeholder;

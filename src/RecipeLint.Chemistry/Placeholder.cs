namespace RecipeLint.Chemistry;
internal static class Placeholder;

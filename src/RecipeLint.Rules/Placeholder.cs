namespace RecipeLint.Rules;
internal static class Placeholder;

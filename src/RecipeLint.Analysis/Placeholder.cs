namespace RecipeLint.Analysis;
internal static class Placeholder;

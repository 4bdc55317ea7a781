namespace RecipeLint.Reports;
internal static class Placeholder;

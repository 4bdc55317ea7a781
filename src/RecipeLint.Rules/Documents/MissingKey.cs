using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A key the file cannot do without.</summary>
public sealed class MissingKey() : ProblemRule(
    "missing-key",
    "The figures that need it cannot be computed. Add it.",
    ProblemKind.MissingKey);

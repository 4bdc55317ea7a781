using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A value of another kind than its key holds.</summary>
public sealed class WrongShape() : ProblemRule(
    "wrong-shape",
    "The value cannot be understood as it stands and is left out of every figure. Write the kind of value the format asks for.",
    ProblemKind.WrongShape);

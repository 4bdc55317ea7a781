using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A value of another kind than its key holds.</summary>
public sealed class WrongShape() : ProblemRule("wrong-shape", ProblemKind.WrongShape);

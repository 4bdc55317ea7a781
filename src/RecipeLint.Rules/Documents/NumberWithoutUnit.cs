using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A bare number where a quantity is due.</summary>
public sealed class NumberWithoutUnit() : ProblemRule("number-without-unit", ProblemKind.NumberWithoutUnit);

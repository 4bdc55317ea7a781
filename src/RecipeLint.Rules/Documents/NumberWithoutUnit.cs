using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A bare number where a quantity is due.</summary>
public sealed class NumberWithoutUnit() : ProblemRule(
    "number-without-unit",
    "The same number means different things in different shops. Write the quantity as a text with its unit, such as \"60 g\".",
    ProblemKind.NumberWithoutUnit);

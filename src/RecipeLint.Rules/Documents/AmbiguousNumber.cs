using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A comma that can be a decimal mark or a thousands mark.</summary>
public sealed class AmbiguousNumber() : ProblemRule(
    "ambiguous-number",
    "Between two readings of an amount nothing is chosen. Write decimals with a point and leave out thousands marks.",
    ProblemKind.AmbiguousNumber);

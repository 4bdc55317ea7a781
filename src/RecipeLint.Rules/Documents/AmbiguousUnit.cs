using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that means two things, such as the gallon.</summary>
public sealed class AmbiguousUnit() : ProblemRule(
    "ambiguous-unit",
    "Between two readings of an amount nothing is chosen. Write the unit out in full.",
    ProblemKind.AmbiguousUnit);

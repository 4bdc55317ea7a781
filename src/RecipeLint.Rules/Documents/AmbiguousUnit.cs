using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that means two things, such as the gallon.</summary>
public sealed class AmbiguousUnit() : ProblemRule("ambiguous-unit", ProblemKind.AmbiguousUnit);

using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that is not in the table of units.</summary>
public sealed class UnknownUnit() : ProblemRule("unknown-unit", ProblemKind.UnknownUnit);

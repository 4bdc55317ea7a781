using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A unit that is not in the table of units.</summary>
public sealed class UnknownUnit() : ProblemRule(
    "unknown-unit",
    "Without a known unit the amount is missing from every total. Write it in a unit such as g, mg, mL or L.",
    ProblemKind.UnknownUnit);

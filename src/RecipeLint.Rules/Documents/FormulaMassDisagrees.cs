using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A stated molar mass that does not follow from the stated formula.</summary>
public sealed class FormulaMassDisagrees() : ProblemRule(
    "formula-mass-disagrees",
    "One of the two is wrong, and it decides how much of each element a gram brings. Copy both from the label again.",
    ProblemKind.FormulaMassDisagrees);

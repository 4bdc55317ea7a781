using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A stated molar mass that does not follow from the stated formula.</summary>
public sealed class FormulaMassDisagrees() : ProblemRule("formula-mass-disagrees", ProblemKind.FormulaMassDisagrees);

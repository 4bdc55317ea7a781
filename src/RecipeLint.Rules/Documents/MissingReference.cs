using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A reference to a file that is not there or could not be read.</summary>
public sealed class MissingReference() : ProblemRule("missing-reference", ProblemKind.MissingReference);

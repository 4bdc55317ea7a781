using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A reference to a file outside the repository.</summary>
public sealed class ReferenceLeavesRepository() : ProblemRule("reference-leaves-repository", ProblemKind.ReferenceLeavesRepository);

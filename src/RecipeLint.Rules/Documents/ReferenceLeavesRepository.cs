using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A reference to a file outside the repository.</summary>
public sealed class ReferenceLeavesRepository() : ProblemRule(
    "reference-leaves-repository",
    "Such a file is there on one computer and missing on the next. Copy it into the repository and refer to the copy.",
    ProblemKind.ReferenceLeavesRepository);

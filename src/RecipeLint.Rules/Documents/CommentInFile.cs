using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A comment, which JSON does not have; it belongs into a note.</summary>
public sealed class CommentInFile() : ProblemRule("comment-in-file", ProblemKind.CommentInFile);

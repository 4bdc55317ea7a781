using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A comment, which JSON does not have; it belongs into a note.</summary>
public sealed class CommentInFile() : ProblemRule(
    "comment-in-file",
    "Other programs refuse a JSON file with comments, and the remark is lost when one writes it again. Move it into a \"note\".",
    ProblemKind.CommentInFile);

using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>Text that is not one JSON value: cut off, a comma too many, or far too long to be a recipe.</summary>
public sealed class MalformedFile() : ProblemRule(
    "malformed-file",
    "Nothing behind that place can be read or judged. Mend the text, or take the last complete version of the file.",
    ProblemKind.MalformedFile,
    ProblemKind.FileTooLarge);

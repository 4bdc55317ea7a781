using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>Bytes that are not plain UTF-8.</summary>
public sealed class WrongEncoding() : ProblemRule(
    "wrong-encoding",
    "Signs such as µ and ° would be read wrongly, and amounts with them. Save the file as UTF-8 without byte order mark.",
    ProblemKind.WrongEncoding);

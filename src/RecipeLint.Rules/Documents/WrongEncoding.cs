using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>Bytes that are not plain UTF-8.</summary>
public sealed class WrongEncoding() : ProblemRule("wrong-encoding", ProblemKind.WrongEncoding);

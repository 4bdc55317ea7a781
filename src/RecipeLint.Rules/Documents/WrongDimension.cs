using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A good quantity of the wrong kind, such as a volume where a temperature is due.</summary>
public sealed class WrongDimension() : ProblemRule("wrong-dimension", ProblemKind.WrongDimension);

using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A good quantity of the wrong kind, such as a volume where a temperature is due.</summary>
internal sealed class WrongDimension() : ProblemRule(
    "wrong-dimension",
    "The value cannot be used, and the figures that need it are missing. Write the kind of quantity the key asks for.",
    Harm.Loss,
    ProblemKind.WrongDimension);

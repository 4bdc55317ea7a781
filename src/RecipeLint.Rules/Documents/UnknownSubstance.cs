using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A substance that is neither in the catalogue nor in the shop's own list.</summary>
public sealed class UnknownSubstance() : ProblemRule("unknown-substance", ProblemKind.UnknownSubstance);

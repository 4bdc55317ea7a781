using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>Stocks that are made from each other in a circle.</summary>
public sealed class ReferenceLoop() : ProblemRule("reference-loop", ProblemKind.ReferenceLoop);

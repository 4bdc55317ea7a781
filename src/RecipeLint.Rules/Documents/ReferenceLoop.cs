using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Stocks that are made from each other in a circle.</summary>
internal sealed class ReferenceLoop() : ProblemRule(
    "reference-loop",
    "Neither of them can be made first, so what they hold cannot be computed. Take one of the references out.",
    Harm.Loss,
    ProblemKind.ReferenceLoop);

using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>An amount nobody means: zero, negative, or far too much for the batch.</summary>
public sealed class ImplausibleAmount() : ProblemRule(
    "implausible-amount",
    "Nobody can mean that, so a unit or a decimal point has slipped. Correct it before anything is weighed.",
    ProblemKind.ImplausibleAmount);

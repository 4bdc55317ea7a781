using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>The same key twice in one object: readers keep one of the two without a word.</summary>
public sealed class DuplicateKey() : ProblemRule(
    "duplicate-key",
    "Readers keep one of the two without saying which. Delete the one that does not hold.",
    ProblemKind.DuplicateKey);

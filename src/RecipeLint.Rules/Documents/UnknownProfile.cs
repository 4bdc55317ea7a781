using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A crop or stage without a profile.</summary>
public sealed class UnknownProfile() : ProblemRule(
    "unknown-profile",
    "The generic ranges are used instead. Choose one of the profiles, or leave the key out.",
    ProblemKind.UnknownProfile);

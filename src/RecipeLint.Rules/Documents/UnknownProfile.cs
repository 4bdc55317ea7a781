using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A crop or stage without a profile.</summary>
public sealed class UnknownProfile() : ProblemRule("unknown-profile", ProblemKind.UnknownProfile);

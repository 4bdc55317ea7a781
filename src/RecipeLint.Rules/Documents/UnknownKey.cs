using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A key no format of ours knows, mostly a misspelt one.</summary>
public sealed class UnknownKey() : ProblemRule("unknown-key", ProblemKind.UnknownKey);

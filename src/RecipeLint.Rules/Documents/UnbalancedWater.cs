using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A water analysis whose cations and anions do not balance.</summary>
public sealed class UnbalancedWater() : ProblemRule("unbalanced-water", ProblemKind.UnbalancedWater);

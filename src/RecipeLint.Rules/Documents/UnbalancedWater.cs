using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A water analysis whose cations and anions do not balance.</summary>
public sealed class UnbalancedWater() : ProblemRule(
    "unbalanced-water",
    "Dissolved salts are neutral, so an ion is missing or a value stands on another basis. Compare the file with the report.",
    ProblemKind.UnbalancedWater);

using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Documents;

/// <summary>A name that fits several substances, mostly two hydrates of one salt.</summary>
public sealed class AmbiguousSubstance() : ProblemRule("ambiguous-substance", ProblemKind.AmbiguousSubstance);

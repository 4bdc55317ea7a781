using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A row of an imported table that waits for its place.</summary>
internal sealed class ImportNotUnderstood() : ProblemRule(
    "import-not-understood",
    "Until it has a place it is missing from every figure. Write it as a step or value, move a remark into 'note', and take the entry out.",
    Harm.Damage,
    ProblemKind.ImportNotUnderstood);

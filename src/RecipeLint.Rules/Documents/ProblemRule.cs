using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>Passes on one or a few kinds of what reading found, each problem as a finding at its place. The reader knows; this gives it a name and a level.</summary>
public abstract class ProblemRule(string name, params ProblemKind[] kinds) : WorkspaceRule
{
    public sealed override string Name => name;

    public IReadOnlyList<ProblemKind> Kinds => kinds;

    public sealed override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        facts.Workspace.Problems
            .Where(p => kinds.Contains(p.Kind))
            .Select(p => context.Find(p.Place, p.Message) with
            {
                Related = p.Related,
                Values = p.Values,
                Suggestions = p.Suggestions,
            });
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// Passes on one or a few kinds of what reading found, each problem as a finding at its place. The reader knows what is wrong and what was
/// meant; this gives it a name and a level, and adds why it matters where the reader has only said what.
/// </summary>
/// <param name="harm">What comes of it: mostly a loss, as what stands there is missing from every figure.</param>
/// <param name="advice">Why it matters and what to do, for messages of a single sentence.</param>
internal abstract class ProblemRule(string name, string advice, Harm harm, params ProblemKind[] kinds) : WorkspaceRule
{
    public sealed override string Name => name;

    public IReadOnlyList<ProblemKind> Kinds => kinds;

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        facts.Workspace.Problems
            .Where(p => kinds.Contains(p.Kind))
            .Select(p => context.Find(p.Place, Message(p), p.IsHarmless ? Harm.Habit : HarmOf(p), Odds.Certain) with
            {
                Related = p.Related,
                Values = p.Values,
                Suggestions = p.Suggestions,
            });

    /// <summary>What comes of one problem of its kind.</summary>
    protected virtual Harm HarmOf(Problem problem) => harm;

    private string Message(Problem problem)
    {
        var said = problem.Message.TrimEnd();
        if (problem.Suggestions is [var nearest] && !said.Contains(nearest, StringComparison.Ordinal)
            && !said.Contains("Did you mean", StringComparison.Ordinal))
        {
            said += $" Did you mean '{nearest}'?";
        }

        return SentenceCount.Of(said) < 2 ? $"{said} {advice}" : said;
    }
}

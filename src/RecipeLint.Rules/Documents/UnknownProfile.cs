using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// A crop without a profile, a profile file over one that is not known, or a stage that looks like a misspelt one of the profile.
/// </summary>
internal sealed class UnknownProfile() : ProblemRule(
    "unknown-profile",
    "The generic ranges are used instead. Choose one of the profiles, or leave the key out.",
    Harm.Damage,
    ProblemKind.UnknownProfile), IProposesRepairs
{
    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        base.Judge(facts, context).Concat(facts.Recipes.Select(r => MisspeltStage(r, context)).OfType<Finding>());

    /// <summary>Any word may stand as a stage; one that nearly is a stage of the profile was meant to be it.</summary>
    private static Finding? MisspeltStage(RecipeFacts recipe, RuleContext context)
    {
        if (recipe.Recipe.Stage is not { } stage || recipe.Profile.KnownStages.Contains(stage.Value.Trim().ToLowerInvariant())
            || Spelling.Nearest(stage.Value, recipe.Profile.KnownStages) is not { Count: > 0 } near)
        {
            return null;
        }

        return context.Find(
            stage.Place,
            $"'{stage.Value}' is no stage of the '{recipe.Profile.Name}' profile; '{near[0]}' is. "
            + "The ranges for any stage are used instead, and a young crop is then judged like a grown one. Correct the spelling, or "
                + "write a word of your own.",
            Harm.Damage,
            Odds.Certain) with
        {
            Suggestions = near,
        };
    }

    /// <summary>
    /// A word that nearly is a known one was meant to be it: what hangs on it goes unread, as with any other misspelt name.
    /// </summary>
    protected override Harm HarmOf(Problem problem) => problem.Suggestions.Count > 0 ? Harm.Loss : base.HarmOf(problem);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

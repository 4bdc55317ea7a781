using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>What the engine could not use of the settings of this run, as findings.</summary>
internal static class SettingIssues
{
    internal static IEnumerable<Finding> Find(Facts facts, RuleContext context, bool unknownRules) =>
        LintEngine.ShopsOf(facts.Workspace)
            .SelectMany(shop => RuleTuning.Read(shop).Issues)
            .Where(issue => issue.IsUnknownRule == unknownRules)
            .Select(issue => context.Find(
                issue.Place, issue.IdPath, issue.Message, Harm.Damage, Odds.Certain) with
            { Suggestions = issue.Suggestions });
}

using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A rule name in the settings that fits no rule, so that a level or a suppression has no effect.</summary>
internal sealed class UnknownRule() : ProblemRule(
    "unknown-rule",
    "The entry changes nothing. Correct the name, or remove it.",
    Harm.Damage,
    ProblemKind.UnknownRule), IProposesRepairs
{
    /// <summary>Reading cannot know the rules; the names are held against the rule book here.</summary>
    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        base.Judge(facts, context).Concat(SettingIssues.Find(facts, context, unknownRules: true));

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

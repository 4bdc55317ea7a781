using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Documents;

/// <summary>A level or option of a known rule that cannot be used as written, so that the default holds.</summary>
internal sealed class UnusableOption : WorkspaceRule, IProposesRepairs
{
    public override string Name => "unusable-option";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) => SettingIssues.Find(facts, context, unknownRules: false);

    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => AsSuggested.Of(finding, context);
}

using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>A level or option of a known rule that cannot be used as written, so that the default holds.</summary>
public sealed class UnusableOption : WorkspaceRule
{
    public override string Name => "unusable-option";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) => SettingIssues.Find(facts, context, unknownRules: false);
}

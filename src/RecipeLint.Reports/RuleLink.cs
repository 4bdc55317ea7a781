using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>
/// A name for a rule, not an address: the project has no web host to point to, and log formats and editors ask for an absolute URI. The
/// text it
/// would show is the help in the log itself, and in an editor what is shown over the rule's name.
/// </summary>
public static class RuleLink
{
    public static Uri Of(RuleDescriptor rule) => new("urn:recipelint:rule:" + Uri.EscapeDataString(rule.Id), UriKind.Absolute);
}

using System.Collections.Frozen;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>Every rule whose verdict can be worked out by hand; a test proves that only rules without a number are missing.</summary>
public static class WorkingList
{
    private static readonly FrozenDictionary<string, RuleWorkings> ByRule = new[]
    {
        DocumentWorkings.All,
    }.SelectMany(w => w).ToFrozenDictionary(w => w.Rule, StringComparer.Ordinal);

    /// <summary>True for a rule whose verdict turns on numbers.</summary>
    public static bool Has(Rule rule) => rule is JudgingRule judging ? judging.HasWorking : ByRule.ContainsKey(rule.Name);

    /// <summary>Everything the rule looks at in the subject, worked out; empty for a rule without numbers.</summary>
    /// <param name="context">Of the rule, with the options of the shop by file.</param>
    public static IReadOnlyList<Working> Of(Rule rule, WorkingSubject subject, RuleContext context) => rule is JudgingRule judging
        ? [.. judging.Look(subject, context).Select(v => judging.ToWorking(v.Verdict, v.Context)).OfType<Working>()]
        : ByRule.TryGetValue(rule.Name, out var workings) ? [.. workings.Of(subject, context)] : [];
}

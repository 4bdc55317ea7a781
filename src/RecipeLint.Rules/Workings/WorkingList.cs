using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

/// <summary>The workings of a rule are those of its verdicts; a test proves that only rules without a number have none.</summary>
internal static class WorkingList
{
    /// <summary>True for a rule whose verdict turns on numbers.</summary>
    public static bool Has(Rule rule) => rule is JudgingRule { HasWorking: true };

    /// <summary>Everything the rule looks at in the subject, worked out; empty for a rule without numbers.</summary>
    /// <param name="context">Of the rule, with the options of the shop by file.</param>
    public static IReadOnlyList<Working> Of(Rule rule, WorkingSubject subject, RuleContext context) => rule is JudgingRule judging
        ? [.. judging.Look(subject, context).Select(v => judging.ToWorking(v.Verdict, v.Context)).OfType<Working>()]
        : [];
}

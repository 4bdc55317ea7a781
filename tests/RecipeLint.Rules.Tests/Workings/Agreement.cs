using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Workings;

/// <summary>Whether a working and the verdict that it works out say the same.</summary>
internal static class Agreement
{
    /// <summary>Of a number that is worked out without rounding and the one the rule has, which may be rounded to six digits before its last step.</summary>
    private const double SixDigits = 1e-5;

    /// <summary>What is left of the difference of two equal numbers.</summary>
    private const double NearZero = 1e-9;

    /// <summary>What they differ in, for a reader; null where they agree or the rule has no working.</summary>
    internal static string? Difference(JudgingRule rule, Verdict verdict, RuleContext context)
    {
        if (rule.ToWorking(verdict, context) is not { } working)
        {
            return rule.HasWorking ? $"{rule.Name}: no working of {verdict}" : null;
        }

        var where = $"{rule.Name}, {working.Title}";
        if (!working.Checks.SequenceEqual(verdict.Checks))
        {
            return $"{where}: its working asks {List(working.Checks)}, its verdict {List(verdict.Checks)}";
        }

        if (working.Fires != verdict.Fires || (!working.Fires && working.Prevented is null))
        {
            return $"{where}: its working fires {working.Fires}, its verdict {verdict.Fires}";
        }

        return working.Steps.OfType<TestStep>()
            .Where(t => !Same(t.Left.Exact, t.Check.Value) || !Same(t.Right.Exact, t.Check.Limit))
            .Select(t => $"{where}: {t.Check}, worked out as {t.Left.Exact:G9} and {t.Right.Exact:G9}")
            .FirstOrDefault();
    }

    internal static void Assert(JudgingRule rule, Verdict verdict, RuleContext context)
    {
        var difference = Difference(rule, verdict, context);
        Xunit.Assert.True(difference is null, difference);
    }

    private static bool Same(double one, double other) => one.Equals(other) || Math.Abs(one - other) <= Math.Max(SixDigits * Math.Abs(other), NearZero);

    private static string List(IEnumerable<Check> checks) => string.Join("; ", checks);
}

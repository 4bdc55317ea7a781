namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Tells what somebody asks from what somebody saw: "would hot water help", "dissolves in acid?" are no tests that were made. Pure; never
/// throws.
/// </summary>
internal static class Questions
{
    private static readonly HashSet<string> Modals = new(StringComparer.Ordinal)
    {
        "can", "could", "should", "would", "may", "might", "shall", "will", "if", "do", "does", "is",
    };

    private static readonly HashSet<string> Whom = new(StringComparer.Ordinal)
    {
        "i", "we", "you", "one", "it", "that", "this", "hot", "warm", "cold", "water", "vinegar", "acid", "bleach", "lye", "peroxide",
        "more", "some", "a", "an", "the", "heating", "warming", "adding", "shaking", "stirring", "there",
    };

    /// <summary>Questions of a text, one for each.</summary>
    public static IReadOnlyList<string> Asked(string text)
    {
        var asked = new List<string>();
        var start = 0;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && text[i] is not ('.' or '?' or '!' or ';' or ',' or ':' or '\n'))
            {
                continue;
            }

            var clause = text[start..i];
            if ((i < text.Length && text[i] == '?') || BeginsAsAQuestion(clause))
            {
                asked.Add(clause);
            }

            start = i + 1;
        }

        return asked;
    }

    /// <summary>The same without tests, heat and times that only stand in a question; looks are told in questions too ("what is this white
    /// crust?").</summary>
    public static Observation WithoutWhatIsAsked(Observation told, IReadOnlyList<string> asked)
    {
        if (asked.Count == 0)
        {
            return told;
        }

        var inQuestions = asked.SelectMany(a => ObservationReader.Signs(a)).ToHashSet();
        return told with { Signs = [.. told.Signs.Where(s => !IsDoing(s) || !inQuestions.Contains(s))] };
    }

    private static bool IsDoing(Seen seen) => seen.Sign.Kind is SignKind.Test or SignKind.Time || seen.Sign.Id is "liquid-faded";

    private static bool BeginsAsAQuestion(string clause)
    {
        var words = ObservationWords.Tokens(clause).Where(t => t.Length > 0).Take(2).ToList();
        return words is [var first, var second] && Modals.Contains(first) && Whom.Contains(second);
    }
}

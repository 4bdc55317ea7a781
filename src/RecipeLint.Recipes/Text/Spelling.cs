namespace RecipeLint.Recipes.Text;

/// <summary>What a mistyped word most likely was meant to be.</summary>
public static class Spelling
{
    private const int LongestWord = 64;

    /// <summary>
    /// The candidates nearest to a word, best first and in ordinal order among equals. Letter case, spaces, hyphens and underscores
    /// do not count; about one slip in three letters is let through.
    /// </summary>
    /// <param name="max">At most this many.</param>
    public static IReadOnlyList<string> Nearest(string word, IEnumerable<string> candidates, int max = 3)
    {
        var wanted = Fold(word);
        if (wanted.Length is 0 or > LongestWord)
        {
            return [];
        }

        var ranked = new List<(int Rank, string Candidate)>();
        foreach (var candidate in candidates)
        {
            var folded = Fold(candidate);
            var limit = Math.Min(3, Math.Max(1, Math.Min(wanted.Length, folded.Length) / 3));
            var distance = Distance(wanted, folded, limit);
            if (distance <= limit)
            {
                ranked.Add((distance, candidate));
            }
            else if (IsBeginning(wanted, folded))
            {
                ranked.Add((limit + 1, candidate));
            }
        }

        if (ranked.Count == 0)
        {
            return [];
        }

        // A clear winner stands alone; the others would only blur it.
        var best = ranked.Min(r => r.Rank);
        var last = best == 0 ? 0 : best + 1;
        return
        [
            .. ranked.Where(r => r.Rank <= last)
                .OrderBy(r => r.Rank)
                .ThenBy(r => r.Candidate, StringComparer.Ordinal)
                .Select(r => r.Candidate)
                .Distinct(StringComparer.Ordinal)
                .Take(max),
        ];
    }

    /// <summary>
    /// Edits between two words: letters inserted, left out, replaced, or two neighbours swapped (Damerau 1964, each stretch edited once).
    /// </summary>
    /// <param name="limit">Anything above it may come back as <paramref name="limit"/> + 1.</param>
    public static int Distance(string a, string b, int limit = int.MaxValue - 1)
    {
        if (Math.Abs(a.Length - b.Length) > limit)
        {
            return limit + 1;
        }

        var before = new int[b.Length + 1];
        var previous = new int[b.Length + 1];
        var current = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                var value = Math.Min(replaced, Math.Min(previous[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    value = Math.Min(value, before[j - 2] + 1);
                }

                current[j] = value;
                least = Math.Min(least, value);
            }

            if (least > limit)
            {
                return limit + 1;
            }

            (before, previous, current) = (previous, current, before);
        }

        return Math.Min(previous[b.Length], limit == int.MaxValue ? limit : limit + 1);
    }

    private static bool IsBeginning(string wanted, string folded) =>
        wanted.Length >= 3 && folded.Length >= 3
        && (folded.StartsWith(wanted, StringComparison.Ordinal) || wanted.StartsWith(folded, StringComparison.Ordinal));

    private static string Fold(string word) =>
        string.Concat(word.Where(c => c is not (' ' or '-' or '_'))).ToLowerInvariant();
}
